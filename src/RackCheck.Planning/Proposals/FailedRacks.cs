using RackCheck.Model;
using RackCheck.Planning.Building;
using RackCheck.Rules.Cooling;
using RackCheck.Rules.Service;
using RackCheck.Survey;

namespace RackCheck.Planning.Proposals;

/// <summary>
/// What racks with an open error say of cabinets that were not tried yet, so that a search does not fail three times for one reason. It proves nothing: a
/// cabinet that is passed over stays open.
/// </summary>
/// <param name="task">What is to be built.</param>
internal sealed class FailedRacks(ProposalTask task)
{
    // Errors that another cabinet has as well if it lets air through too, whatever its size.
    private static readonly HashSet<string> OfOpenDoors = [RuleChecks.IdOf<CoolerOpen>(), RuleChecks.IdOf<InletLimit>()];

    private readonly List<Trial> all = [];

    /// <summary>Whether an error is the same in every cabinet: those of power and earthing, and of a KVM switch.</summary>
    public static bool IsOfAnyCabinet(Finding error) =>
        error.Rule.StartsWith("power.", StringComparison.Ordinal)
        || error.Rule.StartsWith("earthing.", StringComparison.Ordinal)
        || error.Rule == RuleChecks.IdOf<KvmPorts>();

    /// <summary>Whether a cabinet holds everything, and the errors of the rack, if there are any, are the same in every other.</summary>
    public static bool FitsCabinet(Trial trial) =>
        !trial.NotPlaced.Any() && trial.UnitsNotPlaced == 0 && trial.Errors.All(IsOfAnyCabinet);

    /// <summary>Whether a rack with perforated or no doors has an error that only a closed cabinet clears: no part that moves air does.</summary>
    public static bool WantsClosedCabinet(Trial trial) =>
        LetsAirThrough(trial.Rack.Cabinet!) && trial.Errors.Any(e => OfOpenDoors.Contains(e.Rule));

    /// <summary>Whether a door of a cabinet is perforated or absent.</summary>
    public static bool LetsAirThrough(Cabinet cabinet) =>
        AirPath.LetsAirThrough(cabinet.FrontDoor) == true || AirPath.LetsAirThrough(cabinet.RearDoor) == true;

    /// <summary>Adds a rack with an open error.</summary>
    public void Add(Trial trial) => all.Add(trial);

    /// <summary>Whether a rack in a cabinet is likely to fail for the same reason as one before.</summary>
    /// <param name="offer">The cabinet.</param>
    public bool SpeakAgainst(CabinetOffer offer) => IsTooLow(offer) || all.Exists(t => IsOpenToo(t, offer));

    // Deeper cabinets may take on slides what others take on shelves: one of a height is tried, and no more where that fails too.
    private bool IsTooLow(CabinetOffer offer)
    {
        Trial[] tooLow = [.. all.Where(t => t.NotPlaced.Any() && offer.HeightU < Math.Max(t.UsedU, t.Offer.HeightU + 1))];
        return tooLow.Length > 1 || Array.Exists(tooLow, t => offer.DepthMm <= t.Offer.DepthMm
            || !t.Completed.RackBuild.Items.Exists(i => i.Item.Category == ItemCategory.Shelf));
    }

    // Doors of the order may close a cabinet.
    private bool IsOpenToo(Trial trial, CabinetOffer offer) =>
        LetsAirThrough(offer.Product.Cabinet!)
        && !task.Ordered.Parts.Any(p => p.Product.Kind == ProductKind.Door)
        && WantsClosedCabinet(trial);

}
