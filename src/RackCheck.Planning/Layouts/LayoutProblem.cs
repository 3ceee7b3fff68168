using System.Globalization;
using System.Text;
using RackCheck.Model;

namespace RackCheck.Planning.Layouts;

/// <summary>An item with its load as a block of adjacent U positions.</summary>
public sealed record LayoutBlock
{
    /// <summary>Its id.</summary>
    public required string Id { get; init; }

    /// <summary>Height, U.</summary>
    public required int HeightU { get; init; }

    /// <summary>Mass, g; 0 if unknown.</summary>
    public required long MassG { get; init; }

    /// <summary>The face on which it is mounted.</summary>
    public required Face Face { get; init; }

    /// <summary>Lowest U positions that it may take, ascending.</summary>
    public required IReadOnlyList<int> Starts { get; init; }

    /// <summary>Blocks of the same kind can be exchanged without any effect.</summary>
    public required string Kind { get; init; }
}

/// <summary>Blocks that may not be directly above other blocks on the same face.</summary>
/// <param name="Lower">Indices of the lower blocks.</param>
/// <param name="Upper">Indices of the upper blocks.</param>
public sealed record ApartGroup(IReadOnlyList<int> Lower, IReadOnlyList<int> Upper);

/// <summary>Blocks to place in a cabinet: none overlaps another, and the centre of gravity is as low as possible.</summary>
public sealed record LayoutProblem
{
    /// <summary>Height of the cabinet, U.</summary>
    public required int HeightU { get; init; }

    /// <summary>The blocks.</summary>
    public required IReadOnlyList<LayoutBlock> Blocks { get; init; }

    /// <summary>Blocks that need a free U between them.</summary>
    public IReadOnlyList<ApartGroup> Apart { get; init; } = [];

    /// <summary>Indices of blocks on opposite faces that are too deep to share a U position.</summary>
    public IReadOnlyList<(int Front, int Rear)> Meeting { get; init; } = [];

    /// <summary>Indices of blocks of one face that are directly one above the other, each list from the lowest up. No block is in two of them.</summary>
    public IReadOnlyList<IReadOnlyList<int>> Stacks { get; init; } = [];

    /// <summary>Sets of placements that may not occur together.</summary>
    public IReadOnlyList<IReadOnlyList<(int Block, int Start)>> Forbidden { get; init; } = [];

    /// <summary>Text that is the same for the same problem.</summary>
    /// <returns>The text.</returns>
    public string Key()
    {
        var text = new StringBuilder().Append(CultureInfo.InvariantCulture, $"{HeightU}");
        foreach (var block in Blocks)
        {
            // Ids and kinds come from the request: their lengths keep any text apart from what follows.
            text.Append(
                CultureInfo.InvariantCulture,
                $"\nblock {block.Id.Length} {block.Id} {block.HeightU} {block.MassG} {(int)block.Face} {block.Kind.Length} {block.Kind}");
            Append(block.Starts);
        }

        foreach (var group in Apart)
        {
            text.Append("\napart");
            Append(group.Lower);
            text.Append(" below");
            Append(group.Upper);
        }

        foreach (var (front, rear) in Meeting)
        {
            text.Append(CultureInfo.InvariantCulture, $"\nmeet {front} {rear}");
        }

        foreach (var stack in Stacks)
        {
            text.Append("\nstack");
            Append(stack);
        }

        foreach (var placements in Forbidden)
        {
            text.Append("\nnot");
            foreach (var (block, start) in placements)
            {
                text.Append(CultureInfo.InvariantCulture, $" {block}@{start}");
            }
        }

        return text.ToString();

        void Append(IReadOnlyList<int> numbers)
        {
            foreach (var number in numbers)
            {
                text.Append(' ').Append(number);
            }
        }
    }

    /// <summary>Sum of mass times height of the centre above the bottom of U1, in g and half U.</summary>
    /// <param name="starts">Lowest U position of each block.</param>
    /// <returns>The sum.</returns>
    public long MomentOf(IReadOnlyList<int> starts)
    {
        var moment = 0L;
        for (var i = 0; i < Blocks.Count; i++)
        {
            moment += Blocks[i].MassG * ((2L * (starts[i] - 1)) + Blocks[i].HeightU);
        }

        return moment;
    }

    /// <summary>No placement has a moment below this: all blocks stacked without a gap in falling order of mass per height.</summary>
    /// <returns>The moment.</returns>
    /// <remarks>Any exchange of two neighbours in that order raises the moment.</remarks>
    public long LeastMoment()
    {
        var moment = 0L;
        foreach (var face in Blocks.GroupBy(b => b.Face))
        {
            var bottom = 0;
            foreach (var block in face.OrderByDescending(b => (double)b.MassG / b.HeightU))
            {
                moment += block.MassG * ((2L * bottom) + block.HeightU);
                bottom += block.HeightU;
            }
        }

        return moment;
    }
}

/// <summary>Positions of all blocks, or that there are none.</summary>
public sealed record Layout
{
    /// <summary>Lowest U position of each block; null if none were found.</summary>
    public IReadOnlyList<int>? Starts { get; init; }

    /// <summary>Work of the heuristic and of the model, in thousandths of a second of a usual processor. It is counted, not timed.</summary>
    public double Work { get; init; }

    /// <summary>Whether the solver was needed, and not only bounds and the heuristic.</summary>
    public bool IsSearched { get; init; }

    /// <summary>Whether it is proven that no positions exist.</summary>
    public bool IsImpossible { get; init; }

    /// <summary>No positions have a moment below this, g and half U.</summary>
    public long LeastMoment { get; init; }

    /// <summary>Whether the positions are proven to be the best, or that there are none.</summary>
    /// <param name="problem">The problem that it solves.</param>
    /// <returns>Whether it is proven.</returns>
    public bool IsProven(LayoutProblem problem) => IsImpossible || (Starts is { } starts && problem.MomentOf(starts) <= LeastMoment);
}
