using RackCheck.Model;
using RackCheck.Survey.Assumed;
using static System.FormattableString;

namespace RackCheck.Survey.Catalogue;

/// <summary>A description as posted and with its part numbers resolved: given values have priority, absent values come from the product.</summary>
public sealed class ResolvedRack
{
    private readonly IReadOnlyDictionary<string, Product>? products;

    private ResolvedRack(
        RackDescription posted, RackDescription description, IReadOnlyDictionary<string, Product>? products, IReadOnlyList<Part> parts,
        IReadOnlyList<AssumedValue> filled) =>
        (Posted, Description, this.products, Parts, Filled) = (posted, description, products, parts, filled);

    /// <summary>The description as posted.</summary>
    public RackDescription Posted { get; }

    /// <summary>The description with its part numbers resolved; the posted object itself if nothing was filled.</summary>
    public RackDescription Description { get; }

    /// <summary>The filled values, one entry for each part number.</summary>
    public IReadOnlyList<AssumedValue> Filled { get; }

    /// <summary>The part numbers of the description and their products; empty if they were not looked up.</summary>
    public IReadOnlyList<Part> Parts { get; }

    /// <summary>Whether part numbers were looked up.</summary>
    public bool IsLookedUp => products is not null;

    /// <summary>The part numbers to look up for a description.</summary>
    /// <returns>Each part number once; empty if there are none.</returns>
    public static IReadOnlyCollection<string> PartNumbers(RackDescription description)
    {
        HashSet<string>? numbers = null;
        void Add(string? number)
        {
            if (number is not null)
            {
                (numbers ??= new HashSet<string>(StringComparer.Ordinal)).Add(number);
            }
        }

        Add(description.Cabinet?.PartNumber);
        Add(description.Cabinet?.FrontDoor?.PartNumber);
        Add(description.Cabinet?.RearDoor?.PartNumber);
        Add(description.Cabinet?.EarthBar?.PartNumber);
        for (var i = 0; i < description.Items.Count; i++)
        {
            Add(description.Items[i].PartNumber);
        }

        for (var i = 0; i < description.Pdus?.Count; i++)
        {
            Add(description.Pdus[i].PartNumber);
        }

        return numbers is null ? [] : numbers;
    }

    /// <summary>Wraps a description without a catalogue: its part numbers are not looked up.</summary>
    public static ResolvedRack Plain(RackDescription description) => new(description, description, null, [], []);

    /// <summary>Resolves a description.</summary>
    /// <param name="products">
    /// The products of its part numbers; an absent entry is an unknown part number, or one whose data is not valid if <see cref="ProductDictionary"/> says so.
    /// </param>
    public static ResolvedRack Of(RackDescription posted, IReadOnlyDictionary<string, Product> products)
    {
        var (parts, filled, description) = (new List<Part>(), new List<AssumedValue>(), posted);
        if (posted.Cabinet is { } cabinet)
        {
            description = description with { Cabinet = FillCabinet(cabinet, products, parts, filled) };
        }

        description = description with
        {
            Items = FillAll(posted.Items, i => i.PartNumber, (item, at) =>
            {
                var fromCatalogue = products.GetValueOrDefault(item.PartNumber!);
                parts.Add(new Part(Invariant($"/items/{at}"), item.Id, item.PartNumber!, fromCatalogue, fromCatalogue?.Item));
                return (Item)Fill<ItemFacts>(item, fromCatalogue?.Item, parts[^1], filled);
            }),
            Pdus = posted.Pdus is not { } units ? null : FillAll(units, u => u.PartNumber, (unit, at) =>
            {
                var fromCatalogue = products.GetValueOrDefault(unit.PartNumber!);
                parts.Add(new Part(Invariant($"/pdus/{at}"), unit.Id, unit.PartNumber!, fromCatalogue, fromCatalogue?.Pdu));
                return (Pdu)Fill<PduFacts>(unit, fromCatalogue?.Pdu, parts[^1], filled);
            }),
        };
        if (products is ProductDictionary { Faults: { Count: > 0 } faults })
        {
            parts = parts.ConvertAll(p => p with { Fault = faults.GetValueOrDefault(p.Number) });
        }

        return new ResolvedRack(posted, description, products, parts, filled);
    }

    /// <summary>Resolves another description with the same products.</summary>
    public ResolvedRack With(RackDescription posted) => products is null ? Plain(posted) : Of(posted, products);

    /// <summary>The same rack with other values in the resolved description, for a rule that is asked again.</summary>
    /// <param name="completed">The resolved description with missing values filled in.</param>
    /// <returns>The rack.</returns>
    public ResolvedRack Completed(RackDescription completed) => new(Posted, completed, products, Parts, Filled);

