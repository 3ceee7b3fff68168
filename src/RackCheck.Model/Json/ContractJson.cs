using System.Text.Json;
using System.Text.Json.Serialization;
using RackCheck.Model.Converters;

namespace RackCheck.Model.Json;

/// <summary>
/// How the contract is read and written: strict, camelCase, absent members left out. The one home of it: the reader, the finder of
/// faults, the canonical form and the OpenAPI document all ask this context's metadata.
/// </summary>
/// <remarks>Take <c>ContractJson.Default.X</c> itself: the strict settings are not carried over when the context joins a resolver chain.</remarks>
[JsonSourceGenerationOptions(
    JsonSerializerDefaults.Web,
    PropertyNameCaseInsensitive = false,
    NumberHandling = JsonNumberHandling.Strict,
    AllowDuplicateProperties = false,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    RespectNullableAnnotations = true,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    MaxDepth = DepthLimit,
    Converters = [typeof(WholeNumberConverter)])]
[JsonSerializable(typeof(RackDescription))]
[JsonSerializable(typeof(CheckReport))]
[JsonSerializable(typeof(Problem))]
[JsonSerializable(typeof(RuleList))]
[JsonSerializable(typeof(RulePage))]
[JsonSerializable(typeof(ReferenceTable))]
[JsonSerializable(typeof(ProductList))]
[JsonSerializable(typeof(ProductLookUp))]
[JsonSerializable(typeof(BasketRequest))]
[JsonSerializable(typeof(BasketReport))]
[JsonSerializable(typeof(Item))]
[JsonSerializable(typeof(IReadOnlyList<Item>))]
[JsonSerializable(typeof(IReadOnlyList<Supply>))]
[JsonSerializable(typeof(IReadOnlyList<Pdu>))]
[JsonSerializable(typeof(IReadOnlyList<Connection>))]
[JsonSerializable(typeof(IReadOnlyList<Acceptance>))]
[JsonSerializable(typeof(bool))]
[JsonSerializable(typeof(int))]
[JsonSerializable(typeof(double))]
[JsonSerializable(typeof(string))]
public sealed partial class ContractJson : JsonSerializerContext
{
    /// <summary>Levels of nesting that a request may have. The deepest member of the contract lies at level 8.</summary>
    public const int DepthLimit = 32;
}
