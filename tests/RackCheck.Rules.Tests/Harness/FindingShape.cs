using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using RackCheck.Model;

namespace RackCheck.Rules.Tests.Harness;

/// <summary>What every finding owes its reader, whatever its rule.</summary>
public static partial class FindingShape
{
    public static void Check(Finding finding, RuleDescriptor facts, JsonNode request)
    {
        Assert.True(finding.Severity == facts.Severity || finding.Severity == facts.MilderSeverity);
        Assert.Equal(facts.Safety, finding.Safety);
        Assert.Equal(facts.SourceKeys, finding.Sources);
        Assert.Matches("^[0-9a-f]{16}$", finding.Fingerprint);
        Assert.NotEqual("", finding.Subject);

        Assert.NotEmpty(finding.Pointers);
        Assert.All(finding.Pointers, p => Assert.True(JsonPlaces.IsPlace(request, p), $"{finding.Rule} points to {p}"));
        Assert.Equal(finding.Pointers.Count, finding.Pointers.Distinct().Count());

        CheckMessage(finding);
        CheckNumbers(finding);
        Assert.All(finding.Remedies, r => Assert.True(r.Title.Length > 0 && r.Patch.Count > 0));
        Assert.Equal(finding.Remedies.Count == 0, finding.NoRemedy is not null);
    }

    // The values of the data, taken out of the message, leave words only: whatever it shows can be worded anew.
    private static void CheckMessage(Finding finding)
    {
        Assert.EndsWith(".", finding.Message, StringComparison.Ordinal);
        var words = finding.Message;
        foreach (var value in finding.MessageData.Values.Select(v => v.ToString()).OrderByDescending(v => v.Length))
        {
            words = words.Replace(value, "", StringComparison.Ordinal);
        }

        // Two turns of phrase and some units hold a figure that is no value.
        string[] figures = ["19-inch", "units 1 to", "mm2", "m3/h", "m2"];
        Assert.DoesNotMatch(ValueLeft(), figures.Aggregate(words, (text, figure) => text.Replace(figure, "", StringComparison.Ordinal)));
    }

    private static void CheckNumbers(Finding finding)
    {
        Assert.Equal(finding.Actual?.Unit, finding.Limit?.Unit);
        Assert.All([finding.Actual, finding.Limit], q => Assert.True(q is null || double.IsFinite(q.Value)));
        Assert.True(finding.UtilisationPercent is null || double.IsFinite(finding.UtilisationPercent.Value));
        if (finding.Actual is { } actual && finding.Limit is { } limit)
        {
            Assert.NotEqual(actual.Value, limit.Value);
            Assert.True(
                finding.MessageData.Values.Any(v => v.Number == actual.Value) || finding.Calculation?.Contains(actual.ToText(), StringComparison.Ordinal) == true,
                $"{finding.Rule} does not show its {actual.ToText()} {actual.Unit}");
        }
    }

    private static string ToText(this Quantity quantity) => quantity.Value.ToString("0.######", CultureInfo.InvariantCulture);

    [GeneratedRegex("[0-9{}]")]
    private static partial Regex ValueLeft();
}
