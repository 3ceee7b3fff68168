using RackCheck.Model;
using static System.FormattableString;

namespace RackCheck.Planning.Baskets;

/// <summary>Maps the pieces of a rack to the lines of the request. If a part number is on several lines, the first line is used first.</summary>
internal sealed class LineMap
{
    private readonly Dictionary<string, List<(int Line, long From, long To)>> pieces = new(StringComparer.Ordinal);

    /// <summary>Assigns the pieces of known products to their lines.</summary>
    public LineMap(IReadOnlyList<BasketLine> lines, IReadOnlyDictionary<string, Product> products)
    {
        for (var i = 0; i < lines.Count; i++)
        {
            if (!products.TryGetValue(lines[i].PartNumber, out var product))
            {
                continue;
            }

            if (!pieces.TryGetValue(product.PartNumber, out var of))
            {
                pieces[product.PartNumber] = of = [];
            }

            var from = of.Count == 0 ? 0 : of[^1].To;
            of.Add((i, from, from + ((long)lines[i].Quantity * Stock.PiecesOf(product))));
        }
    }

    /// <summary>JSON pointer (RFC 6901) of a line in the request.</summary>
    public static string PointerOf(int line) => Invariant($"/lines/{line}");

    /// <summary>Index of the line of a piece; null if no line contains it.</summary>
    public int? LineOf(Piece piece)
    {
        foreach (var (line, from, to) in pieces.GetValueOrDefault(piece.PartNumber) ?? [])
        {
            if (piece.Ordinal >= from && piece.Ordinal < to)
            {
                return line;
            }
        }

        return null;
    }

    /// <summary>Lines that a pointer into the rack comes from: those of the item itself, or of parts fitted to it.</summary>
    /// <returns>Indices of the lines.</returns>
    public IEnumerable<int> LinesOf(RackBuild build, string pointer)
    {
        var steps = pointer.Split('/');
        IEnumerable<Piece?> from = steps switch
        {
            [_, "items", var index, .. var rest] when int.TryParse(index, out var i) && i < build.Items.Count => OfItem(build.Items[i], rest),
            [_, "pdus", var index, ..] when int.TryParse(index, out var i) && i < build.Units.Count => [build.Units[i].Piece],
            [_, "cabinet", ..] or [_, "cooling", ..] => OfCabinet(build, pointer),
            _ => [],
        };
        return from.Where(p => p is not null).Select(p => LineOf(p!.Value)).OfType<int>();
    }

    private static IEnumerable<Piece?> OfItem(BuildItem item, string[] rest) => rest switch
    {
        ["support", "cableArm", ..] when item.CableArm is not null => [item.CableArm],
        ["support", ..] when item.Rails is not null => [item.Rails, item.Piece],
        ["earthLead", ..] when item.Lead is not null => [item.Lead, item.Piece],
        _ => [item.Piece],
    };

    private static Piece?[] OfCabinet(RackBuild build, string pointer)
    {
        var fitted = build.CabinetParts
            .Where(p => pointer == p.Key || pointer.StartsWith(p.Key + "/", StringComparison.Ordinal))
            .Select(p => (Piece?)p.Value)
            .ToArray();
        return fitted.Length > 0 ? fitted : pointer.StartsWith("/cabinet", StringComparison.Ordinal) ? [build.CabinetPiece] : [];
    }
}
