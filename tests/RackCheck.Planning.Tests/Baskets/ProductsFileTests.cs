using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Testing;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;

namespace RackCheck.Planning.Tests.Baskets;

/// <summary>The demo catalogue. All other basket tests show that it can be read strictly.</summary>
public sealed class ProductsFileTests
{
    private static readonly Product[] Cabinets = [.. Products.Where(p => p.Kind == ProductKind.Cabinet)];

    public static TheoryData<string> Equipment =>
        [.. Products.Where(p => p.Kind is ProductKind.Equipment or ProductKind.Shelf or ProductKind.FanTray).Select(p => p.PartNumber)];

    public static TheoryData<ProductKind> Kinds => [.. Enum.GetValues<ProductKind>()];

    [Fact]
    public void Catalogue_has_enough_products_in_part_number_order()
    {
        Assert.True(Products.Count >= 60);
        Assert.All(Products, p => Assert.Matches("^QWL-[A-Z0-9-]+$", p.PartNumber));
        Assert.Equal(Products.Select(p => p.PartNumber).Distinct().Order(StringComparer.Ordinal), Products.Select(p => p.PartNumber));
        Assert.Equal(Products.Count, Products.Select(p => p.Name).Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Kind_has_a_product(ProductKind kind) => Assert.Contains(Products, p => p.Kind == kind);

    [Fact]
    public void Cabinets_have_usual_sizes_and_complete_data()
    {
        Assert.Equal(CabinetSizes.WidthsMm, Cabinets.Select(c => c.Cabinet!.WidthMm!.Value).Distinct().Order());
        Assert.Equal(CabinetSizes.DepthsMm, Cabinets.Select(c => c.Cabinet!.DepthMm!.Value).Distinct().Order());
        Assert.All(Cabinets.Select(c => c.Cabinet!), c => Assert.True(c is
        {
            HeightU: not null, HeightMm: not null, MassKg: not null, RatedLoadKg: not null,
            IpCode: not null, FrontDoor: not null, RearDoor: not null, Base.Style: not null,
            Uprights: { Hole: not null, FrontSetbackMm: not null, SpacingMm: not null, PitchMm: not null, OpeningMm: not null },
        }));
        Assert.Equal(8, Cabinets.Where(c => c.Cabinet!.HeightU == 42).Select(c => (c.Cabinet!.WidthMm, c.Cabinet.DepthMm)).Distinct().Count());
    }

    [Fact]
    public void Uprights_are_between_the_doors() =>
        Assert.All(Cabinets.Select(c => c.Cabinet!), c => Assert.True(
            c.Uprights!.FrontSetbackMm + c.Uprights.SpacingMm <= c.DepthMm - c.RearDoor!.DepthMm
            && c.HeightMm >= RackGeometry.ApertureMm(c.HeightU!.Value) + c.Base!.HeightMm));

    [Theory]
    [MemberData(nameof(Equipment))]
    public void Equipment_fits_some_cabinet(string partNumber)
    {
        // With a panel, since a shelf alone makes no rack.
        var report = Plan(Basket((partNumber["QWL-".Length..], 1), ("PAT-24", 1)));
        Assert.DoesNotContain(report.Unmet, u => u.WhatKey != "need.sound-rack");
        Assert.DoesNotContain(
            report.Report!.Findings,
            f => f.Severity == Severity.Error
                && (f.Rule.StartsWith("depth.", StringComparison.Ordinal) || f.Rule is "layout.body-width" or "layout.body-height" or "layout.shelf-fit"));
        Assert.Equal(Verdict.Hold, report.Verdict);
    }

    [Fact]
    public void Value_is_in_its_range() =>
        Assert.Empty(Products.Where(p => p.Item is not null || p.Cabinet is not null || p.Pdu is not null).SelectMany(p => Judge.Unsound(new RackDescription
        {
            Cabinet = p.Cabinet,
            Items = p.Item is null ? [] : [RackCheck.Planning.Building.ProductParts.ItemOf(p, "x")],
            Pdus = p.Pdu is null ? null : [RackCheck.Planning.Building.ProductParts.UnitOf(p, "y", "A")],
            Supplies = [new Supply { Id = "A", VoltageV = 230, RatedA = 16 }],
        })));

    [Fact]
    public void Equipment_has_power_and_airflow_data() =>
        Assert.All(
            Products.Where(p => p.Kind == ProductKind.Equipment && p.PartNumber != "QWL-PSU-24").Select(p => p.Item!),
            i => Assert.True(i is
            {
                MassKg: not null,
                Body: { WidthMm: not null, HeightMm: not null, DepthMm: not null },
                Airflow.Direction: not null,
                Power.Plugs: not null,
            }));

    [Fact]
    public void Pdu_groups_have_unique_ids_and_breakers() =>
        Assert.All(Products.Where(p => p.Pdu is not null).Select(p => p.Pdu!), u =>
        {
            Assert.Equal(u.Groups!.Count, u.Groups.Select(g => g.Id).Distinct().Count());
            Assert.All(u.Groups, g => Assert.NotNull(g.BreakerA));
        });

    [Fact]
    public void Rail_range_has_minimum_below_maximum() =>
        Assert.All(
            Products.Where(p => p.Support is not null).Select(p => p.Support!),
            s => Assert.True(s is { RatedKg: > 0 } && s.MinSpacingMm < s.MaxSpacingMm));
}
