using System.Collections.Concurrent;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using RackCheck.Api.Reading;
using RackCheck.Api.Tests.Http;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.OpenApi;

/// <summary>
/// The readers that are written when the contract is compiled accept what the serializer accepts and the attributes allow, and read the same:
/// System.Text.Json is the reference.
/// </summary>
public sealed class ReaderAgreementTests
{
    // A number too large for a double is read as infinite, and refused by its range later.
    private static readonly JsonSerializerOptions Written =
        new(ContractJson.Default.Options) { NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals };

    public static TheoryData<string> Requests => [.. Readings.Keys];

    private static Dictionary<string, Func<byte[], string?>> Readings { get; } = new()
    {
        ["rack-"] = json => Difference(json, ContractJson.Default.RackDescription, ContractReader.RackDescription),
        ["basket-"] = json => Difference(json, ContractJson.Default.BasketRequest, ContractReader.BasketRequest),
        ["proposal-"] = json => Difference(json, ContractJson.Default.ProposalRequest, ContractReader.ProposalRequest),
        ["comparison-"] = json => Difference(json, ContractJson.Default.ComparisonRequest, ContractReader.ComparisonRequest),
        ["elevation-"] = json => Difference(json, ContractJson.Default.ElevationRequest, ContractReader.ElevationRequest),
    };

    [Theory]
    [MemberData(nameof(Requests))]
    public void Example_is_read_without_the_serializer(string prefix)
    {
        foreach (var json in Examples(prefix))
        {
            Assert.Null(Readings[prefix](json));
        }

        Assert.NotNull(ContractReader.RackDescription(Examples("rack-")[0]));
    }

    [Theory]
    [MemberData(nameof(Requests))]
    [Trait("Kind", "property")]
    public void Changed_request_is_read_as_by_the_serializer(string prefix)
    {
        var schema = prefix == "rack-" ? "RackDescription" : $"{char.ToUpperInvariant(prefix[0])}{prefix[1..^1]}Request";
        JsonNode[] examples = [.. Examples(prefix).Select(json => JsonNode.Parse(json)!)];
        Compare(prefix, random => Encoding.UTF8.GetBytes(new RequestMutator(random).Change(schema, examples[random.Next(examples.Length)]).ToJsonString()));
    }

    [Theory]
    [MemberData(nameof(Requests))]
    [Trait("Kind", "property")]
    public void Damaged_body_is_read_as_by_the_serializer(string prefix) => Compare(prefix, DamagedBodies.One);

    // What only the serializer reads: an escape sequence in a name, and a null in a list.
    [Theory]
    [InlineData("""{"\u0069tems":[]}""")]
    [InlineData("""{"items":[null]}""")]
    public void Rare_form_is_left_to_the_serializer(string json)
    {
        var body = Encoding.UTF8.GetBytes(json);
        Assert.Null(ContractReader.RackDescription(body));
        Assert.NotNull(JsonSerializer.Deserialize(body, ContractJson.Default.RackDescription));
    }

    [Theory]
    [InlineData("""{"items":[],"items":[]}""")]
    [InlineData("""{"items":null}""")]
    [InlineData("""{"reference":"a"}""")]
    [InlineData("""{"items":[]} {}""")]
    [InlineData("""{"items":[],"Reference":"a"}""")]
    [InlineData("""{"items":[{"id":"a","heightU":1.5}]}""")]
    [InlineData("""{"items":[{"id":"a","massKg":"1"}]}""")]
    [InlineData("""{"items":[{"id":"a","category":"Server"}]}""")]
    [InlineData("""{"items":[{"id":"a","massKg":-1}]}""")]
    [InlineData("""{"items":[{"id":""}]}""")]
    [InlineData("""{"items":[{"id":"a\tb"}]}""")]
    [InlineData("""{"items":[],"asOf":"yesterday"}""")]
    [InlineData("""{"items":[{"id":"\ud800"}]}""")]
    [InlineData("""[{"items":[]}]""")]
    [InlineData("")]
    public void Fault_is_refused(string json)
    {
        var body = Encoding.UTF8.GetBytes(json);
        Assert.Null(ContractReader.RackDescription(body));
        Assert.True(Serializer(body, ContractJson.Default.RackDescription) is not { } read || !RangeValidation<RackDescription>.Instance.Hold(read));
    }

    private static void Compare(string prefix, Func<Random, byte[]> make)
    {
        var differences = new ConcurrentQueue<string>();
        var first = Random.Shared.Next(1_000_000_000);
        Parallel.For(first, first + Samples.Of(20_000, least: 500), seed =>
        {
            if (Readings[prefix](make(new Random(seed))) is { } difference)
            {
                differences.Enqueue($"seed {seed}: {difference}");
            }
        });
        Assert.True(differences.IsEmpty, string.Join(Environment.NewLine, differences.Take(10)));
    }

    private static byte[][] Examples(string prefix) =>
    [
        .. Directory.EnumerateFiles(Repository.PathOf("openapi", "examples"), prefix + "*.json").Order(StringComparer.Ordinal).Select(File.ReadAllBytes),
        .. prefix == "basket-" ? [Encoding.UTF8.GetBytes(FilledRack.Basket().ToJsonString())] : (byte[][])[],
    ];

    private static string? Difference<T>(byte[] json, JsonTypeInfo<T> type, Func<ReadOnlySpan<byte>, T?> read)
        where T : class
    {
        var (quick, reference) = (read(json), Serializer(json, type) is { } whole && RangeValidation<T>.Instance.Hold(whole) ? whole : null);
        if (quick is null)
        {
            // Values of a report in a request are no input; the serializer takes them as they are.
            return reference is null or ComparisonRequest || Encoding.UTF8.GetString(json).Contains('\\', StringComparison.Ordinal)
                ? null
                : "refused, while the serializer accepts";
        }

        return reference is null ? "accepted, while the serializer refuses"
            : JsonSerializer.Serialize(quick, Written) == JsonSerializer.Serialize(reference, Written) ? null
            : "read otherwise";
    }

    private static T? Serializer<T>(byte[] json, JsonTypeInfo<T> type)
        where T : class
    {
        try
        {
            return JsonSerializer.Deserialize(json, type);
        }
        catch (Exception fault) when (fault is JsonException or InvalidOperationException or FormatException)
        {
            return null;
        }
    }
}
