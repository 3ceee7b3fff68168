using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Rules.Remedies;
using RackCheck.Rules.Survey;
using RackCheck.Rules.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Power;

/// <summary>Finds redundant items whose cords all live by one supply.</summary>
public sealed class RedundancyLost : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "power.redundancy",
        Title = "Redundant item on one supply",
        Severity = Severity.Error,
        What = "Finds items said to be redundant that have one cord, or whose cords all hang on one supply. What hangs on a UPS lives by the supplies of its cords.",
        Why = "When that supply goes the item goes with it, though a second power supply was paid for.",
        Formula = "supplies that the cords of a redundant item live by >= 2",
        Sources = [Sources.RedundancyPractice],
        Needs = ["/items/*/power/redundant", "/items/*/power/plugs", "/items/*/ups/feeds", "/distributionUnits/*/supply", "/connections"],
        Remedies = ["Plug one cord into a unit on another supply.", "Take a unit on another supply with more outlets.", "Add a supply with a distribution unit.", "Give it a second cord.", "Do without redundancy."],
        Cautions = [Cautions.Electricity],
        FailingRack = """
            {
              "cabinet": { "heightU": 24, "widthMm": 800, "depthMm": 1000 },
              "items": [
                { "id": "wave-pc", "heightU": 4, "position": { "unit": 1 }, "body": { "depthMm": 450 }, "support": { "style": "slides" }, "power": { "ratedW": 300, "powerFactor": 1, "leakageMa": 1, "inrushA": 20, "plugs": [ "C14", "C14" ], "redundant": true } }
              ],
              "supplies": [
                { "id": "A", "voltageV": 230, "phases": 1, "ratedA": 16, "breaker": { "curve": "C", "ratedA": 16 }, "socket": "IEC60309-16A-1P", "cable": { "lengthM": 10, "crossSectionMm2": 2.5 } },
                { "id": "B", "voltageV": 230, "phases": 1, "ratedA": 16, "breaker": { "curve": "C", "ratedA": 16 }, "socket": "IEC60309-16A-1P", "cable": { "lengthM": 10, "crossSectionMm2": 2.5 } }
              ],
              "distributionUnits": [
                { "id": "strip-a", "supply": "A", "ratedA": 16, "plug": "IEC60309-16A-1P", "mounting": "vertical", "groups": [ { "id": "g1", "outlets": [ { "socket": "C13", "count": 4 } ] } ] },
                { "id": "strip-b", "supply": "B", "ratedA": 16, "plug": "IEC60309-16A-1P", "mounting": "vertical", "groups": [ { "id": "g1", "outlets": [ { "socket": "C13", "count": 4 } ] } ] }
              ],
              "connections": [
                { "item": "wave-pc", "plug": 0, "unit": "strip-a", "group": "g1" },
                { "item": "wave-pc", "plug": 1, "unit": "strip-a", "group": "g1" }
              ]
            }
            """,
        PassingRack = """
            {
              "cabinet": { "heightU": 24, "widthMm": 800, "depthMm": 1000 },
              "items": [
                { "id": "wave-pc", "heightU": 4, "position": { "unit": 1 }, "body": { "depthMm": 450 }, "support": { "style": "slides" }, "power": { "ratedW": 300, "powerFactor": 1, "leakageMa": 1, "inrushA": 20, "plugs": [ "C14", "C14" ], "redundant": true } }
              ],
              "supplies": [
                { "id": "A", "voltageV": 230, "phases": 1, "ratedA": 16, "breaker": { "curve": "C", "ratedA": 16 }, "socket": "IEC60309-16A-1P", "cable": { "lengthM": 10, "crossSectionMm2": 2.5 } },
                { "id": "B", "voltageV": 230, "phases": 1, "ratedA": 16, "breaker": { "curve": "C", "ratedA": 16 }, "socket": "IEC60309-16A-1P", "cable": { "lengthM": 10, "crossSectionMm2": 2.5 } }
              ],
              "distributionUnits": [
                { "id": "strip-a", "supply": "A", "ratedA": 16, "plug": "IEC60309-16A-1P", "mounting": "vertical", "groups": [ { "id": "g1", "outlets": [ { "socket": "C13", "count": 4 } ] } ] },
                { "id": "strip-b", "supply": "B", "ratedA": 16, "plug": "IEC60309-16A-1P", "mounting": "vertical", "groups": [ { "id": "g1", "outlets": [ { "socket": "C13", "count": 4 } ] } ] }
              ],
              "connections": [
                { "item": "wave-pc", "plug": 0, "unit": "strip-a", "group": "g1" },
                { "item": "wave-pc", "plug": 1, "unit": "strip-b", "group": "g1" }
              ]
            }
            """,
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var tree = context.Survey.Power;
        foreach (var item in context.Survey.Items)
        {
            if (item.Item!.Power is not { Redundant: true } power)
            {
                continue;
            }

            if (power.Plugs is null)
            {
                context.Lacks(Pointers.ItemPlugs[item.Index], "Without the plugs of a redundant item it cannot be said whether its cords hang on different supplies.");
            }
            else if (power.Plugs.Count == 1)
            {
                Report(context, item, null);
            }
            else if (power.Plugs.Count > 1 && !tree.IsDescribed)
            {
                context.Lacks("/distributionUnits", "Without the distribution units it cannot be said whether the cords of a redundant item hang on different supplies.");
            }
            else if (OnlySupply(tree, item) is { } supply)
            {
                Report(context, item, supply);
            }
        }
    }

    // Null too where no cord finds an outlet: another rule says so.
    private static SupplyNode? OnlySupply(PowerTree tree, Mounted item)
    {
        var supplies = new HashSet<SupplyNode>();
        foreach (var cord in tree.CordsOf(item))
        {
            if (cord.Group is { } group)
            {
                supplies.UnionWith(tree.SuppliesOf(group.Unit));
            }
        }

        return supplies.Count == 1 ? supplies.Single() : null;
    }

    private static void Report(RuleContext context, Mounted item, SupplyNode? supply)
    {
        var survey = context.Survey;
        context.Report(new FindingDraft
        {
            Message = supply is null
                ? "{item} is said to be redundant, but has one cord only."
                : "{item} is said to be redundant, but all of its cords hang on supply {supply}.",
            Data = supply is null ? [("item", item.Id), ("cords", 1)] : [("item", item.Id), ("supply", supply.Id), ("supplies", 1)],
            Subject = survey.Cabinet.Place(item),
            Identity = [item.Id],
            Pointers =
            [
                $"{item.Pointer}/power",
                .. survey.Power.CordsOf(item).Where(c => c.Connection is not null).Select(c => Invariant($"/connections/{c.Connection}")),
                .. supply is null ? Array.Empty<string>() : [Pointers.Supply[supply.Index]],
            ],
            Actual = Quantities.Of(1, supply is null ? "cords" : "supplies"),
            Limit = Quantities.Of(2, supply is null ? "cords" : "supplies"),
            Cures = CuresOf(survey, item),
        });
    }

    private static IEnumerable<Cure> CuresOf(RackSurvey survey, Mounted item)
    {
        if (item.Item!.Power!.Plugs!.Count > 1)
        {
            foreach (var cure in Apart(survey, item))
            {
                yield return cure;
            }
        }
        else
        {
            var title = $"Give {item.Id} a second cord";
            var changed = survey.Description.EditItem(item.Index, i => PlugCures.WithMore(i, i.Power!.Plugs![0], 1));
            yield return new Cure(title, changed);

            var after = new RackSurvey(changed);
            foreach (var cure in after.Power.IsDescribed ? Apart(after, after.Items[item.Index]) : [])
            {
                yield return OutletCures.Joined(title, cure, cure.Kind);
            }
        }

        yield return new Cure(
            $"Do without redundancy for {item.Id}",
            survey.Description.EditItem(item.Index, i => i with { Power = i.Power! with { Redundant = false } }));
    }

    // One cord goes to another supply: the one that hangs on none yet, else the last.
    private static IEnumerable<Cure> Apart(RackSurvey survey, Mounted item)
    {
        Cord[] cords = [.. survey.Power.CordsOf(item)];
        var only = OnlySupply(survey.Power, item);
        var moved = Array.Find(cords, c => c.Group is null) ?? cords[^1];
        return PowerCures.MoveCords(survey, cords)
            .Concat(OutletCures.Provide(survey, [moved], s => !ReferenceEquals(s, only)));
    }
}
