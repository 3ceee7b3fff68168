using RackCheck.Model;
using RackCheck.Rules;

namespace RackCheck.Planning.Baskets;

/// <summary>Fits doors, fans and air conditioner of the basket to the cabinet.</summary>
internal static class CabinetFitting
{
    // Maximum of the contract.
    private const int MostFanSets = 16;
    private const int MostFans = 100;

    private static readonly RackChecker CoolingRules = RuleChecks.OfThemes("cooling");

    /// <summary>Fits all suitable parts. The rack already has its items.</summary>
    public static void Fit(Bay bay)
    {
        FitDoors(bay);
        FitFans(bay);
        FitCooler(bay);
    }

    /// <summary>The cabinet with roof fans. A fan unit includes its opening, so the roof is vented.</summary>
    public static Cabinet WithFanOpening(Cabinet cabinet) => cabinet with { Roof = (cabinet.Roof ?? new Roof()) with { Style = RoofStyle.Vented } };

    // The smallest sufficient unit. One that is undersized or that the site cannot accept leaves errors.
    private static void FitCooler(Bay bay)
    {
        StockEntry[] coolers = [.. bay.Stock.LeftOf(ProductKind.AirConditioner).OrderBy(e => e.Product.AirConditioner!.CapacityW)];
        if (coolers.Length == 0)
        {
            return;
        }

        Cooling With(StockEntry cooler) => (bay.Cooling ?? new Cooling()) with { AirConditioner = cooler.Product.AirConditioner };
        var cooler = coolers.Length == 1 ? coolers[0] : coolers.MinBy(c => RuleChecks.FaultsOf(CoolingRules, bay.Describe() with { Cooling = With(c) }))!;
        bay.Cooling = With(cooler);
        bay.CabinetParts["/cooling/airConditioner"] = cooler.Take();
    }

    private static void FitDoors(Bay bay)
    {
        foreach (var entry in bay.Stock.LeftOf(ProductKind.Door))
        {
            var door = entry.Product.Door!;
            var pointer = door.Face == Face.Front ? "/cabinet/frontDoor" : "/cabinet/rearDoor";
            if (door.WidthMm != bay.Cabinet.WidthMm
                || door.HeightU != bay.Cabinet.HeightU
                || !bay.CabinetParts.TryAdd(pointer, new Piece(entry.Product.PartNumber, entry.Used)))
            {
                continue;
            }

            entry.Take();
            var fitted = door.Door with { PartNumber = entry.Product.PartNumber };
            bay.Cabinet = door.Face == Face.Front ? bay.Cabinet with { FrontDoor = fitted } : bay.Cabinet with { RearDoor = fitted };
        }
    }

    private static void FitFans(Bay bay)
    {
        var roof = Sets(bay, ProductKind.RoofFans, "/cooling/roofFans");
        if (roof.Count > 0)
        {
            bay.Cooling = (bay.Cooling ?? new Cooling()) with { RoofFans = roof };
            bay.Cabinet = WithFanOpening(bay.Cabinet);
        }

        // Fan trays are also items, whose pieces are already taken from the stock.
        List<FanSet> trays = [];
        foreach (var tray in bay.Items.Select(i => i.Piece.PartNumber).Distinct().Select(p => bay.Stock.Find(p)!).Where(e => e.Product.Fans is not null))
        {
            if (trays.Count < MostFanSets)
            {
                bay.CabinetParts[FormattableString.Invariant($"/cooling/fanTrays/{trays.Count}")] = new Piece(tray.Product.PartNumber, 0);
                trays.Add(tray.Product.Fans! with { Count = (int)Math.Min(tray.Used * tray.Product.Fans.Count, MostFans) });
            }
        }

        if (trays.Count > 0)
        {
            bay.Cooling = (bay.Cooling ?? new Cooling()) with { FanTrays = trays };
        }
    }

    private static List<FanSet> Sets(Bay bay, ProductKind kind, string pointer)
    {
        List<FanSet> sets = [];
        foreach (var entry in bay.Stock.LeftOf(kind).Where(e => e.Product.Fans!.Count > 0).Take(MostFanSets))
        {
            var fans = entry.Product.Fans!;
            bay.CabinetParts[FormattableString.Invariant($"{pointer}/{sets.Count}")] = new Piece(entry.Product.PartNumber, entry.Used);
            sets.Add(fans with { Count = (int)entry.Take(MostFans / fans.Count) * fans.Count });
        }

        return sets;
    }
}
