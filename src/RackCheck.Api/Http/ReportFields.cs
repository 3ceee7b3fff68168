using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Text.Json;
using Microsoft.Extensions.Primitives;
using RackCheck.Model;
using RackCheck.Model.Json;

namespace RackCheck.Api.Http;

/// <summary>The members of a report that a caller asks for.</summary>
internal sealed class ReportFields
{
    private const string Findings = "findings";
    private static readonly ReportFields Whole = new(null);

    private readonly HashSet<string>? names;

    private ReportFields(HashSet<string>? names) => this.names = names;

    /// <summary>The names of the members.</summary>
    public static ImmutableArray<string> All { get; } = [.. ContractJson.Default.CheckReport.Properties.Select(p => p.Name)];

    /// <summary>Whether remedies are to be looked for, which takes most of a check. Nothing but the findings depends on them.</summary>
    public bool NeedRemedies => names?.Contains(Findings) ?? true;

    /// <summary>Reads the query parameter.</summary>
    /// <param name="value">Names separated by commas; none for the whole report.</param>
    /// <param name="fields">The members.</param>
    /// <returns>Whether each name is that of a member, and the parameter stands once.</returns>
    public static bool TryParse(StringValues value, [NotNullWhen(true)] out ReportFields? fields)
    {
        fields = Whole;
        if (value.Count == 0)
        {
            return true;
        }

        var names = value.Count == 1 ? value[0]!.Split(',') : [];
        fields = names.Length > 0 && Array.TrueForAll(names, n => All.Contains(n)) ? new ReportFields([.. names]) : null;
        return fields is not null;
    }

    /// <summary>Prepares the response.</summary>
    /// <param name="report">The whole report.</param>
    /// <returns>The response; the caller sends it.</returns>
    public AnswerLease Prepare(CheckReport report) => JsonAnswer.Prepare(report, Write, ReportLength.Shorten);

    /// <summary>Writes the members of a report.</summary>
    /// <param name="writer">Where a value is due.</param>
    /// <param name="report">The whole report.</param>
    public void Write(Utf8JsonWriter writer, CheckReport report)
    {
        if (names is null)
        {
            JsonSerializer.Serialize(writer, report, ContractJson.Default.CheckReport);
            return;
        }

        writer.WriteStartObject();
        foreach (var member in ContractJson.Default.CheckReport.Properties)
        {
            if (names.Contains(member.Name) && member.Get!(report) is { } value)
            {
                writer.WritePropertyName(member.Name);
                JsonSerializer.Serialize(writer, value, ContractJson.Default.GetTypeInfo(member.PropertyType)!);
            }
        }

        writer.WriteEndObject();
    }
}
