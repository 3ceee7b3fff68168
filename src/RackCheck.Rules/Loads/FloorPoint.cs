using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Loads;

/// <summary>Finds racks whose maximum foot load exceeds the point load rating of the floor.</summary>
public sealed class FloorPoint : Rule
{
    private static readonly MessageWording Known = new(
        "load.floor-point.known",
        "The maximum foot load is {footKn} kN at a total mass of {massKg} kg; the floor is rated for a point load of {limitKn} kN.");

    private static readonly MessageWording AtLeast = new(
        "load.floor-point.at-least",
        "The maximum foot load is at least {footKn} kN, a quarter of {massKg} kg; the floor is rated for a point load of {limitKn} kN.");

    private static readonly MissingData MissingBalance = new(
        "load.floor-point.missing-balance",
        "Without every mass and its position, the maximum foot load cannot be calculated.");

    private static readonly MissingData MissingFloorPoint = new(
        "load.floor-point.missing-floor-point",
        "Without the point load rating of the floor, the maximum foot load cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "load.floor-point",
        Title = "Maximum foot load too high for the floor",
        Severity = Severity.Error,
        Concern = Concern.Site,
        Safety = true,
        What = "Finds racks whose maximum foot load, calculated from the centre of gravity, exceeds the point load rating of the floor. A "
            + "plinth counts as four feet at its corners. A wall-hung cabinet is not checked. Without all positions, a quarter of "
            + "the mass is checked, which is the minimum for the most loaded foot.",
        Why = "The foot breaks through the panel of a raised floor.",
        Formula = "F = (W/4)(1 + 2 ex/a)(1 + 2 ey/b) <= pointKn, a and b between the feet, ex and ey from the centre between them; feet at door depth + "
            + "insetMm",
        Sources = [Sources.Statics, Sources.En12825, Sources.FloorFactorPractice, Sources.CastorPractice],
        Needs =
        [
            "/items/*/massKg", "/items/*/position", "/items/*/body/depthMm", "/cabinet/massKg", "/cabinet/widthMm", "/cabinet/depthMm",
            "/cabinet/base/style", "/cabinet/base/insetMm", "/site/floor/pointKn", "/items/*/body/heightMm", "/cabinet/rearDoor/depthMm",
            "/cabinet/frontDoor/depthMm",
        ],
        Notes =
        [
            "Four feet are statically indeterminate by one. The load on a foot is the product of the two lever ratios, which is above the value of a "
                + "rigid frame.",
        ],
        Remedies =
        [
            "Move equipment to another rack.",
            "Have the person responsible for the building approve a stronger floor or load-spreading plates, and specify the resulting rating.",
        ],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var mass = context.Survey.Mass;
        if (!mass.Stand.StandsOnFloor)
        {
            return;
        }

        if (context.Survey.Description.Site?.Floor?.PointKn is not { } limit)
        {
            context.ReportMissing(Pointers.FloorPoint, MissingFloorPoint);
            return;
        }

        if (mass.Balance is null)
        {
            MissingLoadData.ReportBalance(context, MissingBalance);
        }

        var quarter = Gravity.WeightN(mass.KnownTotalKg) / 4000;
        var foot = mass.Balance?.Feet.GreatestKn ?? quarter;
        if (Comparison.IsOver(foot, limit))
        {
            Report(context, mass, foot, limit);
        }
    }

    private static void Report(RuleContext context, MassSurvey mass, double foot, double limit)
    {
        var isKnown = mass.Balance is not null;
        context.Report(new FindingDraft
        {
            Message = isKnown ? Known : AtLeast,
            Data = [("footKn", foot), ("massKg", mass.KnownTotalKg), ("limitKn", limit)],
            Subject = Subjects.Floor,
            Identity = [],
            Pointers = [Pointers.FloorPoint],
            Actual = Quantities.Of(foot, "kN"),
            Limit = Quantities.Of(limit, "kN"),
            UtilisationPercent = limit > 0 ? 100 * foot / limit : null,
            Calculation = Invariant($"{mass.KnownTotalKg:0.###} x 9.80665 / 4000{Levers(mass)} = {foot:0.###} > {limit:0.###}"),
            Candidates = LoadRemedies.Unburden(context.Survey, limit),
        });
    }

    // All masses act at the centre of the width.
    private static string Levers(MassSurvey mass)
    {
        if (mass.Balance is not { } balance)
        {
            return "";
        }

        var feet = mass.Stand.Feet;
        return Invariant($" x (1 + 2 x {Math.Abs(balance.Centre.XMm - ((feet.FrontMm + feet.RearMm) / 2)):0.###} / {feet.DepthMm:0.###})");
    }
}
