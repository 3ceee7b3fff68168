using System.Buffers;
using System.Globalization;
using System.Text;
using RackCheck.Model;
using RackCheck.Model.Converters;

namespace RackCheck.Documents.Parts;

/// <summary>
/// Parts lists as CSV (RFC 4180): a header row, CRLF, UTF-8 without a byte order mark, fields with commas, quotes or line breaks in quotes.
/// A spreadsheet takes text that begins with <c>=</c>, <c>+</c>, <c>-</c>, <c>@</c>, tab, carriage return or line feed for a formula or drops it; such text
/// gets an apostrophe in front, each id of a list for itself.
/// </summary>
public static class PartsCsv
{
    private static readonly SearchValues<char> Quotable = SearchValues.Create(",\"\r\n;'");

    private static readonly (string Name, Func<PartLine, string?> Value)[] Columns =
    [
        ("kind", l => Name(l.Kind)),
        ("description", l => Safe(l.Description)),
        ("quantity", l => Number(l.Quantity)),
        ("unit", l => Name(l.Unit)),
        ("items", l => Listed(l.Items)),
        ("pdus", l => Listed(l.Pdus)),
        ("partNumber", l => Safe(l.PartNumber)),
        ("orderQuantity", l => Number(l.OrderQuantity)),
        ("included", l => l.Included ? "true" : "false"),
        ("text", l => Safe(l.Data.Text)),
        ("fixing", l => l.Data.Fixing is { } fixing ? Name(fixing) : null),
        ("thread", l => Safe(l.Data.Thread)),
        ("heightU", l => Number(l.Data.HeightU)),
        ("lengthM", l => Number(l.Data.LengthM)),
        ("requiredLengthM", l => Number(l.Data.RequiredLengthM)),
        ("crossSectionMm2", l => Number(l.Data.CrossSectionMm2)),
        ("plug", l => l.Data.Plug is { } plug ? Name(plug) : null),
        ("connector", l => l.Data.Connector is { } connector ? Name(connector) : null),
        ("ratedKg", l => Number(l.Data.RatedKg)),
        ("minSpacingMm", l => Number(l.Data.MinSpacingMm)),
        ("maxSpacingMm", l => Number(l.Data.MaxSpacingMm)),
        ("depthMm", l => Number(l.Data.DepthMm)),
        ("freeFlowM3h", l => Number(l.Data.FreeFlowM3h)),
        ("areaCm2", l => Number(l.Data.AreaCm2)),
        ("batteryType", l => l.Data.BatteryType is { } type ? Name(type) : null),
        ("cells", l => Number(l.Data.Cells)),
        ("capacityAh", l => Number(l.Data.CapacityAh)),
        ("rule", l => Safe(l.Rule)),
        ("calculation", l => Safe(l.Calculation)),
        ("why", l => Safe(l.Why)),
    ];

    /// <summary>Names of the columns.</summary>
    public static IEnumerable<string> Header => Columns.Select(c => c.Name);

    /// <summary>A list as CSV. Notes are not part of it.</summary>
    /// <param name="list">The list.</param>
    /// <returns>UTF-8.</returns>
    public static byte[] Of(PartsList list)
    {
        var text = new StringBuilder();
        text.AppendJoin(',', Header).Append("\r\n");
        foreach (var line in list.Lines)
        {
            text.AppendJoin(',', Columns.Select(c => Quoted(c.Value(line) ?? ""))).Append("\r\n");
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static string? Safe(string? text) =>
        text is { Length: > 0 } && text[0] is '=' or '+' or '-' or '@' or '\t' or '\r' or '\n' ? "'" + text : text;

    private static string? Listed(IReadOnlyList<string>? names) => names is null ? null : string.Join("; ", names.Select(Safe));

    private static string Quoted(string field) =>
        field.AsSpan().IndexOfAny(Quotable) >= 0 || field.Length != field.AsSpan().Trim().Length
            ? $"\"{field.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
            : field;

    private static string? Number(double? value) => value?.ToString("0.###", CultureInfo.InvariantCulture);

    private static string Name<TEnum>(TEnum value)
        where TEnum : struct, Enum => NamedEnumConverter<TEnum>.Name(value);
}
