using RackCheck.Model;
using RackCheck.Survey;

namespace RackCheck.Planning.Baskets;

/// <summary>Builds a rack from a stock and a cabinet and reports missing parts. The same stock and cabinet give the same rack.</summary>
internal static class BayMaker
{
    /// <summary>Maximum number of items in a rack. Further blanking panels are not fitted.</summary>
    public const int MostItems = RackSurvey.MostItems;

    /// <summary>Builds the complete rack. The stock contains the cabinet.</summary>
    /// <returns>The rack with its missing parts.</returns>
    public static Bay Make(BasketContext context, Stock stock, Product cabinet)
    {
        var bay = Mount(context, stock, cabinet);
        Outlets.Connect(context, bay);
        EarthParts.Join(context, bay);
        MainsCords.Plug(context, bay);
        Blanks.Close(context, bay);
        FixingSets.Fasten(context, bay);
        return bay;
    }

    /// <summary>Builds the part of the rack that shows whether the cabinet takes everything: shelves, rails, U positions, KVM switch and roof fans.</summary>
    /// <returns>The rack without power, earth, panels and fixings.</returns>
    public static Bay Mount(BasketContext context, Stock stock, Product cabinet)
    {
        var bay = new Bay(stock, context.Request, cabinet.Cabinet! with { PartNumber = cabinet.PartNumber, Placement = context.Request.Options?.Placement })
        {
            CabinetPiece = stock.Find(cabinet.PartNumber)!.Take(),
        };
        AddItems(context, bay);
        CabinetFitting.Fit(bay);
        Shelving.Fill(context, bay);
        Rails.Hang(context, bay);
        Places.Find(context, bay);
        Consoles.Find(context, bay);
        RoofFans.Find(context, bay);
        return bay;
    }

    private static void AddItems(BasketContext context, Bay bay)
    {
        foreach (var entry in bay.Stock.All.Where(e => e.Product.Kind is ProductKind.Equipment or ProductKind.Shelf or ProductKind.FanTray))
        {
            var needsRails = context.NeedsRails(entry.Product);
            while (entry.Left > 0)
            {
                var item = ProductParts.ItemOf(entry.Product, bay.IdFor(entry.Product));
                bay.Items.Add(new BayItem
                {
                    Item = item with { Support = SupportOf(entry.Product, item) },
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
