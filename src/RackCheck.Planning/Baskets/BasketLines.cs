using RackCheck.Model;
using RackCheck.Planning.Building;
using RackCheck.Survey.Catalogue;
using static System.FormattableString;

namespace RackCheck.Planning.Baskets;

/// <summary>The lines of a basket, read as equipment, cabinets and other parts.</summary>
internal sealed class BasketLines
{
    private readonly Dictionary<string, int> lineOf = new(StringComparer.Ordinal);
    private readonly List<Item> items = [];
    private readonly List<string> standing = [];
    private readonly SortedDictionary<string, (Product Product, long OrderUnits)> parts = new(StringComparer.Ordinal);
    private readonly List<(Product Product, int Line, int Quantity)> cabinets = [];
    private readonly Dictionary<string, bool> onUps = new(StringComparer.Ordinal);
    private readonly HashSet<string> switched = new(StringComparer.Ordinal);

    /// <summary>Reads the lines.</summary>
    /// <param name="request">The basket.</param>
    /// <param name="products">The products of its part numbers that the catalogue knows.</param>
    public BasketLines(BasketRequest request, IReadOnlyDictionary<string, Product> products)
    {
        (Request, Products) = (request, products);
        var inline = request.Lines.Where(l => l.Item is not null).Select(l => l.Item!.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var (index, line) in request.Lines.Index())
        {
            if (line.Item is { } own)
            {
                if (HasHeight(own))
                {
                    AddOwn(own, line, index, inline);
                }
            }
            else if (ProductOf(line) is { } product)
            {
                Add(product, line, index, inline);
            }
        }

        // No answer depends on the order of the lines.
        items.Sort((one, other) => IdOrder.Instance.Compare(one.Id, other.Id));

        // A host without any console in the order is operated over the network, or at its own keyboard and display.
        HasConsole = items.Exists(Consoles.IsConsole);
        if (!HasConsole)
        {
            for (var i = 0; i < items.Count; i++)
            {
                items[i] = items[i].Console == true ? items[i] with { Console = false } : items[i];
            }
        }
    }

    /// <summary>The basket.</summary>
    public BasketRequest Request { get; }

    /// <summary>The products of its part numbers.</summary>
    public IReadOnlyDictionary<string, Product> Products { get; }

    /// <summary>Its equipment, each piece an item.</summary>
    public IReadOnlyList<Item> Items => items;

    /// <summary>Ids of the equipment that stands in the customer's cabinet already, at its position.</summary>
    public IReadOnlyList<string> Standing => standing;

    /// <summary>Its cabinets, in the order of the lines.</summary>
    public IReadOnlyList<(Product Product, int Line, int Quantity)> Cabinets => cabinets;

    /// <summary>Whether it orders a console or a KVM switch.</summary>
    public bool HasConsole { get; }

    /// <summary>Number of cabinets.</summary>
    public int CabinetCount => (int)Math.Min(cabinets.Sum(c => (long)c.Quantity), int.MaxValue);

    /// <summary>Whether it has more cabinets without equipment than racks of one answer: their share of the parts is in no rack.</summary>
    public bool HasFurtherCabinets => items.Count == 0 && CabinetCount > BasketSearch.MostRacks;

    /// <summary>
    /// Whether it makes a rack: it has equipment or a cabinet, and a cabinet is wanted. Cords, rails and other small parts for a cabinet that is there make
    /// none: what they are for is not known.
    /// </summary>
    public bool MakesRack => Request.Options?.Cabinet is { } given
        ? given.Existing is not null && (items.Count > 0 || parts.Values.Any(p => OrderedParts.IsFitted(p.Product.Kind)))
        : items.Count > 0 || cabinets.Count > 0;

    /// <summary>Pieces that are mounted in a rack.</summary>
    public long Mounted => Request.Lines.Sum(l =>
        l.Item is not null || ProductOf(l)?.Kind is ProductKind.Equipment or ProductKind.Shelf or ProductKind.FanTray
            ? (long)l.Quantity * (l.Item is null ? Stock.PiecesOf(ProductOf(l)!) : 1)
            : 0);

    /// <summary>Everything else that it orders.</summary>
    public OrderedParts Ordered => new() { Parts = [.. parts.Values], Fixing = Request.Options?.Fixing, OnUps = onUps, Switched = switched };

    /// <summary>Indices of the lines whose part number the catalogue does not have.</summary>
    public IEnumerable<int> Unknown => Request.Lines.Index()
        .Where(l => l.Item.Item is { } own ? !HasHeight(own) : ProductOf(l.Item) is null)
        .Select(l => l.Index);

    /// <summary>What is wrong with the product of a line; null if nothing is, or the catalogue has none.</summary>
    public Fault? FaultOf(BasketLine line) =>
        Products is ProductDictionary { Faults: var faults } && (line.PartNumber ?? line.Item?.PartNumber) is { } number
            ? faults.GetValueOrDefault(number)
            : null;

    /// <summary>JSON pointer (RFC 6901) of a line.</summary>
    public static string PointerOf(int line) => Invariant($"/lines/{line}");

