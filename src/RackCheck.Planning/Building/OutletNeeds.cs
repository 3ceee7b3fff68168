using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Model.Converters;
using RackCheck.Rules.Earthing;
using RackCheck.Rules.Power;
using RackCheck.Survey.Power;

namespace RackCheck.Planning.Building;

/// <summary>Adds PDUs for cords without an outlet and for dual-corded items with outlets on one supply only.</summary>
internal static class OutletNeeds
{
    /// <summary>Reports missing PDUs. The rack has the PDUs of the basket.</summary>
    public static void Find(BasketContext context, RackBuild build)
    {
        var tree = build.Wired.Power;
        Cord[] left = [.. tree.Cords.Where(c => c.Group is null)];
        (Cord Cord, string Supply)[] onOne = left.Length > 0 || context.Rules.IsOff<Redundancy>() ? [] : [.. OnOneSupply(tree)];
        build.OutletsShort = (1000 * left.Length) + onOne.Length;
        if (left.Length > 0 && !context.OutletsGivenUp && PduPairs.Choose(context, build, left) is var (unit, count))
        {
            build.MissingPieces.Add(new MissingPiece(
                Stage.Outlets, unit, Packs.Choose([unit], count)[0].Units, ReasonOf(left, isSecond: false)));
        }
        else if (left.Length > 0)
        {
            Propose(context, build, [.. left.Select(c => (c, (string?)null))], isSecond: false);
        }
        else if (onOne.Length > 0)
        {
            Propose(context, build, [.. onOne.Select(o => (o.Cord, (string?)o.Supply))], isSecond: true);
        }
    }

    // For each dual-corded item that is fed from one supply only, the cord to move to another supply.
    private static IEnumerable<(Cord Cord, string Supply)> OnOneSupply(PowerTree tree)
    {
        foreach (var item in tree.Cords.Where(c => c.IsRedundant && c.Siblings > 1).GroupBy(c => c.Item))
        {
            var supplies = item.SelectMany(c => tree.SuppliesOf(c.Group!.Unit)).Distinct().ToArray();
            if (supplies.Length == 1)
            {
                yield return (item.Last(), supplies[0].Id);
            }
        }
    }

    private static void Propose(BasketContext context, RackBuild build, List<(Cord Cord, string? But)> wanting, bool isSecond)
    {
        wanting.Sort((x, y) => y.Cord.VoltAmperes.CompareTo(x.Cord.VoltAmperes) is var order && order != 0 ? order
            : IdOrder.Instance.Compare(x.Cord.Item.Id, y.Cord.Item.Id) is var name && name != 0 ? name : x.Cord.Plug.CompareTo(y.Cord.Plug));
        var found = context.OutletsGivenUp ? [] : PduSets.Choose(context, build, wanting, isSecond);
        wanting.RemoveAll(w => found.Any(f => f.Cords.Contains(w.Cord)));
        foreach (var alike in found.GroupBy(f => f.Product.PartNumber).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            Cord[] cords = [.. alike.SelectMany(f => f.Cords)];
            build.MissingPieces.Add(new MissingPiece(
                Stage.Outlets,
                alike.First().Product,
                Packs.Choose([alike.First().Product], alike.Count())[0].Units,
                ReasonOf(cords, isSecond)));
        }

        if (wanting.Count > 0)
        {
            Cord[] left = [.. wanting.Select(w => w.Cord)];
            build.Unmet.Add(new OpenNeed(
                isSecond ? LineWordings.SecondSupplyPdu : new(LineWordings.OutletNeed, ("plugs", PlugsOf(left))),
                new(
                    (isSecond ? LineWordings.NoSecondSupply : LineWordings.NoOutlets).With(
                        left.Select(c => c.Item.Id).Distinct().Count() == 1 ? "one" : null, build.HasGivenSupplies ? "given" : null),
                    ("items", LineWordings.Ids(left.Select(c => c.Item.Id))), ("plugs", PlugsOf(left)))));
        }
    }

