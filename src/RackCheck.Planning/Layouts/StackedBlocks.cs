namespace RackCheck.Planning.Layouts;

/// <summary>A problem in which each stack is one block: what is best for it is best for the blocks of the stacks.</summary>
internal sealed class StackedBlocks
{
    // For each block of the original problem its block in the other, and how far above the bottom of that it begins, U.
    private readonly (int Block, int AboveU)[] places;

    // What the moments of both problems differ in, wherever the stacks are, g and half U.
    private readonly long moment;

    private StackedBlocks(LayoutProblem problem, (int Block, int AboveU)[] places, long moment) =>
        (Problem, this.places, this.moment) = (problem, places, moment);

    /// <summary>The problem without stacks.</summary>
    public LayoutProblem Problem { get; }

    /// <summary>Makes one block of each stack.</summary>
    /// <param name="problem">The problem.</param>
    /// <returns>The problem without stacks; null if blocks of a stack may not be mounted so.</returns>
    /// <remarks>
    /// A stack meets a block of the other face if one of its blocks does, whichever U position they would share: no position is allowed that is wrong, but one
    /// or the other that is right is not.
    /// </remarks>
    public static StackedBlocks? Of(LayoutProblem problem)
    {
        var alone = Enumerable.Range(0, problem.Blocks.Count).Except(problem.Stacks.SelectMany(s => s)).Select(i => (IReadOnlyList<int>)[i]);
        IReadOnlyList<int>[] stacks = [.. alone.Concat(problem.Stacks).OrderBy(s => s.Min())];
        if (stacks.Any(s => s.Zip(s.Skip(1)).Any(p => problem.Apart.Any(g => g.Lower.Contains(p.First) && g.Upper.Contains(p.Second)))))
        {
            return null;
        }

        var places = new (int Block, int AboveU)[problem.Blocks.Count];
        var moment = 0L;
        List<LayoutBlock> blocks = [];
        foreach (var stack in stacks)
        {
            var heightU = 0;
            foreach (var index in stack)
            {
                places[index] = (blocks.Count, heightU);
                heightU += problem.Blocks[index].HeightU;
            }

            blocks.Add(BlockOf(problem, stack, heightU, places));
            moment += stack.Sum(i => problem.Blocks[i].MassG * ((2L * places[i].AboveU) + problem.Blocks[i].HeightU)) - (blocks[^1].MassG * heightU);
        }

        return new StackedBlocks(
            new LayoutProblem
            {
                HeightU = problem.HeightU,
                Blocks = blocks,
                Apart =
                [
                    .. problem.Apart.Select(g => new ApartGroup(
                        [.. stacks.Index().Where(s => g.Lower.Contains(s.Item[^1])).Select(s => s.Index)],
                        [.. stacks.Index().Where(s => g.Upper.Contains(s.Item[0])).Select(s => s.Index)])),
                ],
                Meeting = [.. problem.Meeting.Select(m => (places[m.Front].Block, places[m.Rear].Block)).Distinct()],
                Forbidden =
                [
                    .. problem.Forbidden
                        .Select(f => f.Select(p => (places[p.Block].Block, Start: p.Start - places[p.Block].AboveU)).Distinct().ToArray())
                        .Where(f => f.DistinctBy(p => p.Block).Count() == f.Length),
                ],
            },
            places,
            moment);
    }

    /// <summary>The layout of the original problem.</summary>
    /// <param name="layout">The layout of the problem without stacks.</param>
    public Layout Unstacked(Layout layout) => layout.IsImpossible ? layout : layout with
    {
        Starts = layout.Starts is { } starts ? [.. places.Select(p => starts[p.Block] + p.AboveU)] : null,
        LeastMoment = layout.LeastMoment + moment,
    };

    private static LayoutBlock BlockOf(LayoutProblem problem, IReadOnlyList<int> stack, int heightU, (int Block, int AboveU)[] places)
    {
        if (stack is [var only])
        {
            return problem.Blocks[only];
        }

        LayoutBlock[] members = [.. stack.Select(i => problem.Blocks[i])];
        return new LayoutBlock
        {
            Id = string.Join('\n', members.Select(m => m.Id)),
            HeightU = heightU,
            MassG = members.Sum(m => m.MassG),
            Face = members[0].Face,
            Starts = [.. members[0].Starts.Where(u => stack.All(i => problem.Blocks[i].Starts.Contains(u + places[i].AboveU)))],
            Kind = string.Join('\n', members.Select(m => m.Kind)),
        };
    }
}
