using RackCheck.Model;
using RackCheck.Remedies.Verification;

namespace RackCheck.Planning.Proposals;

/// <summary>
/// The work that the search for racks may take, in thousandths of a second of a usual processor. It is counted by what is done and for how many
/// items, never by the clock, so that the same request ends at the same place on every machine.
/// </summary>
/// <param name="work">Work at the start, 0 or more.</param>
public sealed class SearchBudget(double work)
{
    /// <summary>Work of a quick search for racks.</summary>
    public const double Quick = 450;

    /// <summary>Work of one search for the racks of a basket, which is searched twice or more.</summary>
    public const double Basket = 110;

    /// <summary>Work of a thorough search for racks.</summary>
    public const double Thorough = 20_000;

    // Measured: a search that is cut takes about as long as its clock says, of which one that ends by itself takes a tenth or two.
    private const double OfSolvedSecond = 1000;
    private const double ShareOfEnded = 0.1;

    // What the search for a conflict may take of the work that the search for racks may.
    private const double ShareOfConflict = 0.4;

    private readonly HashSet<string> layouts = new(StringComparer.Ordinal);

    /// <summary>Work taken so far.</summary>
    public double Spent { get; private set; }

    /// <summary>What of it was known from a search before, and not done.</summary>
    public double Known { get; private set; }

    /// <summary>Whether something was not tried because the work was spent.</summary>
    public bool IsCut { get; private set; }

    /// <summary>The budget of a request.</summary>
    /// <param name="isThorough">Whether the search goes on to the proof.</param>
    /// <returns>The budget.</returns>
    public static SearchBudget Of(bool isThorough) => new(isThorough ? Thorough : Quick);

    /// <summary>A further budget, for finding out which requirements are in conflict.</summary>
    /// <returns>The budget.</returns>
    public SearchBudget OfConflict() => new(work * ShareOfConflict);

    /// <summary>Whether work is left for another step.</summary>
    /// <returns>Whether the step may be taken.</returns>
    public bool Allows()
    {
        IsCut |= Spent >= work;
        return Spent < work;
    }

    /// <summary>Counts work that was done.</summary>
    /// <param name="cost">Its cost.</param>
    public void Spend(double cost) => Spent += cost;

    /// <summary>Counts the work of a layout, once in this search. One that is known from another search counts as if it was solved.</summary>
    /// <param name="key">Key of its problem.</param>
    /// <param name="cost">Its cost.</param>
    /// <param name="isKnown">Whether it was solved before, in this search or in another one.</param>
    public void SpendOnLayout(string key, double cost, bool isKnown)
    {
        if (layouts.Add(key))
        {
            Spent += cost;
            Known += isKnown ? cost : 0;
        }
    }

    /// <summary>Size of a rack: its items, and PDUs beyond the usual ones.</summary>
    /// <param name="rack">The rack.</param>
    /// <returns>The size, in items.</returns>
    public static int SizeOf(RackDescription rack) => rack.Items.Count + RemedyTrials.FurtherPdus(rack);

    /// <summary>Completing the parts of a rack and checking it.</summary>
    /// <param name="items">Its size, in items.</param>
    /// <returns>The cost.</returns>
    public static double CostOfRack(int items) => 2 + (0.3 * items);

    /// <summary>Checking whether a cabinet is proven to be unsuitable.</summary>
    /// <param name="items">Number of items.</param>
    /// <returns>The cost.</returns>
    public static double CostOfRefutation(int items) => 0.1 + (0.003 * items);

    /// <summary>Checking a rack without trials of remedies.</summary>
    /// <param name="items">Its size, in items.</param>
    /// <returns>The cost.</returns>
    public static double CostOfCheck(int items) => 1 + (0.15 * items);

    /// <summary>Solving by the solver.</summary>
    /// <param name="seconds">What it may take on its own clock, which counts operations.</param>
    /// <param name="hasEnded">Whether it ended by itself. What it took is not known: the last digit of its clock differs between runs.</param>
    /// <returns>The cost.</returns>
    public static double CostOfSolver(double seconds, bool hasEnded) => OfSolvedSecond * seconds * (hasEnded ? ShareOfEnded : 1);

    /// <summary>Trials of remedies.</summary>
    /// <param name="trials">Their work, in checks of a rack of the usual size.</param>
    /// <returns>The cost.</returns>
    public static double CostOfRemedies(double trials) => 0.1 * trials;
}
