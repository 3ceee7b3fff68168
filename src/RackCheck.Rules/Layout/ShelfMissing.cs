using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Rules.Layout;

/// <summary>Finds things that stand on no shelf.</summary>
public sealed class ShelfMissing : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "layout.shelf-missing",
        Title = "Nothing to stand on",
        Severity = Severity.Error,
        What = "Finds items that are no 19-inch unit and stand nowhere, and items whose onShelf names something that is no shelf on the uprights.",
        Why = "What cannot be screwed to the uprights needs a shelf under it.",
        Formula = "heightU 0 needs onShelf; onShelf names an item of category shelf that itself hangs on the uprights",
        Sources = [Sources.Geometry],
        Needs = ["/items/*/onShelf", "/items/*/heightU", "/items/*/category"],
        Remedies = ["Stand it on a shelf that has room.", "Add a shelf.", "Take it out of this rack."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        foreach (var thing in context.Survey.Items)
        {
            var named = thing.Item!.OnShelf;
            if (thing.Shelf is not null || (named is null && thing.HeightU > 0))
            {
                continue;
            }

            context.Report(new FindingDraft
            {
                Message = named is null
                    ? "{item} is no 19-inch unit and stands on no shelf."
                    : "{item} is to stand on {shelf}, which is no shelf on the uprights.",
                Data = named is null ? [("item", thing.Id)] : [("item", thing.Id), ("shelf", named)],
                Subject = $"{thing.Id}, without a shelf",
                Identity = [thing.Id],
                Pointers = [named is null ? thing.Pointer : Pointers.ItemOnShelf[thing.Index]],
                Cures = CuresFor(context.Survey, thing),
            });
        }
    }

    private static IEnumerable<Cure> CuresFor(RackSurvey survey, Mounted thing)
    {
        if (ShelfCures.Stand(survey, thing) is { } stand)
        {
            yield return stand;
        }

        if (PlaceCures.TakeOut(survey, thing) is { } takeOut)
        {
            yield return takeOut;
        }
    }
}
