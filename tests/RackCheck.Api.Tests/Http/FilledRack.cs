using System.ComponentModel.DataAnnotations;
using System.Globalization;
using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using RackCheck.Model;

namespace RackCheck.Api.Tests.Http;

/// <summary>
/// A description with every member of the contract, made from the records themselves, so that it includes members added later. Lists have one
/// element; every id is "a", so that references exist. The description is valid but not a realistic rack.
/// </summary>
internal static class FilledRack
{
    // Left out: part numbers, so that no product data applies; members about findings; a shelf that would stand on itself.
    private static readonly string[] LeftOut = ["partNumber", "onShelf", "policy", "acceptances", "signOffs", "asOf", "quantity"];

    public static JsonObject Make()
    {
        var rack = Record(typeof(RackDescription));

        // A UPS must not feed the PDU that it is plugged into, so the connection uses another PDU.
        rack.Remove("connections");
        return rack;
    }

    /// <summary>A basket for a cabinet that is there, with all of its members.</summary>
    public static JsonObject Basket() => new()
    {
        ["lines"] = new JsonArray(new JsonObject { ["partNumber"] = "QWL-SRV-110", ["quantity"] = 1 }),
        ["options"] = new JsonObject { ["cabinet"] = new JsonObject { ["existing"] = Make()["cabinet"]!.DeepClone() } },
    };

    private static JsonObject Record(Type type)
    {
        var record = new JsonObject();
        foreach (var property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.SetMethod is not null))
        {
            var name = JsonNamingPolicy.CamelCase.ConvertName(property.Name);
            if (!LeftOut.Contains(name))
            {
                record[name] = Value(property);
            }
        }

        return record;
    }

    private static JsonNode Value(PropertyInfo property)
    {
        var type = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
        var range = property.GetCustomAttribute<RangeAttribute>();
        if (type == typeof(double))
        {
            return Math.Clamp(
                10d, Convert.ToDouble(range!.Minimum, CultureInfo.InvariantCulture), Convert.ToDouble(range.Maximum, CultureInfo.InvariantCulture));
        }

        return type == typeof(int)
            ? property.GetCustomAttribute<AllowedValuesAttribute>() is null ? Math.Clamp(3, (int)range!.Minimum, (int)range.Maximum) : 1
            : type.IsGenericType ? new JsonArray(Element(type.GetGenericArguments()[0], property))
            : Element(type, property);
    }

    private static JsonNode Element(Type type, PropertyInfo property) =>
        type == typeof(bool) ? true
        : type == typeof(string) ? property.GetCustomAttribute<RegularExpressionAttribute>() is null ? "a" : "IP20"
        : type.IsEnum ? JsonSerializer.SerializeToNode(Enum.GetValues(type).GetValue(0), type, JsonSerializerOptions.Web)!
        : Record(type);
}
