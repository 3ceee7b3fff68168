using System.Collections.Immutable;

namespace RackCheck.Engineering;

/// <summary>Guideline masses for a zone of heights, one person, both hands, now and then.</summary>
/// <param name="Name">Its bounds by the body.</param>
/// <param name="FromMm">Lower bound above the floor, mm.</param>
/// <param name="ToMm">Upper bound above the floor, mm.</param>
/// <param name="ManCloseKg">A man, held close to the body, kg.</param>
/// <param name="ManReachKg">A man, at arm's length, kg.</param>
/// <param name="WomanCloseKg">A woman, held close to the body, kg.</param>
/// <param name="WomanReachKg">A woman, at arm's length, kg.</param>
public readonly record struct HandlingZone(
    string Name, double FromMm, double ToMm, double ManCloseKg, double ManReachKg, double WomanCloseKg, double WomanReachKg);

/// <summary>What may be lifted by hand, by the height of the hands.</summary>
/// <remarks>
/// HSE L23, lifting filter (values from memory): guidance, no legal limit. It supposes up to 30 lifts an hour, a firm stand and no twist. The
/// bounds of the zones are body heights (values from memory), at the end of their range where the limit falls sooner. A lift that
/// passes several zones has the least of their figures; these hold for one from a table or trolley at about elbow height.
/// </remarks>
public static class Handling
{
    /// <summary>Middle of the lower leg above the floor, mm.</summary>
    public const double LowerLegMm = 250;

    /// <summary>Knuckles of a hanging hand above the floor, mm.</summary>
    public const double KnuckleMm = 750;

    /// <summary>Elbow above the floor, mm: the low end of 950 to 1200.</summary>
    public const double ElbowMm = 950;

    /// <summary>Shoulder above the floor, mm: the low end of 1300 to 1600.</summary>
    public const double ShoulderMm = 1300;

    /// <summary>Reach overhead, mm: the low end of 1850 to 2100. The guideline has no figure above it.</summary>
    public const double ReachMm = 1850;

    /// <summary>The zones from the floor up; none overlaps the next.</summary>
    public static ImmutableArray<HandlingZone> Zones { get; } =
    [
        new("floor to lower leg", 0, LowerLegMm, 10, 5, 7, 3),
        new("lower leg to knuckle", LowerLegMm, KnuckleMm, 20, 10, 13, 7),
        new("knuckle to elbow", KnuckleMm, ElbowMm, 25, 15, 16, 10),
        new("elbow to shoulder", ElbowMm, ShoulderMm, 20, 10, 13, 7),
        new("shoulder to head", ShoulderMm, ReachMm, 10, 5, 7, 3),
    ];

    /// <summary>The zone of a height; on a bound the one with the lower figures.</summary>
    /// <param name="heightMm">Height of the hands above the floor, mm, 0 or more.</param>
    /// <returns>The zone; null above the reach, where the guideline has no figure and a lift aid is wanted.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A negative height, or no number.</exception>
    /// <example>1000: elbow to shoulder, 20 kg held close; 1300: shoulder to head, 10 kg; 1900: none.</example>
    public static HandlingZone? ZoneAt(double heightMm)
    {
        Require.NotNegative(heightMm);
        HandlingZone? found = null;
        foreach (var zone in Zones)
        {
            if (heightMm >= zone.FromMm && heightMm <= zone.ToMm && (found is not { } other || zone.ManCloseKg < other.ManCloseKg))
            {
                found = zone;
            }
        }

        return found;
    }

    /// <summary>What one man may lift to a height, held close.</summary>
    /// <param name="heightMm">Height of the hands above the floor, mm, 0 or more.</param>
    /// <returns>Mass, kg; null above the reach, where the guideline has no figure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A negative height, or no number.</exception>
    /// <example>800: 25; 1000: 20; 1500: 10.</example>
    public static double? LimitKg(double heightMm) => ZoneAt(heightMm)?.ManCloseKg;

    /// <summary>What several people lift together: the sum of their own limits, two thirds of it with two, half of it with three.</summary>
    /// <param name="sumKg">Sum of their own limits, kg, 0 or more.</param>
    /// <param name="people">1 to 3; the guideline has no share for more.</param>
    /// <returns>Mass, kg.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <example>Two with 25 each: 33.3; three with 25 each: 37.5.</example>
    public static double TeamLimitKg(double sumKg, int people)
    {
        Require.NotNegative(sumKg);
        return people switch
        {
            1 => sumKg,
            2 => sumKg * 2 / 3,
            3 => sumKg / 2,
            _ => throw new ArgumentOutOfRangeException(nameof(people), people, "1 to 3."),
        };
    }
}
