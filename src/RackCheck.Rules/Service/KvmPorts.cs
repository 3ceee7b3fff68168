using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Service;

/// <summary>Finds racks with more computers that want a console than there are ports for.</summary>
public sealed class KvmPorts : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "service.kvm-ports",
        Title = "Too few console ports",
        Severity = Severity.Error,
        What = "Finds racks where more items want a console than the KVM switches in it have ports.",
        Why = "The computer left over can be neither set up nor mended without unplugging another.",
        Formula = "count of items with console > sum of kvmPorts; what offers ports needs none itself",
        Sources = [Sources.Bookkeeping],
        Needs = ["/items/*/console", "/items/*/kvmPorts", "/items/*/category"],
        Remedies = ["Take a KVM switch with more ports.", "Add a KVM switch.", "Run some of them without a console."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        int wanted = 0, ports = 0;
        Mounted? unknown = null, best = null;
        foreach (var item in context.Survey.Items)
        {
            ports += item.Item!.KvmPorts ?? 0;
            wanted += Wants(item) ? 1 : 0;
            unknown = item is { Category: ItemCategory.KvmSwitch, Item.KvmPorts: null } ? item : unknown;
            best = item.Item.KvmPorts is { } own && (best is null || own > best.Item!.KvmPorts || (own == best.Item.KvmPorts && string.CompareOrdinal(item.Id, best.Id) < 0)) ? item : best;
        }

        if (wanted <= ports)
        {
            return;
        }

        if (unknown is null)
        {
            Report(context, best, wanted, ports);
            return;
        }

        foreach (var item in context.Survey.Items.Where(i => i is { Category: ItemCategory.KvmSwitch, Item.KvmPorts: null }))
        {
            context.Lacks(SitePointers.ItemKvmPorts[item.Index], "Without the ports of a KVM switch it cannot be said whether they do for all that want a console.");
        }
    }

    private static bool Wants(Mounted item) => item.Item is { Console: true, KvmPorts: not > 0 };

    private static void Report(RuleContext context, Mounted? best, int wanted, int ports)
    {
        var survey = context.Survey;
        var wanting = survey.Items.Where(Wants).OrderBy(i => i.Id, StringComparer.Ordinal).ToArray();
        context.Report(new FindingDraft
        {
            Message = ports == 0
                ? (wanted == 1 ? "{wanted} item wants" : "{wanted} items want") + " a console, and nothing in the rack offers a port for one."
                : "{wanted} items want a console, and the rack has {ports} " + (ports == 1 ? "port for them." : "ports for them."),
            Data = ports == 0 ? [("wanted", wanted)] : [("wanted", wanted), ("ports", ports)],
            Subject = "console ports",
            Identity = [],
            Pointers = [best is null ? SitePointers.ItemConsole[wanting[0].Index] : SitePointers.ItemKvmPorts[best.Index]],
            Actual = Quantities.Of(ports, "ports"),
            Limit = Quantities.Of(wanted, "ports"),
            Calculation = Invariant($"{ports} < {wanted}"),
            Cures = ServiceCures.MorePorts(survey, best, wanted - ports).Append(ServiceCures.WithoutConsole(survey, wanting[ports..])),
        });
    }
}
