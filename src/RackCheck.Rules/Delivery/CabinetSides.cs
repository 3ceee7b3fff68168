using RackCheck.Model;
using RackCheck.Survey.Layout;

namespace RackCheck.Rules.Delivery;

/// <summary>Pointers to the sides of the cabinet that are too long for a passage.</summary>
internal static class CabinetSides
{
    /// <summary>The shorter of width and depth.</summary>
    internal static string Short(CabinetFacts cabinet) => IsNarrow(cabinet) ? Pointers.CabinetWidth : Pointers.CabinetDepth;

    /// <summary>The longer of width and depth.</summary>
    internal static string Long(CabinetFacts cabinet) => IsNarrow(cabinet) ? Pointers.CabinetDepth : Pointers.CabinetWidth;

    private static bool IsNarrow(CabinetFacts cabinet) => cabinet.WidthMm <= cabinet.Depth.DepthMm;
}
