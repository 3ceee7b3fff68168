using RackCheck.Model;
using RackCheck.Rules;

namespace RackCheck.Planning.Baskets;

/// <summary>What a shop shows beside each line.</summary>
internal static class LineStates
{
    /// <summary>The states of the lines of a rack.</summary>
    /// <param name="order">The completed order.</param>
    /// <param name="offered">Products on offer.</param>
    /// <param name="found">The findings of the completed racks, each with its lines.</param>
    /// <param name="spare">What is said of lines with spare parts, by index of the line.</param>
    public static IReadOnlyList<LineStatus> Of(
        CompletedOrder order,
        IReadOnlyList<Product> offered,
        IEnumerable<(Finding Finding, IReadOnlyList<int> Lines)> found,
        IReadOnlyDictionary<int, WordedText> spare)
    {
        var hints = new PartNumberHints(offered);
        var unknown = order.Lines.Unknown.Select(BasketLines.PointerOf).ToHashSet(StringComparer.Ordinal);
        var replaced = order.Replaced.ToDictionary(r => r.Line, StringComparer.Ordinal);
        var excess = order.Excess.ToDictionary(e => e.Line, StringComparer.Ordinal);
        var open = found.Where(f => f.Finding is { Accepted: null, SignedOff: null, Severity: not Severity.Advice })
            .SelectMany(f => f.Lines.Take(1).Select(l => (Line: l, f.Finding)))
            .ToLookup(f => f.Line, f => f.Finding);
        return
        [
            .. order.Lines.Request.Lines.Select((line, index) =>
            {
                var pointer = BasketLines.PointerOf(index);
                if (Unknown(unknown, line, order.Lines.FaultOf(line), pointer, hints) is { } state)
                {
                    return state;
                }

                return replaced.TryGetValue(pointer, out var exchange) ? State(LineState.Replace, Instead(exchange))
                    : excess.TryGetValue(pointer, out var surplus) ? State(LineState.Excess, Spare(line, surplus))
                    : open[index].FirstOrDefault() is { } finding
                        ? State(LineState.Check, RuleSet.Default.TextOf(finding)) with { FindingCount = open[index].Count() }
                    : State(LineState.Ok, spare.GetValueOrDefault(index));

                LineStatus State(LineState status, WordedText? message) => StateOf(pointer, status, message);
            }),
        ];
    }

    /// <summary>The states of the lines of an order without a rack.</summary>
    public static IReadOnlyList<LineStatus> OfParts(BasketLines lines, IReadOnlyList<Product> offered)
    {
        var hints = new PartNumberHints(offered);
        var unknown = lines.Unknown.Select(BasketLines.PointerOf).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. lines.Request.Lines.Select((line, index) => Unknown(unknown, line, lines.FaultOf(line), BasketLines.PointerOf(index), hints)
                ?? StateOf(BasketLines.PointerOf(index), LineState.NotAssessed, StatusWordings.NoRack)),
        ];
    }

    private static LineStatus StateOf(string pointer, LineState status, WordedText? message) => new()
    {
        Line = pointer, Status = status, Message = message?.Text, MessageKey = message?.Key, MessageData = message?.Values,
    };

    private static WordedText Instead(Exchange exchange) => new WordedText(StatusWordings.Instead, ("name", exchange.Product.Name)).With(exchange.Why);

    private static WordedText Spare(BasketLine line, Surplus spare) => (spare.Quantity == line.Quantity
        ? StatusWordings.NotNeeded
        : new WordedText(StatusWordings.PartlyNeeded, ("spare", spare.Quantity), ("ordered", line.Quantity))).With(spare.Why);

    private static LineStatus? Unknown(HashSet<string> unknown, BasketLine line, Fault? fault, string pointer, PartNumberHints hints)
    {
        if (!unknown.Contains(pointer))
        {
            return null;
        }

        if (fault is not null)
        {
            return StateOf(pointer, LineState.Unknown, new WordedText(
                StatusWordings.Faulty, ("partNumber", line.PartNumber ?? line.Item!.PartNumber!),
                ("member", fault.Pointer.Length > 0 ? fault.Pointer : "product"), ("fault", fault.Code)));
        }

        var number = line.PartNumber ?? line.Item!.PartNumber!;
        var like = hints.Like(number);
        if (line.Item is { } own)
        {
            return StateOf(pointer, LineState.Unknown, like is null
                ? new WordedText(StatusWordings.NoHeight.With(), ("partNumber", number), ("item", own.Id))
                : new WordedText(
                    StatusWordings.NoHeight.With("like"), ("partNumber", number), ("item", own.Id), ("like", like.PartNumber), ("name", like.Name)))
                with { DidYouMean = like?.PartNumber };
        }

        var message = like is null
            ? new WordedText(StatusWordings.Unknown.With(), ("partNumber", number))
            : new WordedText(StatusWordings.Unknown.With("like"), ("partNumber", number), ("like", like.PartNumber), ("name", like.Name));
        return StateOf(pointer, LineState.Unknown, message) with { DidYouMean = like?.PartNumber };
    }
}
