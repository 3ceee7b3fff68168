using RackCheck.Model;
using RackCheck.Planning.Building;
using RackCheck.Planning.Proposals;
using RackCheck.Rules;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Planning.Baskets;

/// <summary>
/// Shelves, PDUs, fans and fan trays of an order that nothing in it needs. A spare one is for the customer to decide, so that they stay in the order, and the
/// line says so. What a rule would miss is not spare: the second feed of dual-fed equipment, or a fan that the others replace when it fails.
/// </summary>
internal static class SpareParts
{
    /// <summary>What is said of lines with spare parts.</summary>
    /// <param name="order">The completed order.</param>
    /// <param name="map">The lines of the parts.</param>
    /// <param name="checker">Checks the racks without a part.</param>
    /// <returns>The texts by index of the line.</returns>
    public static IReadOnlyDictionary<int, WordedText> Of(CompletedOrder order, LineMap map, RackChecker checker)
    {
        if (order.Lines.HasFurtherCabinets)
        {
            return new Dictionary<int, WordedText>();
        }

        // What was added may carry the cords of an ordered PDU too.
        var hasAllPdus = !order.Added.Any(p => p.Product.Kind == ProductKind.Pdu);
        var found = order.Final.Racks.Select(r => r.Trial)
            .SelectMany(t => ShelvesOf(t).Select(p => (Piece: p, Kind: "shelf"))
                .Concat((hasAllPdus ? UnitsOf(t, map, checker) : []).Select(p => (Piece: p, Kind: "pdu")))
                .Concat(FansOf(t, map, checker).Select(p => (Piece: p, Kind: "fans"))));
        return found.Select(f => (Line: map.LineOf(f.Piece), f.Kind)).Where(f => f.Line is not null).GroupBy(f => f.Line!.Value).ToDictionary(
            g => g.Key,
            g =>
            {
                var (spare, ordered) = (g.Count(), order.Lines.Request.Lines[g.Key].Quantity);
                return new WordedText(
                    StatusWordings.Spare.With(g.First().Kind, spare < ordered ? null : ordered == 1 ? "it" : "all"), ("spare", spare), ("ordered", ordered));
            });
    }

    private static IEnumerable<Piece> ShelvesOf(Trial trial)
    {
        var used = trial.Rack.Items.Select(i => i.OnShelf).OfType<string>().ToHashSet(StringComparer.Ordinal);
        return trial.Completed.RackBuild.Items.Where(i => i.IsShelf && !used.Contains(i.Id)).Select(i => i.Piece);
    }

    // One after the other, the last of a part number first; those that a UPS feeds are of the UPS.
    private static List<Piece> UnitsOf(Trial trial, LineMap map, RackChecker checker)
    {
        List<Piece> spare = [];
        var behindUps = trial.Rack.Items.SelectMany(i => i.Ups?.Feeds ?? []).ToHashSet(StringComparer.Ordinal);
        var now = trial.Resolved;
        foreach (var alike in trial.Completed.RackBuild.Units.Where(u => map.LineOf(u.Piece) is not null && !behindUps.Contains(u.Unit.Id))
            .GroupBy(u => u.Piece.PartNumber))
        {
            foreach (var unit in alike.Reverse())
            {
                var rack = now.Posted;
                var next = now.With(rack with
                {
                    Pdus = [.. rack.Pdus!.Where(u => u.Id != unit.Unit.Id)],
                    Connections = rack.Connections is { } cords ? [.. cords.Where(c => c.Pdu != unit.Unit.Id)] : null,
                });
                if (!IsSpare(trial, next, checker))
                {
                    break;
                }

                spare.Add(unit.Piece);
                now = next;
            }
        }

        return spare;
    }

    // All fans of a part number together.
    private static IEnumerable<Piece> FansOf(Trial trial, LineMap map, RackChecker checker)
    {
        var build = trial.Completed.RackBuild;
        var cooling = build.CabinetParts.Where(p => p.Key.StartsWith("/cooling/", StringComparison.Ordinal) && map.LineOf(p.Value) is not null);
        foreach (var (pointer, piece) in cooling)
        {
            var rack = trial.Rack;
            if (WithoutFans(rack, trial, build, pointer, piece) is { } without && IsSpare(trial, trial.Resolved.With(without), checker))
            {
                foreach (var ordinal in Enumerable.Range(0, (int)build.Stock.Find(piece.PartNumber)!.Used))
                {
                    yield return piece with { Ordinal = ordinal };
                }
            }
        }
    }

    private static RackDescription? WithoutFans(RackDescription rack, Trial trial, RackBuild build, string pointer, Piece piece)
    {
        var cooling = rack.Cooling!;
        switch (pointer.Split('/'))
        {
            case [_, _, "roofFans", var at]:
                FanSet[] left = [.. cooling.RoofFans!.Where((_, i) => i != int.Parse(at, System.Globalization.CultureInfo.InvariantCulture))];
                return rack with
                {
                    Cooling = cooling with { RoofFans = left.Length > 0 ? left : null },
                    Cabinet = left.Length > 0 ? rack.Cabinet : rack.Cabinet! with { Roof = trial.Offer.Product.Cabinet!.Roof },
                };
            case [_, _, "fanTrays", var at]:
                FanSet[] others = [.. cooling.FanTrays!.Where((_, i) => i != int.Parse(at, System.Globalization.CultureInfo.InvariantCulture))];
                var trays = build.Items.Where(i => i.Piece.PartNumber == piece.PartNumber).Select(i => i.Id).ToHashSet(StringComparer.Ordinal);
                return rack with
                {
                    Cooling = cooling with { FanTrays = others.Length > 0 ? others : null },
                    Items = [.. rack.Items.Where(i => !trays.Contains(i.Id))],
                    Connections = rack.Connections is { } cords ? [.. cords.Where(c => !trays.Contains(c.Item))] : null,
                };
            default:
                return null;
        }
    }

    // Without it the rack has no finding and no open question that it does not have with it. An open U position is closed with a panel.
    private static bool IsSpare(Trial trial, ResolvedRack without, RackChecker checker)
    {
        var found = checker.Find(without);
        var known = trial.Found.Findings.Select(f => f.Fingerprint).ToHashSet(StringComparer.Ordinal);
        return found.NotAssessed <= trial.Found.NotAssessed
            && found.Findings.All(f => known.Contains(f.Fingerprint) || f.Rule == PanelNeeds.Rule);
    }
}
