using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using RackCheck.Model;
using RackCheck.Model.Json;

namespace RackCheck.Remedies.Patches;

/// <summary>Writes the JSON Patch (RFC 6902) between two descriptions: member by member, list elements by their ids.</summary>
public static class DescriptionDiff
{
    /// <summary>Returns the patch with the changes only.</summary>
    /// <param name="before">The description as posted.</param>
    /// <param name="after">The target description; members that are the same object are skipped.</param>
    /// <returns>The operations, in order.</returns>
    public static IReadOnlyList<PatchOperation> Patch(RackDescription before, RackDescription after)
    {
        var operations = new List<PatchOperation>();
        Member("/cabinet", before.Cabinet, after.Cabinet, ContractJson.Default.Cabinet, operations);
        List("/supplies", before.Supplies, after.Supplies, ContractJson.Default.IReadOnlyListSupply, ContractJson.Default.Supply, s => s.Id, operations);
        List("/pdus", before.Pdus, after.Pdus, ContractJson.Default.IReadOnlyListPdu, ContractJson.Default.Pdu, u => u.Id, operations);
        Member("/connections", before.Connections, after.Connections, ContractJson.Default.IReadOnlyListConnection, operations);
        List("/items", before.Items, after.Items, ContractJson.Default.IReadOnlyListItem, ContractJson.Default.Item, i => i.Id, operations);
        Member("/cooling", before.Cooling, after.Cooling, ContractJson.Default.Cooling, operations);
        Member("/earthing", before.Earthing, after.Earthing, ContractJson.Default.Earthing, operations);
        Member("/site", before.Site, after.Site, ContractJson.Default.Site, operations);
        Member("/acceptances", before.Acceptances, after.Acceptances, ContractJson.Default.IReadOnlyListAcceptance, operations);
        return operations;
    }

    private static void Member<T>(string path, T? before, T? after, JsonTypeInfo<T> type, List<PatchOperation> operations)
        where T : class
    {
        if (!ReferenceEquals(before, after))
        {
            Node(
                path, before is null ? null : JsonSerializer.SerializeToElement(before, type),
                after is null ? null : JsonSerializer.SerializeToElement(after, type), operations);
        }
    }

    // As Elements, but only those elements are written that are not the same object: of thirty items a remedy changes one.
    private static void List<T>(
        string path, IReadOnlyList<T>? before, IReadOnlyList<T>? after, JsonTypeInfo<IReadOnlyList<T>> list, JsonTypeInfo<T> element, Func<T, string> id,
        List<PatchOperation> operations)
        where T : class
    {
        if (before is null || after is null || ReferenceEquals(before, after))
        {
            Member(path, before, after, list, operations);
            return;
        }

        var stays = new List<T>(before);
        for (var i = before.Count - 1; i >= 0 && after.Count < before.Count; i--)
        {
            if (!after.Any(n => id(n) == id(before[i])))
            {
                stays.RemoveAt(i);
                operations.Add(new PatchOperation { Op = "remove", Path = Below(path, i) });
            }
        }

        for (; stays.Count > after.Count; stays.RemoveAt(stays.Count - 1))
        {
            operations.Add(new PatchOperation { Op = "remove", Path = Below(path, stays.Count - 1) });
        }

        for (var i = 0; i < after.Count; i++)
        {
            if (i >= stays.Count)
            {
                operations.Add(new PatchOperation { Op = "add", Path = path + "/-", Value = JsonSerializer.SerializeToElement(after[i], element) });
            }
            else
            {
                Member(Below(path, i), stays[i], after[i], element, operations);
            }
        }
    }

    private static void Node(string path, JsonElement? before, JsonElement? after, List<PatchOperation> operations)
    {
        switch (before, after)
        {
            case (null, null):
                break;
            case (_, null):
                operations.Add(new PatchOperation { Op = "remove", Path = path });
                break;
            case (null, { } added):
                operations.Add(new PatchOperation { Op = "add", Path = path, Value = added });
                break;
            case ({ ValueKind: JsonValueKind.Object } from, { ValueKind: JsonValueKind.Object } to):
                Members(path, from, to, operations);
                break;
            case ({ ValueKind: JsonValueKind.Array } from, { ValueKind: JsonValueKind.Array } to):
                Elements(path, from, to, operations);
                break;
            case ({ } from, { } to):
                if (!JsonElement.DeepEquals(from, to))
                {
                    operations.Add(new PatchOperation { Op = "replace", Path = path, Value = to });
                }

                break;
        }
    }

    private static void Members(string path, JsonElement before, JsonElement after, List<PatchOperation> operations)
    {
        foreach (var member in before.EnumerateObject())
        {
            JsonElement? now = after.TryGetProperty(member.Name, out var value) ? value : null;
            if (now is null || !JsonElement.DeepEquals(member.Value, value))
            {
                Node(Below(path, member.Name), member.Value, now, operations);
            }
        }

        foreach (var member in after.EnumerateObject())
        {
            if (!before.TryGetProperty(member.Name, out _))
            {
                operations.Add(new PatchOperation { Op = "add", Path = Below(path, member.Name), Value = member.Value });
            }
        }
    }

    // Elements are removed from the end, so that indexes stay valid; the rest keeps its order; new elements are appended.
    private static void Elements(string path, JsonElement before, JsonElement after, List<PatchOperation> operations)
    {
        List<JsonElement> stays = [.. before.EnumerateArray()];
        List<JsonElement> wanted = [.. after.EnumerateArray()];
        for (var i = stays.Count - 1; i >= 0 && wanted.Count < before.GetArrayLength(); i--)
        {
            if (!wanted.Exists(n => IsSame(n, stays[i])))
            {
                stays.RemoveAt(i);
                operations.Add(new PatchOperation { Op = "remove", Path = Below(path, i) });
            }
        }

        for (; stays.Count > wanted.Count; stays.RemoveAt(stays.Count - 1))
        {
            operations.Add(new PatchOperation { Op = "remove", Path = Below(path, stays.Count - 1) });
        }

        for (var i = 0; i < wanted.Count; i++)
        {
            if (i < stays.Count)
            {
                Node(Below(path, i), stays[i], wanted[i], operations);
            }
            else
            {
                operations.Add(new PatchOperation { Op = "add", Path = path + "/-", Value = wanted[i] });
            }
        }
    }

    private static bool IsSame(JsonElement one, JsonElement other) =>
        IdOf(one) is { } id && IdOf(other) is { } otherId ? JsonElement.DeepEquals(id, otherId) : JsonElement.DeepEquals(one, other);

    private static JsonElement? IdOf(JsonElement element) =>
        element.ValueKind == JsonValueKind.Object && element.TryGetProperty("id", out var id) ? id : null;

    private static string Below(string path, string name) =>
        $"{path}/{name.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal)}";

    private static string Below(string path, int index) => string.Create(CultureInfo.InvariantCulture, $"{path}/{index}");
}
