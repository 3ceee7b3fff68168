using System.Collections.Frozen;
using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Survey.Bounds;

namespace RackCheck.Testing;

/// <summary>The members of a description by their kind, and racks with one of them taken out.</summary>
public static class FactPlaces
{
    /// <summary>The kind of each optional member of a description, by its pointer with * for every index.</summary>
    public static FrozenDictionary<string, MemberKind> Kinds { get; } =
        Walk(typeof(RackDescription), "").ToFrozenDictionary(m => m.Key, m => m.Kind, StringComparer.Ordinal);

    /// <summary>All optional members of a description.</summary>
    public static IReadOnlyList<string> Optional { get; } = [.. Members(typeof(RackDescription), "").Where(m => m.IsOptional).Select(m => m.Key).Distinct()];

    /// <summary>Pointers of the facts that a rack gives.</summary>
    /// <param name="rack">The rack.</param>
    public static IReadOnlyList<string> Given(RackDescription rack)
    {
        var found = new List<string>();
        Walk(JsonSerializer.SerializeToNode(rack, ContractJson.Default.RackDescription), "", "", found);
        return found;
    }

    /// <summary>The rack without some of its members.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="pointers">The members.</param>
    public static RackDescription Without(RackDescription rack, params string[] pointers)
    {
        var node = JsonSerializer.SerializeToNode(rack, ContractJson.Default.RackDescription)!;
        foreach (var pointer in pointers)
        {
            var at = pointer.LastIndexOf('/');
            var parent = pointer[1..at].Split('/').Where(t => t.Length > 0)
                .Aggregate(node, (n, t) => n is JsonArray list ? list[int.Parse(t, System.Globalization.CultureInfo.InvariantCulture)]! : n[t]!);
            parent.AsObject().Remove(pointer[(at + 1)..]);
        }

        return node.Deserialize(ContractJson.Default.RackDescription)!;
    }

    /// <summary>Whether a value lies inside the bounds that hold where it is missing; a fact that is always asked for has none to leave.</summary>
    /// <param name="rack">The rack with the value.</param>
    /// <param name="without">The rack without it.</param>
    /// <param name="pointer">Its pointer.</param>
    public static bool IsInside(RackDescription rack, RackDescription without, string pointer)
    {
        if (FactTable.Find(pointer) is not (var fact, var owner) || fact.Range is null)
        {
            return true;
        }

        return fact.BoundOf(without, owner) is { } bound && fact.IsInside(rack, owner, bound);
    }

    /// <summary>
    /// Whether another member says the same fact: the list of bonded parts is complete, so it tells of a door whose own mark is gone.
    /// What a contradiction of the two leaves behind is an answer, not silence.
    /// </summary>
    /// <param name="without">The rack without the member.</param>
    /// <param name="pointer">Its pointer.</param>
    public static bool IsStillSaid(RackDescription without, string pointer) =>
        pointer is Pointers.FrontDoor + "/bonded" or Pointers.RearDoor + "/bonded" && without.Earthing?.Bonded is not null;

    /// <summary>Whether a value lies inside its bounds, or has none.</summary>
    /// <param name="rack">The rack with the value.</param>
    /// <param name="pointer">Its pointer.</param>
    public static bool IsInsideOrUnbounded(RackDescription rack, string pointer) =>
        IsInside(rack, Without(rack, pointer), pointer)
        || (FactTable.Find(pointer) is (var fact, var owner) && fact.BoundOf(Without(rack, pointer), owner) is null);

    private static void Walk(JsonNode? node, string at, string key, List<string> found)
    {
        if (node is JsonArray list)
        {
            for (var i = 0; i < list.Count; i++)
            {
                Walk(list[i], FormattableString.Invariant($"{at}/{i}"), key + "/*", found);
            }
        }
        else if (node is JsonObject record)
        {
            foreach (var (name, value) in record)
            {
                var (place, member) = ($"{at}/{name}", $"{key}/{name}");
                if (Kinds.TryGetValue(member, out var kind) && kind == MemberKind.Fact && value is not null)
                {
                    found.Add(place);
                }

                Walk(value, place, member, found);
            }
        }
    }

    private static IEnumerable<(string Key, MemberKind Kind)> Walk(Type type, string at) =>
        Members(type, at).Where(m => m.Kind is not null).Select(m => (m.Key, m.Kind!.Value));

    // Policy, acceptances and sign-offs are no part of the rack.
    private static IEnumerable<(string Key, MemberKind? Kind, bool IsOptional)> Members(Type type, string at)
    {
        foreach (var property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance))
        {
            var key = $"{at}/{JsonNamingPolicy.CamelCase.ConvertName(property.Name)}";
            var isRequired = property.GetCustomAttribute<System.Runtime.CompilerServices.RequiredMemberAttribute>() is not null;
            yield return (key, property.GetCustomAttribute<KindAttribute>()?.Kind, !isRequired);
            var inner = property.PropertyType.IsGenericType && property.PropertyType.GetGenericTypeDefinition() == typeof(IReadOnlyList<>)
                ? property.PropertyType.GetGenericArguments()[0]
                : property.PropertyType;
            if (inner.IsClass && inner.Namespace == typeof(RackDescription).Namespace && inner.IsSealed
                && inner != typeof(Policy) && inner != typeof(Acceptance) && inner != typeof(SignOff))
            {
                foreach (var below in Members(inner, inner == property.PropertyType ? key : key + "/*"))
                {
                    yield return below;
                }
            }
        }
    }
}
