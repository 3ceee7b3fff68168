using RackCheck.Model;
using RackCheck.Planning.Layouts;
using RackCheck.Testing;

namespace RackCheck.Planning.Tests.Layouts;

public sealed class LayoutSolverTests
{
    private const double Work = 10;

    [Fact]
    public void Positions_are_the_best_of_all_in_small_racks()
    {
        var random = new Random(4);
        for (var run = 0; run < Samples.Of(400); run++)
        {
            var problem = Small(random);
            var best = BestOfAll(problem);
            var layout = LayoutSolver.Solve(problem, Work, default);
            Assert.Equal(best is null, layout.IsImpossible);
            Assert.True(layout.IsProven(problem));
            if (best is { } least)
            {
                Assert.True(IsAllowed(problem, [.. layout.Starts!]));
                Assert.Equal(least, problem.MomentOf(layout.Starts!));
                Assert.Equal(least, layout.LeastMoment);
            }
        }
    }

    [Fact]
    public void Stacked_blocks_are_the_best_of_all_in_small_racks()
    {
        var random = new Random(6);
        var (stacked, impossible) = (0, 0);
        for (var run = 0; run < Samples.Of(400, least: 60); run++)
        {
            var problem = Small(random);
            int[] front = [.. problem.Blocks.Index().Where(b => b.Item.Face == Face.Front).Select(b => b.Index)];
            random.Shuffle(front);
            problem = problem with { Meeting = [], Stacks = [front[..Math.Min(front.Length, random.Next(2, 4))]] };
            if (front.Length < 2)
            {
                continue;
            }

            var best = BestOfAll(problem);
            var layout = LayoutSolver.Solve(problem, Work, default);
            Assert.Equal(best is null, layout.IsImpossible);
            Assert.True(layout.IsProven(problem));
            (stacked, impossible) = best is null ? (stacked, impossible + 1) : (stacked + 1, impossible);
            if (best is { } least)
            {
                Assert.True(IsAllowed(problem, [.. layout.Starts!]));
                Assert.Equal(least, problem.MomentOf(layout.Starts!));
                Assert.Equal(least, layout.LeastMoment);
            }
        }

        Assert.True(stacked >= 10 && impossible >= 10, $"{stacked} stacked, {impossible} impossible");
    }

    // At the other face there is a body as deep behind U2: the stack of two may not be there.
    [Fact]
    public void A_stack_shares_no_U_with_what_one_of_its_blocks_meets()
    {
        LayoutBlock Block(string id, Face face, params int[] starts) =>
            new() { Id = id, HeightU = 1, MassG = 1000, Face = face, Starts = starts, Kind = id };
        var problem = new LayoutProblem
        {
            HeightU = 4,
            Blocks = [Block("lower", Face.Front, 1, 2, 3), Block("upper", Face.Front, 2, 3, 4), Block("deep", Face.Rear, 2)],
            Meeting = [(1, 2)],
            Stacks = [[0, 1]],
        };
        var layout = LayoutSolver.Solve(problem, Work, default);
        Assert.Equal([3, 4, 2], layout.Starts!);
        Assert.True(layout.IsProven(problem));
    }

    // First fit, falling height: what a person with a list does.
    [Fact]
    public void Positions_are_never_worse_than_first_fit()
    {
        var random = new Random(8);
        var (better, fits, alone, lowered) = (0, 0, 0, 0.0);
        for (var run = 0; run < Samples.Of(200); run++)
        {
            var problem = Large(random);
            var layout = LayoutSolver.Solve(problem, 0.1, default);
            if (FirstFit(problem) is { } starts)
            {
                fits++;
                Assert.NotNull(layout.Starts);
                Assert.True(problem.MomentOf(layout.Starts) <= problem.MomentOf(starts));
                better += problem.MomentOf(layout.Starts) < problem.MomentOf(starts) ? 1 : 0;
                lowered += 1 - ((double)problem.MomentOf(layout.Starts) / problem.MomentOf(starts));
            }
            else if (layout.Starts is not null)
            {
                alone++;
            }

            Assert.True(layout.Starts is null || IsAllowed(problem, [.. layout.Starts]));
            Assert.True(layout.Starts is null || problem.MomentOf(layout.Starts) >= layout.LeastMoment);
        }

        // The centre of gravity, a third lower or more on average; and lists that first fit does not place at all.
        Assert.True(
            2 * better >= fits && 3 * lowered >= fits && alone > fits,
            $"Better in {better} of {fits}, by {lowered / fits:P1} on average; {alone} that do not fit otherwise.");
    }

