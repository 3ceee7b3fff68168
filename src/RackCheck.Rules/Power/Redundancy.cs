using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Power;

/// <summary>Finds dual-fed items whose cords are all fed from one supply.</summary>
public sealed class Redundancy : Rule
{
    private static readonly MessageWording OneCordDefect = new("power.redundancy.one-cord", "{item} is dual-fed, but has only one cord.");

    private static readonly MessageWording BothCords = new(
        "power.redundancy.both-cords", "{item} is dual-corded, but both cords are fed from supply {supply}.");

    private static readonly MessageWording AllCords = new(
        "power.redundancy.all-cords", "{item} is dual-fed, but all of its cords are fed from supply {supply}.");

    private static readonly MessageWording BehindUps = new("power.redundancy.behind-ups", "{item} is dual-fed, but all of its cords are behind {ups}.");

    private static readonly MissingData MissingPdus = new(
        "power.redundancy.missing-pdus",
        "The PDUs are missing, so the supplies of a dual-fed item cannot be checked.");

    private static readonly MissingData MissingPlugs = new(
        "power.redundancy.missing-plugs",
        "The plugs of a dual-fed item are missing, so its supplies cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "power.redundancy",
        Title = "Dual-fed item on one supply",
        Severity = Severity.Error,
        MilderSeverity = Severity.Warning,
        What =
            "Finds dual-fed items that have one cord, or whose cords are all fed from one supply. Cords that are all behind one "
                + "UPS are a warning, whatever its "
            + "supplies. Equipment on a UPS is fed from the supplies of the UPS. "
            + "Where the rack has too few outlets, connections chosen by the service are checked once it has enough.",
        Why = "When that supply fails the item fails with it, although its second power supply was paid for.",
        Formula = "number of supplies that feed the cords of a dual-fed item >= 2",
        Sources = [Sources.RedundancyPractice],
        Needs = ["/items/*/power/redundant", "/items/*/power/plugs", "/items/*/ups/feeds", "/pdus/*/supply", "/connections"],
        Remedies =
        [
            "Plug one cord into a PDU on another supply.", "Feed one of its PDUs from another supply.", "Fit a PDU with more outlets on another supply.",
            "Add a supply with a PDU.", "Add a second cord.", "Accept a single feed.",
        ],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var tree = context.Survey.Power;
        var supplies = new HashSet<SupplyNode>(tree.Units.SelectMany(tree.SuppliesOf));
        var isShort = tree.IsDescribed && Array.Exists(tree.Cords, c => c.Group is null);
        var onOne = new List<(MountedItem Item, SupplyNode Supply)>();
        foreach (var item in context.Survey.Items)
        {
            if (item.Item!.Power is not { Redundant: true } power)
            {
                continue;
            }

            if (power.Plugs is null)
            {
                context.ReportMissing(Pointers.ItemPlugs[item.Index], MissingPlugs);
            }
            else if (power.Plugs.Count == 1)
            {
                Report(context, item, null, OneCord(context.Survey, item));
            }
            else if (power.Plugs.Count > 1 && !tree.IsDescribed)
            {
                context.ReportMissing("/pdus", MissingPdus);
            }
            else if (OnlySupply(tree, item) is { } supply && (!isShort || supplies.Count == 1 || tree.CordsOf(item).All(c => c.Connection is not null)))
            {
                onOne.Add((item, supply));
            }
        }

        foreach (var item in context.Survey.Items)
        {
            if (item.Item!.Power is { Redundant: true, Plugs.Count: > 1 } && OnlyUps(tree, item) is { } ups
                && !onOne.Exists(o => ReferenceEquals(o.Item, item)))
            {
                ReportUps(context, item, ups);
            }
        }

        foreach (var (item, supply) in onOne)
        {
            Report(context, item, supply, OneSupply(context.Survey, item, supply, onOne));
        }
    }

    // Also null where no cord has an outlet: another rule reports that.
    private static SupplyNode? OnlySupply(PowerTree tree, MountedItem item)
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

    private static UpsNode? OnlyUps(PowerTree tree, MountedItem item)
    {
        UpsNode[] ups = [.. tree.CordsOf(item).Select(c => c.Group?.Unit.FedBy).OfType<UpsNode>()];
        return ups.Length > 1 && ups.Length == tree.CordsOf(item).Count() && ups.Distinct().Count() == 1 ? ups[0] : null;
    }

