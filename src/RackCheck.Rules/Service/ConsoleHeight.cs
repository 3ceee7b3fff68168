using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Limits;
using static System.FormattableString;

namespace RackCheck.Rules.Service;

/// <summary>Finds keyboard drawers and displays at an unsuitable working height.</summary>
public sealed class ConsoleHeight : Rule
{
    /// <summary>Minimum height of a keyboard drawer above the floor.</summary>
    public static RuleLimit KeyboardMinMm { get; } = new(
        "keyboardMinMm", "minimum height of a keyboard drawer above the floor", 650, "mm", 0, 2500, Stricter.Higher);

    /// <summary>Maximum height of a keyboard drawer above the floor.</summary>
    public static RuleLimit KeyboardMaxMm { get; } = new(
        "keyboardMaxMm", "maximum height of a keyboard drawer above the floor", 1100, "mm", 0, 2500, Stricter.Lower);

    /// <summary>Minimum height of the centre of a display above the floor.</summary>
    public static RuleLimit DisplayMinMm { get; } = new(
        "displayMinMm", "minimum height of the centre of a display above the floor", 1100, "mm", 0, 2500, Stricter.Higher);

    /// <summary>Maximum height of the centre of a display above the floor.</summary>
    public static RuleLimit DisplayMaxMm { get; } = new(
        "displayMaxMm", "maximum height of the centre of a display above the floor", 1700, "mm", 0, 2500, Stricter.Lower);

    private static readonly MessageWording TooHigh = new(
        "service.console-height.too-high",
        "The centre of {item} is {heightMm} mm above the floor; the maximum working height is {limitMm} mm.");

    private static readonly MessageWording TooLow = new(
        "service.console-height.too-low",
        "The centre of {item} is {heightMm} mm above the floor; the minimum working height is {limitMm} mm.");

    private static readonly MissingData Missing = new(
        "service.console-height.missing",
        "Without the height of the display on the shelf, its working height cannot be calculated.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "service.console-height",
        Title = "Console at the wrong height",
        Severity = Severity.Warning,
        What = "Finds keyboard drawers outside 650 to 1100 mm above the floor, and displays with their centre outside 1100 to 1700 mm.",
        Why = "A keyboard at knee height or a display above head height is not suitable for work.",
        Formula = "base + (height - base - 44.45 U) / 2 + 44.45 (u - 1 + n / 2) outside its range",
        Sources = [Sources.ConsolePractice, Sources.Iso7250, Sources.Iec60297],
        Limits = [KeyboardMinMm, KeyboardMaxMm, DisplayMinMm, DisplayMaxMm],
        Needs = ["/items/*/category", "/items/*/position", "/items/*/heightU", "/cabinet/heightMm", "/cabinet/base/heightMm"],
        Notes =
        [
            "Without an overall height the cabinet is taken as base, mounting space and 100 mm for roof and floor, as an assumption of the report.",
        ],
        Remedies = ["Mount it at a suitable working height."],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        foreach (var item in context.Survey.Items)
        {
            if (item.Category is not (ItemCategory.KeyboardDrawer or ItemCategory.Display) || (item.Shelf ?? item).Bottom is not { } bottom)
            {
                continue;
            }

            var (least, greatest) = item.Category == ItemCategory.KeyboardDrawer
                ? (context.Limit(KeyboardMinMm), context.Limit(KeyboardMaxMm))
                : (context.Limit(DisplayMinMm), context.Limit(DisplayMaxMm));
            if (context.Survey.Cabinet.Heights.CentreMm(item, bottom) is not { } height)
            {
                context.ReportMissing(Pointers.ItemBodyHeight[item.Index], Missing);
            }
            else if (Comparison.IsOver(height, greatest) || Comparison.IsOver(least, height))
            {
                Report(context, item, height, least, greatest);
            }
        }
    }

    private static void Report(RuleContext context, MountedItem item, double actual, double least, double greatest)
    {
        var survey = context.Survey;
        var isHigh = Comparison.IsOver(actual, greatest);
        var limit = isHigh ? greatest : least;
        var carrier = item.Shelf ?? item;
        context.Report(new FindingDraft
        {
            Message = isHigh ? TooHigh : TooLow,
            Data = [("item", item.Id), ("heightMm", actual), ("limitMm", limit)],
            Subject = survey.Cabinet.Place(item),
            Identity = [item.Id],
            Pointers = [carrier.PositionPointer, .. ReferenceEquals(carrier, item) ? (string[])[] : [item.Pointer]],
            Actual = Quantities.Millimetres(actual),
            Limit = Quantities.Millimetres(limit),
            Calculation = Calculation(survey.Cabinet, item, actual, limit, isHigh),
            Candidates = ServiceRemedies.MountWhere(
                survey, carrier,
                u => survey.Cabinet.Heights.CentreMm(item, u) is { } there && !Comparison.IsOver(least, there) && !Comparison.IsOver(there, greatest)),
        });
    }

    private static string Calculation(CabinetFacts cabinet, MountedItem item, double actual, double limit, bool isHigh)
    {
        var carrier = item.Shelf ?? item;
        var above = ReferenceEquals(carrier, item)
            ? Invariant($"{RackGeometry.UnitMm} x ({carrier.Bottom} - 1 + {item.HeightU} / 2)")
            : Invariant($"{RackGeometry.UnitMm} x ({carrier.Bottom} - 1 + {carrier.HeightU}) + {item.StandingHeightMm:0.###} / 2");
        var own = ReferenceEquals(carrier, item)
            ? RackGeometry.UnitMm * (carrier.Bottom!.Value - 1 + (item.HeightU / 2.0))
            : (RackGeometry.UnitMm * (carrier.Bottom!.Value - 1 + carrier.HeightU)) + (item.StandingHeightMm!.Value / 2);
        return Invariant($"{actual - own:0.###} + {above} = {actual:0.###} {(isHigh ? '>' : '<')} {limit:0.###}");
    }
}
