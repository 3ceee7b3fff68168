using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Loads;

/// <summary>Finds items that exceed the rating of their support, and overloaded shelves.</summary>
public sealed class SupportRating : Rule
{
    private static readonly WordingChoice Item = new(
        "load.support-rating.item",
        "{item} weighs {loadKg} kg; its [slides:slides are|runners:runners are|shelf:shelf is|support is] rated for {limitKg} kg.");

    private static readonly WordingChoice Shelf = new(
        "load.support-rating.shelf",
        "The load on {item} is [at-least:at least ]{loadKg} kg; the shelf is rated for {limitKg} kg.");

    private static readonly MissingData MissingMass = new(
        "load.support-rating.missing-mass",
        "Without the mass of the item, the load on its support cannot be checked.");

    private static readonly MissingData MissingSupportRating = new(
        "load.support-rating.missing-support-rating",
        "Without the rating of the slides, runners or shelf, their load cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "load.support-rating",
        Title = "Slides, runners or shelf overloaded",
        Severity = Severity.Error,
        Safety = true,
        What = "Finds items whose mass exceeds the rating of their slides or runners, and shelves whose load exceeds the rating of the shelf.",
        Why = "Slides buckle when the item is pulled out, runners and shelves bend, and the item falls.",
        Formula = "massKg <= ratedKg of the support; shelf: sum of massKg of the items on it <= ratedKg of the shelf",
        Sources = [Sources.RatingPractice],
        Needs = ["/items/*/massKg", "/items/*/support/style", "/items/*/support/ratedKg", "/items/*/onShelf"],
        Remedies = ["Use slides, runners or a shelf with a higher rating.", "Move it to another rack."],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        foreach (var item in context.Survey.Items)
        {
            if (item.Load.Count > 0)
            {
                CheckShelf(context, item);
            }
            else if (item.Category != ItemCategory.Shelf && item.Shelf is null)
            {
                CheckItem(context, item);
            }
        }
    }

    private static void CheckItem(RuleContext context, MountedItem item)
    {
        var (mass, rating) = (item.Item!.MassKg, item.Item.Support?.RatedKg);
        if (rating is null && item.Item.Support?.Style is not (SupportStyle.Slides or SupportStyle.Runners or SupportStyle.Shelf))
        {
            return;
        }

        if (mass is { } kilograms && rating is { } rated)
        {
            Judge(context, item, kilograms, rated, isShelf: false);
            return;
        }

        ReportMissingMass(context, item);
        if (rating is null)
        {
            ReportMissingRating(context, item);
        }
    }

    private static void ReportMissingMass(RuleContext context, MountedItem item)
    {
        if (item.Item!.MassKg is null && MassSurvey.IsToBeWeighed(item))
        {
            context.ReportMissing(Pointers.ItemMass[item.Index], MissingMass);
        }
    }

    private static void ReportMissingRating(RuleContext context, MountedItem item) =>
        context.ReportMissing(Pointers.ItemSupportRating[item.Index], MissingSupportRating);

    private static void CheckShelf(RuleContext context, MountedItem shelf)
    {
        var sum = 0.0;
        foreach (var item in shelf.Load)
        {
            sum += item.Item!.MassKg ?? 0;
            ReportMissingMass(context, item);
        }

        if (shelf.Item!.Support?.RatedKg is { } rated)
        {
            Judge(context, shelf, sum, rated, isShelf: true);
        }
        else
        {
            ReportMissingRating(context, shelf);
        }
    }

    private static void Judge(RuleContext context, MountedItem item, double loadKg, double ratedKg, bool isShelf)
    {
        if (!Comparison.IsOver(loadKg, ratedKg))
        {
            return;
        }

        var isWhole = !isShelf || item.Load.All(t => t.Item!.MassKg is not null || !MassSurvey.IsToBeWeighed(t));
        var message = isShelf ? Shelf.With(isWhole ? "" : "at-least") : Item.With(NameOf(item.SupportStyle));
        context.Report(new FindingDraft
        {
            Message = message,
            Data = [("item", item.Id), ("loadKg", loadKg), ("limitKg", ratedKg)],
            Subject = context.Survey.Cabinet.Place(item),
            Identity = [item.Id],
            Pointers = [item.Pointer, Pointers.ItemSupportRating[item.Index]],
            Actual = Quantities.Of(loadKg, "kg"),
            Limit = Quantities.Of(ratedKg, "kg"),
            UtilisationPercent = ratedKg > 0 ? 100 * loadKg / ratedKg : null,
            Calculation = isShelf ? Invariant($"{LoadText.Sum(item.Load)} = {loadKg:0.###} > {ratedKg:0.###}") : Invariant($"{loadKg:0.###} > {ratedKg:0.###}"),
            Candidates = LoadRemedies.StrongerSupport(context.Survey, item, loadKg, isShelf),
        });
    }

    private static string NameOf(SupportStyle? style) => style switch
    {
        SupportStyle.Slides => "slides",
        SupportStyle.Runners => "runners",
        SupportStyle.Shelf => "shelf",
        _ => "",
    };
}
