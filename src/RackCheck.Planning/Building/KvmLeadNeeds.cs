using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Planning.Building;

/// <summary>A lead between a host and a KVM switch.</summary>
/// <param name="Host">The host.</param>
/// <param name="Switch">The switch.</param>
/// <param name="LengthM">Length of the route, m; 0 where it is not known.</param>
public sealed record KvmLeadNeed(MountedItem Host, MountedItem Switch, double LengthM);

/// <summary>The leads between hosts and KVM switches of a rack.</summary>
public static class KvmLeadNeeds
{
    /// <summary>One lead from each host that needs a KVM port to the nearest switch with a free one, the longest first.</summary>
    /// <param name="survey">The rack.</param>
    /// <returns>The leads; hosts without a free port have none.</returns>
    public static IReadOnlyList<KvmLeadNeed> Of(RackSurvey survey)
    {
        var free = survey.Items.Where(i => i.Item!.KvmPorts > 0).ToDictionary(i => i, i => i.Item!.KvmPorts!.Value);
        List<KvmLeadNeed> needs = [];
        foreach (var host in survey.Items.Where(IsHost))
        {
            var nearest = free.Where(f => f.Value > 0).Select(f => (f.Key, LengthM: LeadRoutes.LengthM(survey, host, f.Key)))
                .OrderBy(r => r.LengthM).ThenBy(r => r.Key.Id, IdOrder.Instance).FirstOrDefault();
            if (nearest.Key is not null)
            {
                free[nearest.Key]--;
                needs.Add(new KvmLeadNeed(host, nearest.Key, nearest.LengthM));
            }
        }

        return [.. needs.OrderByDescending(n => n.LengthM).ThenBy(n => n.Host.Id, IdOrder.Instance)];
    }

    /// <summary>Whether an item needs a KVM port.</summary>
    /// <param name="item">The item.</param>
    public static bool IsHost(MountedItem item) => item.Item is { Console: true, KvmPorts: not > 0 };

    /// <summary>The shortest lead that is long enough.</summary>
    /// <param name="lengthM">Length of the route, m.</param>
    /// <param name="leads">Leads to choose from, the preferred first.</param>
    /// <returns>The product; null if none suits.</returns>
    public static Product? Best(double lengthM, IEnumerable<Product> leads) => leads
        .Where(p => p.KvmLead!.LengthM >= lengthM)
        .OrderBy(p => p.KvmLead!.LengthM)
        .ThenBy(Stock.PiecesOf)
        .FirstOrDefault();
}
