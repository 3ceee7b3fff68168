using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Loads;

/// <summary>Finds items that are too heavy for one person to lift to their height.</summary>
public sealed class HeavyHigh : Rule
{
    /// <summary>Minimum mass of a heavy item.</summary>
    public static RuleLimit MassKg { get; } = new("massKg", "minimum mass of a heavy item", 25, "kg", 1, 25, Stricter.Lower);

    /// <summary>Maximum height of the centre of a heavy item above the floor.</summary>
    public static RuleLimit HeightMm { get; } = new(
        "heightMm", "maximum height of the centre of a heavy item above the floor", 1400, "mm", 300, 1400, Stricter.Lower);

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "load.heavy-high",
        Title = "Heavy item too high for one person to lift",
        Severity = Severity.Warning,
        Concern = Concern.Site,
        Safety = true,
        What = "Finds items of 25 kg or more above 1.4 m, and items above elbow height that exceed the lifting limit for one man. Mounting "
            + "them there requires a lift aid or two people. Items below elbow height are not checked.",
        Why = "Lifting above elbow height strains the back and leads to dropped equipment.",
        Formula = "z = z0 + 44.45 (u - 1 + n/2) of its centre; above 950 mm at most 20 kg, from 1300 mm 10 kg, above 1850 mm, where the "
            + "guideline has no value, 5 kg as at arm's length",
        Sources = [Sources.HseL23, Sources.Iso7250, Sources.HeavyLowPractice, Sources.CabinetHeightPractice],
        Limits = [MassKg, HeightMm],
        Needs = ["/items/*/massKg", "/items/*/position", "/items/*/onShelf", "/items/*/body/heightMm", "/cabinet/heightMm", "/cabinet/base/heightMm"],
        Remedies = ["Mount it lower.", "Swap it and a lighter item below.", "Move it to another rack."],
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
            else if (kilograms >= heavyKg && Comparison.IsOver(height, highMm))
            {
                ReportHigh(context, item, kilograms, height, heavyKg, highMm);
            }
            else if (height > ManualHandling.ElbowMm && Comparison.IsOver(kilograms, LimitKg(height)))
            {
                ReportLift(context, item, kilograms, height, LimitKg(height));
            }
        }
    }

    // Above reach the guideline has no value. The limit at arm's length in the zone below is its lowest value.
    private static double LimitKg(double height) => ManualHandling.LimitKg(height) ?? ManualHandling.Zones[^1].ManReachKg;

    // The mass of an item below elbow height is not required.
    private static void ReportMissingMass(RuleContext context, MountedItem item)
    {
        var mass = context.Survey.Mass;
        if (MassSurvey.IsToBeWeighed(item) && mass.Stand.CentreMm(item) is not <= ManualHandling.ElbowMm)
        {
            context.ReportMissing(Pointers.ItemMass[item.Index], "Without the mass of the item, the lifting limit for one person cannot be checked.");
        }
    }

    private static void ReportMissingHeight(RuleContext context, MountedItem item, double kilograms, CabinetStand stand)
    {
        if (kilograms > ManualHandling.Zones[^1].ManReachKg)
        {
            context.ReportMissing(stand.MissingForCentre(item)!, "Without this value, the lifting height of a heavy item cannot be calculated.");
        }
    }

    private static void ReportHigh(RuleContext context, MountedItem item, double kilograms, double height, double heavyKg, double highMm)
    {
        // An item of exactly this mass exceeds the height limit only.
        var isOver = Comparison.IsOver(kilograms, heavyKg);
        context.Report(new FindingDraft
        {
            Message = "{item} weighs {massKg} kg and is lifted to {heightMm} mm. Items of {heavyKg} kg or more require a lift aid or two "
                + "people above {highMm} mm.",
            Data = [("item", item.Id), ("massKg", kilograms), ("heightMm", height), ("heavyKg", heavyKg), ("highMm", highMm)],
            Subject = context.Survey.Cabinet.Place(item),
            Identity = [item.Id],
            Pointers = [item.Pointer],
            Actual = isOver ? Quantities.Of(kilograms, "kg") : Quantities.Millimetres(height),
            Limit = isOver ? Quantities.Of(heavyKg, "kg") : Quantities.Millimetres(highMm),
            UtilisationPercent = isOver ? 100 * kilograms / heavyKg : 100 * height / highMm,
            Calculation = Invariant($"{Height(context, item, height)} > {highMm:0.###}; {kilograms:0.###} >= {heavyKg:0.###}"),
            Candidates = LoadRemedies.Lower(context.Survey, item),
        });
    }

    private static void ReportLift(RuleContext context, MountedItem item, double kilograms, double height, double limit) => context.Report(new FindingDraft
    {
        Message = height > ManualHandling.ReachMm
            ? "{item} weighs {massKg} kg and is lifted to {heightMm} mm, which is above reach. The limit for one person is {limitKg} kg; use a "
                + "lift aid or two people."
            : "{item} weighs {massKg} kg and is lifted to {heightMm} mm. The limit for one person at this height is {limitKg} kg; use a lift "
                + "aid or two people.",
        Data = [("item", item.Id), ("massKg", kilograms), ("heightMm", height), ("limitKg", limit)],
        Subject = context.Survey.Cabinet.Place(item),
        Identity = [item.Id],
        Pointers = [item.Pointer],
        Actual = Quantities.Of(kilograms, "kg"),
        Limit = Quantities.Of(limit, "kg"),
        UtilisationPercent = 100 * kilograms / limit,
        Calculation = Invariant($"{Height(context, item, height)}; {kilograms:0.###} > {limit:0.###}"),
        Candidates = LoadRemedies.Lower(context.Survey, item),
    });

    private static string Height(RuleContext context, MountedItem item, double height)
    {
        var edge = context.Survey.Mass.Stand.Heights.LowerEdgeMm;
        return Invariant($"{edge:0.###} + {height - edge:0.###} = {height:0.###}");
    }
}
