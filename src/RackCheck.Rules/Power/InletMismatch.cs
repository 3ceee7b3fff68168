using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Power;

/// <summary>Finds PDUs whose plug does not fit the socket of their supply, or is rated below the PDU.</summary>
public sealed class InletMismatch : Rule
{
    private static readonly MessageWording Socket = new(
        "power.inlet-mismatch.socket",
        "The {plug} plug of {pdu} does not fit the {socket} socket of supply {supply}.");

    private static readonly MessageWording Outlet = new(
        "power.inlet-mismatch.ups-outlet", "The {plug} plug of {pdu} does not go into a free outlet of {ups}.");

    private static readonly MessageWording Rating = new(
        "power.inlet-mismatch.rating", "{pdu} is rated for {ratedA} A, but its {plug} plug is rated for {plugA} A.");

    private static readonly MessageWording Phases = new(
        "power.inlet-mismatch.phases",
        "The outlet groups of {pdu} use {lines} phases, but its {plug} plug has {phases}.");

    private static readonly MissingData MissingPlug = new(
        "power.inlet-mismatch.missing-plug",
        "The plug of a PDU is missing, so its fit and its rating cannot be checked.");

    private static readonly MissingData MissingSocket = new(
        "power.inlet-mismatch.missing-socket",
        "The socket of a supply is missing, so the fit of the PDU plug cannot be checked.");

    private static readonly MissingData MissingUpsOutlets = new(
        "power.inlet-mismatch.missing-ups-outlets",
        "The outlets of a UPS are missing, so the fit of the PDU plug cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "power.inlet-mismatch",
        Title = "PDU plug and supply do not match",
        Severity = Severity.Error,
        Safety = true,
        What =
            "Finds PDUs whose plug does not fit the socket of their supply, is rated below the PDU, or has one phase while the outlet groups use several. "
            + "Each PDU has one finding, which names the most serious defect. The plug of a PDU fed from a UPS must fit a free outlet of the UPS.",
        Why = "Somebody improvises an adaptor during installation, or a plug with too low a rating overheats.",
        Formula = "plug fits socket (connector table); plug rating >= PDU rating; phases of the plug >= phases of the outlet groups",
        Sources = [Sources.Iec60320, Sources.Bs1363, Sources.Cee7, Sources.NemaWd6, Sources.Iec60309],
        Needs =
        [
            "/pdus/*/plug", "/pdus/*/ratedA", "/pdus/*/groups/*/phase", "/supplies/*/socket", "/items/*/ups/feeds", "/items/*/ups/outlets", "/site/region",
        ],
        Remedies =
        [
            "Fit a PDU with the plug for that socket.", "Fit the supply with the socket for that plug.", "Fit plug and socket of the next larger rating.",
            "Fit a PDU within the rating of the plug.", "Hard-wire the PDU.",
        ],
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
                context.ReportMissing(PlugPointer(unit), MissingPlug);
            }

            if (unit is { FedBy: null, Supply.Source.Socket: null })
            {
                context.ReportMissing(SocketPointer(unit), MissingSocket);
            }

            if (unit.FedBy is { Source.Outlets: null } ups)
            {
                context.ReportMissing(Invariant($"/items/{ups.Item.Index}/ups/outlets"), MissingUpsOutlets);
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
                Socket,
                [("socket", PlugFit.Of(socket).Code), ("supply", unit.Supply.Id)],
                SocketPointer(unit));
        }

        if (unit.FedBy is { Source.Outlets: { } outlets } feeder && !HasOutlet(feeder, unit, outlets))
        {
            return new Fault(
                Outlet,
                [("ups", feeder.Item.Id)],
                Invariant($"/items/{feeder.Item.Index}/ups/outlets"));
        }

        var rated = PlugFit.RatedA(plug, tree.IsNorthAmerica);
        if (rated < unit.RatedA)
        {
            return new Fault(
                Rating,
                [("ratedA", unit.RatedA), ("plugA", rated)],
                Invariant($"{Pointers.Pdu[unit.Index]}/ratedA"),
                Quantities.Of(rated, "A"),
                Quantities.Of(unit.RatedA, "A"));
        }

        var lines = LinesOf(unit);
        return lines == 1 || plug == ConnectorCode.Hardwired || PlugFit.IsThreePhase(plug) ? null : new Fault(
            Phases,
            [("lines", lines), ("phases", 1)],
            Invariant($"{Pointers.Pdu[unit.Index]}/groups"),
            Quantities.Of(1, "lines"),
            Quantities.Of(lines, "lines"));
    }

    // The PDUs of a UPS take its outlets in their order, each the first that fits.
    private static bool HasOutlet(UpsNode ups, PduNode unit, IReadOnlyList<UpsOutlet> outlets)
    {
        var free = outlets.Select(o => o.Count).ToArray();
        foreach (var one in ups.Units)
        {
            var at = one.Source.Plug is { } plug
                ? Enumerable.Range(0, free.Length).FirstOrDefault(i => free[i] > 0 && PlugFit.Fits(plug, outlets[i].Socket), -1)
                : -1;
            if (ReferenceEquals(one, unit))
            {
                return at >= 0;
            }

            if (at >= 0)
            {
                free[at]--;
            }
        }

        return false;
    }

    private static int LinesOf(PduNode unit) => unit.Groups.Select(g => g.Line).Distinct().Count();

    private static string PlugPointer(PduNode unit) => Invariant($"{Pointers.Pdu[unit.Index]}/plug");

    private static string SocketPointer(PduNode unit) => Invariant($"{Pointers.Supply[unit.Supply.Index]}/socket");

    private static void Report(RuleContext context, PduNode unit, ConnectorCode plug, Fault fault) => context.Report(new FindingDraft
    {
        Message = fault.Message,
        Data = [("pdu", unit.Id), ("plug", PlugFit.Of(plug).Code), .. fault.Data],
        Subject = Subjects.Pdu(unit.Id),
        Identity = [unit.Id],
        Pointers = [PlugPointer(unit), fault.Other],
        Actual = fault.Actual,
        Limit = fault.Limit,
        UtilisationPercent = fault.Actual is { Unit: "A" } actual ? 100 * fault.Limit!.Value / actual.Value : null,
        Calculation = fault.Actual is { } has ? Invariant($"{has.Value:0.###} {has.Unit} < {fault.Limit!.Value:0.###} {has.Unit}") : null,
        Candidates = InletRemedies.Match(context.Survey, unit, LinesOf(unit)),
    });

    /// <summary>A defect of a PDU's plug, and the pointer to the conflicting member.</summary>
    private sealed record Fault(MessageWording Message, (string Name, Scalar Value)[] Data, string Other, Quantity? Actual = null, Quantity? Limit = null);
}
