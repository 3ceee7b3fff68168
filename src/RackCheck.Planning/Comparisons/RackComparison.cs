using System.Text.Json;
using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Model.Json;

namespace RackCheck.Planning.Comparisons;

/// <summary>A rack to compare, with its report.</summary>
/// <param name="Report">The report.</param>
/// <param name="Rack">The rack; null if only the report is given.</param>
/// <param name="Lines">The lines of its basket; null without a basket.</param>
public sealed record ComparedRack(CheckReport Report, RackDescription? Rack, IReadOnlyList<BasketLine>? Lines);

/// <summary>Compares two racks with their reports. It knows no rules: findings are the same if their fingerprints are.</summary>
public static class RackComparison
{
    /// <summary>What changed from one rack to another.</summary>
    /// <param name="before">The first rack.</param>
    /// <param name="after">The second rack.</param>
    public static ComparisonAnswer Of(ComparedRack before, ComparedRack after)
    {
        var parts = (Before: PartsOf(before), After: PartsOf(after));
        var hasRacks = before.Rack is not null && after.Rack is not null;
        return new ComparisonAnswer
        {
            Verdicts = new VerdictPair { Before = before.Report.Verdicts, After = after.Report.Verdicts },
            Content = hasRacks ? ContentOf(before.Rack!, after.Rack!) : null,
            Positions = hasRacks ? [.. PositionsOf(before.Rack!, after.Rack!)] : null,
            PartsToAdd = parts is ({ } first, { } second) ? More(second, first) : null,
            PartsToReturn = parts is ({ } one, { } other) ? More(one, other) : null,
            Figures = [.. FiguresOf(before.Report, after.Report)],
            NewFindings = Only(after.Report, before.Report),
            GoneFindings = Only(before.Report, after.Report),
            SharedFindings = [.. Shared(before.Report, after.Report)],
            Before = before.Rack,
            After = after.Rack,
        };
    }

    // Several findings of one rack can have one fingerprint: they are paired in the order of the report.
    private static IEnumerable<(Finding Finding, (string Fingerprint, int Ordinal) Key)> Keyed(CheckReport report) =>
        report.Findings.GroupBy(f => f.Fingerprint).SelectMany(g => g.Select((f, i) => (f, (g.Key, i))));

    private static List<Finding> Only(CheckReport report, CheckReport other)
    {
        var known = Keyed(other).Select(k => k.Key).ToHashSet();
        var own = Keyed(report).Where(k => !known.Contains(k.Key)).Select(k => k.Finding).ToHashSet(ReferenceEqualityComparer.Instance);
        return [.. report.Findings.Where(own.Contains)];
    }

    private static IEnumerable<SharedFinding> Shared(CheckReport before, CheckReport after)
    {
        var first = Keyed(before).ToDictionary(k => k.Key, k => k.Finding);
        foreach (var (finding, key) in Keyed(after))
        {
            if (first.TryGetValue(key, out var earlier))
            {
                yield return new SharedFinding
                {
                    Change = ChangeOf(earlier, finding),
                    SeverityBefore = earlier.Severity,
                    UtilisationBeforePercent = earlier.UtilisationPercent,
                    Finding = finding,
                };
            }
        }
    }

    private static FindingChange ChangeOf(Finding before, Finding after) =>
        before.Severity != after.Severity ? (IsGraver(after.Severity, before.Severity) ? FindingChange.Worse : FindingChange.Milder)
        : before.UtilisationPercent is not { } earlier || after.UtilisationPercent is not { } now ? FindingChange.Same
        : Compare(now, earlier);

    private static FindingChange Compare(double now, double earlier) =>
        Comparison.IsOver(now, earlier) ? FindingChange.Worse : Comparison.IsOver(earlier, now) ? FindingChange.Milder : FindingChange.Same;

    private static bool IsGraver(Severity one, Severity other) => Rank(one) > Rank(other);

    private static int Rank(Severity severity) => severity switch { Severity.Error => 2, Severity.Warning => 1, _ => 0 };

    private static ContentChanges ContentOf(RackDescription before, RackDescription after)
    {
        var first = JsonSerializer.SerializeToElement(before, ContractJson.Default.RackDescription);
        var second = JsonSerializer.SerializeToElement(after, ContractJson.Default.RackDescription);
        var (had, has) = (ById(first), ById(second));
        return new ContentChanges
        {
            Added = [.. has.Keys.Except(had.Keys, StringComparer.Ordinal)],
            Removed = [.. had.Keys.Except(has.Keys, StringComparer.Ordinal)],
            Changed =
            [
                .. has.Where(h => had.ContainsKey(h.Key))
                    .Select(h => new ChangedContent { Id = h.Key, Members = [.. Differing(had[h.Key], h.Value).Where(m => m != "position")] })
                    .Where(c => c.Members.Count > 0),
            ],
            Members = [.. Differing(first, second).Where(m => m is not ("items" or "pdus" or "supplies" or "reference"))],
        };
    }

