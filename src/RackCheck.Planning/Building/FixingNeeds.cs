using RackCheck.Model;

namespace RackCheck.Planning.Building;

/// <summary>Nuts and screws that fasten equipment to the uprights.</summary>
public static class FixingNeeds
{
    /// <summary>Sets of nut and screw of a front panel. Common practice, no source.</summary>
    public const int SetsAPanel = 4;

    /// <summary>Sets of nut and screw of a pair of slides or runners. Common practice, no source.</summary>
    public const int SetsAPair = 4;

    /// <summary>The fixing that suits the holes of the uprights.</summary>
    /// <param name="hole">The holes; null for the usual square ones.</param>
    /// <returns>The fixing.</returns>
    public static Fixing For(UprightHole? hole) => hole switch
    {
        UprightHole.Round => Fixing.ClipNut,
        UprightHole.Threaded => Fixing.Screw,
        _ => Fixing.CageNut,
    };

    /// <summary>
    /// Whether slides or runners of an item take sets of the order, whoever supplies them. Those in the box of the equipment come with theirs.
    /// </summary>
    /// <param name="support">How the item is supported; null if unknown.</param>
    /// <param name="product">Its product; null if the catalogue has none.</param>
    /// <returns>Whether they do.</returns>
    public static bool FastensPair(SupportStyle? support, Product? product) =>
        support is SupportStyle.Slides or SupportStyle.Runners && product?.RailsIncluded != true;

    /// <summary>Sets of nut and screw of the order for an item with a front panel.</summary>
    /// <param name="support">How the item is supported; null if unknown.</param>
    /// <param name="product">Its product; null if the catalogue has none.</param>
    /// <returns>Number of sets.</returns>
    public static int Sets(SupportStyle? support, Product? product) => SetsAPanel + (FastensPair(support, product) ? SetsAPair : 0);
}
