using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Service;

/// <summary>Finds equipment on slides that cannot be fully extended in the aisle in front of the rack.</summary>
public sealed class Aisle : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "service.aisle",
        Title = "Aisle too narrow for extended slides",
        Severity = Severity.Warning,
        Concern = Concern.Site,
        What = "Finds items on slides whose full extension exceeds the aisle in front of the rack.",
        Why = "The item hits the wall before it is fully extended, and its cover cannot be opened for service.",
        Formula = "extension > aisleFrontMm; default extension: the body depth",
        Sources = [Sources.AislePractice],
        Needs = ["/site/aisleFrontMm", "/items/*/support/style", "/items/*/support/extensionMm", "/items/*/body/depthMm"],
        Remedies = ["Place the rack at a wider aisle.", "Use slides with a shorter extension.", "Mount it on fixed runners."],
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
                context.ReportMissing(
                    SitePointers.AisleFront, "Items are mounted on slides. Without the aisle width, the service clearance cannot be checked.");
                break;
            }

            if ((item.Item!.Support!.ExtensionMm ?? item.BodyDepthMm) is not { } pull)
            {
                context.ReportMissing(
                    Pointers.ItemExtension[item.Index], "Without the extension of the slides, the service clearance in the aisle cannot be checked.");
            }
            else if (Comparison.IsOver(pull, aisle))
            {
                Report(context, item, pull, aisle);
            }
        }
    }

    private static void Report(RuleContext context, MountedItem item, double pull, double aisle) => context.Report(new FindingDraft
    {
        Message = "{item} extends {pullMm} mm; the aisle in front of the rack is {aisleMm} mm wide.",
        Data = [("item", item.Id), ("pullMm", pull), ("aisleMm", aisle)],
        Subject = context.Survey.Cabinet.Place(item),
        Identity = [item.Id],
        Pointers = [Pointers.ItemExtension[item.Index], SitePointers.AisleFront],
        Actual = Quantities.Millimetres(pull),
        Limit = Quantities.Millimetres(aisle),
        UtilisationPercent = aisle > 0 ? 100 * pull / aisle : null,
        Calculation = Invariant($"{pull:0.###} > {aisle:0.###}"),
        Candidates = Candidates(context.Survey, item, pull, aisle),
    });

    private static IEnumerable<RemedyCandidate> Candidates(RackSurvey survey, MountedItem item, double pull, double aisle)
    {
        var support = item.Item!.Support!;
        yield return new RemedyCandidate(
            Invariant($"Place the rack with an aisle of {pull:0.###} mm in front"),
            survey.Description.EditSite(s => s with { AisleFrontMm = pull }));
        if (aisle > 0)
        {
            yield return new RemedyBuilder(survey).SetSupport(item, support with { ExtensionMm = aisle }).Titled(
                Invariant($"Use slides with an extension of {aisle:0.###} mm for {item.Id}"));
        }

        yield return new RemedyBuilder(survey)
            .SetSupport(item, support with { Style = SupportStyle.Runners, ThicknessMm = null, ExtensionMm = null, UsedExtended = null, CableArm = null })
            .Titled($"Mount {item.Id} on fixed runners");
    }
}
