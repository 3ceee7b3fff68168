using RackCheck.Rules.Service;
using System.Numerics;
using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Survey;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Planning.Building;

/// <summary>Adds a KVM switch where more hosts need a KVM port than there are ports.</summary>
internal static class Consoles
{
    private static readonly RackChecker Checker = RuleChecks.Only<KvmPorts>();

    /// <summary>Whether an item needs a KVM port.</summary>
    public static bool IsHost(Item item) => item is { Console: true, KvmPorts: not > 0 };

    /// <summary>Whether an item is a KVM switch, or a keyboard drawer or a display.</summary>
    public static bool IsConsole(Item item) =>
        item.KvmPorts > 0 || item.Category is ItemCategory.KvmSwitch or ItemCategory.KeyboardDrawer or ItemCategory.Display;

    /// <summary>Reports the missing KVM switch if the rack has room for it.</summary>
    public static void Find(BasketContext context, RackBuild build)
    {
        var rack = build.Describe();
        if (!Checker.Find(ResolvedRack.Plain(rack)).Findings.Any(f => f.Accepted is null)
            || build.NotPlaced.Any()
            || build.Items.Count >= RackAssembler.MostItems)
        {
            return;
        }

        var wanted = build.Items.Count(i => IsHost(i.Item));
        var toAdd = wanted - build.Items.Sum(i => i.Item.KvmPorts ?? 0);
        var room = BitOperations.PopCount(RackSurvey.Lazily(rack).Occupancy.OpenFront);

        // The smallest switch with enough ports; otherwise the largest, and the next round adds another.
        Product[] offered =
        [
            .. context.Offered(ProductKind.Equipment)
                .Where(p => p.Item is { Category: ItemCategory.KvmSwitch, KvmPorts: > 0, HeightU: > 0 and var height } && height <= room)
                .OrderBy(p => p.Item!.KvmPorts).ThenBy(p => p.Item!.HeightU),
        ];
        var product = Array.Find(offered, p => p.Item!.KvmPorts >= toAdd) ?? offered.LastOrDefault();
        if (product is not null)
        {
            build.MissingPieces.Add(new MissingPiece(
                Stage.Consoles,
                product,
                1,
                LineWordings.Of(LineWordings.Kvm, toAdd == 1, ("missing", toAdd), ("hosts", wanted))));
        }
    }
}
