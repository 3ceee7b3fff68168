using System.Collections.Frozen;
using System.Text.Json.Serialization.Metadata;
using RackCheck.Model;
using RackCheck.Model.Json;

namespace RackCheck.Api.OpenApi;

/// <summary>The record types of requests, found through the serializer's metadata.</summary>
internal static class RequestTypes
{
    private static readonly Type[] Requests =
        [typeof(RackDescription), typeof(BasketRequest), typeof(ProposalRequest), typeof(ComparisonRequest), typeof(ElevationRequest)];

    // A report in a request is a response of this service; its schema stays that of responses.
    private static readonly FrozenSet<Type> All = Requests.Aggregate(new HashSet<Type> { typeof(CheckReport) }, (seen, type) => Reach(type, seen))
        .Where(t => t != typeof(CheckReport)).ToFrozenSet();

    /// <summary>Whether a record type is part of a request.</summary>
    public static bool Contains(Type type) => All.Contains(type);

    private static HashSet<Type> Reach(Type type, HashSet<Type> seen)
    {
        var info = ContractJson.Default.GetTypeInfo(Nullable.GetUnderlyingType(type) ?? type);
        if (info?.ElementType is { } element)
        {
            return Reach(element, seen);
        }

        if (info is { Kind: JsonTypeInfoKind.Object } && seen.Add(info.Type))
        {
            foreach (var property in info.Properties)
            {
                Reach(property.PropertyType, seen);
            }
        }

        return seen;
    }
}
