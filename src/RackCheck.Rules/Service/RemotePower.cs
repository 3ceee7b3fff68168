using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Power;

namespace RackCheck.Rules.Service;

/// <summary>Finds racks at remote sites without remotely switched outlets or a remote console.</summary>
public sealed class RemotePower : Rule
{
    private static readonly MessageWording Unreachable = new(
        "service.remote-power.unreachable",
        "The site is remote, and the rack has neither a remotely switched outlet nor a remote console for {items}.");

    private static readonly MessageWording SpareDefect = new(
        "service.remote-power.spare",
        "The site is remote, and the spare {item} is fed from an outlet of {pdu} that is not remotely switched.");

    private static readonly MessageWording Switched = new(
        "service.remote-power.switched",
        "The site is remote, and {item}, which needs remote power cycling, is fed from an outlet of {pdu} that is not remotely switched.");

    private static readonly MissingData MissingPdus = new(
        "service.remote-power.missing-pdus",
        "The site is remote. Without the PDUs, remote switching cannot be checked.");

    private static readonly MissingData MissingPlugs = new(
        "service.remote-power.missing-plugs",
        "Without the plugs of the item, remote switching of its outlets cannot be checked.");

    private static readonly MissingData MissingRemoteAccess = new(
        "service.remote-power.missing-remote-access",
        "The site is remote, and no outlet is remotely switched. Whether the KVM switch can be used from another site is not specified.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "service.remote-power",
        Title = "No remote power control or console at a remote site",
        Severity = Severity.Warning,
        What = "Finds, at a remote site, items for remote power cycling and spares on outlets that are not remotely switched. Also finds racks with "
            + "computers or connected equipment that have neither a remotely switched outlet nor a remote console. A local KVM switch is no remote console.",
        Why = "A crashed item stays down until somebody travels to the unattended site.",
        Formula = "remote, and an outlet of such an item is not switched; or no outlet is switched and no item has remoteAccess",
        Sources = [Sources.RemotePractice],
        Needs =
        [
            "/site/remote", "/items/*/remotePowerCycle", "/items/*/spare", "/items/*/power/plugs", "/items/*/category", "/items/*/console",
            "/items/*/remoteAccess", "/pdus/*/remoteSwitched", "/pdus/*/groups/*/outlets/*/switched", "/connections",
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

        var survey = context.Survey;
        var isReported = false;
        if (survey.Power.IsDescribed)
        {
            isReported = CheckOutlets(context);
        }
        else if (Array.Exists(survey.Items, i => IsManaged(i) || (NeedsAccess(i) && !HasRemoteConsole(survey.Items))))
        {
            context.ReportMissing(SitePointers.Pdus, MissingPdus);
            return;
        }

        if (!isReported)
        {
            CheckAccess(context);
        }
    }

    private static bool IsManaged(MountedItem item) => item.Item is { RemotePowerCycle: true } or { Spare: true };

    private static bool NeedsAccess(MountedItem item) =>
        item.Category is ItemCategory.Computer or ItemCategory.Server || item.Item is { Console: true } or { Power: not null };

    private static bool HasRemoteConsole(MountedItem[] items) => Array.Exists(items, i => i.Item!.RemoteAccess == true);

    // One of the two is enough to bring a crashed computer up again.
    private static void CheckAccess(RuleContext context)
    {
        var (survey, tree) = (context.Survey, context.Survey.Power);
        var hosts = Array.FindAll(survey.Items, NeedsAccess);
        if (hosts.Length == 0 || HasSwitched(tree) || HasRemoteConsole(survey.Items))
        {
            return;
        }

        var unknown = Array.FindAll(survey.Items, i => i is { Category: ItemCategory.KvmSwitch, Item.RemoteAccess: null });
        foreach (var item in unknown)
        {
            context.ReportMissing(SitePointers.ItemRemoteAccess[item.Index], MissingRemoteAccess);
        }

        if (unknown.Length == 0)
        {
            Array.Sort(hosts, static (x, y) => string.CompareOrdinal(x.Id, y.Id));
            context.Report(new FindingDraft
            {
                Message = Unreachable,
                Data = [("items", Names.Ids(hosts.Select(h => h.Id)))],
                Subject = Subjects.RemoteAccess,
                Identity = ["rack"],
                Pointers = [SitePointers.Remote, hosts[0].Pointer],
                Candidates = ServiceRemedies.RemoteAccess(survey),
            });
        }
    }

    private static bool CheckOutlets(RuleContext context)
    {
        var (tree, isReported) = (context.Survey.Power, false);
        foreach (var item in context.Survey.Items)
        {
            if (!IsManaged(item))
            {
                continue;
            }

            Cord[] cords = [.. tree.CordsOf(item)];
            if (cords.Length == 0 && item.Item!.Power?.Plugs is null)
            {
                context.ReportMissing(Pointers.ItemPlugs[item.Index], MissingPlugs);
            }

            Cord[] fixedOnes = [.. cords.Where(c => c.Group is not null && !c.Switched)];
            if (fixedOnes.Length > 0)
            {
                ReportItem(context, item, fixedOnes);
                isReported = true;
            }
        }

        return isReported;
    }

    private static bool HasSwitched(PowerTree tree) =>
        Array.Exists(tree.Groups, g => g.Source.Outlets.Any(o => o.Switched ?? g.Unit.Source.RemoteSwitched ?? false));

    private static void ReportItem(RuleContext context, MountedItem item, Cord[] cords)
    {
        var unit = cords[0].Group!.Unit;
        var isSpare = item.Item!.RemotePowerCycle != true;
        context.Report(new FindingDraft
        {
            Message = isSpare ? SpareDefect : Switched,
            Data = [("item", item.Id), ("pdu", unit.Id)],
            Subject = context.Survey.Cabinet.Place(item),
            Identity = [item.Id],
            Pointers = [isSpare ? $"{item.Pointer}/spare" : $"{item.Pointer}/remotePowerCycle", Pointers.Pdu[unit.Index]],
            Candidates = ServiceRemedies.Switched(context.Survey, cords),
        });
    }
}
