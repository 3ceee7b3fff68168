using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Loads;

/// <summary>Finds items that are heavier than what carries them is rated for, and shelves with too much on them.</summary>
public sealed class SupportRating : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "load.support-rating",
        Title = "Slides, runners or shelf overloaded",
        Severity = Severity.Error,
        Safety = true,
        What = "Finds items that are heavier than their slides or runners are rated for, and shelves whose load is heavier than the shelf is rated for.",
        Why = "Slides buckle when the item is pulled out, runners and shelves bend, and it falls.",
        Formula = "massKg <= ratedKg of its support; on a shelf the sum of massKg of all that stands on it",
        Sources = [Sources.RatingPractice],
        Needs = ["/items/*/massKg", "/items/*/support/style", "/items/*/support/ratedKg", "/items/*/onShelf"],
        Remedies = ["Take slides, runners or a shelf rated for it.", "Take it out of the rack."],
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

    private static void CheckItem(RuleContext context, Mounted item)
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

    private static void ReportMissingMass(RuleContext context, Mounted item)
    {
        if (item.Item!.MassKg is null && MassSurvey.IsToBeWeighed(item))
        {
            context.Lacks(Pointers.ItemMass[item.Index], "Without the mass of an item it cannot be said whether what carries it is strong enough.");
        }
    }

    private static void ReportMissingRating(RuleContext context, Mounted item) =>
        context.Lacks(Pointers.ItemSupportRating[item.Index], "Without the rating of slides, runners or shelf it cannot be said whether they carry what is on them.");

    private static void CheckShelf(RuleContext context, Mounted shelf)
    {
        var sum = 0.0;
        foreach (var thing in shelf.Load)
        {
            sum += thing.Item!.MassKg ?? 0;
            ReportMissingMass(context, thing);
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

    private static void Judge(RuleContext context, Mounted item, double loadKg, double ratedKg, bool isShelf)
    {
        if (!MassSurvey.Exceeds(loadKg, ratedKg))
        {
            return;
        }

        var isWhole = !isShelf || item.Load.All(t => t.Item!.MassKg is not null || !MassSurvey.IsToBeWeighed(t));
        var message = !isShelf ? "{item} weighs {loadKg} kg; its " + NameOf(item.SupportStyle) + " rated for {limitKg} kg."
            : isWhole ? "What stands on {item} weighs {loadKg} kg; the shelf is rated for {limitKg} kg."
            : "What stands on {item} weighs at least {loadKg} kg; the shelf is rated for {limitKg} kg.";
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
            Cures = LoadCures.StrongerSupport(context.Survey, item, loadKg, isShelf),
        });
    }

    private static string NameOf(SupportStyle? style) => style switch
    {
        SupportStyle.Slides => "slides are",
        SupportStyle.Runners => "runners are",
        SupportStyle.Shelf => "shelf is",
        _ => "support is",
    };
}
