using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Delivery;

/// <summary>Finds lifts that are too small for the rack on its pallet, or whose rated load is below the gross mass.</summary>
public sealed class Lift : Rule
{
    private const string LiftPointer = SitePointers.Delivery + "/lift";

    /// <summary>Minimum clearance in the lift car, in each direction.</summary>
    public static RuleLimit ClearanceMm { get; } = new(
        "clearanceMm", "minimum clearance in the lift car, in each direction", DeliveryRoute.ClearanceMm, "mm", 0, 300, Stricter.Higher);

    private static readonly WordingChoice Size = new(
        "delivery.lift.size",
        "The rack [pallet:on its pallet ]needs {neededMm} mm for its [height:height|shorter-side:shorter side|longer side]; the lift car has "
            + "{liftMm} mm.");

    private static readonly WordingChoice Mass = new(
        "delivery.lift.mass",
        "The lift is rated for {ratedKg} kg; [empty:cabinet and pallet|cabinet, equipment and pallet] weigh [at-least:at least ]{grossKg} kg.");

    private static readonly MissingData Missing = new("delivery.lift.missing", "Without this value, the lift cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "delivery.lift",
        Title = "Lift car too small or lift overloaded",
        Severity = Severity.Error,
        Concern = Concern.Site,
        Safety = true,
        What = "Finds lifts whose clear car size is smaller than the rack on its pallet plus 20 mm in each direction, or whose rated load is "
            + "below the mass of rack and pallet.",
        Why = "An overloaded lift does not stop at floor level. A rack that does not fit into the lift stays on the wrong floor.",
        Formula = "shorter side, longer side and height + clearanceMm within the car; cabinet + equipment (unless delivered empty) + pallet <= rated load",
        Sources = [Sources.DeliveryPractice, Sources.En13698, Sources.Geometry],
        Limits = [ClearanceMm],
        Needs =
        [
            "/site/delivery/lift", "/cabinet/widthMm", "/cabinet/depthMm", "/cabinet/heightMm", "/cabinet/massKg", "/items/*/massKg",
            "/site/delivery/palletKg", "/site/delivery/palletHeightMm", "/site/delivery/loaded",
        ],
        SharesWordingsOf = [typeof(GrossMass)],
        Remedies =
        [
            "Deliver it without the pallet.",
            "Use a smaller cabinet.",
            "Deliver the cabinet empty, or transport single items separately, and mount them on site.",
            "Choose another delivery route.",
        ],
        Cautions = [Cautions.Transport],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        if (context.Survey.Route is not { Source.Lift: { } lift } route)
        {
            return;
        }

        var clearance = context.Limit(ClearanceMm);
        if (Tightest(lift, route.OnPallet, clearance, route.HeightIsKnown) is { } tight)
        {
            ReportSize(context, lift, tight, clearance);
        }
        else
        {
            ReportMissingSize(context, lift, route);
        }

        if (lift.RatedKg is { } rated && route.KnownKg > rated)
        {
            ReportMass(context, route, rated);
        }
        else if (lift.RatedKg is null)
        {
            context.ReportMissing(LiftPointer + "/ratedKg", Missing);
        }
        else
        {
            GrossMass.ReportMissing(context);
        }
    }

    // A car dimension that is not specified counts as unlimited.
    private static Tight? Tightest(Model.Lift lift, TransportSize size, double clearance, bool heightIsKnown)
    {
        double width = lift.WidthMm ?? double.PositiveInfinity, depth = lift.DepthMm ?? double.PositiveInfinity;
        var height = lift.HeightMm ?? double.PositiveInfinity;
        var (narrow, narrowName) = width <= depth ? (width, "widthMm") : (depth, "depthMm");
        var (wide, wideName) = width <= depth ? (depth, "depthMm") : (width, "widthMm");
        return heightIsKnown && IsOver(size.HeightMm, height) ? new Tight("height", size.HeightMm, height, LiftPointer + "/heightMm")
            : IsOver(size.ShortMm, narrow) ? new Tight("shorter-side", size.ShortMm, narrow, LiftPointer + "/" + narrowName)
            : IsOver(size.LongMm, wide) ? new Tight("longer-side", size.LongMm, wide, LiftPointer + "/" + wideName)
            : null;

        bool IsOver(double mm, double limitMm) => Comparison.IsOver(mm + clearance, limitMm);
    }

    private static void ReportMissingSize(RuleContext context, Model.Lift lift, RouteSurvey route)
    {
        foreach (var (value, member) in new[] { (lift.WidthMm, "/widthMm"), (lift.DepthMm, "/depthMm"), (lift.HeightMm, "/heightMm") })
        {
            if (value is null)
            {
                context.ReportMissing(LiftPointer + member, Missing);
            }
        }

        if (!route.HeightIsKnown)
        {
            context.ReportMissing(Pointers.CabinetHeight, Missing);
        }
    }

    private static void ReportSize(RuleContext context, Model.Lift lift, Tight tight, double clearance)
    {
        var survey = context.Survey;
        var route = survey.Route!;
        context.Report(new FindingDraft
        {
            Message = Size.With(route.HasPallet ? "pallet" : "", tight.Side),
            Data = [("neededMm", tight.HaveMm + clearance), ("liftMm", tight.LimitMm)],
            Subject = Subjects.Lift,
            Identity = ["size"],
            Pointers = [tight.Pointer, tight.Side switch
            {
                "height" => Pointers.CabinetHeight,
                "shorter-side" => CabinetSides.Short(survey.Cabinet),
                _ => CabinetSides.Long(survey.Cabinet),
            }],
            Actual = Quantities.Millimetres(tight.HaveMm + clearance),
            Limit = Quantities.Millimetres(tight.LimitMm),
            UtilisationPercent = 100 * (tight.HaveMm + clearance) / tight.LimitMm,
            Calculation = Invariant($"{tight.HaveMm:0.###} + {clearance:0.###} = {tight.HaveMm + clearance:0.###} > {tight.LimitMm:0.###}"),
            Candidates = DeliveryRemedies.Smaller(survey, s => Tightest(lift, s, clearance, route.HeightIsKnown) is null).Append(WithoutLift(survey)),
        });
    }

    private static void ReportMass(RuleContext context, RouteSurvey route, double rated)
    {
        var survey = context.Survey;
        context.Report(new FindingDraft
        {
            Message = Mass.With(route.IsLoaded ? "" : "empty", route.MassIsKnown ? "" : "at-least"),
            Data = [("ratedKg", rated), ("grossKg", route.KnownKg)],
            Subject = Subjects.Lift,
            Identity = ["mass"],
            Pointers = [LiftPointer + "/ratedKg", GrossMass.Heaviest(survey)],
            Actual = Quantities.Of(route.KnownKg, "kg"),
            Limit = Quantities.Of(rated, "kg"),
            UtilisationPercent = rated > 0 ? 100 * route.KnownKg / rated : null,
            Calculation = GrossMass.Text(survey, rated),
            Candidates = DeliveryRemedies.Lighter(survey, rated).Append(WithoutLift(survey)),
        });
    }

    private static RemedyCandidate WithoutLift(RackSurvey survey) =>
        DeliveryRemedies.OtherRoute(survey, new(RemedyTitles.Route.With("lift")), static d => d with { Lift = null });

    private sealed record Tight(string Side, double HaveMm, double LimitMm, string Pointer);
}
