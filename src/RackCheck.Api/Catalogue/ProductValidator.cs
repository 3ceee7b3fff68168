using System.Globalization;
using RackCheck.Api.Reading;
using RackCheck.Model;
using RackCheck.Model.Converters;

namespace RackCheck.Api.Catalogue;

/// <summary>Checks products against the contract: ranges of members, unique part numbers, and the members of each kind.</summary>
internal static class ProductValidator
{
    private const int CurrencyLength = 3;
    private const string PartNumberElsewhere = "The product itself has the part number.";

    // Kinds of products that have each member. Another member would be ignored without notice, so it is a fault.
    private static readonly KindMember[] Members =
    [
        new("cabinet", static p => p.Cabinet is not null, ProductKind.Cabinet),
        new("item", static p => p.Item is not null, ProductKind.Equipment, ProductKind.Shelf, ProductKind.BlankingPanel, ProductKind.FanTray),
        new("pdu", static p => p.Pdu is not null, ProductKind.Pdu),
        new("support", static p => p.Support is not null, ProductKind.Support),
        new("door", static p => p.Door is not null, ProductKind.Door),
        new("fans", static p => p.Fans is not null, ProductKind.RoofFans, ProductKind.FanTray),
        new("airConditioner", static p => p.AirConditioner is not null, ProductKind.AirConditioner),
        new("earthBar", static p => p.EarthBar is not null, ProductKind.EarthBar),
        new("earthLead", static p => p.EarthLead is not null, ProductKind.EarthLead),
        new("cord", static p => p.Cord is not null, ProductKind.Cord),
        new("kvmLead", static p => p.KvmLead is not null, ProductKind.KvmLead),
        new("filter", static p => p.Filter is not null, ProductKind.Filter),
        new("fixing", static p => p.Fixing is not null, ProductKind.Fixings),
    ];

    /// <summary>Finds the faults of products.</summary>
    /// <param name="list">The products read by the serializer.</param>
    /// <returns>The faults by pointer, as <c>/products/3/cabinet/heightU</c>; empty if there are none.</returns>
    public static List<Fault> FaultsOf(ProductList list)
    {
        var faults = new FaultList();
        RangeValidation<ProductList>.Instance.Report(list, "", faults);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < list.Products.Count && !faults.HasMore && !faults.HasTooLongList; i++)
        {
            if (list.Products[i] is not { } product)
            {
                continue;
            }

            var pointer = new Place(i);
            if (!seen.Add(product.PartNumber))
            {
                faults.Add(pointer.Of("/partNumber"), FaultCodes.DuplicateId, "Another product has this part number.");
            }

            HasWhatItsKindHas(product, pointer, faults);
            PriceIsWhole(product, pointer, faults);
            IsOfEquipment(product.CordIncluded, "/cordIncluded", product.Kind, pointer, faults);
            IsOfEquipment(product.RailsIncluded, "/railsIncluded", product.Kind, pointer, faults);
            CabinetIsWhole(product.Cabinet, pointer, faults);
            ItemIsWhole(product, pointer, faults);
            UnitIsWhole(product.Pdu, pointer, faults);
            DoorIsWhole(product.Door?.Door, "/door/door", pointer, faults);
            BarIsPlain(product.EarthBar, "/earthBar", pointer, faults);
            RangeIsRight(product.Support, "/support", pointer, faults);
        }

