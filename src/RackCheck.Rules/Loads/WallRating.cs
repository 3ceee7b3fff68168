using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using static System.FormattableString;

namespace RackCheck.Rules.Loads;

/// <summary>Finds wall-hung cabinets that exceed their wall load.</summary>
public sealed class WallRating : Rule
{
    private static readonly WordingChoice Defect = new(
        "load.wall-rating",
        "Cabinet and equipment weigh [at-least:at least ]{massKg} kg; the cabinet is rated for {limitKg} kg on the wall.");

    private static readonly MissingData MissingTotal = new("load.wall-rating.missing-total", "Without every mass, the load on the wall cannot be checked.");

    private static readonly MissingData MissingWallLoad = new(
        "load.wall-rating.missing-wall-load",
        "Without the wall load of the cabinet, its mass on the wall cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "load.wall-rating",
        Title = "Wall-hung cabinet too heavy",
        Severity = Severity.Error,
        Concern = Concern.Site,
        Safety = true,
        What = "Finds wall-hung cabinets that are, with their equipment, heavier than the maximum mass on the wall. Whether the wall carries it is for the "
            + "person responsible for the building.",
        Why = "The brackets or the wall fixings fail, and the cabinet falls.",
        Formula = "cabinet + sum of massKg <= wallLoadKg",
        Sources = [Sources.AnchoragePractice, Sources.RatingPractice],
        Needs = ["/cabinet/base/style", "/cabinet/wallLoadKg", "/cabinet/massKg", "/items/*/massKg"],
        Remedies = ["Move equipment to another rack.", "Use a floor-standing cabinet."],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var mass = context.Survey.Mass;
        if (mass.Stand.StandsOnFloor)
        {
            return;
        }

        if (context.Survey.Cabinet.Source.WallLoadKg is not { } limit)
        {
            context.ReportMissing(Pointers.WallLoad, MissingWallLoad);
            return;
        }

        MissingLoadData.ReportTotal(context, MissingTotal);
        if (Comparison.IsOver(mass.KnownTotalKg, limit))
        {
            context.Report(new FindingDraft
            {
                Message = Defect.With(mass.IsTotalKnown ? "" : "at-least"),
                Data = [("massKg", mass.KnownTotalKg), ("limitKg", limit)],
                Subject = Subjects.Wall,
                Identity = [],
                Pointers = [Pointers.WallLoad],
                Actual = Quantities.Of(mass.KnownTotalKg, "kg"),
                Limit = Quantities.Of(limit, "kg"),
                UtilisationPercent = 100 * mass.KnownTotalKg / limit,
                Calculation = LoadText.Sum(context.Survey.Items, context.Survey.Cabinet.Source.MassKg)
                    + Invariant($" = {mass.KnownTotalKg:0.###} > {limit:0.###}"),
                Candidates = LoadRemedies.OnWall(context.Survey, limit),
            });
        }
    }
}
