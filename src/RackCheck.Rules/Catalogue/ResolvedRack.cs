using RackCheck.Model;
using static System.FormattableString;

namespace RackCheck.Rules.Catalogue;

/// <summary>A description as posted, and with its part numbers filled in: what is given by hand wins, what is absent comes from the product.</summary>
public sealed class ResolvedRack
{
    private readonly IReadOnlyDictionary<string, Product>? products;

    private ResolvedRack(RackDescription posted, RackDescription description, IReadOnlyDictionary<string, Product>? products, IReadOnlyList<Part> parts, List<Assumption> filled) =>
        (Posted, Description, this.products, Parts, Filled) = (posted, description, products, parts, filled);

    /// <summary>The description as it was posted.</summary>
    public RackDescription Posted { get; }

    /// <summary>The description with its part numbers filled in; the posted one itself where nothing was.</summary>
    public RackDescription Description { get; }

    /// <summary>What was filled in, an entry a part number.</summary>
    public IReadOnlyList<Assumption> Filled { get; }

    /// <summary>The part numbers of the description and what they stand for; none where they were not looked up.</summary>
    internal IReadOnlyList<Part> Parts { get; }

    /// <summary>Whether part numbers were looked up.</summary>
    public bool IsLookedUp => products is not null;

    /// <summary>The part numbers that a description asks the catalogue for.</summary>
    /// <param name="description">The description.</param>
    /// <returns>Each once; empty where it asks for none.</returns>
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
        for (var i = 0; i < description.Items.Count; i++)
        {
            Add(description.Items[i].PartNumber);
        }

        for (var i = 0; i < description.DistributionUnits?.Count; i++)
        {
            Add(description.DistributionUnits[i].PartNumber);
        }

