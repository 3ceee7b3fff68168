using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Depth;

/// <summary>Finds slides and runners that do not fit the upright spacing.</summary>
public sealed class SupportSpan : Rule
{
    private static readonly MessageWording TooClose = new(
        "depth.support-span.too-close",
        "The rails of {item} need an upright spacing of at least {limitMm} mm; it is {spacingMm} mm.");

    private static readonly MessageWording TooFar = new(
        "depth.support-span.too-far",
        "The rails of {item} fit an upright spacing of up to {limitMm} mm; it is {spacingMm} mm.");

    private static readonly MessageWording Distance = new(
        "depth.support-span.distance",
        "The rails of {item} need an upright spacing of at least {neededMm} mm; the distance from the front uprights to the rear door is {limitMm} mm.");

    private static readonly MessageWording OtherRailsDefect = new(
        "depth.support-span.other-rails",
        "The rails of {item} need an upright spacing of at least {neededMm} mm; the rails of {other} fit up to {limitMm} mm.");

    private static readonly MissingData Missing = new(
        "depth.support-span.missing",
        "Without the adjustment range of the rails, their fit to the upright spacing cannot be checked.");

    private static readonly MissingData MissingSupportStyle = new(
        "depth.support-span.missing-support-style",
        "A spacing range is specified, but the support style is not.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "depth.support-span",
        Title = "Rails do not fit the upright spacing",
        Severity = Severity.Error,
        What = "Finds slides and runners whose adjustment range does not include the upright spacing. Where the spacing is not specified, "
            + "finds rails that no common spacing suits.",
        Why = "A rail that is too short or too long cannot be fixed to both uprights.",
        Formula = "minSpacing <= spacing <= maxSpacing; spacing not specified: largest minSpacing <= the smaller of the smallest maxSpacing "
            + "and the distance from the front uprights to the rear door",
        Sources = [Sources.Geometry],
        Needs = ["/items/*/support/minSpacingMm", "/items/*/support/maxSpacingMm", "/items/*/support/style", "/cabinet/uprights/spacingMm"],
        Remedies = ["Set the rear uprights to a spacing that suits all rails.", "Order rails for the upright spacing."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        foreach (var item in context.Survey.Items)
        {
            if (item.HasRails)
            {
                ReportMissing(context, item);
            }
            else if (item.SupportStyle is null && item.Item!.Support is { } rails && (rails.MinSpacingMm ?? rails.MaxSpacingMm) is not null)
            {
                context.ReportMissing(Pointers.ItemSupportStyle[item.Index], MissingSupportStyle);
            }
        }

        if (context.Survey.Cabinet.SpacingMm is { } spacing)
        {
            CheckGiven(context, spacing);
        }
        else
        {
            CheckMovable(context);
        }
    }

    private static void ReportMissing(RuleContext context, MountedItem item)
    {
        if (item.Item!.Support!.MinSpacingMm is null)
        {
            context.ReportMissing(Pointers.ItemMinSpacing[item.Index], Missing);
        }

        if (item.Item.Support.MaxSpacingMm is null)
        {
            context.ReportMissing(Pointers.ItemMaxSpacing[item.Index], Missing);
        }
    }

    private static void CheckGiven(RuleContext context, double spacing)
    {
        var survey = context.Survey;
        foreach (var item in survey.Items)
        {
            var range = item.RailRange;
            if (!item.HasRails || range.Holds(spacing))
            {
                continue;
            }

            var tooClose = spacing < range.LeastMm;
            var bound = tooClose ? range.LeastMm : range.GreatestMm;
            context.Report(new FindingDraft
            {
                Message = tooClose ? TooClose : TooFar,
                Data = [("item", item.Id), ("limitMm", bound), ("spacingMm", spacing)],
                Subject = survey.Cabinet.Place(item),
                Identity = [item.Id],
                Pointers = [tooClose ? Pointers.ItemMinSpacing[item.Index] : Pointers.ItemMaxSpacing[item.Index], Pointers.Spacing],
                Actual = Quantities.Millimetres(spacing),
                Limit = Quantities.Millimetres(bound),
                Calculation = Invariant($"{spacing:0.###} {(tooClose ? '<' : '>')} {bound:0.###}"),
                Candidates = SpacingRemedies.Move(survey, range) is { } move
                    ? [move, OtherRails(survey, spacing, item)]
                    : [OtherRails(survey, spacing, item)],
            });
        }
    }

    // One spacing has to suit all rails. Rails that need more than the shortest rails reach, or more than the distance to the rear door, are too long.
    private static void CheckMovable(RuleContext context)
    {
        var survey = context.Survey;
        var most = Math.Max(0, survey.Cabinet.Depth.RearLimitMm - (survey.Cabinet.SetbackMm ?? survey.Depth.All.LeastMm));
        var shortest = survey.Items.Where(i => i.HasRails)
            .OrderBy(i => i.Id, StringComparer.Ordinal)
            .MinBy(i => i.RailRange.GreatestMm);
        if (shortest is null)
        {
            return;
        }

        var reach = shortest.RailRange.GreatestMm;
        var limit = Math.Min(reach, most);
        foreach (var item in survey.Items.Where(i => i.HasRails))
        {
            var needed = item.RailRange.LeastMm;
            if (Comparison.IsOver(needed, limit))
            {
                ReportMovable(context, item, needed, most <= reach ? null : shortest, limit);
            }
        }
    }

    private static void ReportMovable(RuleContext context, MountedItem item, double needed, MountedItem? shortest, double limit)
    {
        var survey = context.Survey;
        context.Report(new FindingDraft
        {
            Message = shortest is null ? Distance : OtherRailsDefect,
            Data = shortest is null
                ? [("item", item.Id), ("neededMm", needed), ("limitMm", limit)]
                : [("item", item.Id), ("other", shortest.Id), ("neededMm", needed), ("limitMm", limit)],
            Subject = shortest is null ? survey.Cabinet.Place(item) : Subjects.Pair(item.Id, shortest.Id),
            Identity = [item.Id],
            Pointers = [Pointers.ItemMinSpacing[item.Index], shortest is null ? Pointers.CabinetDepth : Pointers.ItemMaxSpacing[shortest.Index]],
            Actual = Quantities.Millimetres(needed),
            Limit = Quantities.Millimetres(limit),
            Calculation = Invariant($"{needed:0.###} > {limit:0.###}"),
            Candidates = [OtherRails(survey, limit, item)],
        });
    }

    private static RemedyCandidate OtherRails(RackSurvey survey, double spacing, MountedItem item)
    {
        // Both ends, because the specified minimum may exceed the specified maximum.
        var range = item.RailRange;
        var support = item.Item!.Support!;
        support = range.LeastMm > spacing ? support with { MinSpacingMm = spacing } : support;
        support = range.GreatestMm < spacing ? support with { MaxSpacingMm = spacing } : support;
        return new RemedyBuilder(survey)
            .SetSupport(item, support)
            .Titled(new(RemedyTitles.OtherRails, ("item", item.Id), ("spacingMm", spacing)));
    }
}