    private static void ReportUps(RuleContext context, MountedItem item, UpsNode ups)
    {
        var survey = context.Survey;
        Cord[] cords = [.. survey.Power.CordsOf(item)];
        context.Report(new FindingDraft
        {
            Message = BehindUps,
            Data = [("item", item.Id), ("ups", ups.Item.Id)],
            Subject = survey.Cabinet.Place(item),
            Identity = [item.Id],
            Pointers =
            [
                $"{item.Pointer}/power", Invariant($"/items/{ups.Item.Index}/ups"),
                .. cords.Where(c => c.Connection is not null).Select(c => Invariant($"/connections/{c.Connection}")),
            ],
            Severity = Severity.Warning,
            Candidates = UpsRemedies.MoveOne(survey, ups).Append(Without(survey, [item])),
        });
    }

    private static void Report(RuleContext context, MountedItem item, SupplyNode? supply, IEnumerable<RemedyCandidate> candidates)
    {
        var survey = context.Survey;
        context.Report(new FindingDraft
        {
            Message = supply is null
                ? OneCordDefect
                : survey.Power.CordsOf(item).Count() == 2
                    ? BothCords
                    : AllCords,
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
            Calculation = "1 < 2",
            Candidates = candidates,
        });
    }

    // A second cord like the first uses any outlet that is not fed from the supply of the first.
    private static IEnumerable<RemedyCandidate> OneCord(RackSurvey survey, MountedItem item)
    {
        var first = survey.Power.CordsOf(item).Single();
        var title = new WordedText(RemedyTitles.SecondCord, ("item", item.Id));
        RackDescription Append(RackDescription description) => description.EditItem(item.Index, i => PlugRemedies.WithMore(i, first.Code, 1));
        yield return new RemedyCandidate(title, Append(survey.Description));

        if (survey.Power.IsDescribed)
        {
            var only = OnlySupply(survey.Power, item);
            var second = new Cord { Item = item, Plug = 1, Code = first.Code, Siblings = 2, PowerFactor = first.PowerFactor };
            foreach (var candidate in OutletRemedies.Provide(survey, [second], s => !ReferenceEquals(s, only)))
            {
                yield return OutletRemedies.Joined(title, candidate with { After = Append(candidate.After) }, candidate.Kind);
            }
        }

        yield return Without(survey, [item]);
    }

    // One cord moves to another supply: the one without an outlet, else the last. Where other items have the same defect, the service could give a single new
    // outlet to any of them, so outlets for all of them are tried too.
    private static IEnumerable<RemedyCandidate> OneSupply(
        RackSurvey survey, MountedItem item, SupplyNode only, List<(MountedItem Item, SupplyNode Supply)> onOne)
    {
        var moves = false;
        foreach (var candidate in PowerRemedies.MoveCords(survey, [.. survey.Power.CordsOf(item)]))
        {
            moves = true;
            yield return candidate;
        }

        foreach (var candidate in SupplyRemedies.FeedFromAnother(survey, only))
        {
            moves = true;
            yield return candidate;
        }

        var moved = Moved(survey, item);
        Cord[] alike = [.. onOne.Where(o => ReferenceEquals(o.Supply, only)).Select(o => Moved(survey, o.Item)).Where(c => c.Code == moved.Code)];
        foreach (var cords in alike.Length > 1 ? (Cord[][])[alike, [moved]] : [[moved]])
        {
            foreach (var candidate in OutletRemedies.Provide(survey, cords, s => !ReferenceEquals(s, only)))
            {
                // Nothing is bought where moving a cord is enough.
                yield return candidate with { IsLastResort = moves };
            }
        }

        yield return Without(survey, [item]);
        if (onOne.Count > 1)
        {
            yield return Without(survey, [.. onOne.Select(o => o.Item)]);
        }
    }

    private static Cord Moved(RackSurvey survey, MountedItem item)
    {
        Cord[] cords = [.. survey.Power.CordsOf(item)];
        return Array.Find(cords, c => c.Group is null) ?? cords[^1];
    }

    private static RemedyCandidate Without(RackSurvey survey, MountedItem[] items)
    {
        var after = survey.Description;
        foreach (var item in items)
        {
            after = after.EditItem(item.Index, i => i with { Power = i.Power! with { Redundant = false } });
        }

        return new RemedyCandidate(
            items.Length == 1
                ? new(RemedyTitles.SingleFeed.With("one"), ("item", items[0].Id))
                : new(RemedyTitles.SingleFeed.With(), ("count", items.Length)),
            after);
    }
}
