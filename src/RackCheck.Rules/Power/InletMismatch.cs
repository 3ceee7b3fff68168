using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Power;

/// <summary>Finds PDUs whose plug does not go into their supply's socket, or does not carry what the unit is rated for.</summary>
public sealed class InletMismatch : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "power.inlet-mismatch",
        Title = "PDU does not plug into its supply",
        Severity = Severity.Error,
        Safety = true,
        What = "Finds PDUs whose plug does not go into their supply's socket, is rated under the unit, or has one phase where the outlets hang on several. Of several faults of a unit the gravest is named. What a UPS feeds is judged by plug and rating alone.",
        Why = "An adaptor is found on the day, or a plug gets hot that carries less than what the outlets behind it give.",
        Formula = "plug goes into socket by the table of connectors; rating of the plug >= rating of the unit; phases of the plug >= lines of the outlet groups",
        Sources = [Sources.Iec60320, Sources.Bs1363, Sources.Cee7, Sources.NemaWd6, Sources.Iec60309],
        Needs = ["/pdus/*/plug", "/pdus/*/ratedA", "/pdus/*/groups/*/phase", "/supplies/*/socket", "/items/*/ups/feeds", "/site/region"],
        Remedies = ["Take the unit with the plug for that socket.", "Have the supply end in the socket for that plug.", "Take both a size larger.", "Take a unit that the plug carries.", "Wire it in without plug and socket."],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        foreach (var unit in context.Survey.Power.Units)
        {
            if (unit.Source.Plug is null)
            {
                context.Lacks(PlugPointer(unit), "Without the plug of a PDU it cannot be said whether it goes into its supply's socket and carries what the unit is rated for.");
            }

            if (unit is { FedBy: null, Supply.Source.Socket: null })
            {
                context.Lacks(SocketPointer(unit), "Without the socket that a supply ends in it cannot be said whether a PDU's plug goes into it.");
            }

            if (unit.Source.Plug is { } plug && FaultOf(context.Survey.Power, unit, plug) is { } fault)
            {
                Report(context, unit, plug, fault);
            }
        }
    }

    private static Fault? FaultOf(PowerTree tree, PduNode unit, ConnectorCode plug)
    {
        if (unit.FedBy is null && unit.Supply.Source.Socket is { } socket && !PlugFit.Fits(plug, socket))
        {
            return new Fault(
                "The {plug} plug of {pdu} does not go into the {socket} socket of supply {supply}.",
                [("socket", PlugFit.Of(socket).Code), ("supply", unit.Supply.Id)],
                SocketPointer(unit));
        }

        var rated = PlugFit.RatedA(plug, tree.IsNorthAmerica);
        if (rated < unit.RatedA)
        {
            return new Fault(
                "{pdu} is rated for {ratedA} A, but its {plug} plug for {plugA} A.",
                [("ratedA", unit.RatedA), ("plugA", rated)],
                Invariant($"{Pointers.Pdu[unit.Index]}/ratedA"),
                Quantities.Of(rated, "A"),
                Quantities.Of(unit.RatedA, "A"));
        }

        var lines = LinesOf(unit);
        return lines == 1 || plug == ConnectorCode.Hardwired || PlugFit.IsThreePhase(plug) ? null : new Fault(
            "The outlet groups of {pdu} use {lines} phases, but its {plug} plug has {phases}.",
            [("lines", lines), ("phases", 1)],
            Invariant($"{Pointers.Pdu[unit.Index]}/groups"),
            Quantities.Of(1, "lines"),
            Quantities.Of(lines, "lines"));
    }

    private static int LinesOf(PduNode unit) => unit.Groups.Select(g => g.Line).Distinct().Count();

    private static string PlugPointer(PduNode unit) => Invariant($"{Pointers.Pdu[unit.Index]}/plug");

    private static string SocketPointer(PduNode unit) => Invariant($"{Pointers.Supply[unit.Supply.Index]}/socket");

    private static void Report(RuleContext context, PduNode unit, ConnectorCode plug, Fault fault) => context.Report(new FindingDraft
    {
        Message = fault.Message,
        Data = [("pdu", unit.Id), ("plug", PlugFit.Of(plug).Code), .. fault.Data],
        Subject = $"PDU {unit.Id}",
        Identity = [unit.Id],
        Pointers = [PlugPointer(unit), fault.Other],
        Actual = fault.Actual,
        Limit = fault.Limit,
        UtilisationPercent = fault.Actual is { Unit: "A" } actual ? 100 * fault.Limit!.Value / actual.Value : null,
        Calculation = fault.Actual is { } has ? Invariant($"{has.Value:0.###} {has.Unit} < {fault.Limit!.Value:0.###} {has.Unit}") : null,
        Cures = InletCures.Match(context.Survey, unit, LinesOf(unit)),
    });

    /// <summary>What is wrong with a unit's plug, and what it does not agree with.</summary>
    private sealed record Fault(string Message, (string Name, Scalar Value)[] Data, string Other, Quantity? Actual = null, Quantity? Limit = null);
}