    private static WordedText ReasonOf(Cord[] cords, bool isSecond) => LineWordings.Of(
        isSecond ? LineWordings.SecondSupply : LineWordings.Outlets,
        cords.Select(c => c.Item.Id).Distinct().Count() == 1,
        ("items", LineWordings.Ids(cords.Select(c => c.Item.Id))),
        ("plugs", PlugsOf(cords)));

    /// <summary>Protective conductor current that the cords of a proposed PDU may have together, mA. Without given supplies it gets its own.</summary>
    /// <param name="context">What building a rack needs.</param>
    /// <param name="build">The rack.</param>
    /// <param name="unit">The PDU.</param>
    /// <param name="leavesAnother">Whether a given supply is left for the other cords; the last one takes what there is, and a rule reports it.</param>
    public static double MostLeakageMa(BasketContext context, RackBuild build, PduFacts unit, bool leavesAnother = false)
    {
        if (build.HasGivenSupplies && !leavesAnother)
        {
            return double.PositiveInfinity;
        }

        var secured = unit.Plug is { } plug && !PlugFit.Of(plug).Secured ? context.Rules.Limit<Leakage>(Leakage.LeakageMa) : double.PositiveInfinity;
        return build.Wired.Earth.IsHighIntegrity ? secured : Math.Min(secured, context.Rules.Limit<Leakage>(Leakage.HighLeakageMa));
    }

    /// <summary>
    /// Whether the inrush of cords may trip the breaker, as the rule of inrush warns of it: by pulses that are known to last. No larger PDU is sold for others.
    /// Remotely switched outlets are sequenced; all others switch on at once.
    /// </summary>
    public static bool MayTrip(PduFacts unit, Supply supply, IReadOnlyCollection<Cord> cords)
    {
        if (unit.RemoteSwitched == true || supply.Breaker is not { Curve: { } curve } breaker)
        {
            return false;
        }

        // On three phases each phase gets a third of the cords, at worst those with the highest inrush current.
        var atOnce = supply.Phases == 3 ? (cords.Count + 2) / 3 : cords.Count;
        var inrush = cords.Where(c => c.Item.Item?.Power?.InrushMs >= Breakers.LongPulseMs)
            .Select(c => c.InrushA ?? 0)
            .OrderDescending()
            .Take(atOnce)
            .Sum();
        return inrush > Math.Sqrt(2) * Breakers.LeastTripA(NamedEnumConverter<BreakerCurve>.Name(curve), breaker.RatedA ?? supply.RatedA);
    }

    /// <summary>The cords that an empty PDU takes.</summary>
    /// <param name="unit">The PDU, with its outlets.</param>
    /// <param name="supply">Its supply.</param>
    /// <param name="wanting">The cords, each with the load that counts, VA; the first ones go first.</param>
    /// <param name="share">Share of its rating that may be used.</param>
    /// <param name="mostLeakageMa">Protective conductor current that the cords may have together, mA.</param>
    public static Cord[] Take(PduFacts unit, Supply supply, IEnumerable<(Cord Cord, double VoltAmperes)> wanting, double share, double mostLeakageMa)
    {
        var room = new OutletRoom(unit, supply, share);
        var leakage = 0.0;
        var taken = new List<Cord>();
        foreach (var (cord, voltAmperes) in wanting)
        {
            if (!cord.SuitsVoltage(supply.VoltageV) || (cord.IsThreePhase && supply.Phases == 1))
            {
                continue;
            }

            // A cord that exceeds the rating of every PDU goes to an empty one. A rule reports the overload.
            var isLeakageLow = leakage + (cord.LeakageMa ?? 0) <= mostLeakageMa;
            if ((isLeakageLow && room.Take(cord, voltAmperes, isHeeded: true)) || (taken.Count == 0 && room.Take(cord, voltAmperes, isHeeded: false)))
            {
                leakage += cord.LeakageMa ?? 0;
                taken.Add(cord);
            }
        }

        return [.. taken];
    }

    private static Scalar PlugsOf(IEnumerable<Cord> cords) => LineWordings.Ids(cords.Select(c => PlugFit.Of(c.Code).Code));
}
