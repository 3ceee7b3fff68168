using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Depth;

/// <summary>Finds slides and runners that do not reach from upright to upright.</summary>
public sealed class SupportSpan : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "depth.support-span",
        Title = "Rails do not reach the uprights",
        Severity = Severity.Error,
        What = "Finds slides and runners whose range of spacing does not hold the distance between front and rear uprights; where that is not set yet, sets of rails that no distance serves together.",
        Why = "A rail that is too short or too long cannot be screwed to both uprights.",
        Formula = "minSpacing <= spacing <= maxSpacing; spacing not given: largest minSpacing <= the lesser of the smallest maxSpacing and what lies between the front uprights and the rear door",
        Sources = [Sources.Geometry],
        Needs = ["/items/*/support/minSpacingMm", "/items/*/support/maxSpacingMm", "/items/*/support/style", "/cabinet/uprights/spacingMm"],
        Remedies = ["Set the rear uprights where all rails reach them.", "Order rails for the distance of the uprights."],
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
                context.Lacks(Pointers.ItemSupportStyle[item.Index], "A range of spacing is given, but not whether slides or runners carry the item.");
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

    private static void ReportMissing(RuleContext context, Mounted item)
    {
        const string Message = "Without the range of spacing of its rails it cannot be said whether they reach from upright to upright.";
        if (item.Item!.Support!.MinSpacingMm is null)
        {
            context.Lacks(Pointers.ItemMinSpacing[item.Index], Message);
        }

        if (item.Item.Support.MaxSpacingMm is null)
        {
            context.Lacks(Pointers.ItemMaxSpacing[item.Index], Message);
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
                Message = tooClose
                    ? "The rails of {item} need at least {limitMm} mm between front and rear uprights; there are {spacingMm} mm."
                    : "The rails of {item} fit up to {limitMm} mm between front and rear uprights; there are {spacingMm} mm.",
                Data = [("item", item.Id), ("limitMm", bound), ("spacingMm", spacing)],
                Subject = survey.Cabinet.Place(item),
                Identity = [item.Id],
                Pointers = [tooClose ? Pointers.ItemMinSpacing[item.Index] : Pointers.ItemMaxSpacing[item.Index], Pointers.Spacing],
                Actual = Quantities.Millimetres(spacing),
                Limit = Quantities.Millimetres(bound),
                Calculation = Invariant($"{spacing:0.###} {(tooClose ? '<' : '>')} {bound:0.###}"),
                Cures = SpacingCures.Move(survey, range) is { } move
                    ? [move, OtherRails(survey, spacing, item)]
                    : [OtherRails(survey, spacing, item)],
            });
        }
    }

    // One distance has to serve all rails: each set that asks for more than the shortest reach, or than there is up to the rear door, is too long.
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
            if (needed > limit + SetbackInterval.ToleranceMm)
            {
                ReportMovable(context, item, needed, most <= reach ? null : shortest, limit);
            }
        }
    }

    private static void ReportMovable(RuleContext context, Mounted item, double needed, Mounted? shortest, double limit)
    {
        var survey = context.Survey;
        context.Report(new FindingDraft
        {
            Message = shortest is null
                ? "The rails of {item} need at least {neededMm} mm between front and rear uprights; from the front uprights to the rear door there are {limitMm} mm."
                : "The rails of {item} need at least {neededMm} mm between front and rear uprights; those of {other} fit up to {limitMm} mm.",
            Data = shortest is null
                ? [("item", item.Id), ("neededMm", needed), ("limitMm", limit)]
                : [("item", item.Id), ("other", shortest.Id), ("neededMm", needed), ("limitMm", limit)],
            Subject = shortest is null ? survey.Cabinet.Place(item) : $"{item.Id} and {shortest.Id}",
            Identity = [item.Id],
            Pointers = [Pointers.ItemMinSpacing[item.Index], shortest is null ? Pointers.CabinetDepth : Pointers.ItemMaxSpacing[shortest.Index]],
            Actual = Quantities.Millimetres(needed),
            Limit = Quantities.Millimetres(limit),
            Calculation = Invariant($"{needed:0.###} > {limit:0.###}"),
            Cures = [OtherRails(survey, limit, item)],
        });
    }

    private static Cure OtherRails(RackSurvey survey, double spacing, Mounted item)
    {
        // Both ends, since a range may be given that ends before it begins.
        var range = item.RailRange;
        var support = item.Item!.Support!;
        support = range.LeastMm > spacing ? support with { MinSpacingMm = spacing } : support;
        support = range.GreatestMm < spacing ? support with { MaxSpacingMm = spacing } : support;
        return new CureBuilder(survey)
            .SetSupport(item, support)
            .Titled(Invariant($"Order rails for {item.Id} that fit {spacing:0.###} mm between the uprights"));
    }
}
