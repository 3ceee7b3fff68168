using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Layout;

/// <summary>Finds bodies that are too high for their U height.</summary>
public sealed class BodyTooHigh : Rule
{
    private static readonly MessageWording OnShelf = new(
        "layout.body-too-high.on-shelf",
        "The body of {item}, {heightMm} mm high, on its own shelf, {plateMm} mm thick, needs {neededMm} mm; {roomMm} mm is available in {heightU} U.");

    private static readonly MessageWording Alone = new(
        "layout.body-too-high.alone", "The body of {item} is {heightMm} mm high; {roomMm} mm is available in {heightU} U.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "layout.body-too-high",
        Title = "Body too high for its U height",
        Severity = Severity.Error,
        What = "Finds bodies that are higher than a panel of the same U height. An item on its own shelf also needs the thickness of the shelf.",
        Why = "The body reaches into the U position of the neighbouring item.",
        Formula = "body height + thickness of its own shelf <= n x 44.45 - 0.8; default thickness 3 mm",
        Sources = [Sources.Iec60297, Sources.Eia310, Sources.SupportPractice],
        Needs = ["/items/*/body/heightMm", "/items/*/heightU", "/items/*/support/style", "/items/*/support/thicknessMm"],
        Remedies =
        [
            "Mount it on runners instead of a shelf.",
            "Specify the U height that the body needs, at the same or the nearest free U position.",
            "Use a taller cabinet.",
            "Move it to another rack.",
        ],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        foreach (var item in context.Survey.Items)
        {
            if (item.HeightU == 0 || item.Item!.OnShelf is not null)
            {
                continue;
            }

            if (item.Item.Body?.HeightMm is not { } height)
            {
                // A panel has no body. Without a body height, the U height counts.
                continue;
            }

            // A shelf is its own plate.
            var plate = item is { SupportStyle: SupportStyle.Shelf, Category: not ItemCategory.Shelf } ? item.SupportThicknessMm : 0;
            var room = RackGeometry.PanelHeightMm(item.HeightU);
            if (!Comparison.IsOver(height + plate, room))
            {
                continue;
            }

            context.Report(new FindingDraft
            {
                Message = plate > 0 ? OnShelf : Alone,
                Data = plate > 0
                    ? [("item", item.Id), ("heightMm", height), ("plateMm", plate), ("neededMm", height + plate), ("heightU", item.HeightU), ("roomMm", room)]
                    : [("item", item.Id), ("heightMm", height), ("heightU", item.HeightU), ("roomMm", room)],
                Subject = context.Survey.Cabinet.Place(item),
                Identity = [item.Id],
                Pointers = [Pointers.ItemBodyHeight[item.Index], Pointers.Item[item.Index]],
                Actual = Quantities.Millimetres(height + plate),
                Limit = Quantities.Millimetres(room),
                UtilisationPercent = 100 * (height + plate) / room,
                Calculation = Invariant($"{item.HeightU} x {RackGeometry.UnitMm} - {RackGeometry.PanelReliefMm} = {room:0.###} < ")
                    + (plate > 0 ? Invariant($"{height + plate:0.###} = {height:0.###} + {plate:0.###}") : Invariant($"{height:0.###}")),
                Candidates = CandidatesFor(context.Survey, item, height, plate),
            });
        }
    }

    private static IEnumerable<RemedyCandidate> CandidatesFor(RackSurvey survey, MountedItem item, double height, double plate)
    {
        // On runners the body has the height of its panel to itself.
        var onRunners = plate > 0 && !Comparison.IsOver(height, RackGeometry.PanelHeightMm(item.HeightU))
            ? SupportRemedies.Fixed(survey, item).Take(1)
            : [];
        var units = RackGeometry.UnitsForBody(height + plate);
        if (units > PlaceRemedies.MostU)
        {
            return PlaceRemedies.TakeOut(survey, item) is { } takeOut ? [.. onRunners, takeOut] : onRunners;
        }

        // An unplaced item only gets the new height. A placed item also needs free U positions.
        return onRunners.Concat(item.IsPlaced
            ? PlaceRemedies.Move(survey, item, units)
            : [new RemedyBuilder(survey).SetItem(item, i => i with { HeightU = units }).Titled(
                new(RemedyTitles.ItemHeight, ("item", item.Id), ("heightU", units)))]);
    }
}
