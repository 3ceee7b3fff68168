using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Earthing;

/// <summary>Finds earth leads that are too short to reach the earth bar.</summary>
public sealed class LeadLength : Rule
{
    /// <summary>Slack of an earth lead.</summary>
    public static RuleLimit SlackMm { get; } = new("slackMm", "slack of an earth lead", 200, "mm", 0, 2000, Stricter.Higher);

    private static readonly MessageWording Defect = new(
        "earthing.lead-length",
        "The earth lead of {item} is {lengthM} m long; the route to the earth bar needs {neededM} m including slack.");

    private static readonly MissingData Missing = new(
        "earthing.lead-length.missing",
        "A part of the route is missing, so the reach of an earth lead cannot be checked.");

    private static readonly MissingData MissingLeadLength = new(
        "earthing.lead-length.missing-lead-length",
        "The length of an earth lead is missing, so its reach cannot be checked.");

    private static readonly MissingData MissingPosition = new(
        "earthing.lead-length.missing-position",
        "The position of an item is missing, so the reach of its earth lead cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "earthing.lead-length",
        Title = "Earth lead too short",
        Severity = Severity.Warning,
        What =
            "Finds earth leads shorter than the route from the earth stud to the earth bar at the rear bottom of the cabinet, including slack and the "
            + "extension of slide rails.",
        Why = "The lead does not reach the earth bar, or is torn off when the item is pulled out.",
        Formula = "height down to U1 + opening / 2 + back of the body to the rear uprights + extension of slides + slackMm",
        Sources = [Sources.EarthRoutePractice, Sources.Iec60297],
        Limits = [SlackMm],
        Needs =
        [
            "/items/*/earthLead/lengthM", "/items/*/position", "/items/*/heightU", "/items/*/body/depthMm", "/items/*/support/style",
                "/items/*/support/extensionMm",
            "/cabinet/uprights/spacingMm", "/cabinet/uprights/openingMm",
        ],
        Remedies = ["Fit a longer earth lead."],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var slack = context.Limit(SlackMm);
        foreach (var item in context.Survey.Earth.Studs)
        {
            var route = EarthRoute.Of(context.Survey.Cabinet, item);
            var length = item.Item!.EarthLead?.LengthM;
            if (length is null)
            {
                context.ReportMissing(Pointers.ItemLeadLength[item.Index], MissingLeadLength);
            }

            if (route is null)
            {
                // An item that is not rack-mountable and has no shelf has no place, whatever its own position; a layout rule reports it.
                if ((item.Shelf ?? item).Item!.Position is not null)
                {
                    continue;
                }

                context.ReportMissing((item.Shelf ?? item).PositionPointer, MissingPosition);
            }
            else if (length is { } lead)
            {
                Judge(context, item, route, lead, slack);
            }
        }
    }

    private static void Judge(RuleContext context, MountedItem item, EarthRoute route, double lead, double slack)
    {
        var needed = Quantities.Round((route.LengthMm + slack) / 1000);
        if (Quantities.Round(lead) >= needed)
        {
            ReportMissing(context, item, route);
            return;
        }

        context.Report(new FindingDraft
        {
            Message = Defect,
            Data = [("item", item.Id), ("lengthM", lead), ("neededM", needed)],
            Subject = context.Survey.Cabinet.Place(item),
            Identity = [item.Id],
            Pointers = [Pointers.ItemLeadLength[item.Index]],
            Actual = Quantities.Of(lead, "m"),
            Limit = Quantities.Of(needed, "m"),
            UtilisationPercent = lead > 0 ? 100 * needed / lead : null,
            Calculation = Invariant($"({route.Sum} + {slack:0.###}) / 1000 = {needed:0.###} > {lead:0.###}"),
            Candidates = Candidates(context.Survey, item, needed),
        });
    }

    // A finding is certain. A lead that is long enough for the known part of the route may be too short for all of it.
    private static void ReportMissing(RuleContext context, MountedItem item, EarthRoute route)
    {
        var carrier = item.Shelf ?? item;
        if (route.BackMm is null && item.BodyDepthMm is null)
        {
            context.ReportMissing(Pointers.ItemBodyDepth[item.Index], Missing);
        }

        if (route.BackMm is null && context.Survey.Cabinet.SpacingMm is null && carrier.Face == Face.Front)
        {
            context.ReportMissing(Pointers.Spacing, Missing);
        }

        if (route.PullMm is null)
        {
            context.ReportMissing(Invariant($"/items/{carrier.Index}/support/extensionMm"), Missing);
        }
    }

    private static IEnumerable<RemedyCandidate> Candidates(RackSurvey survey, MountedItem item, double needed)
    {
        var length = Math.Ceiling(2 * needed) / 2;
        yield return new RemedyCandidate(
            new(RemedyTitles.EarthLeadLength, ("lengthM", Quantities.RoundTo(length, 1)), ("item", item.Id)),
            survey.Description.EditItem(item.Index, i => i with { EarthLead = i.EarthLead! with { LengthM = length } }));
    }
}