    // All blocks meet all at the other face: as one cabinet of twice the items.
    [Fact]
    public void Deep_equipment_on_both_faces_shares_no_U()
    {
        LayoutBlock Block(int i) => new()
        {
            Id = $"box-{i}", HeightU = 1, MassG = 1000 * (i + 1), Face = i % 2 == 0 ? Face.Front : Face.Rear,
            Starts = [.. Enumerable.Range(1, 40)], Kind = $"box-{i}",
        };
        var problem = new LayoutProblem
        {
            HeightU = 40,
            Blocks = [.. Enumerable.Range(0, 40).Select(Block)],
            Meeting = [.. Enumerable.Range(0, 20).SelectMany(f => Enumerable.Range(0, 20).Select(r => (2 * f, (2 * r) + 1)))],
        };
        var layout = LayoutSolver.Solve(problem, 1, default);
        Assert.True(IsAllowed(problem, [.. layout.Starts!]));
        Assert.Equal(Enumerable.Range(1, 40), layout.Starts!.Order());
        Assert.True(layout.Work > 0);
    }

    // The bound is reached at once where nothing keeps the blocks apart, whatever their number.
    [Fact]
    public void Search_ends_where_its_bound_is_reached()
    {
        var problem = Large(new Random(2));
        var free = problem with { HeightU = 60, Blocks = [.. problem.Blocks.Select(b => b with { Starts = [.. Enumerable.Range(1, 61 - b.HeightU)] })] };
        var layout = LayoutSolver.Solve(free, Work, default);
        Assert.True(layout.IsProven(free));
        Assert.False(layout.IsSearched);
        Assert.Equal(0.0006 * free.Blocks.Count, layout.Work, tolerance: 1e-9);
    }

    // A free U between two heavy blocks keeps the bound out of reach: 3 kg at 1 to 2, 4 to 5 U in place of 1 to 2, 3 to 4.
    [Fact]
    public void Positions_that_are_low_enough_need_no_proof()
    {
        LayoutBlock Block(string id) => new() { Id = id, HeightU = 2, MassG = 3000, Face = Face.Front, Starts = [1, 2, 3, 4, 5], Kind = id };
        var problem = new LayoutProblem { HeightU = 6, Blocks = [Block("lower"), Block("upper")], Apart = [new ApartGroup([0, 1], [0, 1])] };
        var (proven, enough, low) = (
            LayoutSolver.Solve(problem, Work, default), LayoutSolver.Solve(problem, Work, default, 1.25), LayoutSolver.Solve(problem, Work, default, 1.2));
        Assert.Equal((true, false, true), (proven.IsSearched, enough.IsSearched, low.IsSearched));
        Assert.Equal((30_000, 24_000), (problem.MomentOf([.. enough.Starts!]), enough.LeastMoment));
        Assert.Equal((true, false), (proven.IsProven(problem), enough.IsProven(problem)));
    }

    [Fact]
    public void Same_problem_gives_the_same_positions()
    {
        var problem = Large(new Random(3));
        Assert.Equal(LayoutSolver.Solve(problem, Work, default).Starts, LayoutSolver.Solve(problem, Work, default).Starts);
    }

    // A layout is solved once for each key.
    [Fact]
    public void Different_problems_have_different_keys()
    {
        LayoutBlock Block(string id, string kind = "kind") =>
            new() { Id = id, HeightU = 2, MassG = 1000, Face = Face.Front, Starts = [1, 2], Kind = kind };
        var first = new LayoutProblem { HeightU = 6, Blocks = [Block("a"), Block("b")] };
        LayoutProblem[] all =
        [
            first,
            first with { HeightU = 7 },
            first with { Blocks = [Block("a"), Block("b 2")] },
            first with { Blocks = [Block("a b"), Block("2")] },
            first with { Blocks = [Block("a", "kind 1"), Block("b")] },
            first with { Blocks = [Block("a") with { Starts = [1] }, Block("b")] },
            first with { Blocks = [Block("a") with { Face = Face.Rear }, Block("b")] },
            first with { Blocks = [Block("a") with { MassG = 1001 }, Block("b")] },
            first with { Blocks = [Block("a")] },
            first with { Apart = [new ApartGroup([0], [1])] },
            first with { Apart = [new ApartGroup([0, 1], [])] },
            first with { Meeting = [(0, 1)] },
            first with { Stacks = [[0, 1]] },
            first with { Stacks = [[1, 0]] },
            first with { Forbidden = [[(0, 1)]] },
            first with { Forbidden = [[(0, 1), (1, 2)]] },
            first with { Forbidden = [[(0, 1)], [(1, 2)]] },
        ];
        Assert.Distinct(all.Select(p => p.Key()));
        Assert.Equal(first.Key(), (first with { Blocks = [Block("a"), Block("b")] }).Key());
    }