        return faults.IsEmpty ? [] : faults.ToList();
    }

    /// <summary>Describes a fault with its part number.</summary>
    /// <param name="fault">The fault.</param>
    /// <param name="list">The list of products; null if it could not be read.</param>
    /// <returns>As <c>QWL-CAB-42: /cabinet/heightU: It is required but missing.</c></returns>
    public static string Describe(Fault fault, ProductList? list)
    {
        if (fault.Pointer.Split('/') is not [_, "products", var place, ..] parts
            || !int.TryParse(place, NumberStyles.None, CultureInfo.InvariantCulture, out var index))
        {
            return $"{fault.Pointer}: {fault.Detail}".TrimStart(':', ' ');
        }

        // Products of a faulty file can be null.
        var product = list?.Products is { } products && index < products.Count ? products[index] : null;
        var name = product?.PartNumber ?? string.Create(CultureInfo.InvariantCulture, $"product {index + 1} of the list");
        return parts.Length == 3 ? $"{name}: {fault.Detail}" : $"{name}: /{string.Join('/', parts[3..])}: {fault.Detail}";
    }

    private static void HasWhatItsKindHas(Product product, Place pointer, FaultList faults)
    {
        foreach (var member in Members)
        {
            var belongs = Array.IndexOf(member.Kinds, product.Kind) >= 0;
            if (belongs == member.IsThere(product))
            {
                continue;
            }

            var kind = NamedEnumConverter<ProductKind>.Name(product.Kind);
            faults.Add(
                pointer.Of("/" + member.Name),
                belongs ? FaultCodes.MissingMember : FaultCodes.NotHere,
                belongs ? $"A product of the kind {kind} requires it." : $"A product of the kind {kind} does not have it.");
        }
    }

    private static void PriceIsWhole(Product product, Place pointer, FaultList faults)
    {
        Need(product.Price is null || product.Currency is not null, "/currency", pointer, faults);
        if (product.Currency is { Length: not CurrencyLength })
        {
            faults.Add(pointer.Of("/currency"), FaultCodes.WrongLength, "It is not an ISO 4217 code of three capital letters.");
        }
    }

    private static void IsOfEquipment(bool? included, string member, ProductKind kind, Place pointer, FaultList faults) =>
        Refuse(included == true && kind != ProductKind.Equipment, member, "Only equipment has it.", pointer, faults);

    private static void CabinetIsWhole(Cabinet? cabinet, Place pointer, FaultList faults)
    {
        if (cabinet is null)
        {
            return;
        }

        Need(cabinet.HeightU is not null, "/cabinet/heightU", pointer, faults);
        Need(cabinet.WidthMm is not null, "/cabinet/widthMm", pointer, faults);
        Need(cabinet.DepthMm is not null, "/cabinet/depthMm", pointer, faults);
        Refuse(cabinet.PartNumber is not null, "/cabinet/partNumber", PartNumberElsewhere, pointer, faults);
        DoorIsWhole(cabinet.FrontDoor, "/cabinet/frontDoor", pointer, faults);
        DoorIsWhole(cabinet.RearDoor, "/cabinet/rearDoor", pointer, faults);
        BarIsPlain(cabinet.EarthBar, "/cabinet/earthBar", pointer, faults);
        Refuse(cabinet.Placement is not null, "/cabinet/placement", "The placement belongs to a rack, not to a product.", pointer, faults);
    }

    private static void DoorIsWhole(Door? door, string member, Place pointer, FaultList faults)
    {
        Need(door is null or { Style: not null }, member + "/style", pointer, faults);
        Refuse(door?.PartNumber is not null, member + "/partNumber", PartNumberElsewhere, pointer, faults);
    }

    private static void BarIsPlain(EarthBar? bar, string member, Place pointer, FaultList faults) =>
        Refuse(bar?.PartNumber is not null, member + "/partNumber", PartNumberElsewhere, pointer, faults);

    private static void ItemIsWhole(Product product, Place pointer, FaultList faults)
    {
        if (product.Item is not { } item)
        {
            return;
        }

        Need(item.HeightU is not null, "/item/heightU", pointer, faults);
        Refuse(item.Ups?.Feeds is not null, "/item/ups/feeds", "The PDUs fed belong to a rack, not to a product.", pointer, faults);
        RangeIsRight(item.Support, "/item/support", pointer, faults);
        if (item.HeightU == 0 && product.Kind != ProductKind.Equipment)
        {
            faults.Add(pointer.Of("/item/heightU"), FaultCodes.OutOfRange, "Only equipment may have a height of 0 U.");
        }
    }

    private static void UnitIsWhole(ProductPdu? unit, Place pointer, FaultList faults)
    {
        if (unit is null)
        {
            return;
        }

        Need(unit.RatedA is not null, "/pdu/ratedA", pointer, faults);
        Need(unit.Groups is not null, "/pdu/groups", pointer, faults);
        for (var g = 1; g < unit.Groups?.Count; g++)
        {
            for (var other = 0; other < g; other++)
            {
                if (unit.Groups[g] is { } group && unit.Groups[other]?.Id == group.Id)
                {
                    var id = pointer.Of(string.Create(CultureInfo.InvariantCulture, $"/pdu/groups/{g}/id"));
                    faults.Add(id, FaultCodes.DuplicateId, "Another group of this PDU has this id.");
                }
            }
        }
    }

    private static void RangeIsRight(Support? support, string member, Place pointer, FaultList faults)
    {
        if (support is { MinSpacingMm: { } least, MaxSpacingMm: { } greatest } && least > greatest)
        {
            faults.Add(pointer.Of(member + "/minSpacingMm"), FaultCodes.Inconsistent, "It is greater than maxSpacingMm.");
        }
    }

    private static void Need(bool there, string member, Place pointer, FaultList faults)
    {
        if (!there)
        {
            faults.Add(pointer.Of(member), FaultCodes.MissingMember, "It is required but missing.");
        }
    }

    private static void Refuse(bool there, string member, string why, Place pointer, FaultList faults)
    {
        if (there)
        {
            faults.Add(pointer.Of(member), FaultCodes.NotHere, why);
        }
    }

    // The pointer is created for a fault only, so that valid products need no strings.
    private readonly record struct Place(int Index)
    {
        public string Of(string member) => string.Create(CultureInfo.InvariantCulture, $"/products/{Index}{member}");
    }

    private sealed record KindMember(string Name, Func<Product, bool> IsThere, params ProductKind[] Kinds);
}
