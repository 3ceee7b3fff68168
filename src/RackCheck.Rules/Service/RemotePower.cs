using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Power;

namespace RackCheck.Rules.Service;

/// <summary>Finds racks at remote sites without remotely switched outlets or a remote console.</summary>
public sealed class RemotePower : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "service.remote-power",
        Title = "Remote power control or console missing",
        Severity = Severity.Warning,
        What = "Finds, at a remote site, items for remote power cycling and spares on outlets that are not remotely switched. Also finds racks "
            + "without any remotely switched outlet, and racks with computers but without KVM ports.",
        Why = "A crashed item stays down until somebody travels to the unattended site.",
        Formula = "remote, and an outlet of such an item is not switched; or no outlet is switched; or computers without kvmPorts in the rack",
        Sources = [Sources.RemotePractice],
        Needs =
        [
            "/site/remote", "/items/*/remotePowerCycle", "/items/*/spare", "/items/*/power/plugs", "/items/*/console", "/items/*/kvmPorts",
            "/pdus/*/remoteSwitched", "/pdus/*/groups/*/outlets/*/switched", "/connections",
        ],
        Remedies = ["Connect it to remotely switched outlets.", "Use PDUs with remotely switched outlets.", "Add a KVM switch with remote access."],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        if (context.Survey.Description.Site?.Remote != true)
        {
            return;
        }

        CheckConsole(context);
        if (context.Survey.Power.IsDescribed)
        {
            CheckOutlets(context);
        }
        else if (Array.Exists(context.Survey.Items, i => IsManaged(i) || i.Item is { Power: not null }))
        {
            context.ReportMissing(SitePointers.Pdus, "The site is remote. Without the PDUs, remote switching cannot be checked.");
        }
    }

    private static bool IsManaged(MountedItem item) => item.Item is { RemotePowerCycle: true } or { Spare: true };

    private static bool IsComputer(MountedItem item) => item.Category is ItemCategory.Computer or ItemCategory.Server || item.Item!.Console == true;

    private static void CheckConsole(RuleContext context)
    {
        var items = context.Survey.Items;
        var computers = Array.FindAll(items, IsComputer);
        if (computers.Length == 0 || Array.Exists(items, i => i.Item!.KvmPorts > 0))
        {
            return;
        }

        var unknown = Array.FindAll(items, i => i is { Category: ItemCategory.KvmSwitch, Item.KvmPorts: null });
        foreach (var item in unknown)
        {
            context.ReportMissing(
                SitePointers.ItemKvmPorts[item.Index],
                "The site is remote. Without the number of ports of the KVM switch, remote console access cannot be checked.");
        }

        if (unknown.Length == 0)
        {
            Array.Sort(computers, static (x, y) => string.CompareOrdinal(x.Id, y.Id));
            context.Report(new FindingDraft
            {
                Message = "The site is remote, and the rack has no KVM port for {items}.",
                Data = [("items", ServiceRemedies.Names(computers))],
                Subject = "remote console",
                Identity = ["rack", "console"],
                Pointers = [SitePointers.Remote, computers[0].Pointer],
                Candidates = ServiceRemedies.MorePorts(context.Survey, null, computers.Length),
            });
        }
    }

    private static void CheckOutlets(RuleContext context)
    {
        var tree = context.Survey.Power;
        var isManaged = false;
        foreach (var item in context.Survey.Items)
        {
            if (!IsManaged(item))
            {
                continue;
            }

            isManaged = true;
            Cord[] cords = [.. tree.CordsOf(item)];
            if (cords.Length == 0 && item.Item!.Power?.Plugs is null)
            {
                context.ReportMissing(Pointers.ItemPlugs[item.Index], "Without the plugs of the item, remote switching of its outlets cannot be checked.");
            }

            Cord[] fixedOnes = [.. cords.Where(c => c.Group is not null && !c.Switched)];
            if (fixedOnes.Length > 0)
            {
                ReportItem(context, item, fixedOnes);
            }
        }

        if (!isManaged && Array.Exists(tree.Cords, c => c.Group is not null) && !HasSwitched(tree))
        {
            context.Report(new FindingDraft
            {
                Message = "The site is remote, and the rack has no remotely switched outlet.",
                Data = [],
                Subject = "remote power",
                Identity = ["rack", "power"],
                Pointers = [SitePointers.Remote, Pointers.Pdu[0]],
                Candidates = [new RemedyCandidate("Use PDUs with remotely switched outlets", AllSwitched(context.Survey.Description))],
            });
        }
    }

    private static bool HasSwitched(PowerTree tree) =>
        Array.Exists(tree.Groups, g => g.Source.Outlets.Any(o => o.Switched ?? g.Unit.Source.RemoteSwitched ?? false));

    private static RackDescription AllSwitched(RackDescription description) =>
        description with { Pdus = [.. description.Pdus!.Select(ServiceRemedies.SwitchedUnit)] };

    private static void ReportItem(RuleContext context, MountedItem item, Cord[] cords)
    {
        var unit = cords[0].Group!.Unit;
        var isSpare = item.Item!.RemotePowerCycle != true;
        context.Report(new FindingDraft
        {
            Message = isSpare
                ? "The site is remote, and the spare {item} is fed from an outlet of {pdu} that is not remotely switched."
                : "The site is remote, and {item}, which needs remote power cycling, is fed from an outlet of {pdu} that is not remotely switched.",
            Data = [("item", item.Id), ("pdu", unit.Id)],
            Subject = context.Survey.Cabinet.Place(item),
            Identity = [item.Id],
            Pointers = [isSpare ? $"{item.Pointer}/spare" : $"{item.Pointer}/remotePowerCycle", Pointers.Pdu[unit.Index]],
            Candidates = ServiceRemedies.Switched(context.Survey, cords),
        });
    }
}
