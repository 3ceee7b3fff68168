using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Power;

/// <summary>
/// Finds given connections that cannot be made: the plug does not fit, the outlets are taken, or voltage or phases of the supply do not suit the item.
/// </summary>
public sealed class PlugMismatch : Rule
{
    private static readonly MessageWording NoOutlet = new(
        "power.plug-mismatch.no-outlet",
        "The {plug} plug of {item} fits no outlet of group {group} of {pdu}, which has {sockets}.");

    private static readonly WordingChoice Full = new(
        "power.plug-mismatch.group-full",
        "Group {group} of {pdu} has [one:one outlet|{outlets} outlets] for {plug} plugs, but {given} cords are connected to [one:it|them]; "
            + "{item} has no free outlet.");

    private static readonly MessageWording Phases = new(
        "power.plug-mismatch.phases",
        "{item} has the three-phase plug {plug}, but group {group} of {pdu} is fed from the single-phase supply {supply}.");

    private static readonly MessageWording Voltage = new(
        "power.plug-mismatch.voltage",
        "{item} is rated for {voltageV} V, but group {group} of {pdu} supplies {supplyV} V.");

    private static readonly MessageWording Twice = new(
        "power.plug-mismatch.twice",
        "Plug {index} of {item}, {plug}, is connected to {count} outlets; a plug fits one.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "power.plug-mismatch",
        Title = "Plug and outlet do not match",
        Severity = Severity.Error,
        What =
            "Finds given connections that cannot be made: the plug fits no outlet of that group, all suitable outlets are taken, one plug has two outlets, "
            + "or voltage or phases do not suit the item.",
        Why = "The installer who follows this list finds an outlet that is taken or does not fit, and improvises.",
        Formula = "plug fits socket (connector table); cords connected to the outlets of a group <= outlets; 0.8 <= item's voltage / outlet's voltage <= 1.25",
        Sources = [Sources.Iec60320, Sources.Bs1363, Sources.Cee7, Sources.NemaWd6, Sources.Iec60309, Sources.VoltagePractice, Sources.Bookkeeping],
        Needs = ["/connections", "/items/*/power/plugs", "/items/*/power/voltageV", "/supplies/*/voltageV", "/supplies/*/phases", "/pdus/*/groups/*/outlets"],
        Remedies =
        [
            "Plug the item into another group or PDU.", "Fit a plug that suits the outlet.", "Fit a PDU with more outlets.", "Add a PDU.",
            "Move the item to another rack.",
        ],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var tree = context.Survey.Power;
        var connections = context.Survey.Description.Connections;
        if (!tree.IsDescribed || connections is not { Count: > 0 })
        {
            return;
        }

        var ofPlug = Enumerable.Range(0, connections.Count).ToLookup(i => (connections[i].Item, connections[i].Plug ?? 0));
        var given = new Dictionary<(GroupNode Group, ConnectorCode Plug), int>();
        foreach (var cord in tree.Cords)
        {
            if (cord.Connection is not { } connection)
            {
                continue;
            }

            ReportTwice(context, cord, connections, [.. ofPlug[(cord.Item.Id, cord.Plug)]]);
            if (FaultOf(tree, given, cord) is { } fault)
            {
                Report(context, cord, connection, fault);
            }
        }
    }

    private static Fault? FaultOf(PowerTree tree, Dictionary<(GroupNode Group, ConnectorCode Plug), int> counted, Cord cord)
    {
        var group = cord.Group!;
        var supply = group.Unit.Supply;
        if (cord.Socket is null)
        {
            var outlets = group.Source.Outlets.Where(o => PlugFit.Fits(cord.Code, o.Socket)).Sum(o => o.Count);
            if (!counted.TryGetValue((group, cord.Code), out var given))
            {
                given = tree.Cords.Count(c => ReferenceEquals(c.Group, group)
                    && (c.Socket is { } socket ? PlugFit.Fits(cord.Code, socket) : c.Connection is not null && c.Code == cord.Code));
                counted.Add((group, cord.Code), given);
            }

            return outlets == 0
                ? new Fault(NoOutlet, [("sockets", SocketsOf(group))])
                : new Fault(
                    Full.With(outlets == 1 ? "one" : null),
                    [("given", given), ("outlets", outlets)],
                    Quantities.Of(given, "outlets"),
                    Quantities.Of(outlets, "outlets"));
        }

        if (cord.IsThreePhase && supply.Phases != 3)
        {
            return new Fault(Phases,
                [("supply", supply.Id)]);
        }

        var voltage = supply.Source.VoltageV;
        return cord.SuitsVoltage(voltage) ? null : new Fault(
            Voltage,
            [("voltageV", cord.Item.Item!.Power!.VoltageV!.Value), ("supplyV", voltage)],
            Quantities.Of(voltage, "V"),
            Quantities.Of(cord.Item.Item.Power.VoltageV.Value, "V"));
    }

