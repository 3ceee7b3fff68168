using RackCheck.Model;
using RackCheck.Rules;

namespace RackCheck.Planning.Building;

/// <summary>Fits doors, fans and air conditioner of the basket to the cabinet.</summary>
internal static class CabinetFitting
{
    // Maximum of the contract.
    private const int MostFanSets = 16;
    private const int MostFans = 100;

    private static readonly RackChecker CoolingRules = RuleChecks.OfThemes("cooling");

    /// <summary>Fits all suitable parts. The rack already has its items.</summary>
    public static void Fit(BasketContext context, RackBuild build)
    {
        if (context.Leaves != ProductKind.Door)
        {
            FitDoors(build);
        }

        FitFans(build);
        if (context.Leaves != ProductKind.AirConditioner)
        {
            FitCooler(build);
        }
    }

    /// <summary>The cabinet with roof fans. A fan unit includes its opening, so the roof is vented.</summary>
    public static Cabinet WithFanOpening(Cabinet cabinet) => cabinet with { Roof = (cabinet.Roof ?? new Roof()) with { Style = RoofStyle.Vented } };

    /// <summary>Where a door goes in the description of a rack.</summary>
    public static string PointerOf(ProductDoor door) => door.Face == Face.Front ? "/cabinet/frontDoor" : "/cabinet/rearDoor";

    // The smallest sufficient unit. One that is undersized or that the site cannot accept leaves errors.
    private static void FitCooler(RackBuild build)
    {
        StockEntry[] coolers = [.. build.Stock.LeftOf(ProductKind.AirConditioner).OrderBy(e => e.Product.AirConditioner!.CapacityW)];
        if (coolers.Length == 0)
        {
            return;
        }

        Cooling With(StockEntry cooler) => (build.Cooling ?? new Cooling()) with { AirConditioner = cooler.Product.AirConditioner };
        var cooler = coolers.Length == 1 ? coolers[0] : coolers.MinBy(c => RuleChecks.FaultsOf(CoolingRules, build.Describe() with { Cooling = With(c) }))!;
        build.Cooling = With(cooler);
        build.CabinetParts["/cooling/airConditioner"] = cooler.Take();
    }

    private static void FitDoors(RackBuild build)
    {
        foreach (var entry in build.Stock.LeftOf(ProductKind.Door))
        {
            var door = entry.Product.Door!;
            var pointer = PointerOf(door);
            if (door.WidthMm != build.Cabinet.WidthMm
                || door.HeightU != build.Cabinet.HeightU
                || !build.CabinetParts.TryAdd(pointer, new Piece(entry.Product.PartNumber, entry.Used)))
            {
                continue;
            }

            entry.Take();
            var fitted = door.Door with { PartNumber = entry.Product.PartNumber };
            build.Cabinet = door.Face == Face.Front ? build.Cabinet with { FrontDoor = fitted } : build.Cabinet with { RearDoor = fitted };
        }
    }

    private static void FitFans(RackBuild build)
    {
        var roof = Sets(build, ProductKind.RoofFans, "/cooling/roofFans");
        if (roof.Count > 0)
        {
            build.Cooling = (build.Cooling ?? new Cooling()) with { RoofFans = [.. build.Cooling?.RoofFans ?? [], .. roof] };
            build.Cabinet = WithFanOpening(build.Cabinet);
        }

        // Fan trays are also items, whose pieces are already taken from the stock.
        List<FanSet> trays = [];
        foreach (var tray in build.Items.Select(i => i.Piece.PartNumber).Distinct().Select(p => build.Stock.Find(p)!).Where(e => e.Product.Fans is not null))
        {
            if (trays.Count < MostFanSets)
            {
                build.CabinetParts[FormattableString.Invariant($"/cooling/fanTrays/{trays.Count}")] = new Piece(tray.Product.PartNumber, 0);
                trays.Add(tray.Product.Fans! with { Count = (int)Math.Min(tray.Used * tray.Product.Fans.Count, MostFans) });
            }
        }

        if (trays.Count > 0)
        {
            build.Cooling = (build.Cooling ?? new Cooling()) with { FanTrays = [.. build.Cooling?.FanTrays ?? [], .. trays] };
        }
    }

    private static List<FanSet> Sets(RackBuild build, ProductKind kind, string pointer)
    {
        List<FanSet> sets = [];
        foreach (var entry in build.Stock.LeftOf(kind).Where(e => e.Product.Fans!.Count > 0).Take(MostFanSets))
        {
            var fans = entry.Product.Fans!;
            build.CabinetParts[FormattableString.Invariant($"{pointer}/{sets.Count}")] = new Piece(entry.Product.PartNumber, entry.Used);
            sets.Add(fans with { Count = (int)entry.Take(MostFans / fans.Count) * fans.Count });
        }

        return sets;
    }
}
