using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Rules.Layout;

/// <summary>Finds items that need a shelf and have none.</summary>
public sealed class ShelfMissing : Rule
{
    private static readonly MessageWording NoShelf = new("layout.shelf-missing.no-shelf", "{item} is not rack-mountable and has no shelf.");

    private static readonly MessageWording NotAShelf = new(
        "layout.shelf-missing.not-a-shelf",
        "{item} is assigned to {shelf}, which is not a shelf on the uprights.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "layout.shelf-missing",
        Title = "Shelf missing",
        Severity = Severity.Error,
        What = "Finds items that are not rack-mountable and have no shelf, and items whose onShelf names an item that is not a shelf on the uprights.",
        Why = "An item that cannot be screwed to the uprights needs a shelf.",
        Formula = "heightU 0 needs onShelf; onShelf names an item of category shelf that is itself mounted on the uprights",
        Sources = [Sources.Geometry],
        Needs = ["/items/*/onShelf", "/items/*/heightU", "/items/*/category"],
        Remedies = ["Place it on a shelf with enough space.", "Add a shelf.", "Move it to another rack."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        foreach (var item in context.Survey.Items)
        {
            var named = item.Item!.OnShelf;
            if (item.Shelf is not null || (named is null && item.HeightU > 0))
            {
                continue;
            }

            context.Report(new FindingDraft
            {
                Message = named is null ? NoShelf : NotAShelf,
                Data = named is null ? [("item", item.Id)] : [("item", item.Id), ("shelf", named)],
                Subject = Subjects.WithoutShelf(item.Id),
                Identity = [item.Id],
                Pointers = [named is null ? item.Pointer : Pointers.ItemOnShelf[item.Index]],
                Candidates = CandidatesFor(context.Survey, item),
            });
        }
    }

    private static IEnumerable<RemedyCandidate> CandidatesFor(RackSurvey survey, MountedItem item)
    {
        if (ShelfRemedies.Stand(survey, item) is { } stand)
        {
            yield return stand;
        }

        if (PlaceRemedies.TakeOut(survey, item) is { } takeOut)
        {
            yield return takeOut;
        }
    }
}
