using System.Globalization;
using System.Text;
using RackCheck.Model;
using RackCheck.Model.Converters;

namespace RackCheck.Documents.Parts;

/// <summary>
/// Parts lists as CSV: a header row, UTF-8 without a byte order mark, otherwise as <see cref="CsvText"/> says. Text that a spreadsheet would take for a
/// formula is marked, each id of a list for itself.
/// </summary>
public static class PartsCsv
{
    private static readonly (string Name, Func<PartLine, string?> Value)[] Columns =
    [
        ("kind", l => Name(l.Kind)),
        ("description", l => CsvText.Safe(l.Description)),
        ("quantity", l => Number(l.Quantity)),
        ("unit", l => Name(l.Unit)),
        ("items", l => Listed(l.Items)),
        ("pdus", l => Listed(l.Pdus)),
        ("partNumber", l => CsvText.Safe(l.PartNumber)),
        ("orderQuantity", l => Number(l.OrderQuantity)),
        ("included", l => l.Included ? "true" : "false"),
        ("text", l => CsvText.Safe(l.Data.Text)),
        ("fixing", l => l.Data.Fixing is { } fixing ? Name(fixing) : null),
        ("thread", l => CsvText.Safe(l.Data.Thread)),
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
        ("rule", l => CsvText.Safe(l.Rule)),
        ("calculation", l => CsvText.Safe(l.Calculation)),
        ("why", l => CsvText.Safe(l.Why)),
    ];

    /// <summary>Names of the columns.</summary>
    public static IEnumerable<string> Header => Columns.Select(c => c.Name);

    /// <summary>A list as CSV. Notes are not part of it.</summary>
    /// <param name="list">The list.</param>
    /// <returns>UTF-8.</returns>
    public static byte[] Of(PartsList list)
    {
        var text = new StringBuilder();
        CsvText.Add(text, Header);
        foreach (var line in list.Lines)
        {
            CsvText.Add(text, Columns.Select(c => c.Value(line) ?? ""));
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static string? Listed(IReadOnlyList<string>? names) => names is null ? null : string.Join("; ", names.Select(CsvText.Safe));

    private static string? Number(double? value) => value?.ToString("0.###", CultureInfo.InvariantCulture);

    private static string Name<TEnum>(TEnum value)
        where TEnum : struct, Enum => NamedEnumConverter<TEnum>.Name(value);
}
