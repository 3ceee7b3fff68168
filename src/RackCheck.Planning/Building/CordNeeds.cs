using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Power;

namespace RackCheck.Planning.Building;

/// <summary>A separate mains cord that an item needs.</summary>
/// <param name="Cord">Its plug and outlet.</param>
/// <param name="Inlet">Its inlet.</param>
/// <param name="LengthM">Length of its route, m; 0 where the route is not known.</param>
public sealed record CordNeed(Cord Cord, ConnectorCode Inlet, double LengthM);

/// <summary>The separate mains cords of a rack. Plugs other than those of appliance inlets belong to leads that are fixed to the item.</summary>
public static class CordNeeds
{
    /// <summary>The separate cords with an outlet, the longest first, so that long cords are not used on short routes.</summary>
    /// <param name="survey">The rack.</param>
    /// <param name="isInBox">Whether the cords of an item come with it.</param>
    /// <param name="inletOf">The inlet of a cord that has another plug; null for one whose plug belongs to it or is fixed to it.</param>
    /// <returns>The cords.</returns>
    public static IReadOnlyList<CordNeed> Of(RackSurvey survey, Func<MountedItem, bool> isInBox, Func<Cord, ConnectorCode?>? inletOf = null)
    {
        List<CordNeed> needs = [];
        foreach (var cord in survey.Power.Cords)
        {
            var other = inletOf?.Invoke(cord);
            if ((other is not null || (PlugFit.IsInlet(cord.Code) && !isInBox(cord.Item))) && cord.Group is { } group)
            {
                needs.Add(new CordNeed(cord, other ?? cord.Code, LeadRoutes.LengthM(survey, cord.Item, Array.Find(survey.Units, u => u.Id == group.Unit.Id))));
            }
        }

        needs.Sort((x, y) => y.LengthM.CompareTo(x.LengthM) is var length && length != 0 ? length
            : IdOrder.Instance.Compare(x.Cord.Item.Id, y.Cord.Item.Id) is var name && name != 0 ? name : x.Cord.Plug.CompareTo(y.Cord.Plug));
        return needs;
    }

    /// <summary>
    /// The shortest cord with the connector of the inlet that is long enough; else one with another connector that goes onto it, as C15 does onto C14.
    /// </summary>
    /// <param name="inlet">The inlet.</param>
    /// <param name="plug">The plug.</param>
    /// <param name="lengthM">Length of the route, m.</param>
    /// <param name="cords">Cords to choose from, the preferred first.</param>
    /// <returns>The product; null if none suits.</returns>
    public static Product? Best(ConnectorCode inlet, ConnectorCode plug, double lengthM, IEnumerable<Product> cords) => cords
        .Where(p => p.Cord is { } cord && cord.Plug == plug && PlugFit.Fits(inlet, cord.Connector) && cord.LengthM >= lengthM)
        .OrderBy(p => p.Cord!.Connector != PlugFit.SocketFor(inlet))
        .ThenBy(p => p.Cord!.LengthM)
        .ThenBy(Stock.PiecesOf)
        .FirstOrDefault();
}
