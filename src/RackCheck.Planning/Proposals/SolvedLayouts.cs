using RackCheck.Planning.Layouts;

namespace RackCheck.Planning.Proposals;

/// <summary>
/// The layouts that the searches of one request have solved. A completed basket is searched again and has mostly the same ones; a layout found here costs as
/// much of the budget as one that is solved, so that no answer depends on what was searched before.
/// </summary>
internal sealed class SolvedLayouts
{
    private readonly Dictionary<(string Problem, double Work), Layout> all = [];

    /// <summary>Solves a problem once.</summary>
    /// <param name="key">Its key.</param>
    /// <param name="problem">The problem.</param>
    /// <param name="work">Maximum work of the solver, on its own clock.</param>
    /// <param name="cancellation">Stops the solver.</param>
    public Layout Solve(string key, LayoutProblem problem, double work, CancellationToken cancellation)
    {
        if (!all.TryGetValue((key, work), out var layout))
        {
            layout = all[(key, work)] = LayoutSolver.Solve(problem, work, cancellation);
        }

        return layout;
    }
}
