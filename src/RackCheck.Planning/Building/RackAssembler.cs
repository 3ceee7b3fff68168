using RackCheck.Model;
using RackCheck.Survey;

namespace RackCheck.Planning.Building;

/// <summary>Builds a rack from a stock and a cabinet and reports missing parts. The same stock and cabinet give the same rack.</summary>
internal static class RackAssembler
{
    /// <summary>Maximum number of items in a rack. Further blanking panels are not fitted.</summary>
    public const int MostItems = RackSurvey.MostItems;

    // What each reports as missing, the next ones depend on.
    private static readonly Action<BasketContext, RackBuild>[] Steps = [Shelving.Fill, Rails.Hang, Places.Find, Consoles.Find, RoofFans.Find];

    /// <summary>Builds the complete rack. The stock contains the cabinet.</summary>
    /// <returns>The rack with its missing parts.</returns>
    public static RackBuild Make(BasketContext context, Stock stock, Product cabinet)
    {
        var build = Mount(context, stock, cabinet, isWhole: true);
        Outlets.Connect(context, build);
        Dress(context, build);
        return build;
    }

    /// <summary>Adds to a wired rack what nothing else depends on: earth leads, cords, panels, fixings and accessories.</summary>
    public static void Dress(BasketContext context, RackBuild build)
    {
        EarthParts.Join(context, build);
        MainsCords.Plug(context, build);
        Blanks.Close(context, build);
        FixingSets.Fasten(context, build);
        Accessories.Fit(context, build);
    }

    /// <summary>Builds the part of the rack that shows whether the cabinet takes everything: shelves, rails, U positions, KVM switch and roof fans.</summary>
    /// <param name="context">The basket.</param>
    /// <param name="stock">The stock, nothing of which is used.</param>
    /// <param name="cabinet">The cabinet.</param>
    /// <param name="isWhole">Whether to go on where parts are missing that others depend on.</param>
    /// <returns>The rack without power, earth, panels and fixings.</returns>
    public static RackBuild Mount(BasketContext context, Stock stock, Product cabinet, bool isWhole)
    {
        var build = new RackBuild(
            stock,
            context.Request,
            cabinet.Cabinet! with { PartNumber = cabinet.PartNumber, Placement = context.Request.Options?.Placement ?? cabinet.Cabinet!.Placement })
        {
            CabinetPiece = stock.Find(cabinet.PartNumber)!.Take(),
            Connections = context.Given?.Connections,
            Cooling = context.Given?.Cooling,
            OtherSupplies = context.OtherSupplies,
            LoadsElsewhere = context.LoadsElsewhere,
        };
        build.Units.AddRange(
            context.GivenPdus(build.Cabinet.HeightU!.Value).Select(u => new BuildPdu { Unit = u, Piece = new Piece(OwnEquipment.KeyOf(u.Id), 0) }));
        AddItems(context, build);
        CabinetFitting.Fit(context, build);
        foreach (var step in Steps)
        {
            step(context, build);
            if (!isWhole && build.MissingPieces.Count > 0)
            {
                break;
            }
        }

        return build;
    }

    private static void AddItems(BasketContext context, RackBuild build)
    {
        foreach (var entry in build.Stock.All.Where(e => e.Product.Kind is ProductKind.Equipment or ProductKind.Shelf or ProductKind.FanTray))
        {
            var kept = context.KeptPosition(entry.Product, build.Cabinet.HeightU!.Value);
            var needsRails = kept is null && entry.Product.RailsIncluded != true && context.NeedsRails(entry.Product);
            var bringsRails = context.BringsRails(entry.Product) || entry.Product.RailsIncluded == true;
            while (entry.Left > 0)
            {
                var item = ProductParts.ItemOf(entry.Product, build.IdFor(entry.Product));
                build.Items.Add(new BuildItem
                {
                    Item = kept is null ? item with { Support = bringsRails ? item.Support : SupportOf(entry.Product, item) } : item,
                    Kept = kept,
                    Face = kept?.Face ?? (context.AtRear?.Contains(item.Id) == true ? Face.Rear : Face.Front),
                    Piece = entry.Take(),
                    NeedsRails = needsRails,
                    RailStyle = BasketContext.RailStyle(entry.Product),
                });
            }
        }
    }

    // An item without rails is front-panel mounted until it gets a pair.
    private static Support? SupportOf(Product product, Item item) =>
        item.Category == ItemCategory.Shelf ? (item.Support ?? new Support()) with { Style = item.Support?.Style ?? SupportStyle.Shelf }
        : item.HeightU == 0 || BasketContext.BringsSupport(product) ? item.Support
        : new Support { Style = SupportStyle.Panel };
}
