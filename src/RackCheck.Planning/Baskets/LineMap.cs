using RackCheck.Model;
using RackCheck.Planning.Building;
using RackCheck.Planning.Proposals;

namespace RackCheck.Planning.Baskets;

/// <summary>Maps the parts of a rack to the lines of the request. If a part number is on several lines, the first line is used first.</summary>
internal sealed class LineMap
{
    private readonly BasketLines lines;
    private readonly Dictionary<string, List<(int Line, long From, long To)>> pieces = new(StringComparer.Ordinal);

    /// <summary>Assigns the pieces of known products to their lines.</summary>
    public LineMap(BasketLines lines)
    {
        this.lines = lines;
        foreach (var (index, line) in lines.Request.Lines.Index())
        {
            if (lines.ProductOf(line) is not { } product)
            {
                continue;
            }

            if (!pieces.TryGetValue(product.PartNumber, out var of))
            {
                pieces[product.PartNumber] = of = [];
            }

            var from = of.Count == 0 ? 0 : of[^1].To;
            of.Add((index, from, from + ((long)line.Quantity * Stock.PiecesOf(product))));
        }
    }

    /// <summary>Index of the line of a piece; null if no line contains it.</summary>
    public int? LineOf(Piece piece)
    {
        if (OwnEquipment.IdOf(piece.PartNumber) is { } id)
        {
            return lines.LineOfItem(id);
        }

        foreach (var (line, from, to) in pieces.GetValueOrDefault(piece.PartNumber) ?? [])
        {
            if (piece.Ordinal >= from && piece.Ordinal < to)
            {
                return line;
            }
        }

        return null;
    }

    /// <summary>Lines that a finding is about: those of the items themselves, or of parts fitted to them.</summary>
    /// <returns>Indices of the lines, the main cause first.</returns>
    public IReadOnlyList<int> LinesOf(Trial trial, Finding finding) => [.. finding.Pointers.SelectMany(p => LinesOf(trial, p)).Distinct()];

    private IEnumerable<int> LinesOf(Trial trial, string pointer)
    {
        var (build, rack) = (trial.Completed.RackBuild, trial.Rack);
        var steps = pointer.Split('/');
        IEnumerable<Piece?> from = steps switch
        {
            [_, "items", var index, .. var rest] when int.TryParse(index, out var i) && i < rack.Items.Count
                && build.Items.Find(b => b.Id == rack.Items[i].Id) is { } item => OfItem(item, rest),
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
            .Where(p => pointer == p.Key || pointer.StartsWith(p.Key + "/", StringComparison.Ordinal)
                || (pointer.StartsWith("/cooling/", StringComparison.Ordinal) && p.Key.StartsWith(pointer + "/", StringComparison.Ordinal)))
            .Select(p => (Piece?)p.Value)
            .ToArray();
        return fitted.Length > 0 ? fitted : pointer.StartsWith("/cabinet", StringComparison.Ordinal) ? [build.CabinetPiece] : [];
    }
}
