using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using RackCheck.Model;
using RackCheck.Rules;

namespace RackCheck.Testing;

/// <summary>What every finding owes its reader, whatever its rule.</summary>
public static partial class FindingShape
{
    // Units that this service writes otherwise, and words that a buyer does not know.
    private static readonly HashSet<string> Jargon = new(StringComparer.Ordinal)
    {
        "millimetres", "millimeters", "kilograms", "amps", "amperes", "watts", "volts", "percent", "°C", "degC", "m³/h", "mm²", "Ohm", "kW", "hrs",
    };

    // As the contract ends its names, longer ones first.
    private static readonly (string Suffix, string Unit)[] Units =
    [
        ("KnM2", "kN/m2"), ("M3h", "m3/h"), ("Mm2", "mm2"), ("Percent", "%"), ("Mohm", "mohm"), ("Deg", "degrees"), ("Min", "minutes"), ("Mm", "mm"),
        ("Nm", "N m"), ("Kg", "kg"), ("Kn", "kN"),
        ("M2", "m2"), ("Ma", "mA"), ("Pa", "Pa"), ("A", "A"), ("W", "W"), ("V", "V"), ("C", "C"), ("K", "K"), ("N", "N"), ("M", "m"), ("seconds", "s"),
    ];

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
        CheckUnits(finding);
        CheckNumbers(finding);
        Assert.All(finding.Remedies, r => Assert.True(r.Title.Length > 0 && r.Patch.Count > 0));
        Assert.Equal(finding.Remedies.Count == 0, finding.NoRemedy is not null);
    }

    // The values of the data, taken out of the message, leave words only: whatever it shows can be worded anew.
    private static void CheckMessage(Finding finding)
    {
        var message = finding.Message;
        Assert.EndsWith(".", message, StringComparison.Ordinal);
        Assert.DoesNotContain("  ", message, StringComparison.Ordinal);
        Assert.DoesNotContain("..", message, StringComparison.Ordinal);

        var words = message;
        foreach (var value in finding.MessageData.Values.SelectMany(Readings).Distinct().OrderByDescending(v => v.Length))
        {
            words = words.Replace(value, "", StringComparison.Ordinal);
        }

        // Ids can be as long as they like; the words are what the house answers for.
        Assert.True(words.Length <= 200, $"{finding.Rule} says {words.Length} characters besides its values: {message}");
        Assert.DoesNotContain(words.Split(' '), w => Jargon.Contains(w));

        // Some turns of phrase and units hold a figure that is no value.
        words = LongList().Replace(words, "");
        string[] figures = ["19-inch", "U1 to", "mm2", "m3/h", "m2"];
        Assert.DoesNotMatch(ValueLeft(), figures.Aggregate(words, (text, figure) => text.Replace(figure, "", StringComparison.Ordinal)));

        // Two decimals are enough for a reader, but where a value and its limit would read alike.
        double[] numbers = [.. finding.MessageData.Values.Select(v => v.Number).OfType<double>()];
        var isClose = numbers.Any(a => numbers.Any(b => a != b && Math.Abs(a - b) < 0.1));
        Assert.True(
            isClose || finding.MessageData.Values.Any(v => v.Text is { } text && Thousandth().IsMatch(text)) || !Thousandth().IsMatch(message), message);
    }

    // The unit at the end of a value's name is the one that the sentence writes after it.
    private static void CheckUnits(Finding finding)
    {
        foreach (var (name, value) in finding.MessageData)
        {
            if (value.Number is null || Units.FirstOrDefault(u => name.EndsWith(u.Suffix, StringComparison.Ordinal)).Unit is not { } unit)
            {
                continue;
            }

            string[] shown = [.. Readings(value).Where(r => finding.Message.Contains(r, StringComparison.Ordinal))];
            Assert.True(
                shown.Length == 0 || shown.Any(r => finding.Message.Contains($"{r} {unit}", StringComparison.Ordinal)),
                $"{finding.Rule} does not write {unit} after {name}: {finding.Message}");
        }
    }

    // A number as a sentence may round it.
    private static IEnumerable<string> Readings(Scalar value) => value.Number is { } number
        ? Enumerable.Range(1, 3).Select(d => Math.Round(number, d, MidpointRounding.AwayFromZero).ToString("0.###", CultureInfo.InvariantCulture))
        : value.List is { } list ? list.SelectMany(Readings)
        : [value.ToString(), value.ToString().Replace('-', ' ')];

    private static void CheckNumbers(Finding finding)
    {
        Assert.Equal(finding.Actual?.Unit, finding.Limit?.Unit);
        Assert.All([finding.Actual, finding.Limit], q => Assert.True(q is null || double.IsFinite(q.Value)));
        Assert.True(finding.UtilisationPercent is null || double.IsFinite(finding.UtilisationPercent.Value));
        if (finding.Actual is { } actual && finding.Limit is { } limit)
        {
            Assert.NotEqual(actual.Value, limit.Value);
            Assert.True(
                finding.MessageData.Values.Any(v => v.Number == actual.Value)
                    || finding.Calculation?.Contains(actual.ToText(), StringComparison.Ordinal) == true,
                $"{finding.Rule} does not show its {actual.ToText()} {actual.Unit}");
        }
    }

    private static string ToText(this Quantity quantity) => quantity.Value.ToString("0.######", CultureInfo.InvariantCulture);

    [GeneratedRegex("[0-9]\\.[0-9]{3}")]
    private static partial Regex Thousandth();

    [GeneratedRegex("and [0-9]+ more")]
    private static partial Regex LongList();

    [GeneratedRegex("[0-9{}]")]
    private static partial Regex ValueLeft();
}
