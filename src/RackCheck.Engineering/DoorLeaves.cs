namespace RackCheck.Engineering;

/// <summary>Leaves of a cabinet door: their width, and where their mass stands with the door open.</summary>
/// <remarks>
/// Source: statics. The leaves together are as wide as the cabinet. A leaf is hinged at the outer front corner and stands open at a right angle.
/// </remarks>
public static class DoorLeaves
{
    /// <summary>Width of one leaf, which is the aisle that it needs to open: the width of the cabinet, half of it with two leaves.</summary>
    /// <param name="cabinetWidthMm">Overall width of the cabinet, mm, above 0.</param>
    /// <param name="leaves">Number of leaves, 1 or 2.</param>
    /// <returns>Width, mm. Example: 800 gives 800 with one leaf and 400 with two.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double WidthMm(double cabinetWidthMm, int leaves)
    {
        Require.Positive(cabinetWidthMm);
        ArgumentOutOfRangeException.ThrowIfLessThan(leaves, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(leaves, 2);
        return cabinetWidthMm / leaves;
    }

    /// <summary>Position of the mass of an open door: half a leaf in front of the outer front face.</summary>
    /// <param name="massKg">Mass of the door, all leaves together, kg, 0 or more.</param>
    /// <param name="cabinetWidthMm">Overall width of the cabinet, mm, above 0.</param>
    /// <param name="leaves">Number of leaves, 1 or 2.</param>
    /// <param name="heightMm">Height of the centre of the door above the floor, mm, 0 or more.</param>
    /// <returns>The mass. One leaf stands to one side; the sideways moment is not included.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <example>20 kg, 600 wide: 300 in front; with two leaves 150; 800 wide 400.</example>
    public static PointMass Open(double massKg, double cabinetWidthMm, int leaves, double heightMm)
    {
        Require.NotNegative(massKg);
        Require.NotNegative(heightMm);
        return new(-WidthMm(cabinetWidthMm, leaves) / 2, 0, heightMm, massKg);
    }
}
