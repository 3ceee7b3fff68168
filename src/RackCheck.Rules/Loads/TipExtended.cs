using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Loads;

/// <summary>Finds racks that tip when an item is pulled out on its slides, or when they are pushed.</summary>
public sealed class TipExtended : Rule
{
    /// <summary>Minimum ratio of stabilising to overturning moment with one item pulled out.</summary>
    public static RuleLimit MomentRatio { get; } = new(
        "momentRatio", "minimum ratio of stabilising to overturning moment with one item pulled out",
        Stability.LeastPulledOutFactor, "to 1", Stability.LeastPulledOutFactor, 10, Stricter.Higher);

    /// <summary>Minimum ratio of stabilising to overturning moment with two items pulled out.</summary>
    public static RuleLimit PairRatio { get; } = new(
        "pairRatio", "minimum ratio of stabilising to overturning moment with two items pulled out", 1, "to 1", 1, 10, Stricter.Higher);

    /// <summary>Push force as a share of the weight.</summary>
    public static RuleLimit PushPercent { get; } = new(
        "pushPercent", "push force as a share of the weight", Stability.PushPercent, "%", Stability.PushPercent, 100, Stricter.Higher);

    /// <summary>Maximum push force.</summary>
    public static RuleLimit PushN { get; } = new("pushN", "maximum push force", Stability.PushN, "N", Stability.PushN, 5000, Stricter.Higher);

    /// <summary>Maximum height of the push above the floor.</summary>
    public static RuleLimit PushHeightMm { get; } = new(
        "pushHeightMm", "maximum height of the push above the floor", Stability.PushHeightMm, "mm", Stability.PushHeightMm, 5000, Stricter.Higher);

    private static readonly WordingChoice PulledOut = new(
        "load.tip-extended.pulled-out",
        "With {item} pulled out [door:past the open door ]at the {side}, the stabilising moment is {restoringNm} N m and the overturning "
            + "moment {overturningNm} N m. The ratio is {factor}; the minimum is {limit}.");

    private static readonly MessageWording Together = new(
        "load.tip-extended.together",
        "With {items:all} pulled out together, the stabilising moment is {restoringNm} N m and the overturning moment {overturningNm} N m. "
            + "The ratio is {factor}; the minimum is {limit}. No interlock is specified.");

    private static readonly MessageWording Push = new(
        "load.tip-extended.push",
        "A push of {forceN} N at a height of {heightMm} mm tips the rack over its {side} edge. The overturning moment is {overturningNm} N "
            + "m, the stabilising moment {restoringNm} N m.");

    private static readonly MissingData MissingBalance = new(
        "load.tip-extended.missing-balance",
        "Without every mass and its position, stability with pulled-out equipment or under a push cannot be checked.");

    private static readonly MissingData MissingExtension = new(
        "load.tip-extended.missing-extension",
        "Without the extension of the slides, stability with the item pulled out cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "load.tip-extended",
        Title = "Rack tips when equipment is pulled out or when pushed",
        Severity = Severity.Error,
        MilderSeverity = Severity.Warning,
        Safety = true,
        What = "Finds racks that tip when one item is fully extended on its slides past the open door, with all other items in place. The edge is the "
            + "line of feet or castors. Warnings: without an interlock, racks that tip with the two worst items out together; and racks, with all "
            + "items in place, that tip under a push of 13 % of their weight, at most 250 N, at a height of 1.5 m or at their top if lower. A "
            + "rack bolted to the floor or hung on a wall is not checked, and one joined in a row is not pushed.",
        Why = "The rack tips onto the person who pulls the item out or leans on the rack.",
        Formula = "stabilising moment m g (x - x_f) of the masses behind the front edge of support / overturning moment of the masses in front "
            + "of it >= momentRatio, with two items >= pairRatio; x_f = door depth + insetMm, castors 30 mm more; push: m g b >= F h",
        Sources = [Sources.PulledOutPractice, Sources.Iec62368Push, Sources.Statics, Sources.CastorPractice, Sources.CabinetHeightPractice],
        Limits = [MomentRatio, PairRatio, PushPercent, PushN, PushHeightMm],
        Needs =
        [
            "/cabinet/massKg", "/cabinet/heightMm", "/cabinet/base/style", "/cabinet/base/insetMm", "/cabinet/base/stabiliserMm",
            "/cabinet/uprights/frontSetbackMm", "/cabinet/frontDoor/massKg", "/cabinet/frontDoor/leaves", "/cabinet/rearDoor/massKg",
            "/cabinet/rearDoor/leaves", "/cabinet/interlock", "/cabinet/placement", "/items/*/massKg", "/items/*/position", "/items/*/body/depthMm",
            "/items/*/support/style", "/items/*/support/extensionMm", "/items/*/body/heightMm",
        ],
        Notes =
        [
            "The open door acts half a leaf in front of the cabinet. Its mass is part of the cabinet's, which acts at the centre of its box.",
            "The two items are those with the greatest mass times extension. More than two at once are a matter of working practice: a caution of the report "
                + "says to pull out one at a time.",
        ],
        Remedies =
        [
            "Fit a stabiliser at the front.",
            "Bolt it to the floor.",
            "Fit an interlock, so that one item comes out at a time.",
            "Mount the item on fixed runners.",
            "Use levelling feet instead of castors, or a wider cabinet.",
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
                MissingLoadData.ReportBalance(context, MissingBalance);
            }

            return;
        }

        ReportMissingExtensions(context);
        var ratio = context.Limit(MomentRatio);
        if (balance.Worst is { } worst && Comparison.IsOver(ratio, worst.Factor))
        {
            ReportPulled(context, worst, ratio);
        }