    /// <summary>The pointers of required values that are absent in both description and catalogue.</summary>
    /// <returns>The pointers; empty if the rack can be checked.</returns>
    public IReadOnlyList<string> Missing()
    {
        List<string>? missing = null;
        void Need(bool absent, string pointer)
        {
            if (absent)
            {
                (missing ??= []).Add(pointer);
            }
        }

        Need(Description.Cabinet?.HeightU is null, "/cabinet/heightU");
        Need(Description.Cabinet?.WidthMm is null, "/cabinet/widthMm");
        Need(Description.Cabinet?.DepthMm is null, "/cabinet/depthMm");
        Need(Description.Cabinet?.FrontDoor is { Style: null }, "/cabinet/frontDoor/style");
        Need(Description.Cabinet?.RearDoor is { Style: null }, "/cabinet/rearDoor/style");
        for (var i = 0; i < Description.Items.Count; i++)
        {
            Need(Description.Items[i].HeightU is null, Invariant($"/items/{i}/heightU"));
        }

        for (var i = 0; i < Description.Pdus?.Count; i++)
        {
            Need(Description.Pdus[i].RatedA is null, Invariant($"/pdus/{i}/ratedA"));
            Need(Description.Pdus[i].Groups is null, Invariant($"/pdus/{i}/groups"));
        }

        return missing ?? (IReadOnlyList<string>)[];
    }

    /// <summary>
    /// The description to post for a changed rack. Unchanged values that came from a product are left to the part number. An item that no longer
    /// matches its product loses its part number and is written out in full.
    /// </summary>
    /// <param name="after">The resolved description, changed.</param>
    /// <returns>The description to post.</returns>
    public RackDescription ToPost(RackDescription after)
    {
        if (Parts.Count == 0)
        {
            return after;
        }

        var toPost = after with
        {
            Cabinet = Posted.Cabinet is { } posted && after.Cabinet is { } cabinet
                ? RestoreCabinet(posted, Description.Cabinet!, cabinet, after.Cooling?.RoofFans)
                : after.Cabinet,
            Items = RestoreAll<Item, ItemFacts>(
                Posted.Items, Description.Items, after.Items, i => i.Id, i => i.PartNumber, i => i with { PartNumber = null }, p => p.Item)!,
            Pdus = RestoreAll<Pdu, PduFacts>(
                Posted.Pdus, Description.Pdus, after.Pdus, u => u.Id, u => u.PartNumber, u => u with { PartNumber = null }, p => p.Pdu),
        };
        return toPost.Connections is { } connections && connections.Any(c => PointsNowhere(toPost, c))
            ? toPost with { Connections = [.. connections.Where(c => !PointsNowhere(toPost, c))] }
            : toPost;
    }

    /// <summary>
    /// Whether a connection names a plug or a group that its item or PDU does not have. Where they come from a part number, any name is valid; without the
    /// part number such a connection makes the description invalid.
    /// </summary>
    /// <param name="description">The description, as it is posted.</param>
    /// <param name="connection">One of its connections.</param>
    public static bool PointsNowhere(RackDescription description, Connection connection)
    {
        var item = description.Items.FirstOrDefault(i => i.Id == connection.Item);
        var pdu = description.Pdus?.FirstOrDefault(u => u.Id == connection.Pdu);
        return item is null || pdu is null
            || ((connection.Plug ?? 0) >= (item.Power?.Plugs?.Count ?? 0) && (item.PartNumber is null || item.Power?.Plugs is not null))
            || ((pdu.PartNumber is null || pdu.Groups is not null) && pdu.Groups?.Any(g => g.Id == connection.Group) != true);
    }

    /// <summary>The product data of a cabinet, without parts that have a part number of their own.</summary>
    /// <param name="fromCatalogue">The product data; null if the product is unknown or not a cabinet.</param>
    /// <returns>The data that apply to this cabinet.</returns>
    internal static Cabinet? FactsOf(Cabinet? fromCatalogue, Cabinet cabinet) => fromCatalogue is null ? null : fromCatalogue with
    {
        FrontDoor = cabinet.FrontDoor?.PartNumber is null ? fromCatalogue.FrontDoor : null,
        RearDoor = cabinet.RearDoor?.PartNumber is null ? fromCatalogue.RearDoor : null,
        EarthBar = cabinet.EarthBar?.PartNumber is null ? fromCatalogue.EarthBar : null,
    };