    private static SortedDictionary<string, JsonElement> ById(JsonElement rack)
    {
        var all = new SortedDictionary<string, JsonElement>(StringComparer.Ordinal);
        foreach (var list in (ReadOnlySpan<string>)["items", "pdus", "supplies"])
        {
            foreach (var element in rack.TryGetProperty(list, out var elements) ? elements.EnumerateArray() : default)
            {
                // An item and a PDU may share an id.
                var id = element.GetProperty("id").GetString()!;
                all.TryAdd(list == "items" || !all.ContainsKey(id) ? id : $"{list}/{id}", element);
            }
        }

        return all;
    }

    private static IEnumerable<string> Differing(JsonElement one, JsonElement other) =>
        one.EnumerateObject().Concat(other.EnumerateObject()).Select(p => p.Name).Distinct().Order(StringComparer.Ordinal)
            .Where(name => !(one.TryGetProperty(name, out var first) && other.TryGetProperty(name, out var second) && JsonElement.DeepEquals(first, second)));

    private static IEnumerable<PositionChange> PositionsOf(RackDescription before, RackDescription after)
    {
        var (first, second) = (Places(before), Places(after));
        foreach (var id in first.Keys.Union(second.Keys).Order(StringComparer.Ordinal))
        {
            var (was, now) = (first.GetValueOrDefault(id), second.GetValueOrDefault(id));
            if (was?.U != now?.U || (was?.Face ?? Face.Front) != (now?.Face ?? Face.Front))
            {
                yield return new PositionChange { Id = id, Before = was, After = now };
            }
        }
    }

    private static Dictionary<string, Position?> Places(RackDescription rack)
    {
        var places = new Dictionary<string, Position?>(StringComparer.Ordinal);
        foreach (var (id, position) in rack.Items.Select(i => (i.Id, i.Position)).Concat((rack.Pdus ?? []).Select(u => (u.Id, u.Position))))
        {
            places.TryAdd(id, position);
        }

        return places;
    }

    private static Dictionary<string, int>? PartsOf(ComparedRack side)
    {
        var parts = side.Lines is { } lines ? lines.Where(l => l.PartNumber is not null).Select(l => (l.PartNumber!, l.Quantity))
            : side.Rack is { } rack ? PartNumbers(rack).Select(p => (p, 1))
            : null;
        return parts?.GroupBy(p => p.Item1, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Sum(p => p.Item2), StringComparer.Ordinal);
    }

    private static IEnumerable<string> PartNumbers(RackDescription rack) =>
        rack.Items.Select(i => i.PartNumber)
            .Concat((rack.Pdus ?? []).Select(u => u.PartNumber))
            .Concat([rack.Cabinet?.PartNumber, rack.Cabinet?.FrontDoor?.PartNumber, rack.Cabinet?.RearDoor?.PartNumber, rack.Cabinet?.EarthBar?.PartNumber])
            .OfType<string>();

    private static List<PartCount> More(Dictionary<string, int> one, Dictionary<string, int> other) =>
    [
        .. one.Select(p => new PartCount { PartNumber = p.Key, Quantity = p.Value - other.GetValueOrDefault(p.Key) })
            .Where(p => p.Quantity > 0)
            .OrderBy(p => p.PartNumber, StringComparer.Ordinal),
    ];

    private static IEnumerable<FigurePair> FiguresOf(CheckReport before, CheckReport after)
    {
        var (first, second) = (Values(before), Values(after));
        foreach (var figure in first.Keys.Union(second.Keys).Order(StringComparer.Ordinal))
        {
            double? was = first.TryGetValue(figure, out var earlier) ? earlier : null;
            double? now = second.TryGetValue(figure, out var later) ? later : null;
            yield return new FigurePair
            {
                Figure = figure,
                Before = was,
                After = now,
                Difference = now - was is { } difference ? Quantities.Round(difference) : null,
            };
        }
    }

    private static Dictionary<string, double> Values(CheckReport report)
    {
        var values = new Dictionary<string, double>(StringComparer.Ordinal);
        Add("", JsonSerializer.SerializeToElement(report, ContractJson.Default.CheckReport).GetProperty("figures"));
        return values;

        void Add(string path, JsonElement element)
        {
            switch (element.ValueKind)
            {
                case JsonValueKind.Number:
                    values[path] = element.GetDouble();
                    break;
                case JsonValueKind.Object:
                    foreach (var member in element.EnumerateObject())
                    {
                        Add($"{path}/{member.Name}", member.Value);
                    }

                    break;
                case JsonValueKind.Array:
                    foreach (var entry in element.EnumerateArray().Where(e => e.ValueKind == JsonValueKind.Object && e.TryGetProperty("id", out _)))
                    {
                        Add($"{path}/{entry.GetProperty("id").GetString()}", entry);
                    }

                    break;
                default:
                    break;
            }
        }
    }
}