    [Fact]
    public async Task Cancelled_search_stops()
    {
        using var cancellation = new CancellationTokenSource();
        var problem = Large(new Random(5)) with { Apart = [new ApartGroup([.. Enumerable.Range(0, 12)], [.. Enumerable.Range(0, 12)])], HeightU = 55 };
        var search = Task.Run(() => LayoutSolver.Solve(problem, 1e6, cancellation.Token));
        await cancellation.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => search);
    }

    private static LayoutProblem Small(Random random)
    {
        var height = random.Next(4, 9);
        var blocks = Enumerable.Range(0, random.Next(1, 5)).Select(i =>
        {
            var units = random.Next(1, 4);
            var starts = Enumerable.Range(1, Math.Max(1, height - units + 1)).Where(u => u + units - 1 <= height && random.Next(5) > 0).ToArray();
            return new LayoutBlock
            {
                Id = $"box-{i}",
                HeightU = units,
                MassG = 1000 * random.Next(0, 30),
                Face = random.Next(5) == 0 ? Face.Rear : Face.Front,
                Starts = starts,
                Kind = $"box-{i}",
            };
        }).ToArray();
        int[] front = [.. blocks.Index().Where(b => b.Item.Face == Face.Front).Select(b => b.Index)];
        int[] rear = [.. blocks.Index().Where(b => b.Item.Face == Face.Rear).Select(b => b.Index)];
        return new LayoutProblem
        {
            HeightU = height,
            Blocks = blocks,
            Apart = random.Next(2) == 0 ? [] : [new ApartGroup([.. front.Take(2)], front)],
            Meeting = [.. front.SelectMany(f => rear.Where(_ => random.Next(2) == 0).Select(r => (f, r)))],
            Forbidden = random.Next(3) > 0 ? [] : [[.. blocks.Index().Where(b => b.Item.Starts.Count > 0).Take(2).Select(b => (b.Index, b.Item.Starts[0]))]],
        };
    }

    private static LayoutProblem Large(Random random)
    {
        var blocks = Enumerable.Range(0, random.Next(10, 25)).Select(i =>
        {
            var (units, mass) = (random.Next(1, 5), 1000 * random.Next(2, 40));
            var window = random.Next(8) == 0 ? Enumerable.Range(14, 8) : Enumerable.Range(1, 42 - units + 1);
            return new LayoutBlock
            {
                Id = $"box-{i}", HeightU = units, MassG = mass, Face = Face.Front, Starts = [.. window], Kind = $"{units} {mass} {window.Count()}",
            };
        }).ToArray();
        return new LayoutProblem { HeightU = 42, Blocks = blocks };
    }

    private static int[]? FirstFit(LayoutProblem problem)
    {
        var starts = new int[problem.Blocks.Count];
        var free = Enumerable.Repeat(true, problem.HeightU + 1).ToArray();
        foreach (var (index, block) in problem.Blocks.Index().OrderByDescending(b => b.Item.HeightU).ThenByDescending(b => b.Item.MassG))
        {
            var start = block.Starts.FirstOrDefault(u => free.AsSpan(u, block.HeightU).IndexOf(false) < 0);
            if (start == 0)
            {
                return null;
            }

            free.AsSpan(start, block.HeightU).Clear();
            starts[index] = start;
        }

        return starts;
    }

    private static long? BestOfAll(LayoutProblem problem)
    {
        var starts = new int[problem.Blocks.Count];
        long? best = null;
        Try(0);
        return best;

        void Try(int block)
        {
            if (block == starts.Length)
            {
                best = IsAllowed(problem, starts) ? Math.Min(best ?? long.MaxValue, problem.MomentOf(starts)) : best;
                return;
            }

            foreach (var start in problem.Blocks[block].Starts)
            {
                starts[block] = start;
                Try(block + 1);
            }
        }
    }

    // Written from the definition, cell by cell.
    private static bool IsAllowed(LayoutProblem problem, int[] starts)
    {
        var cells = problem.Blocks.Select((b, i) => Enumerable.Range(starts[i], b.HeightU).ToHashSet()).ToArray();
        for (var i = 0; i < cells.Length; i++)
        {
            if (!problem.Blocks[i].Starts.Contains(starts[i]) || cells[i].Max() > problem.HeightU)
            {
                return false;
            }

            for (var j = 0; j < cells.Length; j++)
            {
                var meets = i != j && (problem.Blocks[i].Face == problem.Blocks[j].Face || problem.Meeting.Contains((i, j)));
                var isApart = problem.Blocks[i].Face == problem.Blocks[j].Face && problem.Apart.Any(g => g.Lower.Contains(i) && g.Upper.Contains(j));
                if ((meets && cells[i].Overlaps(cells[j])) || (isApart && starts[j] == cells[i].Max() + 1))
                {
                    return false;
                }
            }
        }

        if (problem.Stacks.Any(s => s.Zip(s.Skip(1)).Any(p => starts[p.Second] != cells[p.First].Max() + 1)))
        {
            return false;
        }

        return !problem.Forbidden.Any(f => f.Count > 0 && f.All(p => starts[p.Block] == p.Start));
    }
}
