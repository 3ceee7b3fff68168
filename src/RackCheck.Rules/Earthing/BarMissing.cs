using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Earthing;

/// <summary>Finds cabinets without a required earth bar.</summary>
public sealed class BarMissing : Rule
{
    /// <summary>Protective conductor current of a supply above which an earth bar is required.</summary>
    public static RuleLimit HighLeakageMa { get; } = new(
        "highLeakageMa", "protective conductor current of a supply above which an earth bar is required", EarthConductors.HighIntegrityFromMa, "mA", 0.1, 1000,
        Stricter.Lower);

    private static readonly MessageWording SecondEarth = new(
        "earthing.bar-missing.second-earth",
        "A second earth is specified, but the cabinet has no earth bar; {needed} terminals are needed.");

    private static readonly MessageWording Stud = new(
        "earthing.bar-missing.stud",
        "{item} has an earth stud, but the cabinet has no earth bar; {needed} terminals are needed.");

    private static readonly MessageWording Leakage = new(
        "earthing.bar-missing.leakage",
        "The protective conductor of supply {supply} carries {leakageMa} mA, above {limitMa} mA, but the cabinet has no earth bar; {needed} "
            + "terminals are needed.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "earthing.bar-missing",
        Title = "No earth bar",
        Severity = Severity.Error,
        Safety = true,
        What =
            "Finds cabinets without an earth bar where a second earth is specified, an item has an earth stud, or the protective conductor current of a "
            + "supply is above 10 mA.",
        Why = "The earth leads have no terminals. When the protective conductor of a cord breaks, exposed metal becomes live.",
        Formula = "earth bar required with a second earth, with an earth stud, or with a supply leakage above highLeakageMa",
        Sources = [Sources.BondingPractice, Sources.Bs7671ProtectiveCurrent],
        Limits = [HighLeakageMa],
        Needs =
        [
            "/cabinet/earthBar", "/earthing/secondaryEarth", "/items/*/earthStud", "/items/*/power/leakageMa", "/cabinet/sidePanels", "/connections",
        ],
        SharesWordingsOf = [typeof(MissingLeakageData)],
        Remedies = ["Fit an earth bar with a spare terminal."],
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
        if (earth.NeedsBar(limit))
        {
            Report(context, earth, limit);
        }
        else
        {
            // An unknown leakage can require a bar.
            MissingLeakageData.Report(context, static _ => true);
        }
    }

    private static void Report(RuleContext context, EarthSurvey earth, double limit)
    {
        var needed = earth.TerminalsNeeded;
        var (message, data, pointer) = Asking(earth, limit);
        context.Report(new FindingDraft
        {
            Message = message,
            Data = [.. data, ("needed", needed)],
            Subject = Subjects.EarthBar,
            Identity = [],
            Pointers = [Pointers.EarthBar, pointer],
            Actual = Quantities.Of(0, "terminals"),
            Limit = Quantities.Of(needed, "terminals"),
            Calculation = Invariant($"{earth.Studs.Count} + {earth.Parts.Count} + 1 = {needed} > 0"),
            Candidates = Candidates(context.Survey),
        });
    }

    private static (MessageWording Message, (string Name, Scalar Value)[] Data, string Pointer) Asking(EarthSurvey earth, double limit) =>
        earth.NeedsSecond ? (SecondEarth, [], Pointers.SecondaryEarth)
        : earth.Studs.Count > 0 ? (Stud, [("item", earth.Studs[0].Id)], Pointers.ItemEarthStud[earth.Studs[0].Index])
        : (Leakage,
            [("supply", earth.MostLeaking!.Id), ("leakageMa", earth.MostLeaking.LeakageMa), ("limitMa", limit)],
            Pointers.Supply[earth.MostLeaking.Index]);

    private static IEnumerable<RemedyCandidate> Candidates(RackSurvey survey)
    {
        var terminals = survey.Earth.TerminalsNeeded + 1;
        yield return new RemedyCandidate(new(RemedyTitles.EarthBar, ("terminals", terminals)), EarthRemedies.WithBar(survey, terminals));
    }
}
