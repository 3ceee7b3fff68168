using RackCheck.Model;
using RackCheck.Rules.Service;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Planning.Building;

/// <summary>Finds U positions for all items: consoles at working height, all other items from the bottom up, the heaviest first.</summary>
internal static class Places
{
    /// <summary>Sets the positions. An item that does not fit gets none. Shelves are filled and rails assigned.</summary>
    public static void Find(BasketContext context, RackBuild build)
    {
        var survey = RackSurvey.Lazily(build.Describe() with { Pdus = null, Supplies = null });
        Carrier[] carriers =
        [
            .. build.Items
                .Select((item, index) => new Carrier(item, survey.Items[index], item.Kept?.U ?? context.Positions?.GetValueOrDefault(item.Id)))
                .Where(c => c.Item is { HeightU: > 0, Face: Face.Front }),
        ];
        foreach (var carrier in carriers)
        {
            carrier.Console = ConsoleOf(carrier.MountedItem);
        }

        // Heaviest first. If the gaps left are too small for the last items, the highest go first; then consoles are treated as other items.
        Carrier[] heavy = [.. carriers.OrderByDescending(c => c.Kg).ThenByDescending(c => c.ClaimU).ThenBy(c => c.Item.Id, IdOrder.Instance)];
        Carrier[] high = [.. heavy.OrderByDescending(c => c.ClaimU)];
        Plan? best = null;
        if (context.SeeksLowest)
        {
            // Stacked without a gap, the order of mass per U has the lowest centre of gravity.
            best = ((ReadOnlySpan<Carrier[]>)[[.. heavy.OrderByDescending(c => c.Kg / c.ClaimU)], heavy]).ToArray()
                .Select(order => Try(context, survey.Cabinet, order, true))
                .MinBy(p => (p.Left.Count, p.Moment));
        }

        foreach (var (order, reach) in (ReadOnlySpan<(Carrier[], bool)>)[(heavy, true), (high, true), (high, false)])
        {
            if (best?.Left.Count == 0)
            {
                break;
            }

            var plan = Try(context, survey.Cabinet, order, reach);
            best = best is null || plan.Left.Count < best.Left.Count ? plan : best;
        }

        foreach (var (carrier, bottom) in best!.Bottoms)
        {
            carrier.Item.Item = carrier.Item.Item with { Position = carrier.Item.Kept ?? new Position { U = bottom, Face = Face.Front } };
        }

        PlaceAtRear(context, build);

        if (best.Left.Count > 0)
        {
            build.Unmet.Add(new OpenNeed(
                new(LineWordings.RoomNeed, ("items", LineWordings.Ids(best.Left.Select(c => c.Item.Id)))),
                new(LineWordings.NoRoom, ("heightU", survey.Cabinet.HeightU), ("takenU", carriers.Sum(c => c.ClaimU)))));
        }
    }

    /// <summary>The console of an item or among the items on it; null if there is none.</summary>
    public static MountedItem? ConsoleOf(MountedItem mounted) =>
        mounted.Load.Prepend(mounted).FirstOrDefault(m => m.Category is ItemCategory.KeyboardDrawer or ItemCategory.Display);

    /// <summary>Range of working heights of a console above the floor, mm.</summary>
    public static (double Least, double Greatest) WorkingHeight(RuleChecks rules, MountedItem console)
    {
        var (least, greatest) = console.Category == ItemCategory.KeyboardDrawer
            ? (ConsoleHeight.KeyboardMinMm, ConsoleHeight.KeyboardMaxMm)
            : (ConsoleHeight.DisplayMinMm, ConsoleHeight.DisplayMaxMm);
        return (rules.Limit<ConsoleHeight>(least), rules.Limit<ConsoleHeight>(greatest));
    }

