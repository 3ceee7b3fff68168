using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Loads;

/// <summary>Finds heavy items so high that one person alone must not lift them there.</summary>
public sealed class HeavyHigh : Rule
{
    private static readonly RuleLimit MassKg = new("massKg", "mass from which an item is heavy", 25, "kg", 1, 25, Stricter.Lower);

    private static readonly RuleLimit HeightMm = new("heightMm", "height of its centre above the floor past which nothing heavy goes", 1400, "mm", 300, 1400, Stricter.Lower);

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "load.heavy-high",
        Title = "Heavy item lifted high",
        Severity = Severity.Warning,
        Safety = true,
        What = "Finds items of 25 kg or more above 1.4 m, and items above elbow height that are heavier than one man may lift there. Where it stays so, a lift aid or two people are needed. What is lifted lower down is not judged.",
        Why = "Who lifts it above the elbow holds it away from the back; strained backs and dropped equipment come of it.",
        Formula = "z = z0 + 44.45 (u - 1 + n/2) of its centre; above 950 mm at most 20 kg, from 1300 mm 10 kg, above 1850 mm, where the guideline has no figure, 5 kg as at arm's length",
        Sources = [Sources.HseL23, Sources.Iso7250, Sources.HeavyLowPractice, Sources.CabinetHeightPractice],
        Limits = [MassKg, HeightMm],
        Needs = ["/items/*/massKg", "/items/*/position", "/items/*/onShelf", "/items/*/body/heightMm", "/cabinet/heightMm", "/cabinet/base/heightMm"],
        Remedies = ["Mount it lower.", "Let it change places with a lighter item lower down.", "Take it out of the rack."],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var stand = context.Survey.Mass.Stand;
        var (heavyKg, highMm) = (context.Limit(MassKg), context.Limit(HeightMm));
        foreach (var item in context.Survey.Items)
        {
            if (item.Item!.MassKg is not { } kilograms)
            {
                ReportMissingMass(context, item);
            }
            else if (stand.CentreMm(item) is not { } height)
            {
                ReportMissingHeight(context, item, kilograms, stand);
            }
            else if (kilograms >= heavyKg && MassSurvey.Exceeds(height, highMm))
            {
                ReportHigh(context, item, kilograms, height, heavyKg, highMm);
            }
            else if (height > Handling.ElbowMm && MassSurvey.Exceeds(kilograms, LimitKg(height)))
            {
                ReportLift(context, item, kilograms, height, LimitKg(height));
            }
        }
    }

    // Above the reach the guideline has no figure: that at arm's length just under it is the least that it has.
    private static double LimitKg(double height) => Handling.LimitKg(height) ?? Handling.Zones[^1].ManReachKg;

    // An item that is too low to be judged is not asked for its mass.
    private static void ReportMissingMass(RuleContext context, Mounted item)
    {
        var mass = context.Survey.Mass;
        if (MassSurvey.IsToBeWeighed(item) && mass.Stand.CentreMm(item) is not <= Handling.ElbowMm)
        {
            context.Lacks(Pointers.ItemMass[item.Index], "Without the mass of an item that may be high up it cannot be said whether one person may lift it there.");
        }
    }

    private static void ReportMissingHeight(RuleContext context, Mounted item, double kilograms, CabinetStand stand)
    {
        if (kilograms > Handling.Zones[^1].ManReachKg)
        {
            context.Lacks(stand.LackingForCentre(item)!, "Without the place of a heavy item it cannot be said how high it is lifted.");
        }
    }

    private static void ReportHigh(RuleContext context, Mounted item, double kilograms, double height, double heavyKg, double highMm)
    {
        // What is just heavy is over the height alone.
        var isOver = MassSurvey.Exceeds(kilograms, heavyKg);
        context.Report(new FindingDraft
        {
            Message = "{item} weighs {massKg} kg and is lifted to {heightMm} mm, and {heavyKg} kg or more take two people or a lift aid above {highMm} mm.",
            Data = [("item", item.Id), ("massKg", kilograms), ("heightMm", height), ("heavyKg", heavyKg), ("highMm", highMm)],
            Subject = context.Survey.Cabinet.Place(item),
            Identity = [item.Id],
            Pointers = [item.Pointer],
            Actual = isOver ? Quantities.Of(kilograms, "kg") : Quantities.Millimetres(height),
            Limit = isOver ? Quantities.Of(heavyKg, "kg") : Quantities.Millimetres(highMm),
            UtilisationPercent = isOver ? 100 * kilograms / heavyKg : 100 * height / highMm,
            Calculation = Invariant($"{Height(context, item, height)} > {highMm:0.###}; {kilograms:0.###} >= {heavyKg:0.###}"),
            Cures = LoadCures.Lower(context.Survey, item),
        });
    }

    private static void ReportLift(RuleContext context, Mounted item, double kilograms, double height, double limit) => context.Report(new FindingDraft
    {
        Message = height > Handling.ReachMm
            ? "{item} weighs {massKg} kg and is lifted to {heightMm} mm, above reach, where one person handles {limitKg} kg at most; use a lift aid or two people."
            : "{item} weighs {massKg} kg and is lifted to {heightMm} mm, where one person lifts {limitKg} kg at most; use a lift aid or two people.",
        Data = [("item", item.Id), ("massKg", kilograms), ("heightMm", height), ("limitKg", limit)],
        Subject = context.Survey.Cabinet.Place(item),
        Identity = [item.Id],
        Pointers = [item.Pointer],
        Actual = Quantities.Of(kilograms, "kg"),
        Limit = Quantities.Of(limit, "kg"),
        UtilisationPercent = 100 * kilograms / limit,
        Calculation = Invariant($"{Height(context, item, height)}; {kilograms:0.###} > {limit:0.###}"),
        Cures = LoadCures.Lower(context.Survey, item),
    });

    private static string Height(RuleContext context, Mounted item, double height)
    {
        var edge = context.Survey.Mass.Stand.LowerEdgeMm;
        return Invariant($"{edge:0.###} + {height - edge:0.###} = {height:0.###}");
    }
}
