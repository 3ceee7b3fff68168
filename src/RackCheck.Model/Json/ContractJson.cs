using System.Text.Json;
using System.Text.Json.Serialization;
using RackCheck.Model.Converters;

namespace RackCheck.Model.Json;

/// <summary>
/// JSON settings of the contract: strict, camelCase, absent members left out. The request reader, the request diagnostics, the canonical form and the
/// OpenAPI document all use this context's metadata.
/// </summary>
/// <remarks>Use <c>ContractJson.Default.X</c> directly: the strict settings do not apply when the context is part of a resolver chain.</remarks>
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
[JsonSerializable(typeof(StreamedAnswer))]
[JsonSerializable(typeof(RuleList))]
[JsonSerializable(typeof(RulePage))]
[JsonSerializable(typeof(RulesetHistory))]
[JsonSerializable(typeof(IReadOnlyList<RulesetChange>))]
[JsonSerializable(typeof(ReferenceTable))]
[JsonSerializable(typeof(ProductList))]
[JsonSerializable(typeof(ProductLookUp))]
[JsonSerializable(typeof(PartsList))]
[JsonSerializable(typeof(BasketRequest))]
[JsonSerializable(typeof(BasketReport))]
[JsonSerializable(typeof(ExistingCabinet))]
[JsonSerializable(typeof(ProposalRequest))]
[JsonSerializable(typeof(ProposalAnswer))]
[JsonSerializable(typeof(ComparisonRequest))]
[JsonSerializable(typeof(ComparisonAnswer))]
[JsonSerializable(typeof(ElevationRequest))]
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
    /// <summary>Maximum nesting depth of a request. The deepest member of the contract is at level 8.</summary>
    public const int DepthLimit = 32;
}