    /// <summary>Index of the line that a pointer names.</summary>
    public static int IndexOf(string pointer) => int.Parse(pointer.AsSpan(pointer.LastIndexOf('/') + 1), System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>The product of a line; null for equipment without a part number or an unknown one.</summary>
    public Product? ProductOf(BasketLine line) => line.PartNumber is { } number ? Products.GetValueOrDefault(number) : null;

    /// <summary>The line of an item; null if it is not of the basket.</summary>
    public int? LineOfItem(string id) => lineOf.TryGetValue(id, out var line) ? line : null;

    /// <summary>What was assumed of the equipment.</summary>
    /// <param name="rack">The rack made of it.</param>
    public IEnumerable<Assumption> Assumptions(RackDescription rack) => [.. OfConsoles(rack), .. OfUprights(rack)];

    private IEnumerable<Assumption> OfUprights(RackDescription rack)
    {
        if (Request.Options?.Cabinet?.Existing?.Uprights?.FrontSetbackMm is not { } now
            || rack.Cabinet?.Uprights?.FrontSetbackMm is not { } then
            || then == now)
        {
            return [];
        }

        var basis = new WordedText(BuildBases.MovedUprights, ("setbackMm", now));
        return
        [
            new Assumption
            {
                Pointers = ["/cabinet/uprights/frontSetbackMm"], Value = then, Basis = basis.Text, BasisKey = basis.Key, BasisData = basis.Values,
            },
        ];
    }

    private IEnumerable<Assumption> OfConsoles(RackDescription rack)
    {
        string[] hosts =
        [
            .. rack.Items.Index()
                .Where(i => i.Item.Console == false && lineOf.ContainsKey(i.Item.Id))
                .Select(i => Invariant($"/items/{i.Index}/console")),
        ];
        return HasConsole || hosts.Length == 0 ? [] :
        [
            new Assumption
            {
                Pointers = hosts,
                Value = false,
                Basis = BuildBases.NoConsole.Text,
                BasisKey = BuildBases.NoConsole.Key,
                BasisData = BuildBases.NoConsole.Values,
            },
        ];
    }

    private bool HasHeight(Item own) =>
        own.HeightU is not null || (own.PartNumber is { } number && Products.GetValueOrDefault(number)?.Item?.HeightU is not null);

    // Further pieces are numbered from 2; a number whose id another line has is left out.
    private void AddOwn(Item own, BasketLine line, int index, HashSet<string> taken)
    {
        var suffix = 1;
        for (var number = 1; number <= line.Quantity && items.Count <= RackAssembler.MostItems; number++)
        {
            var id = own.Id;
            while (number > 1 && (taken.Contains(id) || lineOf.ContainsKey(id)))
            {
                id = Invariant($"{own.Id}-{++suffix}");
            }

            // What stands in the customer's cabinet stays there. One position is that of one piece.
            var kept = Request.Options?.Cabinet?.Existing is null || line.Quantity > 1 || own.OnShelf is not null ? null : own.Position;
            if (kept is not null)
            {
                standing.Add(id);
            }

            Keep(own with { Id = id, Position = kept, OnShelf = null }, line, index);
        }
    }

    private void Add(Product product, BasketLine line, int index, HashSet<string> taken)
    {
        switch (product.Kind)
        {
            case ProductKind.Cabinet:
                cabinets.Add((product, index, line.Quantity));
                break;
            case ProductKind.Equipment:
                var before = items.Count(i => i.PartNumber == product.PartNumber);
                for (var number = 1L; number <= (long)line.Quantity * Stock.PiecesOf(product) && items.Count <= RackAssembler.MostItems; number++)
                {
                    string id;
                    do
                    {
                        id = RackBuild.IdOf(product.PartNumber, ++before);
                    }
                    while (taken.Contains(id) || lineOf.ContainsKey(id));
                    Keep(ProductParts.ItemOf(product, id), line, index);
                }

                break;
            default:
                var there = parts.GetValueOrDefault(product.PartNumber).OrderUnits;
                parts[product.PartNumber] = (product, there + line.Quantity);
                break;
        }
    }

    private void Keep(Item item, BasketLine line, int index)
    {
        var options = line.Options;
        lineOf[item.Id] = index;
        if (options?.OnUps is { } ups)
        {
            onUps[item.Id] = ups;
        }

        if (options?.RemotePower == true)
        {
            switched.Add(item.Id);
        }

        items.Add(item with
        {
            Power = item.Power is { } power && options?.DualFed is { } dual ? power with { Redundant = dual } : item.Power,
            Support = options?.Extended switch
            {
                // Only slides let it be pulled out, whatever it is mounted on otherwise.
                true => (item.Support is { Style: SupportStyle.Slides } slides ? slides : new Support { Style = SupportStyle.Slides }) with
                {
                    UsedExtended = true,
                },
                false => (item.Support ?? new Support { Style = SupportStyle.Slides }) with { UsedExtended = false },
                null => item.Support,
            },
            RemotePowerCycle = options?.RemotePower ?? item.RemotePowerCycle,
        });
    }
}
