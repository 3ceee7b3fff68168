using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Loads;

/// <summary>Finds racks with too small a tip angle.</summary>
public sealed class TipStatic : Rule
{
    /// <summary>Minimum tip angle to any side.</summary>
    public static RuleLimit TipAngleDeg { get; } = new(
        "tipAngleDeg", "minimum tip angle to any side", Stability.LeastTipDeg, "deg", Stability.LeastTipDeg, 45, Stricter.Higher);

    private static readonly MessageWording Stands = new(
        "load.tip-static.stands",
        "The rack tips over its {side} edge at {angleDeg} degrees; the minimum is {limitDeg} degrees. Its centre of gravity is {distanceMm} "
            + "mm inside that edge and {heightMm} mm above the floor.");

    private static readonly MessageWording Topples = new(
        "load.tip-static.topples",
        "The rack tips over its {side} edge without any tilt: tip angle {angleDeg} degrees, minimum {limitDeg} degrees. Its centre of "
            + "gravity is {distanceMm} mm outside that edge and {heightMm} mm above the floor.");

    private static readonly MissingData Missing = new("load.tip-static.missing", "Without every mass and its position, the tip angle cannot be calculated.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "load.tip-static",
        Title = "Tip angle too small",
        Severity = Severity.Error,
        Safety = true,
        What = "Finds racks that tip over when tilted by less than 10 degrees to any side, with equipment in place and doors closed. The "
            + "edges are the lines of feet, castors or plinth, not the faces of the cabinet. A rack bolted to the floor or hung on a wall is not checked.",
        Why = "A rack on an uneven floor, or pushed while it is moved, tips onto people.",
        Formula = "atan(b/h) >= tipAngleDeg, b from the centre of gravity to the nearest edge of support, h its height; edges at door depth + insetMm, "
            + "at the sides at insetMm",
        Sources = [Sources.Iec62368Tilt, Sources.Statics, Sources.CastorPractice, Sources.CabinetHeightPractice],
        Limits = [TipAngleDeg],
        Needs =
        [
            "/cabinet/massKg", "/cabinet/heightMm", "/cabinet/base/style", "/cabinet/base/heightMm", "/cabinet/base/insetMm",
            "/cabinet/base/stabiliserMm", "/cabinet/uprights/frontSetbackMm", "/items/*/massKg", "/items/*/position", "/items/*/body/depthMm",
            "/items/*/body/heightMm", "/cabinet/rearDoor/depthMm", "/cabinet/frontDoor/depthMm",
        ],
        Remedies =
        [
            "Mount heavy equipment lower.",
            "Fit a stabiliser at the front.",
            "Use a wider cabinet.",
            "Bolt it to the floor.",
            "Move equipment to another rack.",
        ],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var mass = context.Survey.Mass;
        if (!mass.Stand.CanTip)
        {
            return;
        }

        if (mass.Balance is not { } balance)
        {
            if (context.Survey.Items.Length > 0)
            {
                MissingLoadData.ReportBalance(context, Missing);
            }

            return;
        }

        var limit = context.Limit(TipAngleDeg);
        if (Comparison.IsOver(limit, balance.Tip.Deg))
        {
            Report(context, mass.Stand, balance, limit);
        }
    }

    private static void Report(RuleContext context, CabinetStand stand, Balance balance, double limit)
    {
        var (tip, height) = (balance.Tip, balance.Centre.ZMm);
        var distance = stand.Area.DistanceMm(tip.Side, balance.Centre);
        context.Report(new FindingDraft
        {
            Message = tip.Stands ? Stands : Topples,
            Data = [("angleDeg", tip.Deg), ("side", LoadText.Of(tip.Side)), ("limitDeg", limit), ("distanceMm", Math.Abs(distance)), ("heightMm", height)],
            Subject = Subjects.Rack,
            Identity = [],
            Pointers = [Pointers.Base],
            Actual = Quantities.Of(tip.Deg, "deg"),
            Limit = Quantities.Of(limit, "deg"),
            UtilisationPercent = tip.Stands ? 100 * limit / tip.Deg : null,
            Calculation = Invariant($"atan({distance:0.###} / {height:0.###}) = {tip.Deg:0.###} < {limit:0.###}"),
            Candidates = TipRemedies.Stand(context.Survey, tip.Side),
        });
    }
}
