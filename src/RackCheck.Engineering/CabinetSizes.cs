using System.Collections.Immutable;

namespace RackCheck.Engineering;

/// <summary>Common cabinet sizes. Common practice, no source.</summary>
public static class CabinetSizes
{
    /// <summary>Overall depths, mm.</summary>
    public static ImmutableArray<double> DepthsMm { get; } = [600, 800, 1000, 1200];

    /// <summary>Overall widths, mm.</summary>
    public static ImmutableArray<double> WidthsMm { get; } = [600, 800];

    /// <summary>Heights of the mounting space, U.</summary>
    public static ImmutableArray<int> HeightsU { get; } = [6, 9, 12, 15, 18, 22, 24, 27, 32, 36, 42, 47];

    /// <summary>Pitch of the depth adjustment of the uprights, mm.</summary>
    public const double UprightPitchMm = 25;

    /// <summary>Default depth of one door, mm.</summary>
    public const double DoorDepthMm = 25;

    /// <summary>The smallest common depth that is at least <paramref name="neededMm"/>.</summary>
    /// <param name="neededMm">Required depth, mm.</param>
    /// <returns>Depth, mm; null where none is deep enough. Example: 615 gives 800.</returns>
    public static double? DepthAtLeast(double neededMm) =>
        DepthsMm.Where(d => !Comparison.IsOver(neededMm, d)).Cast<double?>().FirstOrDefault();

    /// <summary>The smallest common height of at least <paramref name="neededU"/>.</summary>
    /// <param name="neededU">Required height, U.</param>
    /// <returns>Height, U; null where none is high enough. Example: 43 gives 47.</returns>
    public static int? HeightAtLeast(int neededU) => HeightsU.Where(u => u >= neededU).Cast<int?>().FirstOrDefault();
}