        var pairRatio = context.Limit(PairRatio);
        if (balance.WorstPair is { } pair && Comparison.IsOver(pairRatio, pair.Factor))
        {
            ReportPair(context, pair, pairRatio);
        }

        // The neighbours of a row hold a rack that is pushed.
        if (context.Survey.Cabinet.Source.Placement is null or Placement.Free or Placement.Wall)
        {
            CheckPush(context, mass.Stand, balance);
        }
    }

    // Only a shelf without a mass of its own gets here. The depth of all other items is known.
    private static void ReportMissingExtensions(RuleContext context)
    {
        foreach (var item in context.Survey.Items)
        {
            if (Balance.IsPulledOut(item) && Balance.ExtensionMm(item) is null)
            {
                context.ReportMissing(Pointers.ItemExtension[item.Index], MissingExtension);
            }
        }
    }

    private static void ReportPulled(RuleContext context, PulledItems worst, double ratio)
    {
        var (restoring, overturning) = (worst.Moments.RestoringNm, worst.Moments.OverturningNm);
        var (id, side) = (worst.Item.Id, CabinetFacts.FaceText(worst.Item.Face));
        context.Report(new FindingDraft
        {
            Message = PulledOut.With(worst.HasDoor ? "door" : ""),
            Data = [("item", id), ("side", side), ("restoringNm", restoring), ("overturningNm", overturning), ("factor", worst.Factor), ("limit", ratio)],
            Subject = context.Survey.Cabinet.Place(worst.Item),
            Identity = ["pulled out"],
            Pointers = [worst.Item.Pointer, Pointers.Base],
            Actual = Quantities.Of(worst.Factor, "to 1"),
            Limit = Quantities.Of(ratio, "to 1"),
            UtilisationPercent = worst.Factor > 0 ? 100 * ratio / worst.Factor : null,
            Calculation = Moments(worst, ratio),
            Candidates = TipRemedies.Hold(context.Survey, worst.Item.Face, ratio),
        });
    }

    private static void ReportPair(RuleContext context, PulledItems pair, double ratio)
    {
        context.Report(new FindingDraft
        {
            Severity = Severity.Warning,
            Message = Together,
            Data =
            [
                ("items", Names.Ids(pair.Items.Select(i => i.Id))), ("restoringNm", pair.Moments.RestoringNm), ("overturningNm", pair.Moments.OverturningNm),
                ("factor", pair.Factor), ("limit", ratio),
            ],
            Subject = Subjects.Rack,
            Identity = ["two pulled out"],
            Pointers = [Pointers.Interlock, .. pair.Items.OrderBy(i => i.Id, StringComparer.Ordinal).Select(i => i.Pointer)],
            Actual = Quantities.Of(pair.Factor, "to 1"),
            Limit = Quantities.Of(ratio, "to 1"),
            UtilisationPercent = pair.Factor > 0 ? 100 * ratio / pair.Factor : null,
            Calculation = Moments(pair, ratio),
            Candidates = TipRemedies.HoldPair(context.Survey, pair),
        });
    }

    // Stabilising and overturning moment, mass by mass, and their ratio. The masses in place count as one.
    private static string Moments(PulledItems pulled, double ratio)
    {
        var (restoring, overturning) = (pulled.Moments.RestoringNm, pulled.Moments.OverturningNm);
        PointMass[] masses = pulled.Rest is { } rest ? [rest, .. pulled.Moved] : [.. pulled.Moved];
        var behind = string.Join(" + ", masses.Where(m => m.XMm > pulled.EdgeMm).Select(m => Moment(m, pulled.EdgeMm)));
        var before = string.Join(" + ", masses.Where(m => m.XMm < pulled.EdgeMm).Select(m => Moment(m, pulled.EdgeMm)));
        return (restoring > 0 ? Invariant($"{behind} = {restoring:0.###}; ") : "")
            + Invariant($"{before} = {overturning:0.###}; {restoring:0.###} / {overturning:0.###} = {pulled.Factor:0.###} < {ratio:0.###}");
    }

    private static string Moment(PointMass mass, double edgeMm) => Invariant($"9.80665 x {mass.Kg:0.###} x {Math.Abs(mass.XMm - edgeMm) / 1000:0.########}");

    private static void CheckPush(RuleContext context, CabinetStand stand, Balance balance)
    {
        var side = stand.Area.Nearest(balance.Centre);
        var distance = stand.Area.DistanceMm(side, balance.Centre);
        var push = Stability.Push(
            balance.Centre.Kg, distance, stand.Heights.OverallMm, context.Limit(PushPercent), context.Limit(PushN), context.Limit(PushHeightMm));
        if (!Comparison.IsOver(push.OverturningNm, push.RestoringNm))
        {
            return;
        }

        context.Report(new FindingDraft
        {
            Severity = Severity.Warning,
            Message = Push,
            Data =
            [
                ("forceN", push.ForceN), ("heightMm", push.HeightMm), ("side", LoadText.Of(side)),
                ("overturningNm", push.OverturningNm), ("restoringNm", push.RestoringNm),
            ],
            Subject = Subjects.Rack,
            Identity = ["push"],
            Pointers = [Pointers.Base],
            Actual = Quantities.Of(push.OverturningNm, "N m"),
            Limit = Quantities.Of(push.RestoringNm, "N m"),
            UtilisationPercent = push.RestoringNm > 0 ? 100 / push.Factor : null,
            Calculation = Invariant($"{push.ForceN:0.######} x {push.HeightMm / 1000:0.########} = {push.OverturningNm:0.###}")
                + Invariant($" > 9.80665 x {balance.Centre.Kg:0.###} x {distance / 1000:0.########} = {push.RestoringNm:0.###}"),
            Candidates = TipRemedies.Stand(context.Survey, side),
        });
    }
}
