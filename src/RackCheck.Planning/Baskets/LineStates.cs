using RackCheck.Model;

namespace RackCheck.Planning.Baskets;

/// <summary>What a shop shows beside each line.</summary>
internal static class LineStates
{
    // An edit more than this is another part.
    private const int MostEdits = 3;

    /// <summary>The states of the lines of a rack.</summary>
    public static IReadOnlyList<LineStatus> Of(
        CompletedOrder order, IReadOnlyList<Product> offered, IReadOnlyList<Finding> found, IReadOnlyList<FindingLines> findings)
    {
        var unknown = order.Lines.Unknown.Select(BasketLines.PointerOf).ToHashSet(StringComparer.Ordinal);
        var replaced = order.Replaced.ToDictionary(r => r.Line, StringComparer.Ordinal);
        var excess = order.Excess.ToDictionary(e => e.Line, StringComparer.Ordinal);
        var open = found.Zip(findings)
            .Where(f => f.Second.Stays == true && f.First is { Accepted: null, SignedOff: null, Severity: not Severity.Advice })
            .SelectMany(f => f.Second.Lines.Take(1).Select(l => (Line: l, f.First.Message)))
            .ToLookup(f => f.Line, f => f.Message, StringComparer.Ordinal);
        return
        [
            .. order.Lines.Request.Lines.Select((line, index) =>
            {
                var pointer = BasketLines.PointerOf(index);
                if (Unknown(unknown, line, order.Lines.FaultOf(line), pointer, offered) is { } state)
                {
                    return state;
                }

                return replaced.TryGetValue(pointer, out var exchange) ? State(LineState.Replace, $"Order {exchange.Name} instead. {exchange.Reason}")
                    : excess.TryGetValue(pointer, out var spare) ? State(LineState.Excess, Spare(line, spare))
                    : open[pointer].FirstOrDefault() is { } message ? State(LineState.Check, message)
                    : State(LineState.Ok, null);

                LineStatus State(LineState status, string? message) => new() { Line = pointer, Status = status, Message = message };
            }),
        ];
    }

    /// <summary>The states of the lines of an order without a rack.</summary>
    public static IReadOnlyList<LineStatus> OfParts(BasketLines lines, IReadOnlyList<Product> offered)
    {
        var unknown = lines.Unknown.Select(BasketLines.PointerOf).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. lines.Request.Lines.Select((line, index) => Unknown(unknown, line, lines.FaultOf(line), BasketLines.PointerOf(index), offered)
                ?? new LineStatus
                {
                    Line = BasketLines.PointerOf(index),
                    Status = LineState.NotAssessed,
                    Message = "The order makes no rack, so that the fit of this part was not checked.",
                }),
        ];
    }

    private static string Spare(BasketLine line, ExcessLine spare) => spare.Quantity == line.Quantity
        ? $"It is not needed. {spare.Reason}"
        : FormattableString.Invariant($"{spare.Quantity} of {line.Quantity} are not needed. {spare.Reason}");

    private static LineStatus? Unknown(HashSet<string> unknown, BasketLine line, Fault? fault, string pointer, IReadOnlyList<Product> offered)
    {
        if (!unknown.Contains(pointer))
        {
            return null;
        }

        if (fault is not null)
        {
            return new LineStatus
            {
                Line = pointer,
                Status = LineState.Unknown,
                Message = $"The data of {line.PartNumber ?? line.Item!.PartNumber} in the catalogue cannot be used: {fault.Pointer}: {fault.Detail}",
            };
        }

        if (line.Item is { } own)
        {
            return new LineStatus
            {
                Line = pointer,
                Status = LineState.Unknown,
                Message = $"The catalogue has no height of {own.PartNumber}. State heightU of {own.Id}.",
            };
        }

        var like = offered.Select(p => (Product: p, Edits: Edits.Between(line.PartNumber!, p.PartNumber, MostEdits)))
            .Where(p => p.Edits < MostEdits)
            .OrderBy(p => p.Edits).ThenBy(p => p.Product.PartNumber, StringComparer.Ordinal)
            .Select(p => p.Product)
            .FirstOrDefault();
        return new LineStatus
        {
            Line = pointer,
            Status = LineState.Unknown,
            Message = $"The catalogue has no part {line.PartNumber}." + (like is null ? "" : $" Did you mean {like.PartNumber}, {like.Name}?"),
            DidYouMean = like?.PartNumber,
        };
    }
}
