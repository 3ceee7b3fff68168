using System.Collections;
using System.Reflection;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;
using RackCheck.Model.Canonical;
using RackCheck.Model.Json;
using RackCheck.Testing;

namespace RackCheck.Model.Tests.Canonical;

public sealed class DescriptionDigestTests
{
    private const string Written = """
        { "reference": "bay 7", "cabinet": { "heightU": 42, "widthMm": 600, "depthMm": 1000, "massKg": 80.5 },
          "items": [ { "id": "wave-pc", "heightU": 4, "position": { "u": 10, "face": "front" }, "earthStud": true } ],
          "policy": { "rules": { "layout.reserve": { "limits": { "reservePercent": 20 } }, "depth.cable-arm": { "severity": "off" } } } }
        """;

    [Fact]
    public void The_canonical_form_has_sorted_members_and_no_space() =>
        Assert.Equal(
            """{"cabinet":{"depthMm":1000,"heightU":42,"massKg":80.5,"widthMm":600},"items":[{"earthStud":true,"heightU":4"""
                + ""","id":"wave-pc","position":{"face":"front","u":10}}],"policy":{"rules":{"depth.cable-arm":{"severity":"off"}"""
                + ""","layout.reserve":{"limits":{"reservePercent":20}}}},"reference":"bay 7"}""",
            DescriptionDigest.CanonicalForm(Read(Written)));