    /// <summary>The data against which a cabinet is compared. Roof fans need an opening, whatever roof the cabinet is supplied with.</summary>
    /// <param name="fromCatalogue">The data of its product.</param>
    /// <param name="roofFans">The roof fans.</param>
    /// <returns>The data, without the roof style if fans opened the roof.</returns>
    internal static Cabinet WithoutFanOpening(Cabinet fromCatalogue, Cabinet cabinet, IReadOnlyList<FanSet>? roofFans) =>
        roofFans is { Count: > 0 } && cabinet.Roof?.Style == RoofStyle.Vented && fromCatalogue.Roof is { } roof
            ? fromCatalogue with { Roof = roof with { Style = null } }
            : fromCatalogue;

    private static Door? DoorOf(Product? product, Face face) => product?.Door is { } door && door.Face == face ? door.Door : null;

    private static Cabinet FillCabinet(Cabinet cabinet, IReadOnlyDictionary<string, Product> products, List<Part> parts, List<AssumedValue> filled)
    {
        T? Whole<T>(T? given, string pointer, string name, string? number, Func<Product?, T?> fromCatalogue)
            where T : class
        {
            if (given is null || number is null)
            {
                return given;
            }

            var product = products.GetValueOrDefault(number);
            parts.Add(new Part(pointer, name, number, product, fromCatalogue(product)));
            return Fill(given, fromCatalogue(product), parts[^1], filled);
        }

        var whole = Whole(cabinet, "/cabinet", "the cabinet", cabinet.PartNumber, p => FactsOf(p?.Cabinet, cabinet))!;
        var front = Whole(whole.FrontDoor, "/cabinet/frontDoor", "the front door", whole.FrontDoor?.PartNumber, p => DoorOf(p, Face.Front));
        var rear = Whole(whole.RearDoor, "/cabinet/rearDoor", "the rear door", whole.RearDoor?.PartNumber, p => DoorOf(p, Face.Rear));
        var bar = Whole(whole.EarthBar, "/cabinet/earthBar", "the earth bar", whole.EarthBar?.PartNumber, p => p?.EarthBar);
        return ReferenceEquals(front, whole.FrontDoor) && ReferenceEquals(rear, whole.RearDoor) && ReferenceEquals(bar, whole.EarthBar)
            ? whole
            : whole with { FrontDoor = front, RearDoor = rear, EarthBar = bar };
    }

    private static IReadOnlyList<TElement> FillAll<TElement>(
        IReadOnlyList<TElement> list, Func<TElement, string?> partNumber, Func<TElement, int, TElement> fill)
    {
        TElement[]? result = null;
        for (var i = 0; i < list.Count; i++)
        {
            if (partNumber(list[i]) is not null)
            {
                (result ??= [.. list])[i] = fill(list[i], i);
            }
        }

        return result ?? list;
    }

    private static T Fill<T>(T given, T? fromCatalogue, Part part, List<AssumedValue> filled)
        where T : class
    {
        if (fromCatalogue is null)
        {
            return given;
        }

        var names = new List<string>();
        var whole = PartPlan<T>.Instance.Fill(given, fromCatalogue, names);
        if (names.Count > 0)
        {
            filled.Add(new AssumedValue
            {
                Pointer = part.Pointer + "/partNumber", Value = part.Number, Basis = Bases.FromCatalogue(names),
            });
        }

        return whole;
    }

    private IReadOnlyList<TElement>? RestoreAll<TElement, TFacts>(
        IReadOnlyList<TElement>? posted,
        IReadOnlyList<TElement>? filled,
        IReadOnlyList<TElement>? after,
        Func<TElement, string> id,
        Func<TElement, string?> partNumber,
        Func<TElement, TElement> without,
        Func<Product, TFacts?> fromCatalogue)
        where TElement : class, TFacts
        where TFacts : class
    {
        if (posted is null || after is null || ReferenceEquals(filled, after))
        {
            return after is null ? null : ReferenceEquals(filled, after) ? posted : after;
        }

        var result = new TElement[after.Count];
        for (var i = 0; i < after.Count; i++)
        {
            var at = 0;
            while (at < posted.Count && id(posted[at]) != id(after[i]))
            {
                at++;
            }

            result[i] = at == posted.Count ? after[i]
                : ReferenceEquals(filled![at], after[i]) ? posted[at]
                : (TElement)Restore<TFacts>(
                    posted[at], filled[at], after[i], f => partNumber((TElement)f), f => without((TElement)f), (p, _) => fromCatalogue(p));
        }

        return result;
    }

