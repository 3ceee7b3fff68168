using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Loads;

/// <summary>Finds racks that fall when they are tilted a little.</summary>
public sealed class TipStatic : Rule
{
    private static readonly RuleLimit TipAngleDeg = new(
        "tipAngleDeg", "least angle that it may be tilted by to any side", Stability.LeastTipDeg, "deg", Stability.LeastTipDeg, 45, Stricter.Higher);

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "load.tip-static",
        Title = "Tips over too easily",
        Severity = Severity.Error,
        Safety = true,
        What = "Finds racks that fall when they are tilted by less than 10 degrees to any side, equipment in its place and doors shut. On castors the support counts 30 mm less on each side; one that is bolted down cannot tip and is not judged.",
        Why = "A rack on an uneven floor, or pushed while it is moved, falls on people.",
        Formula = "atan(b/h) >= tipAngleDeg, b from the centre of gravity to the nearest edge of support, h its height",
        Sources = [Sources.Iec62368Tilt, Sources.Statics, Sources.CastorPractice, Sources.CabinetHeightPractice],
        Limits = [TipAngleDeg],
        Needs = ["/cabinet/massKg", "/cabinet/heightMm", "/cabinet/base/style", "/cabinet/base/heightMm", "/cabinet/base/stabiliserMm", "/cabinet/uprights/frontSetbackMm", "/items/*/massKg", "/items/*/position", "/items/*/body/depthMm"],
        Remedies = ["Mount heavy equipment lower.", "Fit a stabiliser before the front.", "Take a wider cabinet.", "Bolt it to the floor.", "Take equipment out of the rack."],
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
            if (mass.IsTold && context.Survey.Items.Length > 0)
            {
                MissingLoadData.ReportBalance(context, "Without every mass and its place it cannot be said how far the rack may be tilted.");
            }

            return;
        }

        var limit = context.Limit(TipAngleDeg);
        if (MassSurvey.Exceeds(limit, balance.Tip.Deg))
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
            Message = tip.Stands
                ? "Tilted by {angleDeg} degrees the rack falls over its {side} edge, and it should stand up to {limitDeg} degrees: its centre of gravity is {distanceMm} mm inside that edge and {heightMm} mm high."
                : "The rack falls over its {side} edge by itself, at {angleDeg} degrees, and it should stand up to {limitDeg} degrees: its centre of gravity is {distanceMm} mm inside that edge and {heightMm} mm high.",
            Data = [("angleDeg", tip.Deg), ("side", LoadText.Of(tip.Side)), ("limitDeg", limit), ("distanceMm", distance), ("heightMm", height)],
            Subject = "rack",
            Identity = [],
            Pointers = [Pointers.Base],
            Actual = Quantities.Of(tip.Deg, "deg"),
            Limit = Quantities.Of(limit, "deg"),
            UtilisationPercent = tip.Stands ? 100 * limit / tip.Deg : null,
            Calculation = Invariant($"atan({distance:0.###} / {height:0.###}) = {tip.Deg:0.###} < {limit:0.###}"),
            Cures = TipCures.Stand(context.Survey, tip.Side),
        });
    }
}
