using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Layout;

/// <summary>Finds bodies that do not fit between the uprights or between the slides.</summary>
public sealed class BodyTooWide : Rule
{
    // The thinnest slides on the market; common practice, no source.
    private const double LeastSlideMm = 3;

    private static readonly MessageWording Thickness = new(
        "layout.body-too-wide.slide-thickness",
        "The body of {item} is {widthMm} mm wide; between slides of the default thickness there are {roomMm} mm. Its slides must be no "
            + "thicker than {thicknessMm} mm each.");

    private static readonly MessageWording Slides = new(
        "layout.body-too-wide.slides",
        "The body of {item} is {widthMm} mm wide; the space between its slides is {roomMm} mm.");

    private static readonly MessageWording Opening = new(
        "layout.body-too-wide.opening",
        "The body of {item} is {widthMm} mm wide; the opening between the uprights is {roomMm} mm.");

    private static readonly MissingData MissingBodyWidth = new(
        "layout.body-too-wide.missing-body-width",
        "Without the body width, the fit between the uprights cannot be checked.");

    private static readonly MissingData MissingSupportStyle = new(
        "layout.body-too-wide.missing-support-style",
        "The body fits between the uprights but not between slide rails, and the support style is not specified.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "layout.body-too-wide",
        Title = "Body too wide for the opening",
        Severity = Severity.Error,
        MilderSeverity = Severity.Warning,
        What = "Finds bodies that are wider than the opening between the uprights. On slides, the limit is the opening less two slide thicknesses. With "
            + "slides of unknown thickness, a body that is narrower than the opening is a warning that says how thin the slides must be.",
        Why = "The body does not fit between the uprights.",
        Formula = "body width <= opening; on slides: body width <= opening - 2 x slide thickness",
        Sources = [Sources.Iec60297, Sources.SupportPractice],
        Needs = ["/items/*/body/widthMm", "/items/*/support/style", "/items/*/support/thicknessMm", "/cabinet/uprights/openingMm"],
        Notes = ["A console drawer comes with its slides: they are inside its width unless their thickness is given."],
        Remedies = ["Use slides that are thin enough.", "Fit chassis runners instead of slide rails.", "Move it to another rack."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var opening = context.Survey.Cabinet.OpeningMm;
        foreach (var item in context.Survey.Items)
        {
            // An item on a shelf is checked together with the rest of the shelf load. A blanking panel has no body.
            if (item.HeightU == 0 || item.Item!.OnShelf is not null || item.Category == ItemCategory.BlankingPanel)
            {
                continue;
            }

            if (item.Item.Body?.WidthMm is not { } width)
            {
                if (item.Category == ItemCategory.Shelf)
                {
                    // A shelf is made to fit between the uprights.
                    continue;
                }

                context.ReportMissing(Pointers.ItemBodyWidth[item.Index], MissingBodyWidth);
                continue;
            }

            // A cable manager has no body on slides: it is screwed to the uprights by its panel.
            if (item.SupportStyle is null && item.Category is not (ItemCategory.KeyboardDrawer or ItemCategory.CableManager)
                && width <= opening && width > opening - (2 * Allowances.SlideThicknessMm))
            {
                context.ReportMissing(Pointers.ItemSupportStyle[item.Index], MissingSupportStyle);
            }

            var onSlides = item.SupportStyle == SupportStyle.Slides;
            var room = onSlides ? opening - (2 * item.SupportThicknessMm) : opening;
            if (!Comparison.IsOver(width, room))
            {
                continue;
            }

            // Thinner slides exist than the default; whoever chooses them has to know the limit.
            var thinMm = Quantities.Round((opening - width) / 2);
            var isThickness = onSlides && item.Item.Support!.ThicknessMm is null && thinMm > 0;
            context.Report(new FindingDraft
            {
                Severity = isThickness ? Severity.Warning : Severity.Error,
                Message = isThickness
                    ? Thickness
                    : onSlides
                        ? Slides
                        : Opening,
                Data = isThickness
                    ? [("item", item.Id), ("widthMm", width), ("roomMm", room), ("thicknessMm", thinMm)]
                    : [("item", item.Id), ("widthMm", width), ("roomMm", room)],
                Subject = context.Survey.Cabinet.Place(item),
                Identity = [item.Id],
                Pointers = [Pointers.ItemBodyWidth[item.Index]],
                Actual = Quantities.Millimetres(width),
                Limit = Quantities.Millimetres(room),
                UtilisationPercent = room > 0 ? 100 * width / room : null,
                Calculation = onSlides
                    ? Invariant($"{opening:0.###} - 2 x {item.SupportThicknessMm:0.###} = {room:0.###} < {width:0.###}")
                    : Invariant($"{opening:0.###} < {width:0.###}"),
                Candidates = CandidatesFor(context.Survey, item, width),
            });
        }
    }

    private static IEnumerable<RemedyCandidate> CandidatesFor(RackSurvey survey, MountedItem item, double width)
    {
        if (item.SupportStyle == SupportStyle.Slides && !Comparison.IsOver(width, survey.Cabinet.OpeningMm))
        {
            var thinMm = Quantities.Round((survey.Cabinet.OpeningMm - width) / 2);
            if (item.Item!.Support!.ThicknessMm is null && thinMm >= LeastSlideMm)
            {
                yield return new RemedyBuilder(survey).SetSupport(item, item.Item.Support with { ThicknessMm = thinMm })
                    .Titled(new(RemedyTitles.ThinSlides, ("thicknessMm", thinMm), ("item", item.Id)));
            }

            foreach (var candidate in SupportRemedies.Fixed(survey, item))
            {
                yield return candidate;
            }
        }

        if (PlaceRemedies.TakeOut(survey, item) is { } takeOut)
        {
            yield return takeOut;
        }
    }
}
