using System.Text;
using System.Text.Json.Nodes;
using RackCheck.Api.Catalogue;
using RackCheck.Model;
using RackCheck.Model.Converters;

namespace RackCheck.Api.Tests.Catalogue;

/// <summary>The catalogue file: required members of each kind, and messages of its faults.</summary>
public sealed class FileCatalogueTests : IDisposable
{
    private const string Unit = """{ "ratedA": 16, "groups": [ { "id": "a", "outlets": [ { "socket": "C13", "count": 8 } ] } ] }""";

    // Required members of each kind, in the shortest valid form.
    private static readonly Dictionary<string, (string Member, string Json)[]> Kinds = new(StringComparer.Ordinal)
    {
        ["cabinet"] = [("cabinet", """{ "heightU": 42, "widthMm": 800, "depthMm": 1000 }""")],
        ["equipment"] = [("item", """{ "heightU": 0 }""")],
        ["shelf"] = [("item", """{ "heightU": 1 }""")],
        ["blanking-panel"] = [("item", """{ "heightU": 1 }""")],
        ["pdu"] = [("pdu", Unit)],
        ["support"] = [("support", """{ "style": "slides" }""")],
        ["door"] = [("door", """{ "door": { "style": "solid" }, "face": "rear", "widthMm": 600, "heightU": 42 }""")],
        ["roof-fans"] = [("fans", """{ "count": 2, "freeFlowM3h": 160 }""")],
        ["fan-tray"] = [("fans", """{ "count": 2, "freeFlowM3h": 160 }"""), ("item", """{ "heightU": 1 }""")],
        ["air-conditioner"] = [("airConditioner", """{ "capacityW": 1000 }""")],
        ["earth-bar"] = [("earthBar", """{ "terminals": 10 }""")],
        ["earth-lead"] = [("earthLead", """{ "crossSectionMm2": 6, "lengthM": 2 }""")],
        ["cord"] = [("cord", """{ "plug": "C14", "connector": "C13", "lengthM": 2 }""")],
        ["cable-arm"] = [],
        ["kvm-lead"] = [("kvmLead", """{ "lengthM": 1.8 }""")],
        ["filter"] = [("filter", """{ "lossPa": 30, "atM3h": 600 }""")],
        ["fixings"] = [("fixing", "\"cage-nut\"")],
    };

    private readonly string file = Path.GetTempFileName();

    public static TheoryData<string> KindNames => [.. NamedEnumConverter<ProductKind>.Names];

    public void Dispose() => File.Delete(file);

