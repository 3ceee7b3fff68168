using System.Collections.Immutable;

namespace RackCheck.Engineering;

/// <summary>Guideline masses for a height zone: one person, two hands, occasional lifting.</summary>
/// <param name="Name">Zone between two body heights.</param>
/// <param name="FromMm">Lower bound above the floor, mm.</param>
/// <param name="ToMm">Upper bound above the floor, mm.</param>
/// <param name="ManCloseKg">A man, held close to the body, kg.</param>
/// <param name="ManReachKg">A man, at arm's length, kg.</param>
/// <param name="WomanCloseKg">A woman, held close to the body, kg.</param>
/// <param name="WomanReachKg">A woman, at arm's length, kg.</param>
public readonly record struct HandlingZone(
    string Name, double FromMm, double ToMm, double ManCloseKg, double ManReachKg, double WomanCloseKg, double WomanReachKg);

/// <summary>Maximum mass that one person mounts with its lower edge up to a height.</summary>
/// <param name="ToMm">Upper bound of the lower edge above the floor, mm; infinite for the last zone.</param>
/// <param name="Kg">Mass, kg.</param>
public readonly record struct MountingZone(double ToMm, double Kg);

/// <summary>Guideline masses for manual lifting, by hand height.</summary>
/// <remarks>
/// HSE L23, lifting filter (values from memory): guidance, not a legal limit. It assumes up to 30 lifts per hour, firm footing and no twisting. The zone
/// limits are body heights (values from memory), taken at the conservative end of their range. A lift through several zones has the lowest of their values.
/// The values apply to a lift from a table or trolley at about elbow height.
/// </remarks>
public static class ManualHandling
{
    /// <summary>Middle of the lower leg above the floor, mm.</summary>
    public const double LowerLegMm = 250;

    /// <summary>Knuckle height above the floor, arms hanging, mm.</summary>
    public const double KnuckleMm = 750;

    /// <summary>Elbow height above the floor, mm: lower end of 950 to 1200.</summary>
    public const double ElbowMm = 950;

    /// <summary>Shoulder height above the floor, mm: lower end of 1300 to 1600.</summary>
    public const double ShoulderMm = 1300;

    /// <summary>Overhead reach, mm: lower end of 1850 to 2100. The guideline has no value above it.</summary>
    public const double ReachMm = 1850;

    /// <summary>The zones from the floor upwards, without overlap.</summary>
    public static ImmutableArray<HandlingZone> Zones { get; } =
    [
        new("floor to lower leg", 0, LowerLegMm, 10, 5, 7, 3),
        new("lower leg to knuckle", LowerLegMm, KnuckleMm, 20, 10, 13, 7),
        new("knuckle to elbow", KnuckleMm, ElbowMm, 25, 15, 16, 10),
        new("elbow to shoulder", ElbowMm, ShoulderMm, 20, 10, 13, 7),
        new("shoulder to head", ShoulderMm, ReachMm, 10, 5, 7, 3),
    ];

    /// <summary>
    /// Zones for mounting equipment in a rack, by the height of its lower edge, from the floor upwards: the values of the guideline for one man, held close.
    /// Its lower values below knuckle height are deliberately not used, because equipment is set down there from a trolley. The heights are common practice.
    /// </summary>
    public static ImmutableArray<MountingZone> MountingZones { get; } = [new(1050, 25), new(1400, 20), new(double.PositiveInfinity, 10)];

    /// <summary>The mounting zone of a lower edge; at a zone limit the lower zone.</summary>
    /// <param name="lowerEdgeMm">Height of the lower edge above the floor, mm, 0 or more.</param>
    /// <returns>Index in <see cref="MountingZones"/>: 0 up to 1050 mm, 1 up to 1400 mm, 2 above.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A negative height, or not a finite number.</exception>
    public static int MountingZoneAt(double lowerEdgeMm)
    {
        Require.NotNegative(lowerEdgeMm);
        var zone = 0;
        while (Comparison.IsOver(lowerEdgeMm, MountingZones[zone].ToMm))
        {
            zone++;
        }

        return zone;
    }

    /// <summary>The zone of a height; at a zone limit the zone with the lower values.</summary>
    /// <param name="heightMm">Height of the hands above the floor, mm, 0 or more.</param>
    /// <returns>The zone; null above the overhead reach, where the guideline has no value and a lifting aid is needed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A negative height, or not a finite number.</exception>
    /// <example>1000 mm: elbow to shoulder, 20 kg close to the body; 1300 mm: shoulder to head, 10 kg; 1900 mm: null.</example>
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

    /// <summary>Guideline mass for one man at a height, close to the body.</summary>
    /// <param name="heightMm">Height of the hands above the floor, mm, 0 or more.</param>
    /// <returns>Mass, kg; null above the overhead reach, where the guideline has no value.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A negative height, or not a finite number.</exception>
    /// <example>800 mm: 25 kg; 1000 mm: 20 kg; 1500 mm: 10 kg.</example>
    public static double? LimitKg(double heightMm) => ZoneAt(heightMm)?.ManCloseKg;

    /// <summary>Maximum number of people in a team for which the guideline has a value.</summary>
    public const int MostPeople = 3;

    /// <summary>Guideline mass for a team: two thirds of the sum of the individual values for two people, half for three.</summary>
    /// <param name="sumKg">Sum of the individual values, kg, 0 or more.</param>
    /// <param name="people">Number of people, 1 to <see cref="MostPeople"/>; the guideline has no value for more.</param>
    /// <returns>Mass, kg.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <example>Two people with 25 kg each: 33.3; three people with 25 kg each: 37.5.</example>
    public static double TeamLimitKg(double sumKg, int people)
    {
        Require.NotNegative(sumKg);
        return people switch
        {
            1 => sumKg,
            2 => sumKg * 2 / 3,
            3 => sumKg / 2,
            _ => throw new ArgumentOutOfRangeException(nameof(people), people, "The number of people must be 1 to 3."),
        };
    }
}
