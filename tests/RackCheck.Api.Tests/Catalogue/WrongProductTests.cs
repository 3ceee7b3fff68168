using System.Text;
using RackCheck.Api.Catalogue;
using RackCheck.Model;
using RackCheck.ProductService;
using static RackCheck.Api.Tests.Catalogue.CatalogueRig;

namespace RackCheck.Api.Tests.Catalogue;

/// <summary>One wrong product is left out and named; the others of the answer are used.</summary>
public sealed class WrongProductTests
{
    private const string Cord =
        """{ "partNumber": "QWL-A", "name": "Cord", "kind": "cord", "cord": { "plug": "C14", "connector": "C13", "lengthM": 2 } }""";

    [Fact]
    public async Task Wrong_product_of_a_list_is_left_out_and_named_in_log_and_metric()
    {
        await using var rig = await StartAsync();
        rig.Host.Faults.Set(FaultKind.WrongValue);
        var offered = await rig.Cached.OfferedAsync(CancellationToken.None);
        Assert.Equal(Packs(10).Skip(1).Select(p => p.PartNumber), offered.Select(p => p.PartNumber));
        Assert.Contains("Left out of the answer of the product service: QWL-PACK-0 (/pieces out-of-range)", rig.Log.Lines);
        Assert.Equal((1, 1d), (rig.Reading("products.wrong:QWL-PACK-0"), rig.Reading("call.duration:answered")));
    }

    [Fact]
    public async Task Wrong_product_of_a_look_up_is_a_fault_and_not_unknown()
    {
        await using var rig = await StartAsync();
        rig.Host.Faults.Set(FaultKind.WrongValue);
        var found = await rig.FindAsync(Pack(1), Pack(2), "QWL-NONE");
        Assert.Equal([Pack(2)], found.Keys);
        var (partNumber, fault) = Assert.Single(found.Faults);
        Assert.Equal((Pack(1), "/pieces", "out-of-range"), (partNumber, fault.Pointer, fault.Code));
        Assert.Equal(1, rig.Reading("products.wrong:QWL-PACK-1"));

        // Kept for a short time, as what is unknown.
        Assert.Single((await rig.FindAsync(Pack(1))).Faults);
        Assert.Equal(1, rig.Host.Faults.Calls);
    }

    [Fact]
    public async Task Wrong_product_is_asked_for_again()
    {
        var time = new Microsoft.Extensions.Time.Testing.FakeTimeProvider();
        await using var rig = await StartAsync(time: time);
        rig.Host.Faults.Set(FaultKind.WrongValue);
        Assert.Empty(await rig.FindAsync(Pack(1)));
        rig.Host.Faults.Set(FaultKind.None);
        time.Advance(TimeSpan.FromSeconds(30));
        Assert.Single(await rig.FindAsync(Pack(1)));
    }

    [Fact]
    public async Task Product_that_was_not_requested_is_left_out()
    {
        await using var rig = await StartAsync(products: Packs(30));
        rig.Host.Faults.Set(FaultKind.NotAskedFor);
        var found = await rig.FindAsync(Pack(1), "QWL-NONE");
        Assert.Equal([Pack(1)], found.Keys);
        Assert.Empty(found.Faults);
        Assert.Equal(1, rig.Reading("products.wrong:QWL-PACK-29"));

        // The log names twenty of the 29.
        Assert.Equal(20, rig.Log.Lines.Count(l => l.EndsWith("not-here)", StringComparison.Ordinal)));
        Assert.Contains("Left out of the answer of the product service: 9 more products", rig.Log.Lines);
    }

    [Fact]
    public async Task Product_without_readable_part_number_may_be_any_that_is_not_found()
    {
        await using var rig = await StartAsync();
        rig.Host.Faults.Set(FaultKind.Nameless);
        var found = await rig.FindAsync(Pack(1), Pack(2));
        Assert.Equal([Pack(2)], found.Keys);
        Assert.Equal(("/partNumber", "wrong-type"), (found.Faults[Pack(1)].Pointer, found.Faults[Pack(1)].Code));
        Assert.Contains("Left out of the answer of the product service: product 1 without part number (/partNumber wrong-type)", rig.Log.Lines);
    }

    [Fact]
    public async Task Products_with_the_same_part_number_are_left_out()
    {
        await using var rig = await StartAsync(products: [.. Packs(3), Packs(1)[0] with { Name = "Other nuts" }]);
        rig.Host.Faults.Set(FaultKind.None);
        Assert.Equal([Pack(1), Pack(2)], (await rig.Http.OfferedAsync(CancellationToken.None)).Select(p => p.PartNumber));
        Assert.Equal("duplicate-id", (await rig.FindAsync(Pack(0))).Faults[Pack(0)].Code);
    }

