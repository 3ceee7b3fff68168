using RackCheck.Model;
using RackCheck.Survey.Layout;

namespace RackCheck.Survey.Power;

/// <summary>Writes the power tree to the figures of the report. Figures that depend on unknown data are absent.</summary>
internal static class PowerFiguresMaker
{
    public static PowerFigures? Make(PowerTree tree, MountedItem[] items)
    {
        var any = false;
        double? rated = 0, typical = 0;
        foreach (var item in items)
        {
            // Without plugs and watts it takes no power.
            if (item.Item is { Power: { } power } source and not { Ups: null, Power: { Plugs.Count: 0, RatedW: null, TypicalW: null } })
            {
                any = true;

                // A UPS passes its input on to its load; only its losses count as its own.
                rated += source.Ups is { Feeds: not null } ? source.HeatW ?? 0 : power.RatedW;
                typical += source.Ups is { Feeds: not null } ? source.HeatW ?? 0 : power.TypicalW;
            }
        }

        if (!tree.IsDescribed && (!any || (rated is null && typical is null)))
        {
            return null;
        }

        return new PowerFigures
        {
            RatedW = any ? Round(rated) : null,
            TypicalW = any ? Round(typical) : null,
            Supplies = tree.IsDescribed ? Array.ConvertAll(tree.Supplies, OfSupply) : null,
            Pdus = tree.IsDescribed ? Array.ConvertAll(tree.Units, OfUnit) : null,
            Assignment = tree.IsDescribed ? Assignment(tree) : null,
        };
    }

    private static SupplyFigures OfSupply(SupplyNode supply)
    {
        return new SupplyFigures
        {
            Id = supply.Id,
            CurrentA = supply.IsKnown ? Lines(supply.LineList, supply.Phases == 3 && !supply.IsLineToLine ? supply.Neutral.NormalA : null) : null,
            LoadingPercent = supply.IsKnown ? Round(100 * supply.MostLoaded.NormalA / supply.RatedA) : null,
            WorstCaseLoadingPercent = supply.IsKnown ? Round(100 * MostLoaded(supply.LineList, worst: true) / supply.RatedA) : null,
            InrushA = supply.InrushIsKnown ? Round(supply.InrushA) : null,
            LeakageMa = supply.LeakageIsKnown ? Round(supply.LeakageMa) : null,
            VoltageDropPercent = supply.IsKnown ? Round(supply.VoltageDropPercent) : null,
        };
    }

    private static PduFigures OfUnit(PduNode unit) => new()
    {
        Id = unit.Id,
        CurrentA = unit.IsKnown ? Lines(unit.LineList, null) : null,
        LoadingPercent = unit.IsKnown ? Round(100 * MostLoaded(unit.LineList, worst: false) / unit.RatedA) : null,
        Groups = unit.GroupList.ConvertAll(g => new OutletGroupFigures
        {
            Id = g.Id,
            CurrentA = unit.IsKnown ? Round(g.Load.NormalA) : null,
            LoadingPercent = unit.IsKnown && g.BreakerA is { } breaker ? Round(100 * g.Load.NormalA / breaker) : null,
        }),
    };

    private static LineCurrents Lines(LoadPoint[] lines, double? neutral) => new()
    {
        L1 = Round(lines[0].NormalA),
        L2 = lines.Length > 1 ? Round(lines[1].NormalA) : null,
        L3 = lines.Length > 1 ? Round(lines[2].NormalA) : null,
        Neutral = Round(neutral),
    };

    private static double MostLoaded(LoadPoint[] lines, bool worst)
    {
        var most = 0.0;
        foreach (var line in lines)
        {
            most = Math.Max(most, worst ? line.WorstA : line.NormalA);
        }

        return most;
    }

    private static List<Connection> Assignment(PowerTree tree)
    {
        var list = new List<Connection>(tree.Cords.Length);
        foreach (var cord in tree.Cords)
        {
            if (cord.Group is { } group)
            {
                list.Add(new Connection { Item = cord.Item.Id, Plug = cord.Plug, Pdu = group.Unit.Id, Group = group.Id });
            }
        }

        return list;
    }

    private static double? Round(double? value) => value is { } number ? Quantities.Round(number) : null;
}
