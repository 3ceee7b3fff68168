using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;

namespace RackCheck.Rules.Layout;

/// <summary>Finds items without a position.</summary>
public sealed class NotPlaced : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "layout.not-placed",
        Title = "Item without a position",
        Severity = Severity.Warning,
        What = "Finds items that take units but have no position and stand on no shelf.",
        Why = "What is not placed is not checked against its neighbours, and may find no room at all.",
        Formula = "heightU > 0 with neither position nor onShelf",
        Sources = [Sources.Bookkeeping],
        Needs = ["/items/*/position", "/items/*/onShelf", "/items/*/heightU"],
        Remedies = ["Mount it at the lowest free place.", "Take a higher cabinet.", "Take it out of this rack."],
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
                Message = "{item} takes {heightU} U but has no position yet.",
                Data = [("item", item.Id), ("heightU", item.HeightU)],
                Subject = context.Survey.Cabinet.Place(item),
                Identity = [item.Id],
                Pointers = [Pointers.Item[item.Index]],
                Cures = PlaceCures.Move(context.Survey, item),
            });
        }
    }
}
