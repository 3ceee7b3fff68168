using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using CsCheck;
using RackCheck.Model;
using RackCheck.Model.Canonical;
using RackCheck.Model.Json;
using RackCheck.Remedies.Patches;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Properties;

public sealed partial class ItemOrderTests
{
    private static readonly Gen<Shuffled> ShuffledRacks =
        from rack in AnyRack.WithPolicy
        from order in Gen.Shuffle(Enumerable.Range(0, rack.Items.Count).ToArray())
        select new Shuffled(rack, order);

    [Fact]
    [Trait("Kind", "property")]
    public void Order_of_items_changes_nothing_but_pointers() =>
        ShuffledRacks.Sample(x => Assert.Equal(Report(x.Rack), Report(Shuffle(x.Rack, x.Order))), iter: Samples.Of(8_000), print: Print);

    private static string Print(Shuffled x) => $"{string.Join(',', x.Order)} of {Wording.Of(x.Rack)}";

    private static RackDescription Shuffle(RackDescription rack, int[] order) => rack with
    {
        Items = [.. order.Select(i => rack.Items[i])],
        Acceptances = rack.Acceptances?.Select(a => a with { Pointer = ItemIndex().Replace(a.Pointer!, m => NewIndex(order, m)) }).ToArray(),
    };

    private static string NewIndex(int[] order, Match match)
    {
        var index = Array.IndexOf(order, int.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture));
        return index < 0 ? match.Value : FormattableString.Invariant($"/items/{index}");
    }

    // The report with ids for indices, and with whatever is ordered by pointer in the order of its text.
    private static string Report(RackDescription rack)
    {
        var answer = Judge.Checker.Check(rack);
        var report = JsonSerializer.SerializeToNode(answer, ContractJson.Default.CheckReport)!;
        report["descriptionDigest"] = null;
        for (var i = 0; i < answer.Findings.Count; i++)
        {
            for (var j = 0; j < answer.Findings[i].Remedies.Count; j++)
            {
                report["findings"]![i]!["remedies"]![j]!["patch"] = Patched(rack, answer.Findings[i].Remedies[j]);
            }
        }

        // An acceptance by pointer goes by the index, and so does what is said of it.
        foreach (var entry in report["findings"]!.AsArray().Concat(report["verdictReasons"]!.AsArray()))
        {
            entry!["fingerprint"] = (string?)entry["rule"] == "acceptance.unused" ? null : (string?)entry["fingerprint"];
        }

        foreach (var finding in report["findings"]!.AsArray())
        {
            finding!["pointers"] = Renamed(finding["pointers"]!, rack);
        }

        foreach (var lack in report["notAssessed"]!.AsArray())
        {
            lack!["missing"] = Sorted(Renamed(lack["missing"]!, rack));
        }

        foreach (var entry in report["assumptions"]!.AsArray().Concat(report["questions"]!.AsArray()))
        {
            entry!["pointers"] = Sorted(Renamed(entry["pointers"]!, rack));
        }

        report["assumptions"] = Sorted(report["assumptions"]!);
        report["findings"] = Sorted(report["findings"]!);
        return report.ToJsonString();
    }

    // What a patch does, for its text goes by indices: the digest of the rack that it leaves, with items by id.
    private static string Patched(RackDescription rack, Remedy remedy)
    {
        var patched = RackPatch.Apply(rack, remedy);
        return DescriptionDigest.Of(patched with
        {
            Items = [.. patched.Items.OrderBy(i => i.Id, StringComparer.Ordinal)],
            Acceptances = patched.Acceptances?.Select(a => a with { Pointer = ById(a.Pointer!, patched) }).ToArray(),
        });
    }

    private static string ById(string text, RackDescription rack) => ItemIndex().Replace(
        text,
        m => int.TryParse(m.Groups[1].Value, CultureInfo.InvariantCulture, out var i) && i < rack.Items.Count
            ? "/items/" + JsonEncodedText.Encode(rack.Items[i].Id)
            : m.Value);

    private static JsonArray Renamed(JsonNode list, RackDescription rack) =>
        [.. list.AsArray().Select(n => JsonNode.Parse(ById(n!.ToJsonString(), rack)))];

    private static JsonArray Sorted(JsonNode list) =>
        [.. list.AsArray().Select(n => n!.ToJsonString()).Order(StringComparer.Ordinal).Select(n => JsonNode.Parse(n))];

    [GeneratedRegex("/items/([0-9]+)")]
    private static partial Regex ItemIndex();

    private sealed record Shuffled(RackDescription Rack, int[] Order);
}
