using RackCheck.Planning.Layouts;

namespace RackCheck.Planning.Proposals;

/// <summary>
/// The layouts that the searches of one request have solved. A completed basket is searched again and has mostly the same ones; a layout of another search
/// costs as much of the budget as one that is solved, so that no answer depends on what was searched before.
/// </summary>
internal sealed class SolvedLayouts
{
    private readonly Dictionary<(string Problem, double Work), Layout> all = [];

    /// <summary>Work that the searches took together, without what layouts found here would have cost.</summary>
    public double Work { get; set; }

    /// <summary>Ratio to the least moment with which positions are low enough; 1 for the lowest.</summary>
    public double Enough { get; init; } = 1;

    /// <summary>Solves a problem once.</summary>
    /// <param name="key">Its key.</param>
    /// <param name="problem">The problem.</param>
    /// <param name="work">Maximum work of the solver, on its own clock.</param>
    /// <param name="cancellation">Stops the solver.</param>
    /// <returns>The layout, and whether it was solved before.</returns>
    public (Layout Layout, bool IsKnown) Solve(string key, LayoutProblem problem, double work, CancellationToken cancellation)
    {
        if (all.TryGetValue((key, work), out var known))
        {
            return (known, true);
        }

        return (all[(key, work)] = LayoutSolver.Solve(problem, work, cancellation, Enough), false);
    }
}
