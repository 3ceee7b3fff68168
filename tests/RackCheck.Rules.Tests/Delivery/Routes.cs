using RackCheck.Model;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Delivery;

/// <summary>Racks with a complete delivery route, for tests to change.</summary>
internal static class Routes
{
    public static RackDescription OnRoute(double? height = 2000, double width = 600, double depth = 800, double? cabinetKg = 100, int heightU = 42) =>
        TestRacks.EmptyRack(heightU, depth, width).Cabinet(c => c with { HeightMm = height, MassKg = cabinetKg }).Route(_ => new Model.Delivery
        {
            PalletHeightMm = 150, PalletKg = 25, LiftingKg = 500, ReceiverArranged = true,
        });

    public static RackDescription Route(this RackDescription rack, Func<Model.Delivery, Model.Delivery> change) =>
        rack with { Site = (rack.Site ?? new Site()) with { Delivery = change(rack.Site?.Delivery ?? new Model.Delivery()) } };

    public static RackDescription Through(this RackDescription rack, params (string? Name, double Width, double Height)[] openings) =>
        rack.Route(d => d with { Openings = [.. openings.Select(o => new Opening { Name = o.Name, WidthMm = o.Width, HeightMm = o.Height })] });

    public static RackDescription Round(this RackDescription rack, params (double From, double Into)[] corners) =>
        rack.Route(d => d with { Corridors = [.. corners.Select(c => new Corridor { WidthMm = c.From, TurnIntoMm = c.Into })] });
}