    // At its place, else as low as the items on the front allow.
    private static void PlaceAtRear(BasketContext context, RackBuild build)
    {
        foreach (var item in build.Items.Where(i => i is { HeightU: > 0, Face: Face.Rear }))
        {
            item.Item = item.Item with { Position = item.Kept ?? new Position { U = context.Positions?.GetValueOrDefault(item.Id) ?? 1, Face = Face.Rear } };
            if (item.Kept is null && context.Positions is null)
            {
                var survey = RackSurvey.Lazily(build.Describe() with { Pdus = null, Supplies = null, Connections = null });
                var mounted = survey.Items[build.Items.IndexOf(item)];
                var free = survey.Occupancy.FindPlace(mounted, mounted.HeightU, 1, survey.Cabinet.HeightU);
                item.Item = item.Item with { Position = free is { } u ? new Position { U = u, Face = Face.Rear } : null };
            }
        }
    }

    private static Plan Try(BasketContext context, CabinetFacts cabinet, Carrier[] order, bool reach)
    {
        var plan = new Plan(cabinet.HeightU);
        foreach (var placed in order.Where(c => c.FixedU is not null))
        {
            plan.Put(placed, [placed.FixedU!.Value], isChosen: true);
        }

        order = [.. order.Where(c => c.FixedU is null)];
        if (reach)
        {
            foreach (var console in order.Where(c => c.Console is not null).OrderBy(c => c.Console!.Category == ItemCategory.Display))
            {
                var (least, greatest) = WorkingHeight(context.Rules, console.Console!);
                var rank = Enumerable.Range(1, cabinet.HeightU).OrderBy(u => Distance(cabinet, console.Console!, u, (least + greatest) / 2)).ThenBy(u => u);
                plan.Put(console, rank);
            }
        }

        foreach (var carrier in order.Where(c => !reach || c.Console is null))
        {
            plan.Put(carrier, Enumerable.Range(1, cabinet.HeightU));
        }

        return plan;
    }

    // Distance from the middle of a console to the middle of its working height range, mm.
    private static double Distance(CabinetFacts cabinet, MountedItem console, int bottom, double middleMm) =>
        cabinet.Heights.CentreMm(console, bottom) is { } height ? Math.Abs(height - middleMm) : 0;

    /// <summary>An item on the uprights and the items on it.</summary>
    private sealed class Carrier(BuildItem item, MountedItem mounted, int? fixedU)
    {
        public int? FixedU => fixedU;

        public BuildItem Item => item;

        public MountedItem MountedItem => mounted;

        public MountedItem? Console { get; set; }

        public int ClaimU => item.HeightU + mounted.LoadHeightU;

        public double Kg => MassSurvey.LoadedKg(mounted);
    }

    private sealed class Plan(int heightU)
    {
        private readonly Carrier?[] at = new Carrier?[heightU + 2];

        public Dictionary<Carrier, int> Bottoms { get; } = [];

        public List<Carrier> Left { get; } = [];

        /// <summary>Mass times height, kg U.</summary>
        public double Moment => Bottoms.Sum(b => b.Key.Kg * (b.Value + (b.Key.ClaimU / 2.0)));

        // Where a position is chosen, what rails need was considered, and rails that are still missing raise nothing.
        public void Put(Carrier carrier, IEnumerable<int> bottoms, bool isChosen = false)
        {
            foreach (var u in bottoms)
            {
                if (CanGo(carrier, u, isChosen))
                {
                    Array.Fill(at, carrier, u, carrier.ClaimU);
                    Bottoms.Add(carrier, u);
                    return;
                }
            }

            Left.Add(carrier);
        }

        private bool CanGo(Carrier carrier, int bottom, bool isChosen)
        {
            var top = bottom + carrier.ClaimU - 1;
            return bottom >= 1 && top <= heightU
                && !at.AsSpan(bottom, carrier.ClaimU).ContainsAnyExcept((Carrier?)null)
                && (isChosen || (Agree(at[bottom - 1], carrier) && Agree(carrier, at[top + 1])));
        }

        // Items that runners raise beyond their U positions need a free U between them.
        private static bool Agree(Carrier? below, Carrier? above) =>
            below is null || above is null || !below.Item.MayRun || !above.Item.MayRun || !(below.Item.Creeps || above.Item.Creeps);
    }
}