        return numbers is null ? [] : numbers;
    }

    /// <summary>A description that stands for itself: its part numbers are not looked up and say nothing.</summary>
    /// <param name="description">The description.</param>
    /// <returns>The rack.</returns>
    public static ResolvedRack Plain(RackDescription description) => new(description, description, null, [], []);

    /// <summary>Fills a description in.</summary>
    /// <param name="posted">The description.</param>
    /// <param name="products">What its part numbers stand for; one that is not there is not known.</param>
    /// <returns>The rack.</returns>
    public static ResolvedRack Of(RackDescription posted, IReadOnlyDictionary<string, Product> products)
    {
        var (parts, filled, description) = (new List<Part>(), new List<Assumption>(), posted);
        if (posted.Cabinet is { PartNumber: { } cabinetNumber } cabinet)
        {
            var told = products.GetValueOrDefault(cabinetNumber);
            parts.Add(new Part("/cabinet", "the cabinet", cabinetNumber, told, told?.Cabinet));
            description = description with { Cabinet = Fill(cabinet, told?.Cabinet, parts[^1], filled) };
        }

        description = description with
        {
            Items = FillAll(posted.Items, i => i.PartNumber, (item, at) =>
            {
                var told = products.GetValueOrDefault(item.PartNumber!);
                parts.Add(new Part(Invariant($"/items/{at}"), item.Id, item.PartNumber!, told, told?.Item));
                return (Item)Fill<ItemFacts>(item, told?.Item, parts[^1], filled);
            }),
            DistributionUnits = posted.DistributionUnits is not { } units ? null : FillAll(units, u => u.PartNumber, (unit, at) =>
            {
                var told = products.GetValueOrDefault(unit.PartNumber!);
                parts.Add(new Part(Invariant($"/distributionUnits/{at}"), unit.Id, unit.PartNumber!, told, told?.DistributionUnit));
                return (DistributionUnit)Fill<DistributionUnitFacts>(unit, told?.DistributionUnit, parts[^1], filled);
            }),
        };
        return new ResolvedRack(posted, description, products, parts, filled);
    }

    /// <summary>Another description with the same products.</summary>
    /// <param name="posted">The description.</param>
    /// <returns>The rack.</returns>
    public ResolvedRack With(RackDescription posted) => products is null ? Plain(posted) : Of(posted, products);

    /// <summary>What a check cannot do without and neither description nor catalogue gives, by pointer.</summary>
    /// <returns>The pointers; empty where the rack can be worked out.</returns>
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
        for (var i = 0; i < Description.Items.Count; i++)
        {
            Need(Description.Items[i].HeightU is null, Invariant($"/items/{i}/heightU"));
        }

        for (var i = 0; i < Description.DistributionUnits?.Count; i++)
        {
            Need(Description.DistributionUnits[i].RatedA is null, Invariant($"/distributionUnits/{i}/ratedA"));
            Need(Description.DistributionUnits[i].Groups is null, Invariant($"/distributionUnits/{i}/groups"));
        }

        return missing ?? (IReadOnlyList<string>)[];
    }

    /// <summary>
    /// The description to be posted so that it is filled in to a changed one. What came from a product and was not changed is left to the
    /// part number; a thing that is changed against its product is not that product any more, so its part number goes and it is written out.
    /// </summary>
    /// <param name="after">The filled description, changed.</param>
    /// <returns>The description to post.</returns>
    internal RackDescription ToPost(RackDescription after)
    {
        if (Parts.Count == 0)
        {
            return after;
        }

        return after with
        {
            Cabinet = Posted.Cabinet is { } posted && after.Cabinet is { } cabinet ? Restore(posted, Description.Cabinet!, cabinet, c => c.PartNumber, c => c with { PartNumber = null }, p => p.Cabinet) : after.Cabinet,
            Items = RestoreAll<Item, ItemFacts>(Posted.Items, Description.Items, after.Items, i => i.Id, i => i.PartNumber, i => i with { PartNumber = null }, p => p.Item)!,
            DistributionUnits = RestoreAll<DistributionUnit, DistributionUnitFacts>(
                Posted.DistributionUnits, Description.DistributionUnits, after.DistributionUnits, u => u.Id, u => u.PartNumber, u => u with { PartNumber = null }, p => p.DistributionUnit),
        };
    }

    private static IReadOnlyList<TElement> FillAll<TElement>(IReadOnlyList<TElement> list, Func<TElement, string?> partNumber, Func<TElement, int, TElement> fill)
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

    private static T Fill<T>(T given, T? told, Part part, List<Assumption> filled)
        where T : class
    {
        if (told is null)
        {
            return given;
        }

        var names = new List<string>();
        var whole = PartPlan<T>.Instance.Fill(given, told, names);
        if (names.Count > 0)
        {
            filled.Add(new Assumption { Pointer = part.Pointer + "/partNumber", Value = part.Number, Basis = $"what is not given is the catalogue's: {string.Join(", ", names)}" });
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
        Func<Product, TFacts?> told)
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
                : (TElement)Restore<TFacts>(posted[at], filled[at], after[i], f => partNumber((TElement)f), f => without((TElement)f), told);
        }

        return result;
    }

    private T Restore<T>(T posted, T filled, T after, Func<T, string?> partNumber, Func<T, T> without, Func<Product, T?> told)
        where T : class
    {
        if (ReferenceEquals(filled, after))
        {
            return posted;
        }

        if (partNumber(after) is not { } number || number != partNumber(posted) || products!.GetValueOrDefault(number) is not { } product || told(product) is not { } facts)
        {
            return after;
        }

        var restored = PartPlan<T>.Instance.Restore(posted, filled, after);
        var (before, now) = (new List<PartDifference>(), new List<PartDifference>());
        PartPlan<T>.Instance.Compare(posted, facts, "", before);
        PartPlan<T>.Instance.Compare(restored, facts, "", now);
        return now.TrueForAll(n => before.Exists(b => b.Pointer == n.Pointer)) ? restored : without(after);
    }
}

/// <summary>A part number of a description.</summary>
/// <param name="Pointer">Where the thing stands.</param>
/// <param name="Name">What the thing is called.</param>
/// <param name="Number">The part number.</param>
/// <param name="Product">The product; null where the catalogue knows none.</param>
/// <param name="Facts">What the product tells of such a thing; null where it is a product of another kind.</param>
internal sealed record Part(string Pointer, string Name, string Number, Product? Product, object? Facts)
{
    /// <summary>Finds values of the thing that differ from its product's.</summary>
    public void Compare(RackDescription posted, List<PartDifference> found)
    {
        switch (Facts)
        {
            case Cabinet told:
                PartPlan<Cabinet>.Instance.Compare(posted.Cabinet!, told, Pointer, found);
                break;
            case ItemFacts told:
                PartPlan<ItemFacts>.Instance.Compare(posted.Items[Index], told, Pointer, found);
                break;
            case DistributionUnitFacts told:
                PartPlan<DistributionUnitFacts>.Instance.Compare(posted.DistributionUnits![Index], told, Pointer, found);
                break;
            default:
                break;
        }
    }

    private int Index => int.Parse(Pointer.AsSpan(Pointer.LastIndexOf('/') + 1), System.Globalization.CultureInfo.InvariantCulture);
}
