using System.Collections.Frozen;
using System.Text.Json.Serialization.Metadata;
using RackCheck.Model;

namespace RackCheck.Api.Reading;

/// <summary>The member that was meant by a name that the contract does not have.</summary>
internal static class MemberHints
{
    // Usual names of other systems, without unit and case, and the members that they can mean: paths from the object that has the name.
    private static readonly FrozenDictionary<string, string[]> Meant = new Dictionary<string, string[]>(StringComparer.OrdinalIgnoreCase)
    {
        ["weight"] = ["massKg"],
        ["mass"] = ["massKg"],
        ["height"] = ["heightU", "heightMm"],
        ["units"] = ["heightU"],
        ["depth"] = ["depthMm", "body/depthMm"],
        ["width"] = ["widthMm", "body/widthMm"],
        ["u"] = ["position/u"],
        ["slot"] = ["position/u"],
        ["face"] = ["position/face"],
        ["watt"] = ["power/ratedW", "ratedW"],
        ["watts"] = ["power/ratedW", "ratedW"],
        ["power"] = ["ratedW"],
        ["powerW"] = ["power/ratedW", "ratedW"],
        ["rated"] = ["power/ratedW", "ratedW", "ratedA"],
        ["plugs"] = ["power/plugs"],
        ["redundant"] = ["power/redundant"],
        ["heat"] = ["heatW"],
        ["type"] = ["category", "style"],
        ["kind"] = ["category", "style"],
        ["name"] = ["id", "reference"],
        ["sku"] = ["partNumber"],
        ["article"] = ["partNumber"],
        ["qty"] = ["quantity"],
        ["amount"] = ["quantity"],
        ["temperature"] = ["ambientMaxC"],
        ["doors"] = ["openings", "frontDoor"],
        ["equipment"] = ["items"],
        ["devices"] = ["items"],
    }.ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);

    private static readonly string[] Units = ["Kg", "Mm", "Cm", "M", "W", "A", "U", "C", "V"];

    /// <summary>A sentence with the member that was meant.</summary>
    /// <param name="name">The name.</param>
    /// <param name="type">The object that has it.</param>
    /// <returns>The sentence with a space in front; empty if nothing is near.</returns>
    public static string Of(string name, JsonTypeInfo type)
    {
        foreach (var stem in Stems(name))
        {
            foreach (var path in Meant.GetValueOrDefault(stem) ?? [])
            {
                if (Has(type, path.Split('/')[0]))
                {
                    return $" Did you mean {path}?";
                }
            }
        }

        // Short names are near to everything.
        var (best, distance) = ("", Math.Min(3, 1 + (name.Length / 3)));
        foreach (var property in type.Properties)
        {
            var own = Edits.Between(name, property.Name, distance);
            if (own < distance)
            {
                (best, distance) = (property.Name, own);
            }
        }

        return best.Length > 0 ? $" Did you mean {best}?" : "";
    }

    // The name as it is, and without the unit at its end.
    private static IEnumerable<string> Stems(string name)
    {
        var plain = name.Replace("_", "", StringComparison.Ordinal).Replace("-", "", StringComparison.Ordinal);
        yield return plain;
        foreach (var unit in Units)
        {
            if (plain.Length > unit.Length && plain.EndsWith(unit, StringComparison.OrdinalIgnoreCase))
            {
                yield return plain[..^unit.Length];
            }
        }
    }

    private static bool Has(JsonTypeInfo type, string name)
    {
        foreach (var property in type.Properties)
        {
            if (property.Name == name)
            {
                return true;
            }
        }

        return false;
    }
}
