using RackCheck.Model;

namespace RackCheck.Survey.Layout;

/// <summary>Counts U positions from the other end of the cabinet.</summary>
public static class UnitNumbers
{
    /// <summary>A U position counted from the other end.</summary>
    /// <param name="unit">The U position.</param>
    /// <param name="heightU">Height of the cabinet, U.</param>
    public static int Turned(int unit, int heightU) => heightU + 1 - unit;

    /// <summary>A U position counted from the bottom.</summary>
    /// <param name="unit">The U position as the description has it.</param>
    /// <param name="heightU">Height of the cabinet, U.</param>
    /// <param name="numbering">How the description counts.</param>
    public static int FromBottom(int unit, int heightU, UnitNumbering? numbering) => numbering == UnitNumbering.TopDown ? Turned(unit, heightU) : unit;

    /// <summary>A position counted from the other end.</summary>
    /// <param name="position">The position.</param>
    /// <param name="heightU">Height of the cabinet, U.</param>
    public static Position Turned(Position position, int heightU) => position with { U = Turned(position.U, heightU) };

    /// <summary>A PDU whose position is counted from the other end.</summary>
    /// <param name="unit">The PDU.</param>
    /// <param name="heightU">Height of the cabinet, U.</param>
    public static Pdu Turned(Pdu unit, int heightU) => unit.Position is { } at ? unit with { Position = Turned(at, heightU) } : unit;

    /// <summary>A rack whose positions are counted from the other end.</summary>
    /// <param name="rack">The rack, with the height of its cabinet.</param>
    public static RackDescription Turned(RackDescription rack)
    {
        var heightU = rack.Cabinet!.HeightU!.Value;
        return rack with
        {
            UnitNumbering = rack.UnitNumbering == UnitNumbering.TopDown ? null : UnitNumbering.TopDown,
            Items = [.. rack.Items.Select(i => i.Position is { } at ? i with { Position = Turned(at, heightU) } : i)],
            Pdus = rack.Pdus is { } units ? [.. units.Select(u => Turned(u, heightU))] : null,
        };
    }
}
