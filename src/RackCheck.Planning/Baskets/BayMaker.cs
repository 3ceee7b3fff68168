using RackCheck.Model;
using RackCheck.Survey;

namespace RackCheck.Planning.Baskets;

/// <summary>Puts a rack together from a stock and a cabinet, and says what lacks. The same stock and cabinet make the same rack.</summary>
internal static class BayMaker
{
    /// <summary>Most items that a rack may have; panels past it stay in the box.</summary>
    public const int MostItems = RackSurvey.MostItems;

    /// <summary>Makes the rack.</summary>
    /// <param name="context">What the basket's plans go by.</param>
    /// <param name="stock">The pieces; each plan takes from a stock of its own.</param>
    /// <param name="cabinet">The product to take for the cabinet, of which the stock has one.</param>
    /// <returns>The rack with what lacks.</returns>
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

    /// <summary>Makes as much of the rack as tells whether the cabinet takes everything: equipment on shelves and rails, each in its place, and the way of the air.</summary>
    /// <param name="context">What the basket's plans go by.</param>
    /// <param name="stock">The pieces.</param>
    /// <param name="cabinet">The product to take for the cabinet, of which the stock has one.</param>
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

    // What comes without rails hangs on its front panel until it gets a pair.
    private static Support? SupportOf(Product product, Item item) =>
        item.Category == ItemCategory.Shelf ? (item.Support ?? new Support()) with { Style = item.Support?.Style ?? SupportStyle.Shelf }
        : item.HeightU == 0 || BasketContext.BringsSupport(product) ? item.Support
        : new Support { Style = SupportStyle.Panel };
}