    private Cabinet RestoreCabinet(Cabinet posted, Cabinet filled, Cabinet after, IReadOnlyList<FanSet>? roofFans)
    {
        // A door or earth bar with its own part number is restored from that number, whatever happens to the cabinet.
        Door? OwnDoor(Door? given, Door? whole, Door? changed, Face face) => given?.PartNumber is null || changed is null ? null
            : Restore(given, whole!, changed, d => d.PartNumber, d => d with { PartNumber = null }, (p, _) => DoorOf(p, face));

        var front = OwnDoor(posted.FrontDoor, filled.FrontDoor, after.FrontDoor, Face.Front);
        var rear = OwnDoor(posted.RearDoor, filled.RearDoor, after.RearDoor, Face.Rear);
        var bar = posted.EarthBar?.PartNumber is null || after.EarthBar is null ? null
            : Restore(posted.EarthBar, filled.EarthBar!, after.EarthBar, b => b.PartNumber, b => b with { PartNumber = null }, (p, _) => p.EarthBar);
        return Restore(
            posted,
            filled,
            after,
            c => c.PartNumber,
            c => c with { PartNumber = null },
            (p, c) => FactsOf(p.Cabinet, c) is { } facts ? WithoutFanOpening(facts, c, roofFans) : null,
            front is null && rear is null && bar is null
                ? null
                : c => c with { FrontDoor = front ?? c.FrontDoor, RearDoor = rear ?? c.RearDoor, EarthBar = bar ?? c.EarthBar });
    }

    private T Restore<T>(
        T posted, T filled, T after, Func<T, string?> partNumber, Func<T, T> without, Func<Product, T, T?> fromCatalogue, Func<T, T>? finish = null)
        where T : class
    {
        if (ReferenceEquals(filled, after))
        {
            return posted;
        }

        T Finished(T record) => finish is null ? record : finish(record);
        if (partNumber(after) is not { } number || number != partNumber(posted) || products!.GetValueOrDefault(number) is not { } product
            || fromCatalogue(product, posted) is not { } facts)
        {
            return Finished(after);
        }

        var restored = Finished(PartPlan<T>.Instance.Restore(posted, filled, after));
        var (before, now) = (new List<PartDifference>(), new List<PartDifference>());
        PartPlan<T>.Instance.Compare(posted, facts, "", before);
        PartPlan<T>.Instance.Compare(restored, fromCatalogue(product, restored)!, "", now);
        return now.TrueForAll(n => before.Exists(b => b.Pointer == n.Pointer)) ? restored : Finished(without(after));
    }
}

/// <summary>A part number of a description.</summary>
/// <param name="Pointer">JSON Pointer of the object with the part number.</param>
/// <param name="Name">Name of the object in a sentence.</param>
/// <param name="Product">The product; null if the catalogue does not contain the number.</param>
/// <param name="Facts">The product data for this kind of object; null if the product is of another kind.</param>
public sealed record Part(string Pointer, string Name, string Number, Product? Product, object? Facts)
{
    /// <summary>The fault of the catalogue's data, if the product is left out because of it.</summary>
    public Fault? Fault { get; init; }

    /// <summary>Whether it is the cabinet or a part of it, which has no id.</summary>
    public bool IsOfCabinet => Pointer.StartsWith("/cabinet", StringComparison.Ordinal);

    /// <summary>Its id; of the cabinet or a part of it a code, such as front-door.</summary>
    public string Code => IsOfCabinet ? Scalar.CodeOf(Name["the ".Length..]) : Name;

    /// <summary>Finds values of the object that differ from its product.</summary>
    /// <param name="posted">The description as posted.</param>
    /// <param name="found">Receives the differences.</param>
    public void Compare(RackDescription posted, List<PartDifference> found)
    {
        switch (Facts)
        {
            case Cabinet fromCatalogue:
                PartPlan<Cabinet>.Instance.Compare(
                    posted.Cabinet!, ResolvedRack.WithoutFanOpening(fromCatalogue, posted.Cabinet!, posted.Cooling?.RoofFans), Pointer, found);
                break;
            case Door fromCatalogue:
                PartPlan<Door>.Instance.Compare(
                    (Product!.Door!.Face == Face.Front ? posted.Cabinet!.FrontDoor : posted.Cabinet!.RearDoor)!, fromCatalogue, Pointer, found);
                break;
            case EarthBar fromCatalogue:
                PartPlan<EarthBar>.Instance.Compare(posted.Cabinet!.EarthBar!, fromCatalogue, Pointer, found);
                break;
            case ItemFacts fromCatalogue:
                PartPlan<ItemFacts>.Instance.Compare(posted.Items[Index], fromCatalogue, Pointer, found);
                break;
            case PduFacts fromCatalogue:
                PartPlan<PduFacts>.Instance.Compare(posted.Pdus![Index], fromCatalogue, Pointer, found);
                break;
            default:
                break;
        }
    }

    private int Index => int.Parse(Pointer.AsSpan(Pointer.LastIndexOf('/') + 1), System.Globalization.CultureInfo.InvariantCulture);
}
