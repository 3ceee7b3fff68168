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
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "layout.body-too-wide",
        Title = "Body too wide for the opening",
        Severity = Severity.Error,
        What = "Finds bodies that are wider than the opening between the uprights. On slides, the limit is the opening less two slide thicknesses.",
        Why = "The body does not fit between the uprights.",
        Formula = "body width <= opening; on slides: body width <= opening - 2 x slide thickness",
        Sources = [Sources.Iec60297, Sources.SupportPractice],
        Needs = ["/items/*/body/widthMm", "/items/*/support/style", "/items/*/support/thicknessMm", "/cabinet/uprights/openingMm"],
        Remedies = ["Fit chassis runners or a shelf instead of slide rails.", "Move it to another rack."],
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

                context.ReportMissing(Pointers.ItemBodyWidth[item.Index], "Without the body width, the fit between the uprights cannot be checked.");
                continue;
            }

            if (item.SupportStyle is null && width <= opening && width > opening - (2 * Allowances.SlideThicknessMm))
            {
                context.ReportMissing(
                    Pointers.ItemSupportStyle[item.Index],
                    "The body fits between the uprights but not between slide rails, and the support style is not specified.");
            }

            var onSlides = item.SupportStyle == SupportStyle.Slides;
            var room = onSlides ? opening - (2 * item.SupportThicknessMm) : opening;
            if (!Comparison.IsOver(width, room))
            {
                continue;
            }

            context.Report(new FindingDraft
            {
                Message = onSlides
                    ? "The body of {item} is {widthMm} mm wide; the space between its slides is {roomMm} mm."
                    : "The body of {item} is {widthMm} mm wide; the opening between the uprights is {roomMm} mm.",
                Data = [("item", item.Id), ("widthMm", width), ("roomMm", room)],
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
            yield return SupportRemedies.Fixed(survey, item);
        }

        if (PlaceRemedies.TakeOut(survey, item) is { } takeOut)
        {
            yield return takeOut;
        }
    }
}
