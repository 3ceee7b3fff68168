using RackCheck.Model;

namespace RackCheck.Planning.Building;

/// <summary>Fits cable-management arms and filter mats, and connects the hosts to their KVM ports.</summary>
internal static class Accessories
{
    /// <summary>Assigns the accessories of the basket and reports missing ones. The rack is mounted.</summary>
    public static void Fit(BasketContext context, RackBuild build)
    {
        FitCableArms(context, build);
        FitFilter(build);
        ConnectHosts(context, build);
    }

    // An item that is pulled out in use tears its cables off without an arm.
    private static void FitCableArms(BasketContext context, RackBuild build)
    {
        List<string> without = [];
        var offered = context.Offered(ProductKind.CableArm).OrderBy(Stock.PiecesOf).FirstOrDefault();
        foreach (var item in build.Items.Where(i => i.Item.Support is { UsedExtended: true, CableArm: not true }))
        {
            if (build.Stock.LeftOf(ProductKind.CableArm).FirstOrDefault() is { } own)
            {
                item.CableArm = own.Take();
                item.Item = item.Item with { Support = item.Item.Support! with { CableArm = true } };
            }
            else
            {
                without.Add(item.Id);
            }
        }

        if (without.Count > 0 && offered is not null)
        {
            foreach (var (product, units) in Packs.Choose(context.Offered(ProductKind.CableArm), without.Count))
            {
                build.MissingPieces.Add(new MissingPiece(
                    Stage.Accessories,
                    product,
                    units,
                    LineWordings.Of(LineWordings.CableArms, without.Count == 1, ("items", LineWordings.Ids(without)))));
            }
        }
    }

    private static void FitFilter(RackBuild build)
    {
        if (build.Stock.LeftOf(ProductKind.Filter).FirstOrDefault() is { } filter)
        {
            build.Cooling = (build.Cooling ?? new Cooling()) with { Filters = true, Filter = filter.Product.Filter };
            build.CabinetParts["/cooling/filter"] = filter.Take();
        }
    }

    // One lead from each host that has a KVM port to the nearest switch with a free one.
    private static void ConnectHosts(BasketContext context, RackBuild build)
    {
        List<(string Host, double LengthM, Product Product)> toAdd = [];
        foreach (var (host, _, length) in KvmLeadNeeds.Of(build.Wired))
        {
            if (KvmLeadNeeds.Best(length, build.Stock.LeftOf(ProductKind.KvmLead).Select(e => e.Product)) is { } own)
            {
                build.Stock.Find(own.PartNumber)!.Take();
            }
            else if (KvmLeadNeeds.Best(length, context.Offered(ProductKind.KvmLead)) is { } offered)
            {
                toAdd.Add((host.Id, length, offered));
            }
        }

        foreach (var alike in toAdd.GroupBy(l => l.Product.KvmLead!.LengthM).OrderBy(g => g.Key))
        {
            string[] names = [.. alike.Select(a => a.Host)];
            foreach (var (product, units) in Packs.Choose(context.Offered(ProductKind.KvmLead).Where(p => p.KvmLead!.LengthM == alike.Key), names.Length))
            {
                build.MissingPieces.Add(new MissingPiece(
                    Stage.Accessories,
                    product,
                    units,
                    LineWordings.Of(
                        LineWordings.KvmLeads, names.Length == 1, ("items", LineWordings.Ids(names)), ("lengthM", alike.Max(a => a.LengthM)))));
            }
        }
    }
}
