using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Earthing;

/// <summary>Finds earth leads that do not reach from an item's stud to the bar.</summary>
public sealed class LeadLength : Rule
{
    /// <summary>Slack that a lead keeps.</summary>
    public static RuleLimit SlackMm { get; } = new("slackMm", "slack that a lead keeps", 200, "mm", 0, 2000, Stricter.Higher);

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "earthing.lead-length",
        Title = "Earth lead too short",
        Severity = Severity.Warning,
        What = "Finds earth leads shorter than the way from the item's stud to the earth bar at the foot of the cabinet, behind, with slack and with what slides pull out.",
        Why = "The lead does not reach, or is torn off when the item is pulled out.",
        Formula = "down to unit 1 + opening / 2 + back of the body to the rear uprights + extension of slides + slackMm",
        Sources = [Sources.EarthRoutePractice, Sources.Iec60297],
        Limits = [SlackMm],
        Needs =
        [
            "/items/*/earthLead/lengthM", "/items/*/position", "/items/*/heightU", "/items/*/body/depthMm", "/items/*/support/style", "/items/*/support/extensionMm",
            "/cabinet/uprights/spacingMm", "/cabinet/uprights/openingMm",
        ],
        Remedies = ["Take a longer lead."],
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
                context.Lacks(Pointers.ItemLeadLength[item.Index], "Without the length of an earth lead it cannot be said whether it reaches the bar.");
            }

            if (route is null)
            {
                // What is no 19-inch unit and stands on no shelf stands nowhere, whatever position it has of its own; a rule on layout says so.
                if ((item.Shelf ?? item).Item!.Position is not null)
                {
                    continue;
                }

                context.Lacks((item.Shelf ?? item).PositionPointer, "Without the place of an item it cannot be said whether its earth lead reaches the bar.");
            }
            else if (length is { } lead)
            {
                Judge(context, item, route, lead, slack);
            }
        }
    }

    private static void Judge(RuleContext context, Mounted item, EarthRoute route, double lead, double slack)
    {
        var needed = Quantities.Round((route.LengthMm + slack) / 1000);
        if (Quantities.Round(lead) >= needed)
        {
            ReportMissing(context, item, route);
            return;
        }

        context.Report(new FindingDraft
        {
            Message = "The earth lead of {item} is {lengthM} m long; its way to the earth bar takes {neededM} m with some slack.",
            Data = [("item", item.Id), ("lengthM", lead), ("neededM", needed)],
            Subject = context.Survey.Cabinet.Place(item),
            Identity = [item.Id],
            Pointers = [Pointers.ItemLeadLength[item.Index]],
            Actual = Quantities.Of(lead, "m"),
            Limit = Quantities.Of(needed, "m"),
            UtilisationPercent = lead > 0 ? 100 * needed / lead : null,
            Calculation = Invariant($"({route.Sum} + {slack:0.###}) / 1000 = {needed:0.###} > {lead:0.###}"),
            Cures = Cures(context.Survey, item, needed),
        });
    }

    // What is found is sure; a lead that does for the part of the way that is known may not for all of it.
    private static void ReportMissing(RuleContext context, Mounted item, EarthRoute route)
    {
        const string Message = "Without this part of its way it cannot be said whether an earth lead reaches the bar.";
        var carrier = item.Shelf ?? item;
        if (route.BackMm is null && item.BodyDepthMm is null)
        {
            context.Lacks(Pointers.ItemBodyDepth[item.Index], Message);
        }

        if (route.BackMm is null && context.Survey.Cabinet.SpacingMm is null && carrier.Face == Face.Front)
        {
            context.Lacks(Pointers.Spacing, Message);
        }

        if (route.PullMm is null)
        {
            context.Lacks(Invariant($"/items/{carrier.Index}/support/extensionMm"), Message);
        }
    }

    private static IEnumerable<Cure> Cures(RackSurvey survey, Mounted item, double needed)
    {
        var length = Math.Ceiling(2 * needed) / 2;
        yield return new Cure(
            Invariant($"Take an earth lead {length:0.#} m long for {item.Id}"),
            survey.Description.EditItem(item.Index, i => i with { EarthLead = i.EarthLead! with { LengthM = length } }));
    }
}
