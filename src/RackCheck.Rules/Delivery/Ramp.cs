using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Rules.Loads;
using RackCheck.Survey.Limits;
using static System.FormattableString;

namespace RackCheck.Rules.Delivery;

/// <summary>Finds ramps on which the rack is close to tipping.</summary>
public sealed class Ramp : Rule
{
    /// <summary>Minimum tip angle that remains on a ramp.</summary>
    public static RuleLimit TipAngleDeg { get; } = new(
        "tipAngleDeg", "minimum tip angle that remains on a ramp", Stability.LeastTipDeg, "deg", Stability.LeastTipDeg, 45, Stricter.Higher);

    private static readonly MessageWording Defect = new(
        "delivery.ramp",
        "On the ramp of {slopePercent} % the rack is {angleDeg} degrees from tipping over its {side} edge; the minimum is {limitDeg} degrees.");

    private static readonly MissingData Missing = new(
        "delivery.ramp.missing",
        "Without every mass and its position, the tip angle on the ramp cannot be calculated.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "delivery.ramp",
        Title = "Ramp too steep for the rack",
        Severity = Severity.Warning,
        Concern = Concern.Site,
        Safety = true,
        What = "Finds ramps on the delivery route on which the tip angle of the rack, less the slope, is under 10 degrees. The rack stands on its feet or "
            + "castors, without a stabiliser and not bolted. A wall-hung cabinet is not checked.",
        Why = "The rack tips onto the people who move it.",
        Formula = "atan(b/h) - atan(slopePercent / 100) >= tipAngleDeg, b from the centre of gravity to the nearest line of feet, h its height",
        Sources = [Sources.Iec62368Tilt, Sources.Statics, Sources.TransportPractice],
        Limits = [TipAngleDeg],
        Needs =
        [
            "/site/delivery/ramps", "/site/delivery/loaded", "/cabinet/massKg", "/cabinet/heightMm", "/cabinet/base/style", "/cabinet/base/insetMm",
            "/cabinet/uprights/frontSetbackMm", "/items/*/massKg", "/items/*/position", "/items/*/body/depthMm", "/items/*/body/heightMm",
        ],
        Remedies =
        [
            "Mount heavy equipment lower.", "Deliver the cabinet empty and mount the equipment on site.", "Choose a route without steep ramps.",
        ],
        Cautions = [Cautions.Transport],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var (survey, stand) = (context.Survey, context.Survey.Mass.Stand);
        if (survey.Description.Site?.Delivery is not { Ramps: { Count: > 0 } ramps } delivery || !stand.StandsOnFloor)
        {
            return;
        }

        var steepest = Enumerable.Range(0, ramps.Count).MaxBy(i => ramps[i].SlopePercent);
        var slope = ramps[steepest].SlopePercent;
        if (slope <= 0)
        {
            return;
        }

        // An empty cabinet has its centre of gravity at the centre of its box, whatever it weighs.
        var isEmpty = delivery.Loaded == false || survey.Items.Length == 0;
        if (!isEmpty && survey.Mass.Balance is null)
        {
            MissingLoadData.ReportBalance(context, Missing);
            return;
        }

        var centre = isEmpty ? new PointMass(survey.Cabinet.Depth.DepthMm / 2, 0, stand.Heights.OverallMm / 2, 1) : survey.Mass.Balance!.Centre;
        var tip = Stability.LeastTip(stand.Feet, centre);
        var limit = context.Limit(TipAngleDeg);
        var slopeDeg = Stability.SlopeDeg(slope);
        if (Comparison.IsOver(limit, tip.Deg - slopeDeg))
        {
            Report(context, steepest, slope, slopeDeg, tip, centre, limit);
        }
    }

    private static void Report(RuleContext context, int index, double slope, double slopeDeg, TipAngle tip, PointMass centre, double limit)
    {
        var (stand, left) = (context.Survey.Mass.Stand, tip.Deg - slopeDeg);
        context.Report(new FindingDraft
        {
            Message = Defect,
            Data = [("slopePercent", slope), ("angleDeg", left), ("side", LoadText.Of(tip.Side)), ("limitDeg", limit)],
            Subject = Subjects.Delivery,
            Identity = [],
            Pointers = [SitePointers.Ramp[index]],
            Actual = Quantities.Of(left, "deg"),
            Limit = Quantities.Of(limit, "deg"),
            UtilisationPercent = left > 0 ? 100 * limit / left : null,
            Calculation = Invariant($"atan({stand.Feet.DistanceMm(tip.Side, centre):0.###} / {centre.ZMm:0.###}) = {tip.Deg:0.###}; ")
                + Invariant($"atan({slope / 100:0.######}) = {slopeDeg:0.###}; {tip.Deg:0.######} - {slopeDeg:0.######} = {left:0.###} < {limit:0.###}"),
            Candidates = LoadRemedies.OnRamp(context.Survey, Stability.SlopePercent(tip.Deg - limit)),
        });
    }
}
