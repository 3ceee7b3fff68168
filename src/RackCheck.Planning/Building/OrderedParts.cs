using RackCheck.Model;

namespace RackCheck.Planning.Building;

/// <summary>What a basket orders besides its equipment and cabinets.</summary>
internal sealed record OrderedParts
{
    /// <summary>Nothing.</summary>
    public static OrderedParts None { get; } = new();

    /// <summary>Parts that are there to be used, in order units.</summary>
    public IReadOnlyList<(Product Product, long OrderUnits)> Parts { get; init; } = [];

    /// <summary>How the equipment is fastened; null for what suits the uprights.</summary>
    public Fixing? Fixing { get; init; }

    /// <summary>Whether items are to be fed from a UPS, by id; those not named are as far as it has power.</summary>
    public IReadOnlyDictionary<string, bool> OnUps { get; init; } = new Dictionary<string, bool>(StringComparer.Ordinal);

    /// <summary>Ids of items that the customer wants to switch off and on remotely.</summary>
    public IReadOnlySet<string> Switched { get; init; } = new HashSet<string>(StringComparer.Ordinal);

    /// <summary>The parts that a rack leaves.</summary>
    /// <param name="rack">The stock of the rack, with what it uses.</param>
    public OrderedParts Without(Stock rack) => this with
    {
        Parts =
        [
            .. Parts.Select(p => (p.Product, Units: Math.Min(p.OrderUnits, rack.Find(p.Product.PartNumber)?.SpareUnits ?? 0)))
                .Where(p => p.Units > 0)
                .Select(p => (p.Product, p.Units)),
        ],
    };

    /// <summary>The same order without any part.</summary>
    public OrderedParts Bare => Parts.Count == 0 ? this : this with { Parts = [] };

    /// <summary>Parts that a rack takes all of, whether it needs them or not.</summary>
    public OrderedParts Fitted => this with { Parts = [.. Parts.Where(p => IsFitted(p.Product.Kind))] };

    /// <summary>Cords, rails, panels and other small parts, of which a rack takes what it needs.</summary>
    public OrderedParts Small => this with { Parts = [.. Parts.Where(p => !IsFitted(p.Product.Kind))] };

    /// <summary>
    /// Divides the parts over the racks of a row: each gets what it needs by part number, then its share of what is fitted as far as it is there.
    /// </summary>
    /// <param name="needs">The parts that each rack needs, planned without any.</param>
    /// <param name="over">Number of racks that get a share, if those of <paramref name="needs"/> are the first of more.</param>
    /// <returns>The parts of each rack, and at the end those that no rack has a share of.</returns>
    public IReadOnlyList<OrderedParts> Divide(IReadOnlyList<IReadOnlyList<MissingPiece>> needs, int? over = null)
    {
        var racks = over ?? needs.Count;
        var left = Parts.ToDictionary(p => p.Product.PartNumber, p => p.OrderUnits, StringComparer.Ordinal);
        var shares = needs.Select(need => Parts.Select(p => (p.Product, OrderUnits: Take(p.Product, UnitsIn(need, p.Product)))).ToArray()).ToArray();
        for (var rack = 0; rack < shares.Length; rack++)
        {
            for (var part = 0; part < Parts.Count; part++)
            {
                var product = Parts[part].Product;
                if (IsFitted(product.Kind))
                {
                    shares[rack][part].OrderUnits += Take(product, (left[product.PartNumber] + racks - rack - 1) / (racks - rack));
                }
            }
        }

        return [.. shares.Select(Of), Of(Parts.Select(p => (p.Product, left[p.Product.PartNumber])))];

        OrderedParts Of(IEnumerable<(Product Product, long OrderUnits)> parts) => this with { Parts = [.. parts.Where(p => p.OrderUnits > 0)] };

        static long UnitsIn(IReadOnlyList<MissingPiece> need, Product product) =>
            need.FirstOrDefault(n => n.Product.PartNumber == product.PartNumber)?.OrderUnits ?? 0;

        long Take(Product product, long wanted)
        {
            var taken = Math.Min(left[product.PartNumber], wanted);
            left[product.PartNumber] -= taken;
            return taken;
        }
    }

    /// <summary>These parts and others.</summary>
    public OrderedParts With(OrderedParts more) => this with
    {
        Parts =
        [
            .. Parts.Concat(more.Parts)
                .GroupBy(p => p.Product.PartNumber, StringComparer.Ordinal)
                .Select(g => (g.First().Product, g.Sum(p => p.OrderUnits))),
        ],
    };

    /// <summary>Whether a rack takes all parts of a kind that are there.</summary>
    public static bool IsFitted(ProductKind kind) => kind is ProductKind.Pdu or ProductKind.Shelf or ProductKind.FanTray or ProductKind.RoofFans
        or ProductKind.Door or ProductKind.AirConditioner or ProductKind.EarthBar or ProductKind.Filter;

    /// <summary>PDUs to be fed from a UPS that are there.</summary>
    public long UnitsForUps => Parts.Where(p => p.Product.Kind == ProductKind.Pdu && SupplyChoice.IsForUps(p.Product)).Sum(p => p.OrderUnits);
}
