using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Power;

/// <summary>Finds UPSs without a load.</summary>
public sealed class UpsIdle : Rule
{
    private static readonly MessageWording NoPdu = new("power.ups-idle.no-pdu", "{ups} feeds no PDU.");

    private static readonly MessageWording NothingConnected = new("power.ups-idle.nothing-connected", "{ups} feeds {pdus}, but nothing is connected there.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "power.ups-idle",
        Title = "UPS feeds nothing",
        Severity = Severity.Warning,
        What = "Finds UPSs that feed no PDU, or only PDUs to which nothing is connected.",
        Why = "The UPS is paid for and charged, but when the mains fails nothing keeps running.",
        Formula = "number of cords on the PDUs that the UPS feeds >= 1",
        Sources = [Sources.UpsPractice],
        Needs = ["/items/*/ups/feeds", "/pdus", "/items/*/power/plugs", "/connections"],
        Notes = ["Applied only where PDUs are described."],
        Remedies = ["Feed a PDU from the UPS."],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var tree = context.Survey.Power;
        foreach (var ups in tree.IsDescribed ? tree.Ups : [])
        {
            if (Array.Exists(tree.Cords, c => ReferenceEquals(c.Group?.Unit.FedBy, ups)))
            {
                continue;
            }

            context.Report(new FindingDraft
            {
                Message = ups.Units.Count == 0 ? NoPdu : NothingConnected,
                Data =
                [
                    ("ups", ups.Item.Id),
                    .. ups.Units.Count == 0 ? Array.Empty<(string, Scalar)>() : [("pdus", Names.Ids(ups.Units.Select(u => u.Id)))],
                ],
                Subject = context.Survey.Cabinet.Place(ups.Item),
                Identity = [ups.Item.Id],
                Pointers = [Invariant($"/items/{ups.Item.Index}/ups")],
                Candidates = Candidates(context.Survey, ups),
            });
        }
    }

    // A loaded PDU that the UPS is not fed from.
    private static IEnumerable<RemedyCandidate> Candidates(RackSurvey survey, UpsNode ups)
    {
        var tree = survey.Power;
        var own = tree.CordsOf(ups.Item).Select(c => c.Group?.Unit).ToArray();
        foreach (var unit in tree.Units.Where(u => u.FedBy is null && !own.Contains(u) && Array.Exists(tree.Cords, c => ReferenceEquals(c.Group?.Unit, u))))
        {
            yield return new RemedyCandidate(
                new(RemedyTitles.FeedFromUps, ("pdu", unit.Id), ("item", ups.Item.Id)),
                survey.Description.EditItem(ups.Item.Index, i => i with { Ups = i.Ups! with { Feeds = [.. i.Ups!.Feeds ?? [], unit.Id] } }), nameof(UpsIdle));
        }
    }
}