    [Fact]
    public async Task Unknown_member_is_ignored_unless_the_setting_refuses_it()
    {
        await using var rig = await StartAsync();
        rig.Host.Faults.Set(FaultKind.WrongSchema);
        Assert.Equal([Pack(1), Pack(2)], (await rig.FindAsync(Pack(1), Pack(2))).Keys.Order(StringComparer.Ordinal));
        Assert.Empty(rig.Log.Lines);

        await using var strict = await StartAsync(url => new CatalogueOptions { BaseUrl = url, UnknownMembers = UnknownMembers.Refuse });
        strict.Host.Faults.Set(FaultKind.WrongSchema);
        var found = await strict.FindAsync(Pack(1), Pack(2));
        Assert.Equal([Pack(2)], found.Keys);

        // The name of the member is text of the other party.
        Assert.Equal(("", "unknown-member"), (found.Faults[Pack(1)].Pointer, found.Faults[Pack(1)].Code));
        Assert.DoesNotContain(strict.Log.Lines, l => l.Contains("warehouse", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Metric_names_a_limited_number_of_part_numbers()
    {
        await using var rig = await StartAsync(products: Packs(150));
        rig.Host.Faults.Set(FaultKind.NotAskedFor);
        await rig.FindAsync("QWL-NONE");
        Assert.Equal((1, 50d), (rig.Reading("products.wrong:QWL-PACK-99"), rig.Reading("products.wrong:other")));
    }

    [Fact]
    public async Task Answer_that_is_no_list_makes_the_catalogue_unavailable()
    {
        await using var rig = await StartAsync();
        rig.Host.Faults.Set(FaultKind.TruncatedJson);
        Assert.Contains("not-json", (await rig.FailsAsync(Pack(1))).Message, StringComparison.Ordinal);
        Assert.False(rig.State.IsAvailable);
        rig.Host.Faults.Set(FaultKind.WrongValue);
        await rig.FindAsync(Pack(1));
        Assert.True(rig.State.IsAvailable);
    }

    [Theory]
    [InlineData("null", "", "wrong-type")]
    [InlineData("[]", "", "wrong-type")]
    [InlineData("{}", "/products", "missing-member")]
    [InlineData("""{ "products": 1 }""", "/products", "wrong-type")]
    [InlineData("""{ "products": [], "products": [] }""", "/products", "duplicate-member")]
    [InlineData("""{ "products": [ 1 ], "page": 1 }""", "", "unknown-member")]
    [InlineData("{ \"products\": [", "", "not-json")]
    public void Fault_of_the_list_is_told(string text, string pointer, string code)
    {
        var read = ProductText.ReadEach(Encoding.UTF8.GetBytes(text), UnknownMembers.Refuse);
        Assert.Equal((pointer, code), (read.Fault!.Pointer, read.Fault.Code));
        Assert.Empty(read.Products);
    }

    [Theory]
    [InlineData("1", "", "wrong-type")]
    [InlineData("null", "", "null-value")]
    [InlineData("{}", "/kind", "missing-member")]
    [InlineData("""{ "partNumber": "", "name": "n", "kind": "cable-arm" }""", "/partNumber", "wrong-length")]
    [InlineData("""{ "partNumber": "\ud800", "name": "n", "kind": "cable-arm" }""", "/partNumber", "wrong-form")]
    [InlineData("""{ "partNumber": "QWL-B", "name": "n", "kind": "spoon" }""", "/kind", "unknown-value")]
    [InlineData("""{ "partNumber": "QWL-B", "name": "n", "kind": "cable-arm", "price": 1, "extra": { "a": [ 1 ] } }""", "/currency", "missing-member")]
    public void Fault_of_one_product_leaves_the_others(string product, string pointer, string code)
    {
        var read = ProductText.ReadEach(Encoding.UTF8.GetBytes($$"""{ "total": 2, "products": [ {{product}}, {{Cord}} ] }"""), UnknownMembers.Ignore);
        Assert.Null(read.Fault);
        Assert.Equal(["QWL-A"], read.Products.Select(p => p.PartNumber));
        var wrong = Assert.Single(read.Wrong);
        Assert.Equal((0, pointer, code), (wrong.Index, wrong.Fault.Pointer, wrong.Fault.Code));
    }

    [Fact]
    public void Unknown_members_at_any_depth_are_ignored_and_all_else_is_strict()
    {
        var rich = Cord.Replace("\"lengthM\": 2", "\"lengthM\": 2, \"colour\": { \"code\": 7 }", StringComparison.Ordinal);
        Assert.Single(ProductText.ReadEach(Encoding.UTF8.GetBytes($$"""{ "products": [ {{rich}} ], "next": null }"""), UnknownMembers.Ignore).Products);
        foreach (var spoilt in new[] { "\"lengthM\": \"2\"", "\"lengthM\": 2, \"lengthM\": 3", "\"lengthM\": null", "\"LengthM\": 2" })
        {
            var text = rich.Replace("\"lengthM\": 2", spoilt, StringComparison.Ordinal);
            Assert.Single(ProductText.ReadEach(Encoding.UTF8.GetBytes($$"""{ "products": [ {{text}} ] }"""), UnknownMembers.Ignore).Wrong);
        }
    }

    [Fact]
    public void Many_unknown_members_do_not_hide_a_fault()
    {
        var many = string.Join(", ", Enumerable.Range(0, 200).Select(i => FormattableString.Invariant($"\"a{i}\": {i}")));
        var text = $$"""{ "products": [ { {{many}}, "partNumber": "QWL-B", "name": "n" } ] }""";
        var wrong = Assert.Single(ProductText.ReadEach(Encoding.UTF8.GetBytes(text), UnknownMembers.Ignore).Wrong);
        Assert.Equal(("QWL-B", "/kind", "missing-member"), (wrong.PartNumber, wrong.Fault.Pointer, wrong.Fault.Code));
    }
}
