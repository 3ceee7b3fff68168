using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds sites that are colder than an item may start at.</summary>
public sealed class TooCold : Rule
{
    private static readonly MessageWording Given = new("cooling.too-cold.given", "The room falls to {coldestC} C; {item} needs at least {limitC} C.");

    private static readonly MessageWording OfClass = new(
        "cooling.too-cold.of-class",
        "The room falls to {coldestC} C; equipment of the class of {item} needs at least {limitC} C. Its own minimum is not given.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.too-cold",
        Title = "Room too cold for an item to start",
        Severity = Severity.Warning,
        MilderSeverity = Severity.Advice,
        Concern = Concern.Site,
        What =
            "Finds items whose minimum inlet temperature is above the lowest temperature of the room. Each item has its own finding. Where the minimum is not "
            + "given, that of the item's class is used, and the finding is advice.",
        Why = "After a power cut the equipment starts cold: disks, displays and batteries fail, and moisture condenses on cold boards.",
        Formula = "ambientMinC >= minInletC; default by maxInletC: up to 32 C (A1) 15 C, up to 35 C (A2) 10 C, else 5 C",
        Sources = [Sources.AshraeTc99],
        Needs = ["/site/ambientMinC", "/items/*/minInletC", "/items/*/maxInletC", "/items/*/heatW", "/items/*/power/ratedW"],
        Notes = ["Without ambientMinC the room is taken to be heated."],
        Remedies = ["Heat the room or the cabinet.", "Use equipment that starts at a lower temperature."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        if (context.Survey.Description.Site?.AmbientMinC is not { } coldest)
        {
            return;
        }

        foreach (var item in context.Survey.Items)
        {
            var own = item.Item!.MinInletC;
            if (own is null && HeatSurvey.HeatOf(item) is 0)
            {
                continue;
            }

            var limit = own ?? (item.Item.MaxInletC is { } max ? InletLimits.ClassOf(max).LeastC : InletLimits.Classes[^1].LeastC);
            if (Comparison.IsOver(limit, coldest))
            {
                Report(context, item, coldest, limit);
            }
        }
    }

    private static void Report(RuleContext context, MountedItem item, double coldest, double limit)
    {
        var isGiven = item.Item!.MinInletC is not null;
        context.Report(new FindingDraft
        {
            Message = isGiven ? Given : OfClass,
            Data = [("coldestC", coldest), ("item", item.Id), ("limitC", limit)],
            Severity = isGiven ? null : Severity.Advice,
            Subject = context.Survey.Cabinet.Place(item),
            Identity = [item.Id],
            Pointers = ["/site/ambientMinC", isGiven ? $"{item.Pointer}/minInletC" : item.Pointer],
            Actual = Quantities.Of(coldest, "C"),
            Limit = Quantities.Of(limit, "C"),
            Calculation = Invariant($"{coldest:0.###} < {limit:0.###}"),
            Candidates = RoomAirRemedies.HeatRoom(context.Survey, limit),
        });
    }
}