    private static Scalar SocketsOf(GroupNode group) =>
        Scalar.Ids(group.Source.Outlets.Select(o => o.Socket).Distinct().Order().Select(s => PlugFit.Of(s).Code));

    private static void Report(RuleContext context, Cord cord, int connection, Fault fault)
    {
        var survey = context.Survey;
        var group = cord.Group!;
        context.Report(new FindingDraft
        {
            Message = fault.Message,
            Data = [("item", cord.Item.Id), ("plug", PlugFit.Of(cord.Code).Code), ("pdu", group.Unit.Id), ("group", group.Id), .. fault.Data],
            Subject = Subjects.OnOutlet(survey.Cabinet, cord.Item, group.Unit.Id, group.Id),
            Identity = [cord.Item.Id, Invariant($"{cord.Plug}"), group.Unit.Id, group.Id],
            Pointers = [Invariant($"/connections/{connection}"), group.Pointer, Invariant($"{Pointers.ItemPlugs[cord.Item.Index]}/{cord.Plug}")],
            Actual = fault.Actual,
            Limit = fault.Limit,
            Calculation = fault is { Actual.Value: var has, Limit.Value: var may } ? Invariant($"{has:0.###} {(has > may ? '>' : '<')} {may:0.###}") : null,
            Candidates = CandidatesOf(survey, cord),
        });
    }

    private static IEnumerable<RemedyCandidate> CandidatesOf(RackSurvey survey, Cord cord) =>
        PowerRemedies.MoveCords(survey, [cord])
            .Concat(cord.Socket is null ? PlugRemedies.ForFreeOutlets(survey, cord) : [])
            .Concat(OutletRemedies.Provide(survey, [cord]))
            .Then(() => OutletRemedies.TakeOut(survey, [cord]));

    private static void ReportTwice(RuleContext context, Cord cord, IReadOnlyList<Connection> connections, int[] all)
    {
        if (all.Length < 2)
        {
            return;
        }

        var survey = context.Survey;
        context.Report(new FindingDraft
        {
            Message = Twice,
            Data = [("index", cord.Plug), ("item", cord.Item.Id), ("plug", PlugFit.Of(cord.Code).Code), ("count", all.Length)],
            Subject = survey.Cabinet.Place(cord.Item),
            Identity = [cord.Item.Id, Invariant($"{cord.Plug}")],
            Pointers = [.. all.Skip(1).Append(all[0]).Select(i => Invariant($"/connections/{i}"))],
            Actual = Quantities.Of(all.Length, "outlets"),
            Limit = Quantities.Of(1, "outlets"),
            Calculation = Invariant($"{all.Length} > 1"),
            Candidates = all.DistinctBy(i => (connections[i].Pdu, connections[i].Group)).Select(kept => new RemedyCandidate(
                new(RemedyTitles.KeepConnection, ("item", cord.Item.Id), ("group", connections[kept].Group), ("pdu", connections[kept].Pdu)),
                survey.Description with { Connections = [.. connections.Where((_, i) => i == kept || !all.Contains(i))] })),
        });
    }

    /// <summary>A defect of a connection.</summary>
    private sealed record Fault(MessageWording Message, (string Name, Scalar Value)[] Data, Quantity? Actual = null, Quantity? Limit = null);
}
