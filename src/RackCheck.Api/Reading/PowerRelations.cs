using FluentValidation;
using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Api.Reading;

/// <summary>Relations between supplies, PDUs, cords and UPSs: existing phases, and no loop.</summary>
internal static class PowerRelations
{
    /// <summary>Finds outlet groups and cords on lines that their supply does not have.</summary>
    public static void LinesAreThere(RackDescription description, ValidationContext<RackDescription> context)
    {
        var units = description.Pdus;
        for (var i = 0; i < units?.Count; i++)
        {
            if (units[i] is not { Groups: { } groups } unit || SupplyOf(description, unit) is not { } supply)
            {
                continue;
            }

            for (var g = 0; g < groups.Count; g++)
            {
                if (groups[g]?.Phase is { } phase && FaultOf(description, supply, phase) is { } fault)
                {
                    DescriptionValidator.Fail(context, Invariant($"/pdus/{i}/groups/{g}/phase"), FaultCodes.Inconsistent, fault);
                }
            }
        }

        for (var i = 0; i < description.Connections?.Count; i++)
        {
            if (description.Connections[i] is { Item: { } item, Pdu: { } unitId } connection
                && PlugOf(description, item, connection.Plug ?? 0) is { } plug && PlugFit.IsThreePhase(plug)
                && units?.FirstOrDefault(u => u?.Id == unitId) is { } unit && SupplyOf(description, unit) is { } supply && !HasThreePhases(description, supply))
            {
                DescriptionValidator.Fail(
                    context,
                    Invariant($"/connections/{i}/group"),
                    FaultCodes.Inconsistent,
                    $"A three-phase plug cannot be fed from supply {supply.Id}, which has one phase.");
            }
        }
    }

    private static string? FaultOf(RackDescription description, Supply supply, Phase phase)
    {
        if (supply.Phases == 1)
        {
            return phase == Phase.L1 ? null : $"Supply {supply.Id} has one phase; its outlet groups are fed from L1.";
        }

        if (phase >= Phase.L1L2)
        {
            return null;
        }

        // Above 150 V there is no outlet from line to neutral in North America; elsewhere a supply feeds its outlets in one way.
        return HasThreePhases(description, supply) && description.Site?.Region == Region.Na && supply.VoltageV > Currents.MostLineToNeutralV
            ? Invariant($"Supply {supply.Id} has {supply.VoltageV:0.###} V between two lines: name a pair of lines, L1-L2, L2-L3 or L3-L1.")
            : description.Pdus!.Any(u => u?.Supply == supply.Id && u.Groups?.Any(g => g?.Phase >= Phase.L1L2) == true)
                ? $"Other outlet groups of supply {supply.Id} are fed from a pair of lines, so this group cannot be fed from a single line."
                : null;
    }

    /// <summary>Finds PDUs that two UPSs feed, and UPSs that feed their own supply.</summary>
    public static void FeedsAreATree(RackDescription description, ValidationContext<RackDescription> context)
    {
        var fedBy = new Dictionary<string, int>(StringComparer.Ordinal);
        var items = description.Items;
        for (var i = 0; i < items?.Count; i++)
        {
            for (var f = 0; f < items[i]?.Ups?.Feeds?.Count; f++)
            {
                if (items[i].Ups!.Feeds![f] is not { } unit)
                {
                    continue;
                }

                if (!fedBy.TryAdd(unit, i))
                {
                    DescriptionValidator.Fail(
                        context,
                        Invariant($"/items/{i}/ups/feeds/{f}"),
                        FaultCodes.Inconsistent,
                        $"PDU {unit} is already fed from {items[fedBy[unit]].Id}.");
                }
            }
        }

        if (fedBy.Count > 0 && description.Connections is { Count: > 0 })
        {
            FindRings(description, fedBy, context);
        }
    }

    // From each UPS upstream: the PDUs of its cords, and the UPSs that feed those PDUs.
    private static void FindRings(RackDescription description, Dictionary<string, int> fedBy, ValidationContext<RackDescription> context)
    {
        foreach (var ups in fedBy.Values.Distinct())
        {
            var seen = new HashSet<int>();
            var next = new Stack<int>([ups]);
            var ring = false;
            while (!ring && next.TryPop(out var at))
            {
                foreach (var unit in description.Connections!.Where(c => c?.Item is { } item && item == description.Items[at].Id).Select(c => c.Pdu))
                {
                    if (unit is not null && fedBy.TryGetValue(unit, out var above))
                    {
                        ring |= above == ups;
                        if (seen.Add(above))
                        {
                            next.Push(above);
                        }
                    }
                }
            }

            if (ring)
            {
                DescriptionValidator.Fail(
                    context,
                    Invariant($"/items/{ups}/ups/feeds"),
                    FaultCodes.Inconsistent,
                    $"{description.Items[ups].Id} feeds a PDU that feeds it: a loop.");
            }
        }
    }

    private static Supply? SupplyOf(RackDescription description, Pdu unit) =>
        description.Supplies?.FirstOrDefault(s => s?.Id is { } id && id == unit.Supply);

    private static bool HasThreePhases(RackDescription description, Supply supply) =>
        supply.Phases == 3
        || (supply.Phases is null && description.Pdus!.Any(u => u?.Supply == supply.Id && u.Groups?.Any(g => g?.Phase > Phase.L1) == true));

    private static ConnectorCode? PlugOf(RackDescription description, string item, int plug) =>
        description.Items?.FirstOrDefault(i => i?.Id == item)?.Power?.Plugs is { } plugs && plug >= 0 && plug < plugs.Count ? plugs[plug] : null;
}
