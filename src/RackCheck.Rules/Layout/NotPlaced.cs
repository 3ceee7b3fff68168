using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;

namespace RackCheck.Rules.Layout;

/// <summary>Finds items without a U position.</summary>
public sealed class NotPlaced : Rule
{
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
        Remedies = ["Mount it at the lowest free U position.", "Use a taller cabinet.", "Move it to another rack."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        foreach (var item in context.Survey.Items)
        {
            if (item is not { HeightU: > 0, IsPlaced: false } || item.Item!.OnShelf is not null)
            {
                continue;
            }

            context.Report(new FindingDraft
            {
                Message = "{item} occupies {heightU} U but has no U position.",
                Data = [("item", item.Id), ("heightU", item.HeightU)],
                Subject = context.Survey.Cabinet.Place(item),
                Identity = [item.Id],
                Pointers = [Pointers.Item[item.Index]],
                Candidates = PlaceRemedies.Move(context.Survey, item),
            });
        }
    }
}
