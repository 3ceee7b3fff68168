using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using static System.FormattableString;

namespace RackCheck.Rules.Layout;

/// <summary>Finds cabinets that are narrower than a 19-inch panel or than the opening between their uprights.</summary>
public sealed class CabinetTooNarrow : Rule
{
    private static readonly WordingChoice Defect = new(
        "layout.cabinet-too-narrow",
        "The cabinet is {widthMm} mm wide; [opening:the opening between its uprights is|19-inch panels are] {neededMm} mm wide.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "layout.cabinet-too-narrow",
        Title = "Cabinet narrower than its equipment",
        Severity = Severity.Error,
        What = "Finds cabinets narrower than the panels of 19-inch equipment, 482.6 mm, or than the opening between their own uprights.",
        Why = "No 19-inch equipment goes in: the cabinet or its width is wrong.",
        Formula = "cabinet width >= 482.6 mm; cabinet width >= opening between the uprights",
        Sources = [Sources.Iec60297, Sources.Bookkeeping],
        Needs = ["/cabinet/widthMm", "/cabinet/uprights/openingMm"],
        Notes = ["The width of a cabinet is its overall width. How much of it uprights and side panels take is the manufacturer's affair."],
        Remedies = ["Use a wider cabinet."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var cabinet = context.Survey.Cabinet;
        var isOpening = cabinet.OpeningMm > RackGeometry.PanelWidthMm;
        var needed = isOpening ? cabinet.OpeningMm : RackGeometry.PanelWidthMm;
        if (!Comparison.IsOver(needed, cabinet.WidthMm))
        {
            return;
        }

        context.Report(new FindingDraft
        {
            Message = Defect.With(isOpening ? "opening" : ""),
            Data = [("widthMm", cabinet.WidthMm), ("neededMm", needed)],
            Subject = Subjects.Cabinet,
            Identity = ["cabinet"],
            Pointers = isOpening ? [Pointers.CabinetWidth, Pointers.Opening] : [Pointers.CabinetWidth],
            Actual = Quantities.Millimetres(cabinet.WidthMm),
            Limit = Quantities.Millimetres(needed),
            UtilisationPercent = 100 * needed / cabinet.WidthMm,
            Calculation = Invariant($"{cabinet.WidthMm:0.###} < {needed:0.###}"),
            Candidates = ConflictRemedies.Widen(context.Survey, needed),
        });
    }
}
