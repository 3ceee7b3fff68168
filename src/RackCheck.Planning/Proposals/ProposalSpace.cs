using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Planning.Proposals;

/// <summary>Height and centre of gravity of the equipment of a rack, and the least centre of gravity that any order of it has.</summary>
public sealed class ProposalSpace
{
    /// <summary>Works out the space of a rack in which everything has a position.</summary>
    /// <param name="rack">The rack with the data of its part numbers.</param>
    public ProposalSpace(RackDescription rack)
    {
        // Panels that close free units go when the units are used.
        MountedItem[] mounted = [.. new RackSurvey(rack).Items.Where(i => i is { HeightU: > 0, Bottom: not null, Category: not ItemCategory.BlankingPanel })];
        UsedU = mounted.Sum(ClaimU);
        var kg = mounted.Sum(MassSurvey.LoadedKg);
        if (kg > 0)
        {
            var unit = RackGeometry.UnitMm / kg;
            CentreMm = unit * mounted.Sum(i => MassSurvey.LoadedKg(i) * (i.Bottom!.Value - 1 + (ClaimU(i) / 2.0)));
            LeastCentreMm = unit * mounted.GroupBy(i => i.Face).Sum(LeastMoment);
        }
    }

    /// <summary>Height that the equipment takes, U.</summary>
    public int UsedU { get; }

    /// <summary>Centre of gravity of the equipment above the bottom of U1, mm; null without any mass.</summary>
    public double? CentreMm { get; }

    /// <summary>No order of this equipment on these faces has a centre of gravity below this, mm.</summary>
    public double LeastCentreMm { get; }

    private static int ClaimU(MountedItem item) => item.HeightU + item.LoadHeightU;

    // Stacked without a gap in falling order of mass per height. Any exchange of two neighbours raises the moment.
    private static double LeastMoment(IEnumerable<MountedItem> stack)
    {
        var (moment, bottom) = (0.0, 0);
        foreach (var item in stack.OrderByDescending(i => MassSurvey.LoadedKg(i) / ClaimU(i)))
        {
            moment += MassSurvey.LoadedKg(item) * (bottom + (ClaimU(item) / 2.0));
            bottom += ClaimU(item);
        }

        return moment;
    }
}
