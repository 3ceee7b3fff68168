using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Power;

/// <summary>Finds socket outlets without additional protection.</summary>
public sealed class RcdAbsent : Rule
{
    /// <summary>Maximum rated residual current for additional protection.</summary>
    public static RuleLimit RcdMa { get; } = new("rcdMa", "maximum rated residual current for additional protection", 30, "mA", 1, 500, Stricter.Lower);

    private const double MostSocketA = 32;

    private static readonly MessageWording None = new(
        "power.rcd-absent.none",
        "The {socket} socket of supply {supply} has no RCD; local code decides whether it needs one of {limitMa} mA.");

    private static readonly MessageWording Sensitivity = new(
        "power.rcd-absent.sensitivity",
        "The {socket} socket of supply {supply} has an RCD of {rcdMa} mA; local code decides whether it needs one of {limitMa} mA.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "power.rcd-absent",
        Title = "Socket outlet without 30 mA RCD",
        Severity = Severity.Advice,
        Concern = Concern.Site,
        What = "Finds socket outlets up to 32 A in the UK and the EU that feed a PDU and have no RCD of at most 30 mA. Hard-wired supplies are exempt.",
        Why = "Local code or the risk assessment of the site can require the RCD for socket outlets.",
        Formula = "socket up to 32 A: rated residual current <= rcdMa",
        Sources = [Sources.Bs7671Additional],
        Limits = [RcdMa],
        Needs = ["/supplies/*/socket", "/supplies/*/ratedA", "/supplies/*/rcdMa", "/pdus/*/supply", "/site/region"],
        Remedies = ["Fit a 30 mA RCD, or record why local code does not require it."],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var limit = context.Limit(RcdMa);
        foreach (var supply in context.Survey.Power.Supplies)
        {
            if (supply.IsNorthAmerica || supply.Source.Socket is null or ConnectorCode.Hardwired || Comparison.IsOver(supply.RatedA, MostSocketA)
                || !supply.Units.Any(u => u.FedBy is null) || !Comparison.IsOver(supply.Source.RcdMa ?? double.PositiveInfinity, limit))
            {
                continue;
            }

            var rcd = supply.Source.RcdMa;
            context.Report(new FindingDraft
            {
                Message = rcd is null ? None : Sensitivity,
                Data =
                [
                    ("socket", PlugFit.Of(supply.Source.Socket.Value).Code), ("supply", supply.Id), ("limitMa", limit),
                    .. rcd is { } rated ? [("rcdMa", rated)] : Array.Empty<(string, Scalar)>(),
                ],
                Subject = Subjects.Supply(supply.Id),
                Identity = [supply.Id],
                Pointers = [Invariant($"/supplies/{supply.Index}/rcdMa"), Invariant($"/supplies/{supply.Index}/socket")],
                Calculation = rcd is { } value ? Invariant($"{value:0.###} > {limit:0.###}") : null,
                Actual = rcd is { } actual ? Quantities.Of(actual, "mA") : null,
                Limit = rcd is null ? null : Quantities.Of(limit, "mA"),
                Candidates = [new RemedyCandidate(
                    new(RemedyTitles.Rcd, ("ratedMa", limit), ("supply", supply.Id)),
                    context.Survey.Description.EditSupply(supply.Index, s => s with { RcdMa = limit }))],
            });
        }
    }
}
