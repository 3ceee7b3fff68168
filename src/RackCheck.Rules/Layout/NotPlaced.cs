using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Rules.Layout;

/// <summary>Finds items without a U position.</summary>
public sealed class NotPlaced : Rule
{
    private static readonly MessageWording Defect = new("layout.not-placed", "{item} occupies {heightU} U but has no U position.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "layout.not-placed",
        Title = "Item without a U position",
        Severity = Severity.Warning,
        What = "Finds rack-mountable items with neither a U position nor a shelf.",
        Why = "An unplaced item is not checked against its neighbours, and the rack may have no free U positions for it.",
        Formula = "heightU > 0 with neither position nor onShelf",
        Sources = [Sources.Bookkeeping],
        Needs = ["/items/*/position", "/items/*/onShelf", "/items/*/heightU"],
        Remedies = ["Mount all such items at free U positions, heavy ones low.", "Use a taller cabinet.", "Move it to another rack."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        // One remedy places them all: one for each item would use the same U positions again.
        var survey = context.Survey;
        var items = Array.FindAll(survey.Items, i => i is { HeightU: > 0, IsPlaced: false, Item.OnShelf: null });
        var together = new Lazy<RemedyCandidate[]>(() => [.. PlaceRemedies.MountAll(survey, items)]);
        foreach (var item in items)
        {
            context.Report(new FindingDraft
            {
                Message = Defect,
                Data = [("item", item.Id), ("heightU", item.HeightU)],
                Subject = context.Survey.Cabinet.Place(item),
                Identity = [item.Id],
                Pointers = [Pointers.Item[item.Index]],
                Candidates = Candidates(survey, item, together),
            });
        }
    }

    private static IEnumerable<RemedyCandidate> Candidates(RackSurvey survey, MountedItem item, Lazy<RemedyCandidate[]> together)
    {
        foreach (var candidate in together.Value)
        {
            yield return candidate;
        }

        if (PlaceRemedies.TakeOut(survey, item) is { } takeOut)
        {
            yield return takeOut;
        }
    }
}
