using RackCheck.Model;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Planning.Building;

/// <summary>Chooses the supply of a PDU: a specified supply that fits its plug, otherwise an assumed one.</summary>
internal static class SupplyChoice
{
    private const int MostSupplies = 16;
    private const double EuropeanV = 230;
    private const double NorthAmericanV = 120;
    private const double NorthAmericanTwoPoleV = 208;

    /// <summary>Whether a PDU is fed from a UPS: its plug fits appliance outlets, not room sockets.</summary>
    public static bool IsForUps(Product product) => product.Pdu is { } unit && IsForUps(unit);

    /// <summary>The supply that would feed the next PDU.</summary>
    /// <returns>The supply, which may not be in the rack yet; null if none fits.</returns>
    public static Supply? For(RackBuild build, PduFacts unit, IReadOnlyDictionary<string, int> outlets)
    {
        if (build.HasGivenSupplies)
        {
            // The supply with the fewest outlets, so that dual-corded items get two supplies. Of several the one that other cabinets load least.
            return build.Supplies.Where(s => Takes(s, unit))
                .MinBy(s => (outlets.GetValueOrDefault(s.Id), build.LoadsElsewhere?.GetValueOrDefault(s.Id) ?? 0));
        }

        // No room has sockets of another region.
        if (build.Region is { } region && !IsForUps(unit) && !SuitsRegion(region, unit))
        {
            return null;
        }

        if (build.Supplies.Count < MostSupplies)
        {
            return Assumed(build, unit);
        }

        return build.Supplies.Where(s => Takes(s, unit)).MinBy(s => outlets.GetValueOrDefault(s.Id));
    }

    /// <summary>Whether the plug of a PDU suits the region if no supply is specified.</summary>
    public static bool SuitsRegion(Region? region, PduFacts unit) => unit.Plug switch
    {
        ConnectorCode.Nema515 or ConnectorCode.Nema520 or ConnectorCode.NemaL520 or ConnectorCode.NemaL530
            or ConnectorCode.NemaL620 or ConnectorCode.NemaL630 or ConnectorCode.NemaL1430
            or ConnectorCode.NemaL1530 or ConnectorCode.NemaL2120 or ConnectorCode.NemaL2130 => region == Region.Na,
        ConnectorCode.Bs1363 => region == Region.Uk,
        ConnectorCode.Cee73 or ConnectorCode.Cee74 or ConnectorCode.Cee77 => region is null or Region.Eu,
        ConnectorCode.C14 or ConnectorCode.C16 or ConnectorCode.C20 => false,
        null or ConnectorCode.Hardwired => true,
        _ => region != Region.Na,
    };

    /// <summary>Whether another PDU like this could be fed from another given supply that feeds none of the rack yet.</summary>
    /// <param name="build">The rack.</param>
    /// <param name="unit">The PDU.</param>
    /// <param name="own">The supply of the first.</param>
    /// <param name="outlets">Number of outlets per supply, by supply id.</param>
    public static bool LeavesAnother(RackBuild build, PduFacts unit, Supply own, IReadOnlyDictionary<string, int> outlets) =>
        build.HasGivenSupplies && build.Supplies.Exists(s => s.Id != own.Id && Takes(s, unit) && outlets.GetValueOrDefault(s.Id) == 0);

    /// <summary>Number of outlets per supply, by supply id.</summary>
    public static Dictionary<string, int> Outlets(RackBuild build)
    {
        var sum = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var unit in build.Units)
        {
            sum[unit.Unit.Supply] = sum.GetValueOrDefault(unit.Unit.Supply) + CountOf(unit.Unit);
        }

        return sum;
    }

    /// <summary>Number of outlets of a PDU.</summary>
    public static int CountOf(PduFacts unit) => unit.Groups?.Sum(g => g.Outlets.Sum(o => o.Count)) ?? 0;

    /// <summary>Id of the supply that feeds a PDU. An assumed supply is added to the rack.</summary>
    /// <returns>The id; null if no supply fits.</returns>
    public static string? Take(RackBuild build, Pdu unit)
    {
        if (For(build, unit, Outlets(build)) is not { } supply)
        {
            return null;
        }

        Use(build, supply);
        return supply.Id;
    }

    /// <summary>Supply id of a PDU fed from a UPS. The contract requires one; it is a supply of the room.</summary>
    public static string BehindUps(RackBuild build)
    {
        if (build.Supplies.Count == 0)
        {
            Use(build, Assumed(build, new ProductPdu { RatedA = 16, Plug = ConnectorCode.Iec60309A16P1 }));
        }

        return build.Supplies[0].Id;
    }

    private static bool IsForUps(PduFacts unit) => unit.Plug is ConnectorCode.C14 or ConnectorCode.C16 or ConnectorCode.C20;

    private static void Use(RackBuild build, Supply supply)
    {
        if (build.HasGivenSupplies || build.Supplies.Contains(supply))
        {
            return;
        }

        var rating = BuildBases.RatingOf(supply);
        build.Assumptions.Add(new Assumption
        {
            Pointers = [Invariant($"/supplies/{build.Supplies.Count}")],
            Value = rating.Text,
            ValueKey = rating.Key,
            ValueData = rating.Values,
            Basis = BuildBases.SupplyPerPdu.Text,
            BasisKey = BuildBases.SupplyPerPdu.Key,
            BasisData = BuildBases.SupplyPerPdu.Values,
        });
        build.Supplies.Add(supply);
    }

    /// <summary>Whether a PDU can be plugged into a supply.</summary>
    public static bool Takes(Supply supply, PduFacts unit) =>
        (supply.Socket is not { } socket || unit.Plug is not { } plug || PlugFit.Fits(plug, socket)) && (supply.Phases != 1 || !HasThreePhases(unit));

    private static bool HasThreePhases(PduFacts unit) =>
        (unit.Plug is { } plug && PlugFit.IsThreePhase(plug)) || unit.Groups?.Any(g => g.Phase is Phase.L2 or Phase.L3) == true;

    private static Supply Assumed(RackBuild build, PduFacts unit)
    {
        var america = build.Region == Region.Na;
        var rated = unit.Plug is { } plug ? PlugFit.RatedA(plug, america) : double.PositiveInfinity;
        rated = double.IsInfinity(rated) ? unit.RatedA ?? 16 : rated;
        return new Supply
        {
            Id = NameOf(build.OtherSupplies + build.Supplies.Count),
            VoltageV = !america ? EuropeanV
                : unit.Plug is ConnectorCode.Nema515 or ConnectorCode.Nema520 or ConnectorCode.NemaL520 or ConnectorCode.NemaL530 ? NorthAmericanV
                : NorthAmericanTwoPoleV,
            Phases = HasThreePhases(unit) ? 3 : 1,
            RatedA = rated,
            Breaker = new Breaker { Curve = BreakerCurve.C, RatedA = rated },
            Socket = unit.Plug is { } own ? PlugFit.SocketFor(own) : null,
        };
    }

    // A to Z, then A2 and so on.
    private static string NameOf(int index) => Invariant($"{(char)('A' + (index % 26))}{(index < 26 ? "" : Invariant($"{1 + (index / 26)}"))}");
}
