using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Earthing;

/// <summary>Finds cabinets without the earth bar that something in them asks for.</summary>
public sealed class BarMissing : Rule
{
    /// <summary>Protective conductor current of a supply past which a bar is wanted.</summary>
    public static RuleLimit HighLeakageMa { get; } = new(
        "highLeakageMa", "protective conductor current of a supply past which a bar is wanted", EarthConductors.HighIntegrityFromMa, "mA", 0.1, 1000, Stricter.Lower);

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "earthing.bar-missing",
        Title = "No earth bar",
        Severity = Severity.Error,
        Safety = true,
        What = "Finds cabinets without an earth bar where a second earth is asked for, an item has a stud for an earth lead, or a supply's protective conductor carries more than 10 mA.",
        Why = "Leads have nothing to end on: when the earth of a cord breaks, metal that people touch becomes live.",
        Formula = "a bar is wanted where a second earth is, an item has a stud, or the leakage of a supply is over highLeakageMa",
        Sources = [Sources.BondingPractice, Sources.Bs7671ProtectiveCurrent],
        Limits = [HighLeakageMa],
        Needs = ["/cabinet/earthBar", "/earthing/secondaryEarth", "/items/*/earthStud", "/items/*/power/leakageMa", "/cabinet/sidePanels"],
        Remedies = ["Fit an earth bar with a terminal to spare."],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var earth = context.Survey.Earth;
        if (earth.Bar is not null)
        {
            return;
        }

        var limit = context.Limit(HighLeakageMa);
        if (earth.WantsBar(limit))
        {
            Report(context, earth, limit);
        }
        else
        {
            // What leaks unknown may ask for one.
            MissingLeakageData.Report(context, static _ => true);
        }
    }

    private static void Report(RuleContext context, EarthSurvey earth, double limit)
    {
        var needed = earth.TerminalsNeeded;
        var (message, data, pointer) = Asking(earth, limit);
        context.Report(new FindingDraft
        {
            Message = message + ", but the cabinet has no earth bar; one with {needed} terminals is needed.",
            Data = [.. data, ("needed", needed)],
            Subject = "earth bar",
            Identity = [],
            Pointers = [Pointers.EarthBar, pointer],
            Actual = Quantities.Of(0, "terminals"),
            Limit = Quantities.Of(needed, "terminals"),
            Calculation = Invariant($"{earth.Studs.Count} + {earth.Parts.Count} + 1 = {needed} > 0"),
            Cures = Cures(context.Survey),
        });
    }

    private static (string Message, (string Name, Scalar Value)[] Data, string Pointer) Asking(EarthSurvey earth, double limit) =>
        earth.AsksSecond ? ("A second earth is asked for", [], Pointers.SecondaryEarth)
        : earth.Studs.Count > 0 ? ("{item} has a stud for an earth lead", [("item", earth.Studs[0].Id)], Pointers.ItemEarthStud[earth.Studs[0].Index])
        : ("The earth wire of supply {supply} carries {leakageMa} mA, more than {limitMa} mA",
            [("supply", earth.MostLeaking!.Id), ("leakageMa", earth.MostLeaking.LeakageMa), ("limitMa", limit)],
            Pointers.Supply[earth.MostLeaking.Index]);

    private static IEnumerable<Cure> Cures(RackSurvey survey)
    {
        var terminals = survey.Earth.TerminalsNeeded + 1;
        yield return new Cure(Invariant($"Fit an earth bar with {terminals} terminals"), EarthCures.WithBar(survey, terminals));
    }
}
