using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Layout;

/// <summary>Finds racks with too little spare space.</summary>
public sealed class Reserve : Rule
{
    /// <summary>Minimum share of free U positions.</summary>
    public static RuleLimit ReservePercent { get; } = new(
        "reservePercent", "minimum share of free U positions", 10, "%", 0, 100, Stricter.Higher);

    private static readonly MessageWording Defect = new(
        "layout.reserve", "{unitsFree} of {unitsTotal} U are free; a reserve of {percent} % requires {needed} U.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "layout.reserve",
        Title = "Spare space below the reserve",
        Severity = Severity.Advice,
        What = "Finds racks with fewer free U positions than the reserve requires. A U position behind a blanking panel is free.",
        Why = "Test systems grow. Without spare space, the next instrument needs another cabinet.",
        Formula = "free U >= reservePercent / 100 x U height of the cabinet",
        Sources = [Sources.ReservePractice],
        Limits = [ReservePercent],
        Needs = ["/cabinet/heightU", "/items/*/position", "/items/*/heightU", "/items/*/body/heightMm", "/pdus/*/mounting", "/pdus/*/position"],
        Notes =
        [
            "Blanking panels leave their U positions free, so closing a gap does not use up the reserve.",
        ],
        Remedies = ["Use a taller cabinet."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var space = context.Survey.Occupancy.Figures;
        var percent = context.Limit(ReservePercent);
        var needed = percent / 100 * space.UnitsTotal;
        if (!Comparison.IsOver(needed, space.UnitsFree))
        {
            return;
        }

        context.Report(new FindingDraft
        {
            Message = Defect,
            Data = [("unitsFree", space.UnitsFree), ("unitsTotal", space.UnitsTotal), ("percent", percent), ("needed", needed)],
            Subject = Subjects.Cabinet,
            Identity = [],
            Pointers = [Pointers.CabinetHeightU],
            Actual = Quantities.Units(space.UnitsFree),
            Limit = Quantities.Units(needed),
            Calculation = Invariant($"{percent:0.###} / 100 x {space.UnitsTotal} = {needed:0.###} > {space.UnitsFree}"),
            Candidates = CandidatesFor(context.Survey, percent),
        });
    }

    private static List<RemedyCandidate> CandidatesFor(RackSurvey survey, double percent)
    {
        foreach (var roof in CabinetSizes.HeightsU)
        {
            // Items now above the top U position occupy U positions of the taller cabinet.
            var free = roof - survey.Occupancy.UnitsUsedUpTo(roof);
            if (roof > survey.Cabinet.HeightU && !Comparison.IsOver(percent / 100 * roof, free))
            {
                return [new RemedyBuilder(survey).Raise(roof).Titled(RemedyTitles.High(roof))];
            }
        }

        return [];
    }
}