    [Fact]
    public void The_digest_is_the_sha_256_of_the_canonical_form()
    {
        var hash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(DescriptionDigest.CanonicalForm(Read(Written)))));
        Assert.Equal("sha-256:" + hash, DescriptionDigest.Of(Read(Written)));
    }

    [Fact]
    public void Rack_digest_is_the_test_vector_of_the_readme()
    {
        const string Vector = "sha-256:f0d95719c3eeacdd0e7c2079f52cde488afec8aecdba613a14d9495f4a9d8070";
        Assert.Equal(Vector, DescriptionDigest.OfRack(Read(Written)));
        Assert.Contains(Vector, Repository.Read("README.md"), StringComparison.Ordinal);
    }

    [Fact]
    public void Rack_digest_ignores_the_order_and_what_is_said_about_it()
    {
        var rack = Read(Written);
        Item[] two = [rack.Items[0], rack.Items[0] with { Id = "gauge-pc", Position = null }];
        var digest = DescriptionDigest.OfRack(rack with { Items = two });
        var acceptance = new Acceptance { Rule = "layout.overlap", Reason = "agreed", AcceptedBy = "bay planner" };
        var signOff = new SignOff
        {
            Rule = "load.tip-static", By = "bay planner", Role = "structural engineer", Reason = "bolted down", At = "2026-11-28T12:00:00Z",
        };
        Assert.Equal(
            digest,
            DescriptionDigest.OfRack(rack with
            {
                Items = [two[1], two[0] with { Description = "Computer of the wave paddles" }], Reference = "bay 8", Policy = null, Acceptances = [acceptance],
                SignOffs = [signOff], AsOf = "2026-11-28T12:00:00Z",
            }));
        Assert.NotEqual(digest, DescriptionDigest.OfRack(rack with { Items = [two[0], two[1] with { HeightU = 5 }] }));
        Assert.NotEqual(digest, DescriptionDigest.Of(rack with { Items = two }));
    }

    [Fact]
    public void Digest_after_one_that_failed_is_the_same_as_before()
    {
        var rack = Read(Written);
        var before = DescriptionDigest.Of(rack);
        Assert.Throws<ArgumentOutOfRangeException>(() => DescriptionDigest.Of(rack with { Cabinet = rack.Cabinet! with { WidthMm = double.NaN } }));
        Assert.Equal(before, DescriptionDigest.Of(rack));
    }

    [Theory]
    [InlineData("\"heightU\": 42, \"widthMm\": 600", "\"widthMm\": 600, \"heightU\": 42")] // reordered members
    [InlineData("\"u\": 10", "\"u\" :\r\n\t10")] // white space
    [InlineData("\"widthMm\": 600", "\"widthMm\": 600.0")]
    [InlineData("\"widthMm\": 600", "\"widthMm\": 6e2")]
    [InlineData("\"heightU\": 4,", "\"heightU\": 4.0,")]
    [InlineData("\"massKg\": 80.5", "\"massKg\": 80.50")]
    [InlineData("\"bay 7\"", "\"bay \\u0037\"")]
    [InlineData("\"earthStud\": true", "\"earthStud\": true, \"maxInletC\": null")]
    public void Another_spelling_has_the_same_digest(string one, string other)
    {
        Assert.Contains(one, Written, StringComparison.Ordinal);
        Assert.Equal(DescriptionDigest.Of(Read(Written)), DescriptionDigest.Of(Read(Written.Replace(one, other, StringComparison.Ordinal))));
    }

    [Theory]
    [InlineData("\"widthMm\": 600", "\"widthMm\": 600.1")]
    [InlineData("\"bay 7\"", "\"bay 8\"")]
    [InlineData("\"face\": \"front\"", "\"face\": \"rear\"")]
    [InlineData(", \"face\": \"front\"", "")] // a default that is said is another description
    [InlineData("\"earthStud\": true", "\"earthStud\": false")]
    [InlineData("\"severity\": \"off\"", "\"severity\": \"advice\"")]
    [InlineData("\"reservePercent\": 20", "\"reservePercent\": 21")]
    public void Another_value_has_another_digest(string one, string other)
    {
        Assert.Contains(one, Written, StringComparison.Ordinal);
        Assert.NotEqual(DescriptionDigest.Of(Read(Written)), DescriptionDigest.Of(Read(Written.Replace(one, other, StringComparison.Ordinal))));
    }

    [Fact]
    public void The_order_of_items_is_part_of_the_description()
    {
        var rack = TestRacks.EmptyRack().With(TestRacks.Unit("a", 1), TestRacks.Unit("b", 1));
        Assert.NotEqual(DescriptionDigest.Of(rack), DescriptionDigest.Of(rack with { Items = [.. rack.Items.Reverse()] }));
    }

    [Fact]
    [Trait("Kind", "property")]
    public void The_canonical_form_is_the_serializers_with_its_members_sorted() =>
        RackGenerator.RacksWithPolicy.Sample(
            rack => Assert.Equal(Sorted(JsonSerializer.SerializeToNode(rack, ContractJson.Default.RackDescription))!.ToJsonString(), Reread(rack)),
            iter: Samples.Of(2_000),
            print: Wording.Of);

    [Fact]
    public void No_member_of_the_contract_is_left_out()
    {
        var rack = Filled<RackDescription>();
        var form = DescriptionDigest.CanonicalForm(rack);
        Assert.Equal(Sorted(JsonSerializer.SerializeToNode(rack, ContractJson.Default.RackDescription))!.ToJsonString(), JsonNode.Parse(form)!.ToJsonString());
        Assert.Equal(rack.Cooling!.RoofFans![0].Curve![0].Pa, (double?)JsonNode.Parse(form)!["cooling"]!["roofFans"]![0]!["curve"]![0]!["pa"]);
    }

    private static RackDescription Read(string json) => JsonSerializer.Deserialize(json, ContractJson.Default.RackDescription)!;

    // Numbers and strings read and written anew by one writer, so that members and values are compared, not their spelling.
    private static string Reread(RackDescription rack) => JsonNode.Parse(DescriptionDigest.CanonicalForm(rack))!.ToJsonString();

    private static JsonNode? Sorted(JsonNode? node) => node switch
    {
        JsonObject members => new JsonObject(members.OrderBy(m => m.Key, StringComparer.Ordinal).Select(m => KeyValuePair.Create(m.Key, Sorted(m.Value)))),
        JsonArray elements => new JsonArray([.. elements.Select(Sorted)]),
        _ => JsonNode.Parse(node?.ToJsonString() ?? "null"),
    };

    // A record with every member set, lists and maps with one element each.
    private static T Filled<T>() => (T)Filled(typeof(T));

    private static object Filled(Type type)
    {
        type = Nullable.GetUnderlyingType(type) ?? type;
        if (type == typeof(string))
        {
            return "x";
        }

        if (type.IsValueType)
        {
            return type.IsEnum ? Enum.GetValues(type).GetValue(0)!
                : type == typeof(bool) ? true
                : Convert.ChangeType(3, type, System.Globalization.CultureInfo.InvariantCulture);
        }

        if (type.IsGenericType)
        {
            var arguments = type.GetGenericArguments();
            var made = (IEnumerable)Activator.CreateInstance((arguments.Length == 1 ? typeof(List<>) : typeof(Dictionary<,>)).MakeGenericType(arguments))!;
            made.GetType().GetMethod("Add")!.Invoke(made, [.. arguments.Select(Filled)]);
            return made;
        }

        var record = Activator.CreateInstance(type)!;
        foreach (var property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.CanWrite))
        {
            property.SetValue(record, Filled(property.PropertyType));
        }

        return record;
    }
}
