using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Service;

/// <summary>Finds equipment on slides that cannot be pulled out fully in the aisle before the rack.</summary>
public sealed class Aisle : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "service.aisle",
        Title = "Aisle shorter than slides",
        Severity = Severity.Warning,
        What = "Finds items on slides whose full pull is longer than the aisle before the rack.",
        Why = "The item meets the wall half way out, and its cover cannot be opened where it hangs.",
        Formula = "extension > aisleFrontMm; slides without a given extension pull out as far as the body is deep",
        Sources = [Sources.AislePractice],
        Needs = ["/site/aisleFrontMm", "/items/*/support/style", "/items/*/support/extensionMm", "/items/*/body/depthMm"],
        Remedies = ["Place the rack with a wider aisle before it.", "Take slides that pull out less far.", "Mount it on fixed runners."],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        foreach (var item in context.Survey.Items)
        {
            if (item is not { SupportStyle: SupportStyle.Slides, Face: Face.Front })
            {
                continue;
            }

            if (context.Survey.Description.Site?.AisleFrontMm is not { } aisle)
            {
                context.Lacks(SitePointers.AisleFront, "Items hang on slides; without this it cannot be said whether the aisle lets them out.");
                break;
            }

            if ((item.Item!.Support!.ExtensionMm ?? item.BodyDepthMm) is not { } pull)
            {
                context.Lacks(Pointers.ItemExtension[item.Index], "Without this it cannot be said whether the aisle lets an item on slides out.");
            }
            else if (pull > aisle + SetbackInterval.ToleranceMm)
            {
                Report(context, item, pull, aisle);
            }
        }
    }

    private static void Report(RuleContext context, Mounted item, double pull, double aisle) => context.Report(new FindingDraft
    {
        Message = "{item} pulls out {pullMm} mm, and the aisle before the rack is {aisleMm} mm.",
        Data = [("item", item.Id), ("pullMm", pull), ("aisleMm", aisle)],
        Subject = context.Survey.Cabinet.Place(item),
        Identity = [item.Id],
        Pointers = [Pointers.ItemExtension[item.Index], SitePointers.AisleFront],
        Actual = Quantities.Millimetres(pull),
        Limit = Quantities.Millimetres(aisle),
        UtilisationPercent = aisle > 0 ? 100 * pull / aisle : null,
        Calculation = Invariant($"{pull:0.###} > {aisle:0.###}"),
        Cures = Cures(context.Survey, item, pull, aisle),
    });

    private static IEnumerable<Cure> Cures(RackSurvey survey, Mounted item, double pull, double aisle)
    {
        var support = item.Item!.Support!;
        yield return new Cure(Invariant($"Place the rack with {pull:0.###} mm clear before its front"), survey.Description.EditSite(s => s with { AisleFrontMm = pull }));
        if (aisle > 0)
        {
            yield return new CureBuilder(survey).SetSupport(item, support with { ExtensionMm = aisle }).Titled(Invariant($"Take slides for {item.Id} that pull out {aisle:0.###} mm"));
        }

        yield return new CureBuilder(survey)
            .SetSupport(item, support with { Style = SupportStyle.Runners, ThicknessMm = null, ExtensionMm = null, UsedExtended = null, CableArm = null })
            .Titled($"Mount {item.Id} on fixed runners");
    }
}
