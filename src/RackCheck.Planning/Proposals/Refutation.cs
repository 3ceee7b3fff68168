using RackCheck.Model;
using RackCheck.Planning.Building;
using RackCheck.Rules;
using RackCheck.Rules.Cabling;
using RackCheck.Rules.Cooling;
using RackCheck.Rules.Delivery;
using RackCheck.Rules.Depth;
using RackCheck.Rules.Layout;
using RackCheck.Rules.Loads;

namespace RackCheck.Planning.Proposals;

/// <summary>
/// Proves that a cabinet cannot take the equipment: its height, depth, opening or load rating does not suffice even without any other part, or it does not
/// pass the delivery route.
/// </summary>
internal static class Refutation
{
    private static readonly HashSet<string> Refuting =
    [
        RuleChecks.IdOf<CabinetTooShallow>(), RuleChecks.IdOf<UprightPosition>(), RuleChecks.IdOf<FrontClearance>(), RuleChecks.IdOf<RearClearance>(),
        RuleChecks.IdOf<BodyTooWide>(), RuleChecks.IdOf<RackRating>(), RuleChecks.IdOf<AirflowConflict>(), RuleChecks.IdOf<SideSpace>(),
        RuleChecks.IdOf<IpConflict>(), RuleChecks.IdOf<CorridorTurn>(), RuleChecks.IdOf<Rules.Delivery.Opening>(),
        RuleChecks.IdOf<Rules.Delivery.Lift>(),
    ];

    private static readonly RackChecker Checker = new(RuleSet.Of(RuleSet.Default.All.Where(r => Refuting.Contains(r.Descriptor.Id))), static (_, _) => { });

    /// <summary>The errors and the warnings of the product that stand against a cabinet whatever parts and positions are chosen.</summary>
    /// <remarks>
    /// Front and rear uprights can be moved where nothing is mounted yet, so where they are is no proof. Those of a frame with two posts cannot.
    /// </remarks>
    public static IReadOnlyList<Finding> Against(ProposalTask task, CabinetOffer offer) =>
    [
        .. Checker.Find(Survey.Catalogue.ResolvedRack.Plain(task.Request.In(offer.Product.Cabinet!) with
        {
            Cabinet = Movable(task, offer),
            Items = [.. task.Items.Select(i => i with { Position = task.Context.Kept!.GetValueOrDefault(i.Id), OnShelf = null })],
            Supplies = null,
            Pdus = null,
            Connections = null,
            Cooling = null,
        })).Findings.Where(f => f is { Severity: Severity.Error, Accepted: null } || Trial.IsProductWarning(f)).Where(f => !task.IsBasket || !IsOfDelivery(f)),
    ];

    // A shop sells what is ordered, and says that it does not pass.
    private static bool IsOfDelivery(Finding finding) => finding.Rule.StartsWith("delivery.", StringComparison.Ordinal);

    private static Cabinet Movable(ProposalTask task, CabinetOffer offer)
    {
        var cabinet = offer.Product.Cabinet!;
        return !task.MaySetUprights(offer.Index is { } index ? task.Request.Cabinets![index].PartNumber : offer.Product.PartNumber)
            || cabinet.Uprights?.SpacingMm is null
            ? cabinet
            : cabinet with { Uprights = cabinet.Uprights with { FrontSetbackMm = null } };
    }
}