    [Fact]
    public async Task BundledFile_is_valid_and_offers_all_products()
    {
        var products = FileCatalogue.Read(new CatalogueOptions().File);
        var catalogue = new FileCatalogue(products);
        var offered = await catalogue.OfferedAsync(CancellationToken.None);
        Assert.Equal(products.Products.Select(p => p.PartNumber).Order(StringComparer.Ordinal), offered.Select(p => p.PartNumber));
        Assert.All(offered, p => Assert.StartsWith("QWL-", p.PartNumber, StringComparison.Ordinal));
        var one = offered[0].PartNumber;
        Assert.Equal([one], (await catalogue.FindAsync([one, "QWL-NONE", one], CancellationToken.None)).Keys);
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => catalogue.FindAsync([one], new CancellationToken(true)).AsTask());
    }

    [Theory]
    [MemberData(nameof(KindNames))]
    public void Kind_with_missing_or_foreign_member_is_refused(string kind)
    {
        Assert.Single(Read(Product(kind)).Products);
        foreach (var (member, _) in Kinds[kind])
        {
            var less = Product(kind);
            less.Remove(member);
            Refuses($"QWL-A: /{member}: A product of the kind {kind} requires it.", less);
        }

        var (other, json) = kind == "cord" ? Kinds["fixings"][0] : Kinds["cord"][0];
        var more = Product(kind);
        more[other] = JsonNode.Parse(json);
        Refuses($"QWL-A: /{other}: A product of the kind {kind} does not have it.", more);
    }

    [Theory]
    [InlineData("cabinet", "cabinet", "heightU", null, "QWL-A: /cabinet/heightU: It is required but missing.")]
    [InlineData("cabinet", "cabinet", "widthMm", null, "QWL-A: /cabinet/widthMm: It is required but missing.")]
    [InlineData("cabinet", "cabinet", "depthMm", null, "QWL-A: /cabinet/depthMm: It is required but missing.")]
    [InlineData("cabinet", "cabinet", "partNumber", "\"QWL-B\"", "QWL-A: /cabinet/partNumber: The product itself has the part number.")]
    [InlineData("cabinet", "cabinet", "placement", "\"free\"", "QWL-A: /cabinet/placement: The placement belongs to a rack, not to a product.")]
    [InlineData("cabinet", "cabinet", "heightU", "61", "QWL-A: /cabinet/heightU: 61 is outside 1 to 60.")]
    [InlineData("cabinet", "cabinet", "heightU", "\"42\"", "QWL-A: /cabinet/heightU: It is a string where a number is required.")]
    [InlineData("cabinet", "cabinet", "colour", "\"grey\"", "QWL-A: /cabinet/colour: The contract does not define this member here.")]
    [InlineData("equipment", "item", "heightU", null, "QWL-A: /item/heightU: It is required but missing.")]
    [InlineData("equipment", "item", "partNumber", "\"QWL-B\"", "QWL-A: /item/partNumber: The contract does not define this member here.")]
    [InlineData("equipment", "item", "ups", """{ "feeds": [ "a" ] }""", "QWL-A: /item/ups/feeds: The PDUs fed belong to a rack, not to a product.")]
    [InlineData("equipment", "item", "cables", "[ null ]", "QWL-A: /item/cables/0: A list element must not be null.")]
    [InlineData(
        "equipment",
        "item",
        "support",
        """{ "minSpacingMm": 700, "maxSpacingMm": 600 }""",
        "QWL-A: /item/support/minSpacingMm: It is greater than maxSpacingMm.")]
    [InlineData("blanking-panel", "item", "heightU", "0", "QWL-A: /item/heightU: Only equipment may have a height of 0 U.")]
    [InlineData("support", "support", "minSpacingMm", "3001", "QWL-A: /support/minSpacingMm: 3001 is outside 0 to 3000.")]
    [InlineData("door", "door", "door", "{ }", "QWL-A: /door/door/style: It is required but missing.")]
    [InlineData(
        "door",
        "door",
        "door",
        """{ "style": "solid", "partNumber": "QWL-B" }""",
        "QWL-A: /door/door/partNumber: The product itself has the part number.")]
    [InlineData("cabinet", "cabinet", "rearDoor", """{ "bonded": true }""", "QWL-A: /cabinet/rearDoor/style: It is required but missing.")]
    [InlineData(
        "cabinet",
        "cabinet",
        "frontDoor",
        """{ "style": "solid", "partNumber": "QWL-B" }""",
        "QWL-A: /cabinet/frontDoor/partNumber: The product itself has the part number.")]
    [InlineData(
        "cabinet",
        "cabinet",
        "earthBar",
        """{ "partNumber": "QWL-B" }""",
        "QWL-A: /cabinet/earthBar/partNumber: The product itself has the part number.")]
    [InlineData("earth-bar", "earthBar", "partNumber", "\"QWL-B\"", "QWL-A: /earthBar/partNumber: The product itself has the part number.")]
    [InlineData("pdu", "pdu", "ratedA", null, "QWL-A: /pdu/ratedA: It is required but missing.")]
    [InlineData("pdu", "pdu", "groups", null, "QWL-A: /pdu/groups: It is required but missing.")]
    [InlineData("pdu", "pdu", "groups", "[]", "QWL-A: /pdu/groups: It has 0 elements; 1 to 24 are allowed.")]
    [InlineData(
        "pdu",
        "pdu",
        "groups",
        """[ { "id": "a", "outlets": [ { "socket": "C13", "count": 8 } ] }, { "id": "a", "outlets": [ { "socket": "C13", "count": 8 } ] } ]""",
        "QWL-A: /pdu/groups/1/id: Another group of this PDU has this id.")]
    public void Fault_message_names_part_number_and_pointer(string kind, string part, string member, string? value, string message)
    {
        var product = Product(kind);
        var owner = product[part]!.AsObject();
        owner.Remove(member);
        if (value is not null)
        {
            owner[member] = JsonNode.Parse(value);
        }

        Refuses(message, product);
    }

    [Theory]
    [InlineData("price", "-0.01", "QWL-A: /price: -0.01 is outside 0 to 10000000.")]
    [InlineData("price", "10000001", "QWL-A: /price: 10000001 is outside 0 to 10000000.")]
    [InlineData("price", "\"12\"", "QWL-A: /price: It is a string where a number is required.")]
    [InlineData("price", "12", "QWL-A: /currency: It is required but missing.")]
    [InlineData("currency", "\"eur\"", "QWL-A: /currency: It does not match the format ^[A-Z]{3}$.")]
    [InlineData("currency", "\"EURO\"", "QWL-A: /currency: It does not match the format ^[A-Z]{3}$.")]
    [InlineData("currency", "\"EUR\\n\"", "QWL-A: /currency: It is not an ISO 4217 code of three capital letters.")]
    [InlineData("inStock", "1", "QWL-A: /inStock: It is a number where true or false is required.")]
    [InlineData("preferred", "\"yes\"", "QWL-A: /preferred: It is a string where true or false is required.")]
    [InlineData("cordIncluded", "true", "QWL-A: /cordIncluded: Only equipment has it.")]
    [InlineData("railsIncluded", "true", "QWL-A: /railsIncluded: Only equipment has it.")]
    public void Wrong_sales_data_are_refused(string member, string value, string message)
    {
        var product = Product("cord");
        product[member] = JsonNode.Parse(value);
        Refuses(message, product);
    }

    [Fact]
    public void Sales_data_are_read()
    {
        var product = Product("equipment");
        foreach (var (member, value) in new (string, JsonNode)[]
        {
            ("price", 0), ("currency", "EUR"), ("inStock", false), ("preferred", true), ("cordIncluded", true), ("railsIncluded", true),
        })
        {
            product[member] = value;
        }

        var read = Read(product).Products[0];
        Assert.Equal((0d, "EUR", false, true, true, true), (read.Price, read.Currency, read.InStock, read.Preferred, read.CordIncluded, read.RailsIncluded));
        var cabinet = Product("cabinet");
        cabinet["railsIncluded"] = false;
        Assert.Single(Read(cabinet).Products);
    }

    [Fact]
    public void Demo_products_have_a_price_and_some_are_preferred_or_out_of_stock()
    {
        var products = FileCatalogue.Read(new CatalogueOptions().File).Products;
        Assert.All(products, p => Assert.True(p is { Price: > 0, Currency: "EUR" }, p.PartNumber));
        Assert.InRange(products.Count(p => p.InStock == false), 3, 10);
        Assert.InRange(products.Count(p => p.Preferred == true), 3, 10);
    }

    [Fact]
    public void Unknown_member_is_ignored_if_told_so()
    {
        var product = Product("cord");
        product["warehouse"] = 7;
        Refuses("QWL-A: /warehouse: The contract does not define this member here.", product);
        Assert.Single(FileCatalogue.Read(file, UnknownMembers.Ignore).Products);
    }

    [Fact]
    public void PartNumber_used_twice_is_refused()
    {
        Refuses("QWL-A: /partNumber: Another product has this part number.", Product("cord"), Product("fixings"));
        Assert.Equal(2, Read(Product("cord"), Product("fixings", "QWL-B")).Products.Count);
    }

    [Fact]
    public void Product_without_part_number_is_named_by_index()
    {
        var nameless = Product("cord");
        nameless.Remove("partNumber");
        Refuses("product 2 of the list: /partNumber: It is required but missing.", Product("fixings"), nameless);
    }

    [Theory]
    [InlineData("", "Not valid JSON")]
    [InlineData("{ \"products\": [", "Not valid JSON")]
    [InlineData("null", "an object is required")]
    [InlineData("{}", "/products: It is required but missing.")]
    [InlineData("""{ "products": [ null ] }""", "product 1 of the list: A list element must not be null.")]
    [InlineData("""{ "products": [], "products": [] }""", "/products: Duplicate member.")]
    public void File_without_product_list_is_refused(string text, string message)
    {
        File.WriteAllText(file, text);
        Assert.Contains(message, Fault(), StringComparison.Ordinal);
    }

    [Fact]
    public void File_with_byte_order_mark_is_read_and_other_encodings_are_refused()
    {
        File.WriteAllText(file, """{ "products": [] }""", new UTF8Encoding(true));
        Assert.Empty(FileCatalogue.Read(file).Products);
        File.WriteAllText(file, """{ "products": [] }""", Encoding.Unicode);
        Assert.Contains("in UTF-8", Fault(), StringComparison.Ordinal);
    }

    [Fact]
    public void MissingFile_is_named_in_message()
    {
        var absent = file + ".absent";
        Assert.Contains(absent, Assert.Throws<InvalidDataException>(() => FileCatalogue.Read(absent)).Message, StringComparison.Ordinal);
    }

    private static JsonObject Product(string kind, string partNumber = "QWL-A")
    {
        var product = new JsonObject { ["partNumber"] = partNumber, ["name"] = "A product", ["kind"] = kind };
        foreach (var (member, json) in Kinds[kind])
        {
            product[member] = JsonNode.Parse(json);
        }

        return product;
    }

    private ProductList Read(params JsonObject[] products)
    {
        File.WriteAllText(file, new JsonObject { ["products"] = new JsonArray([.. products]) }.ToJsonString());
        return FileCatalogue.Read(file);
    }

    private void Refuses(string message, params JsonObject[] products) =>
        Assert.Contains(message, Assert.Throws<InvalidDataException>(() => Read(products)).Message, StringComparison.Ordinal);

    private string Fault() => Assert.Throws<InvalidDataException>(() => FileCatalogue.Read(file)).Message;
}
