using System.Collections.Immutable;
using RackCheck.Engineering;
using RackCheck.Model;
using static RackCheck.Survey.Bounds.FactTable;

namespace RackCheck.Survey.Bounds;

/// <summary>Facts of an item that have to do with its size, its mass and its support.</summary>
internal static class ItemBounds
{
    private const double HeaviestKgPerU = 20;
    private const double HeaviestBatteryKgPerU = 30;

    // A steel trough with its cover. Common practice, no source.
    private const double HeaviestManagerKgPerU = 3;
    private const double DeepestMm = 900;

    /// <summary>The facts.</summary>
    public static ImmutableArray<Fact> All { get; } =
    [
        OfItem(
            "massKg", "How much does {each} weigh?", i => i.MassKg, (i, v) => i with { MassKg = v }, (i, _) => Mass(i),
            "0.3 to 20 kg for each U, to 30 kg for a UPS or batteries; beside the uprights 0.1 to 40 kg", "kg", pull: Pull.ByHeight),
        OfItem(
            "body/depthMm", "How deep is {each} behind its front panel?", i => i.Body?.DepthMm,
            (i, v) => i with { Body = (i.Body ?? new()) with { DepthMm = v } }, (i, _) => Depth(i),
            "50 to 900 mm; 20 to 300 mm without power; on a shelf 50 to 600 mm", "mm", pull: Pull.Apart),
        OfItem(
            "body/widthMm", "How wide is the body of {each} between the uprights?", i => i.Body?.WidthMm,
            (i, v) => i with { Body = (i.Body ?? new()) with { WidthMm = v } }, Width,
            "300 mm to the opening between the uprights; on a shelf 50 mm to the opening less 10 mm", "mm"),
        OfItem(
            "body/heightMm", "How high is the body of {each}?", i => i.Body?.HeightMm, (i, v) => i with { Body = (i.Body ?? new()) with { HeightMm = v } },
            (i, _) => Height(i), "20 % of its U positions to 0.8 mm less than these, on runners less their thickness; on a shelf 20 to 400 mm", "mm",
            basis: "upper end: the panel heights of IEC 60297-3-100; value from memory"),
        OfItem(
            "frontProjectionMm", "How far do handles, knobs and cables of {each} project in front of the panel?", i => i.FrontProjectionMm,
            (i, v) => i with { FrontProjectionMm = v }, (i, _) => IsPlate(i) || i.OnShelf is not null ? null : new(0, 60), "0 to 60 mm", "mm"),
        OfItem(
            "rearProjectionMm", "How much space do connectors and cables need behind {each}?", i => i.RearProjectionMm,
            (i, v) => i with { RearProjectionMm = v }, (i, _) => IsPlate(i) ? null : i.IsCabled() ? new(20, 100) : new(0, 75),
            "20 to 100 mm with cables, else 0 to 75 mm", "mm"),
        OfItem(
            "support/ratedKg", "For what load are the slides, runners or shelf of {each} rated?", i => i.Support?.RatedKg,
            (i, v) => i with { Support = i.Support! with { RatedKg = v } },
            (i, _) => i.Support?.Style is SupportStyle.Slides or SupportStyle.Runners or SupportStyle.Shelf
                || i is { Category: ItemCategory.Shelf, Support: not null } ? new(10, 1000) : null,
            "10 to 1000 kg", "kg", lowIsAdverse: true),
        OfItem(
            "support/thicknessMm", "How thick is one slide, runner or shelf under {each}?", i => i.Support?.ThicknessMm,
            (i, v) => i with { Support = i.Support! with { ThicknessMm = v } }, (i, _) => Thickness(i),
            "slides 5 to 9.5 mm, runners 1 to 2 mm, shelf 1 to 3 mm", "mm"),
        OfItem(
            "support/extensionMm", "How far do the slides of {each} extend?", i => i.Support?.ExtensionMm,
            (i, v) => i with { Support = i.Support! with { ExtensionMm = v } },
            (i, _) => i is { Support.Style: SupportStyle.Slides, Body.DepthMm: { } depth } ? new(0.6 * depth, 1.1 * depth) : null,
            "0.6 to 1.1 times the depth of the body", "mm"),
        Asked("/items/*/support/style", "How is {each} supported: panel, slides, runners or shelf?"),
        Asked("/items/*/support/minSpacingMm", "What is the minimum spacing of the uprights for the rails of {each}?"),
        Asked("/items/*/support/maxSpacingMm", "What is the maximum spacing of the uprights for the rails of {each}?"),
        Asked("/items/*/position", "Where is {each} mounted?"),
        Asked("/items/*/heightU", "How many U does {each} take?"),
        Asked("/items/*/kvmPorts", "How many KVM ports does {each} have?"),
        Asked("/items/*/remoteAccess", "Can {each} be used from another site?"),
        Asked("/items/*/console", "Does {each} need a KVM port?"),
    ];

    private static bool IsPlate(Item item) => item.Category == ItemCategory.BlankingPanel;

    private static bool IsCabled(this Item item) => item.Power?.Plugs is { Count: > 0 } || item.Cables is { Count: > 0 };

    private static Bound? Mass(Item item) => IsPlate(item) ? null
        : item.HeightU is not { } units || units == 0 ? new(0.1, 40)
        : item.Category == ItemCategory.CableManager ? new(0.2 * units, HeaviestManagerKgPerU * units)
        : new(0.3 * units, units * (HasBatteries(item) ? HeaviestBatteryKgPerU : HeaviestKgPerU));

    private static bool HasBatteries(Item item) => item.Category == ItemCategory.Ups || item.Battery is not null || item.Ups is not null;

    private static Bound? Depth(Item item) => IsPlate(item) ? null
        : item.HeightU is 0 or null ? new(50, 600)
        : item.Category == ItemCategory.CableManager ? new(20, 300)
        : new(50, DeepestMm);

    private static Bound? Width(Item item, RackDescription rack)
    {
        var opening = rack.Cabinet?.Uprights?.OpeningMm ?? RackGeometry.OpeningMm;
        return IsPlate(item) ? null
            : item.HeightU is 0 or null ? new(50, Math.Max(50, opening - Allowances.ShelfWidthLossMm))
            : new(Math.Min(300, opening), opening);
    }

    private static Bound? Height(Item item)
    {
        if (IsPlate(item))
        {
            return null;
        }

        if (item.HeightU is not { } units || units == 0)
        {
            return new(20, 400);
        }

        var below = item.Support is { Style: SupportStyle.Runners } runners ? runners.ThicknessMm ?? Allowances.RunnerThicknessMm : 0;
        return new(0.2 * RackGeometry.ApertureMm(units), RackGeometry.ApertureMm(units) - 0.8 - below);
    }

    private static Bound? Thickness(Item item) => item.Support?.Style switch
    {
        SupportStyle.Slides => new(5, Allowances.SlideThicknessMm),
        SupportStyle.Runners => new(1, Allowances.RunnerThicknessMm),
        SupportStyle.Shelf when item.Category != ItemCategory.Shelf => new(1, Allowances.ShelfThicknessMm),
        _ => null,
    };
}
