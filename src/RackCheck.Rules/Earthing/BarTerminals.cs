using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Earthing;

/// <summary>Finds earth bars with too few terminals.</summary>
public sealed class BarTerminals : Rule
{
    /// <summary>Spare terminals.</summary>
    public static RuleLimit SpareTerminals { get; } = new("spareTerminals", "spare terminals", 1, "terminals", 0, 20, Stricter.Higher);

    private static readonly MessageWording Short = new(
        "earthing.bar-terminals.short",
        "The earth bar has {fitted} terminals and needs {needed}: {studs} for studs, {parts} for cabinet parts and one for the main earth conductor.");

    private static readonly MessageWording Spare = new(
        "earthing.bar-terminals.spare",
        "The earth bar has {fitted} terminals and needs {needed}; spare terminals: {spare}, recommended: {recommended}.");

    private static readonly MissingData Missing = new(
        "earthing.bar-terminals.missing",
        "The number of terminals of the earth bar is missing, so its capacity cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "earthing.bar-terminals",
        Title = "Too few terminals on the earth bar",
        Severity = Severity.Error,
        MilderSeverity = Severity.Advice,
        Safety = true,
        What =
            "Finds earth bars with fewer terminals than earth studs, cabinet parts to be bonded and the main earth conductor together. A bar without a spare "
            + "terminal gives advice.",
        Why = "Two leads under one screw work loose, and removing one lead interrupts the earth of the other.",
        Formula = "studs + parts to be bonded + 1 <= terminals; parts: frame, each door, side panels, a vented roof with fans",
        Sources = [Sources.BondingPractice],
        Limits = [SpareTerminals],
        Needs =
        [
            "/cabinet/earthBar/terminals", "/items/*/earthStud", "/cabinet/frontDoor/style", "/cabinet/rearDoor/style", "/cabinet/sidePanels",
            "/cabinet/roof/style", "/cooling/roofFans",
        ],
        Remedies = ["Fit an earth bar with more terminals."],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var earth = context.Survey.Earth;
        if (earth.Bar is not { } bar)
        {
            return;
        }

        if (bar.Terminals is not { } fitted)
        {
            context.ReportMissing(Pointers.EarthBarTerminals, Missing);
            return;
        }

        var needed = earth.TerminalsNeeded;
        var spare = context.Limit(SpareTerminals);
        if (fitted - needed >= spare)
        {
            return;
        }

        var isShort = fitted < needed;
        var sum = Invariant($"{earth.Studs.Count} + {earth.Parts.Count} + 1 = {needed}");
        context.Report(new FindingDraft
        {
            Message = isShort ? Short : Spare,
            Data = isShort
                ? [("fitted", fitted), ("needed", needed), ("studs", earth.Studs.Count), ("parts", earth.Parts.Count)]
                : [("fitted", fitted), ("needed", needed), ("spare", fitted - needed), ("recommended", spare)],
            Subject = Subjects.EarthBar,
            Identity = [],
            Pointers = [Pointers.EarthBarTerminals],
            Severity = isShort ? Severity.Error : Severity.Advice,
            Actual = Quantities.Of(isShort ? fitted : fitted - needed, "terminals"),
            Limit = Quantities.Of(isShort ? needed : spare, "terminals"),
            UtilisationPercent = fitted > 0 ? 100.0 * needed / fitted : null,
            Calculation = isShort ? Invariant($"{sum} > {fitted}") : Invariant($"{sum}; {fitted} - {needed} = {fitted - needed} < {spare:0.###}"),
            Candidates = Candidates(context.Survey, needed + (int)Math.Ceiling(spare)),
        });
    }

    private static IEnumerable<RemedyCandidate> Candidates(RackSurvey survey, int terminals)
    {
        yield return new RemedyCandidate(new(RemedyTitles.EarthBar, ("terminals", terminals)), EarthRemedies.WithBar(survey, terminals));
    }
}
