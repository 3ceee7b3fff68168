using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Service;

/// <summary>Finds racks with more hosts that need a KVM port than KVM ports.</summary>
public sealed class KvmPorts : Rule
{
    private static readonly WordingChoice Defect = new(
        "service.kvm-ports",
        "[no-switch-one-host:{needed} host needs a KVM port, and the rack has no KVM switch with ports|no-switch:{needed} hosts need a KVM "
            + "port, and the rack has no KVM switch with ports|one-port:{needed} hosts need a KVM port, and the rack has {ports} KVM port|{needed} "
            + "hosts need a KVM port, and the rack has {ports} KVM ports].");

    private static readonly MissingData Missing = new(
        "service.kvm-ports.missing",
        "Without the number of ports of the KVM switch, the number of KVM ports cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "service.kvm-ports",
        Title = "Too few KVM ports",
        Severity = Severity.Error,
        What = "Finds racks in which more items need a KVM port than the KVM switches have ports.",
        Why = "A host without a KVM port cannot be set up or serviced unless another host is unplugged.",
        Formula = "number of items with console > sum of kvmPorts; an item with KVM ports needs none itself; without KVM ports: > number of keyboard drawers "
            + "or displays",
        Sources = [Sources.Bookkeeping],
        Needs = ["/items/*/console", "/items/*/kvmPorts", "/items/*/category"],
        Notes =
        [
            "Without a KVM switch a keyboard drawer or a display serves one host directly. With one it is connected to the switch.",
        ],
        Remedies = ["Use a KVM switch with more ports.", "Add a KVM switch.", "Run some of the hosts without a console."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        int needed = 0, ports = 0, drawers = 0, displays = 0;
        MountedItem? unknown = null, best = null;
        foreach (var item in context.Survey.Items)
        {
            ports += item.Item!.KvmPorts ?? 0;
            needed += NeedsPort(item) ? 1 : 0;
            drawers += item.Category == ItemCategory.KeyboardDrawer ? 1 : 0;
            displays += item.Category == ItemCategory.Display ? 1 : 0;
            unknown = item is { Category: ItemCategory.KvmSwitch, Item.KvmPorts: null } ? item : unknown;
            best = item.Item.KvmPorts is { } own
                && (best is null || own > best.Item!.KvmPorts || (own == best.Item.KvmPorts && string.CompareOrdinal(item.Id, best.Id) < 0))
                ? item
                : best;
        }

        if (needed <= (ports > 0 ? ports : Math.Max(drawers, displays)))
        {
            return;
        }

        if (unknown is null)
        {
            Report(context, best, needed, ports);
            return;
        }

        foreach (var item in context.Survey.Items.Where(i => i is { Category: ItemCategory.KvmSwitch, Item.KvmPorts: null }))
        {
            context.ReportMissing(SitePointers.ItemKvmPorts[item.Index], Missing);
        }
    }

    private static bool NeedsPort(MountedItem item) => item.Item is { Console: true, KvmPorts: not > 0 };

    private static void Report(RuleContext context, MountedItem? best, int needed, int ports)
    {
        var survey = context.Survey;
        var hosts = survey.Items.Where(NeedsPort).OrderBy(i => i.Id, StringComparer.Ordinal).ToArray();
        context.Report(new FindingDraft
        {
            Message = Defect.With((ports, needed) switch { (0, 1) => "no-switch-one-host", (0, _) => "no-switch", (1, _) => "one-port", _ => "" }),
            Data = ports == 0 ? [("needed", needed)] : [("needed", needed), ("ports", ports)],
            Subject = Subjects.ConsolePorts,
            Identity = [],
            Pointers = [best is null ? SitePointers.ItemConsole[hosts[0].Index] : SitePointers.ItemKvmPorts[best.Index]],
            Actual = Quantities.Of(ports, "ports"),
            Limit = Quantities.Of(needed, "ports"),
            Calculation = Invariant($"{ports} < {needed}"),
            Candidates = ServiceRemedies.MorePorts(survey, best, needed - ports).Append(ServiceRemedies.WithoutConsole(survey, hosts[ports..])),
        });
    }
}
