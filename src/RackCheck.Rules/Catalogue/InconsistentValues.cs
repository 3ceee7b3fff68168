using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Catalogue;

/// <summary>Finds pairs of values of which one at least is wrong.</summary>
public sealed class InconsistentValues : Rule
{
    private static readonly MessageWording Room = new(
        "catalogue.inconsistent-values.room", "The lowest temperature of the site, {lowestC} C, is above its highest, {highestC} C.");

    private static readonly MessageWording Inlet = new(
        "catalogue.inconsistent-values.inlet", "The minimum inlet temperature of {item}, {lowestC} C, is above its maximum, {highestC} C.");

    private static readonly MessageWording Power = new(
        "catalogue.inconsistent-values.power", "The typical power of {item}, {typicalW} W, is above its rated power, {ratedW} W.");

    private static readonly MessageWording Ups = new(
        "catalogue.inconsistent-values.ups", "{item} is rated for {ratedW} W, which is more than its {ratedVa} VA.");

    private static readonly MessageWording Phases = new(
        "catalogue.inconsistent-values.phases", "Supply {supply} has one phase, but its {socket} socket is for three.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "catalogue.inconsistent-values",
        Title = "Values contradict each other",
        Severity = Severity.Warning,
        What =
            "Finds a lowest temperature above the highest one, of the site or of an item's inlet, a typical power above the rated power, a UPS with more W "
            + "than VA, and a three-phase socket on a single-phase supply. The other rules use each value as given.",
        Why = "One of the two values is wrong, so what was checked is not what will be delivered.",
        Formula =
            "ambientMinC <= ambientMaxC; minInletC <= maxInletC; typicalW <= ratedW; UPS: ratedW <= ratedVa; phases of the socket <= phases of the supply",
        Sources = [Sources.Bookkeeping],
        Needs =
        [
            "/site/ambientMinC", "/site/ambientMaxC", "/items/*/minInletC", "/items/*/maxInletC", "/items/*/power/typicalW", "/items/*/power/ratedW",
            "/items/*/ups/ratedW", "/items/*/ups/ratedVa", "/supplies/*/phases", "/supplies/*/socket",
        ],
        Notes = ["A value that is missing contradicts none."],
        Remedies = ["Compare both values with the data sheet or the site survey, and correct the wrong one."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        if (context.Survey.Description.Site is { AmbientMinC: { } lowest, AmbientMaxC: { } highest } && Comparison.IsOver(lowest, highest))
        {
            context.Report(Draft(
                Room, [("lowestC", lowest), ("highestC", highest)], Subjects.Site, ["site"], ["/site/ambientMinC", "/site/ambientMaxC"],
                Quantities.Of(lowest, "C"), Quantities.Of(highest, "C")));
        }

        foreach (var supply in context.Survey.Power.Supplies)
        {
            if (supply.Source is { Phases: 1, Socket: { } socket } && PlugFit.IsThreePhase(socket))
            {
                ReportPhases(context, supply, socket);
            }
        }

        foreach (var item in context.Survey.Items)
        {
            var source = item.Item!;
            if (source is { MinInletC: { } least, MaxInletC: { } most } && Comparison.IsOver(least, most))
            {
                Report(context, item, Inlet, ("lowestC", least), ("highestC", most), "minInletC", "maxInletC", "C");
            }

            if (source.Power is { TypicalW: { } typical, RatedW: { } rated } && Comparison.IsOver(typical, rated))
            {
                Report(context, item, Power, ("typicalW", typical), ("ratedW", rated), "power/typicalW", "power/ratedW", "W");
            }

            if (source.Ups is { RatedW: { } watts, RatedVa: { } apparent } && Comparison.IsOver(watts, apparent))
            {
                Report(context, item, Ups, ("ratedW", watts), ("ratedVa", apparent), "ups/ratedW", "ups/ratedVa", "VA");
            }
        }
    }

    private static void ReportPhases(RuleContext context, SupplyNode supply, ConnectorCode socket)
    {
        var pointer = Pointers.Supply[supply.Index];
        context.Report(Draft(
            Phases, [("supply", supply.Id), ("socket", PlugFit.Of(socket).Code)], Subjects.Supply(supply.Id), ["phases", supply.Id],
            [$"{pointer}/phases", $"{pointer}/socket"], Quantities.Of(PlugFit.Of(socket).Phases, "phases"), Quantities.Of(1, "phases")));
    }

    private static void Report(
        RuleContext context, MountedItem item, MessageWording message, (string Name, double Value) over, (string Name, double Value) bound, string member,
        string other, string unit) => context.Report(Draft(
            message, [("item", item.Id), (over.Name, over.Value), (bound.Name, bound.Value)], context.Survey.Cabinet.Place(item), [item.Id, member],
            [$"{item.Pointer}/{member}", $"{item.Pointer}/{other}"], Quantities.Of(over.Value, unit), Quantities.Of(bound.Value, unit)));

    // Only whoever wrote the values knows which of them is wrong: there is no remedy to offer.
    private static FindingDraft Draft(
        MessageWording message, (string Name, Scalar Value)[] data, WordedText subject, string[] identity, string[] pointers, Quantity over,
        Quantity bound) => new()
        {
            Message = message,
            Data = data,
            Subject = subject,
            Identity = identity,
            Pointers = pointers,
            Actual = over,
            Limit = bound,
            Calculation = Invariant($"{over.Value:0.###} > {bound.Value:0.###}"),
        };
}
