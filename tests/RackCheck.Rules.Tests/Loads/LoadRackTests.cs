using CsCheck;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Testing;
using static RackCheck.Testing.RackGenerator;

namespace RackCheck.Rules.Tests.Loads;

/// <summary>Properties of all load rules, with random racks.</summary>
public sealed class LoadRackTests
{
    private static readonly Gen<Support?> Supports = Maybe(
        from style in OneOf(SupportStyle.Slides, SupportStyle.Slides, SupportStyle.Runners, SupportStyle.Shelf, SupportStyle.Panel)
        from rated in Maybe(OneOf(0.1, 20, 45, 100))
        from extension in Maybe(OneOf(0.0, 300, 450, 900))
        select new Support { Style = style, RatedKg = rated, ExtensionMm = style == SupportStyle.Slides ? extension : null });

    private static readonly Gen<Item> Equipment =
        from heightU in Gen.Int[1, 4]
        from mass in Maybe(OneOf(0.0, 4, 10, 20, 25, 45, 200))
        from depth in Maybe(OneOf(0.0, 200, 450, 600))
        from height in Maybe(OneOf(40.0, 120))
        from support in Supports
        from kind in Gen.Int[0, 9]
        select new Item
        {
            Id = "", HeightU = kind == 0 ? 0 : heightU, MassKg = mass, Body = new Body { DepthMm = depth, HeightMm = height },
            Support = support, FrontProjectionMm = 40, RearProjectionMm = 25,
            Category = kind switch { 1 or 2 => ItemCategory.Shelf, 3 => ItemCategory.BlankingPanel, _ => null }, OnShelf = kind is 0 or 4 ? "" : null,
        };

    private static readonly Gen<Cabinet> Cabinets =
        from heightU in OneOf(12, 24, 42)
        from width in OneOf(300.0, 600, 800)
        from depth in OneOf(600.0, 1000, 1200)
        from height in Maybe(OneOf(0.0, 133.1, 600))
        from mass in Maybe(OneOf(0.0, 40, 120))
        from style in Maybe(OneOf(BaseStyle.Castors, BaseStyle.Castors, BaseStyle.Feet, BaseStyle.Plinth, BaseStyle.Bolted))
        from baseMm in Maybe(OneOf(0.0, 40, 100))
        from stabiliser in Maybe(OneOf(0.0, 200, 350), few: true)
        from rated in Maybe(OneOf(1.0, 60, 300, 1000))
        from rolling in Maybe(OneOf(1.0, 60, 300), few: true)
        from uprights in Maybe(
            OneOf(new Uprights { FrontSetbackMm = 75, SpacingMm = 450 }, new Uprights { FrontSetbackMm = 100 }, new Uprights { SpacingMm = 500 }))
        select new Cabinet
        {
            HeightU = heightU, WidthMm = width, DepthMm = depth, HeightMm = height is { } over ? (44.45 * heightU) + over : null,
            MassKg = mass, RatedLoadKg = rated, RollingLoadKg = rolling, Uprights = uprights,
            Base = style is null && baseMm is null ? null : new CabinetBase { Style = style, HeightMm = baseMm, StabiliserMm = stabiliser },
        };

    internal static readonly Gen<RackDescription> Racks =
        from cabinet in Cabinets
        from equipment in Equipment.Array[0, 7]
        from places in Gen.Int[0, 40].Array[7]
        from spread in Maybe(OneOf(0.01, 1, 3, 10))
        from point in Maybe(OneOf(0.01, 0.3, 1, 4))
        select new RackDescription
        {
            Cabinet = cabinet,
            Items = Placed(cabinet, equipment, places),
            Site = spread is null && point is null ? null : new Site { Floor = new Floor { DistributedKnM2 = spread, PointKn = point } },
        };

    [Fact]
    [Trait("Kind", "property")]
    public void Lower_mass_never_reduces_tip_angle() =>
        Gen.Select(Racks, Gen.Int[0, 6]).Sample(
            (rack, which) =>
            {
                if (rack.Items.Count == 0 || new RackSurvey(rack).Mass.Balance is not { } before
                    || rack.Items[which % rack.Items.Count] is not { Position: { U: > 1 } position } item || before.Tip.Deg < 0)
                {
                    return;
                }

                var lower = rack with { Items = [.. rack.Items.Select(i => i == item ? i with { Position = position with { U = position.U - 1 } } : i)] };
                Assert.True(new RackSurvey(lower).Mass.Balance!.Tip.Deg >= before.Tip.Deg - 1e-9);
            },
            iter: Samples.Of(2_000),
            print: t => Wording.Of(t.Item1));

    [Fact]
    [Trait("Kind", "property")]
    public void Heavier_cabinet_never_reduces_moment_ratio() =>
        Gen.Select(Racks, OneOf(1.0, 20, 200)).Sample(
            (rack, more) =>
            {
                // The centre of the cabinet is always behind the edge, because a stabiliser reaches forward only.
                var heavier = rack.Cabinet(c => c with { MassKg = c.MassKg + more });
                if (new RackSurvey(rack).Mass.Balance?.Worst is { } before)
                {
                    Assert.True(new RackSurvey(heavier).Mass.Balance!.Worst!.Factor >= before.Factor - 1e-9);
                }
            },
            iter: Samples.Of(2_000),
            print: t => Wording.Of(t.Item1));

    private static Item[] Placed(Cabinet cabinet, Item[] equipment, int[] places)
    {
        var (unit, shelf, items) = (1, default(string), new List<Item>());
        for (var i = 0; i < equipment.Length; i++)
        {
            var item = equipment[i] with { Id = $"item-{(i * 5) % 7}" };
            unit += places[i] % 3;
            var isPlaced = item.OnShelf is null && places[i] != 40 && unit + item.HeightU <= cabinet.HeightU && item.HeightU > 0;
            items.Add(item with
            {
                OnShelf = item.OnShelf is null ? null : shelf,
                Position = isPlaced ? new Position { U = unit, Face = places[i] % 7 == 6 ? Face.Rear : null } : null,
            });
            unit += isPlaced ? item.HeightU!.Value + places[i] / 8 : 0;
            shelf = isPlaced && item.Category == ItemCategory.Shelf ? item.Id : shelf;
        }

        return [.. items];
    }
}
