using RackCheck.Model;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Documents.Parts;

/// <summary>Fans, filter mats, batteries and spares.</summary>
internal static class UpkeepParts
{
    /// <summary>Spare sets of nut and screw for each occupied U. Common practice, no source.</summary>
    public const int SpareSetsAUnit = 4;

    /// <summary>Adds the lines. Those of fixings are there already.</summary>
    public static void List(PartsContext context)
    {
        Fans(context);
        Filters(context);
        Batteries(context);
        SpareFixings(context);
    }

    private static void Fans(PartsContext context)
    {
        var cooling = context.Rack.Cooling;
        Add(cooling?.RoofFans, "Roof fan", ProductKind.RoofFans);
        Add(cooling?.FanTrays, "Fan of a tray", ProductKind.FanTray);

        // A product is a unit with all fans of a set.
        void Add(IReadOnlyList<FanSet>? sets, string name, ProductKind kind)
        {
            foreach (var set in (sets ?? []).Where(s => s.Count > 0))
            {
                var product = context.Offered(kind).FirstOrDefault(p => p.Fans is { } fans && fans.Count == set.Count
                    && fans.FreeFlowM3h.Equals(set.FreeFlowM3h)
                    && Equals(fans.MaxPressurePa, set.MaxPressurePa));
                context.Add(new PartLine
                {
                    Kind = PartKind.Fan, Description = name, Quantity = set.Count, Unit = PartUnit.Piece,
                    Why = "The rack as described has them. The order quantity is of whole units.",
                    Rule = PartsContext.Rule<Rules.Cooling.Airflow>(), PartNumber = product?.PartNumber,
                    OrderQuantity = product is null ? null : 1, Included = false,
                    Data = new PartData { FreeFlowM3h = set.FreeFlowM3h },
                });
            }
        }
    }

    private static void Filters(PartsContext context)
    {
        var cooling = context.Rack.Cooling;
        if (!FilterMat.IsFitted(cooling))
        {
            return;
        }

        var area = cooling!.Filter?.AreaCm2 ?? cooling.IntakeAreaCm2;
        var product = context.Offered(ProductKind.Filter).Where(p => p.Filter == cooling.Filter).Take(1).ToArray();
        var mat = new PartLine
        {
            Kind = PartKind.Filter, Description = "Filter mat of the air intake", Quantity = 1, Unit = PartUnit.Piece, Why = "The rack as described has it.",
            Included = false, Data = new PartData { AreaCm2 = area },
        };
        context.Add(mat, product);
        var change = cooling.Filter?.LossPa ?? context.Survey.Heat.AirPath.Mat?.LossPa;
        context.Add(
            mat with
            {
                Kind = PartKind.Spare, Description = "Spare filter mat",
                Why = change is { } pa ? Invariant($"The mat is changed at {pa:0.###} Pa; one to change it.") : "One to change it.",
            },
            product);
    }

    private static void Batteries(PartsContext context)
    {
        foreach (var alike in context.Survey.Items.Where(i => i.Item!.Battery is not null).GroupBy(i => i.Item!.Battery! with { Boost = null })
            .OrderBy(g => g.Key.Type).ThenBy(g => g.Key.Cells).ThenBy(g => g.Key.CapacityAh))
        {
            var (battery, count) = (alike.Key, alike.Count());
            context.Add(new PartLine
            {
                Kind = PartKind.Battery, Description = battery.Cells is null ? "Battery" : "Battery cell", Quantity = count * (battery.Cells ?? 1),
                Unit = PartUnit.Piece, Why = "In the equipment; for the service sheet and for replacement.",
                Calculation = battery.Cells is { } cells ? Invariant($"{count} x {cells} = {count * cells}") : null,
                Items = PartsContext.Ids(alike), Included = true,
                Data = new PartData { BatteryType = battery.Type, Cells = battery.Cells, CapacityAh = battery.CapacityAh },
            });
        }
    }

    private static void SpareFixings(PartsContext context)
    {
        var used = context.Survey.Occupancy.Figures.UnitsUsed;
        var most = context.Lines.Where(l => l is { Kind: PartKind.Fixing, Quantity: > 0 }).GroupBy(l => l.Data).MaxBy(g => g.Sum(l => l.Quantity))?.First();
        if (used == 0 || most is null)
        {
            return;
        }

        context.Add(
            most with
            {
                Kind = PartKind.Spare, Description = "Spare: " + most.Description, Quantity = SpareSetsAUnit * used,
                Why = Invariant($"{SpareSetsAUnit} spare sets for each occupied U; common practice."), Rule = null, Items = null, Pdus = null,
                Calculation = Invariant($"{SpareSetsAUnit} x {used} = {SpareSetsAUnit * used}"), PartNumber = null, OrderQuantity = null,
            },
            context.Offered(ProductKind.Fixings).Where(p => p.Fixing == most.Data.Fixing));
    }
}
