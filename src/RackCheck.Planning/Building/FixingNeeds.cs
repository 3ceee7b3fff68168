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

    /// <summary>Sets of nut and screw of an item with a front panel.</summary>
    /// <param name="hasRails">Whether slides or runners are fastened for it.</param>
    /// <returns>Number of sets.</returns>
    public static int Sets(bool hasRails) => SetsAPanel + (hasRails ? SetsAPair : 0);
}
