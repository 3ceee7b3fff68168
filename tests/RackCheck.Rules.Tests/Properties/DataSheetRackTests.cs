using System.Text.Json;
using System.Text.Json.Nodes;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Properties;

/// <summary>Twelve kinds of sound racks, described only by what data sheets and the order give.</summary>
public sealed class DataSheetRackTests
{
    private const int MostQuestions = 5;

    // What a data sheet of a cabinet, an item, a PDU or an air conditioner states, and what the order says of the supplies. A star stands for an index.
    private static readonly HashSet<string> Sheet =
    [
        "/reference", "/cabinet/heightU", "/cabinet/widthMm", "/cabinet/depthMm", "/cabinet/heightMm", "/cabinet/massKg", "/cabinet/ratedLoadKg",
        "/cabinet/wallLoadKg", "/cabinet/ipCode", "/cabinet/lockable", "/cabinet/sidePanels", "/cabinet/frontDoor/style", "/cabinet/frontDoor/openAreaPercent",
        "/cabinet/rearDoor/style", "/cabinet/rearDoor/openAreaPercent", "/cabinet/roof/style", "/cabinet/base/style", "/cabinet/base/heightMm",
        "/cabinet/uprights/frontSetbackMm", "/cabinet/uprights/spacingMm", "/cabinet/uprights/hole", "/cabinet/earthBar/terminals", "/cabinet/placement",
        "/items/*/id", "/items/*/category", "/items/*/heightU", "/items/*/position", "/items/*/massKg", "/items/*/body", "/items/*/support/style",
        "/items/*/support/ratedKg", "/items/*/support/minSpacingMm", "/items/*/support/maxSpacingMm", "/items/*/support/extensionMm",
        "/items/*/power/ratedW", "/items/*/power/typicalW", "/items/*/power/voltageV", "/items/*/power/plugs", "/items/*/power/redundant", "/items/*/heatW",
        "/items/*/airflow/direction", "/items/*/maxInletC", "/items/*/console", "/items/*/kvmPorts", "/items/*/remoteAccess", "/items/*/remotePowerCycle",
        "/items/*/ups/ratedW", "/items/*/ups/ratedVa", "/items/*/ups/runMinutes", "/items/*/ups/runLoadW", "/items/*/ups/outlets", "/items/*/ups/feeds",
        "/items/*/earthStud", "/supplies/*/id", "/supplies/*/voltageV", "/supplies/*/phases", "/supplies/*/ratedA", "/supplies/*/socket",
        "/supplies/*/breaker/curve", "/supplies/*/breaker/ratedA", "/pdus/*/id", "/pdus/*/supply", "/pdus/*/ratedA", "/pdus/*/plug", "/pdus/*/mounting",
        "/pdus/*/position", "/pdus/*/groups", "/pdus/*/remoteSwitched", "/pdus/*/lengthMm", "/cooling", "/site/region", "/site/remote", "/site/requiredIp",
        "/site/ambientMaxC", "/site/altitudeM", "/site/upsMinutes",
    ];

    public static TheoryData<string> Names =>
        [.. Directory.GetFiles(Folder, "*.json").Select(f => Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal)];

    private static string Folder => Repository.PathOf("tests", "RackCheck.Rules.Tests", "Properties", "SoundRacks");

    [Fact]
    public void There_are_twelve_kinds() => Assert.Equal(12, Names.Count);

    [Theory]
    [MemberData(nameof(Names))]
    public void Whole_description_is_released_without_questions(string name)
    {
        var report = Judge.Check(Read(Whole(name)));
        Assert.Equal(Verdict.Release, report.Verdict);
        Assert.Empty(report.Questions);
        Assert.Empty(report.VerdictReasons);
        Assert.Empty(report.NotAssessed);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Data_sheet_leaves_five_product_questions_at_most_and_their_answers_release_it(string name)
    {
        var whole = Whole(name);
        var sheet = OfSheet(whole, "")!;
        var report = Judge.Check(Read(sheet));
        var asked = ProductQuestions(report);
        Assert.InRange(asked.Length, 1, MostQuestions);
        Assert.Equal(Verdict.Review, report.Verdicts.Product);
        foreach (var pointer in asked.SelectMany(q => q.Pointers))
        {
            Answer(sheet, whole, pointer);
        }

        var after = Judge.Check(Read(sheet));
        Assert.True(
            after.Verdicts.Product == Verdict.Release,
            $"{string.Join(" ", after.VerdictReasons.Where(r => r.Concern == Concern.Product).Select(r => r.Rule ?? r.Question))}");
        Assert.Empty(ProductQuestions(after));
    }

    private static Question[] ProductQuestions(CheckReport report) => [.. report.Questions.Where(q => q.Decides == Concern.Product)];

    private static JsonNode Whole(string name) => JsonNode.Parse(File.ReadAllText(Path.Combine(Folder, name + ".json")))!;

    private static RackDescription Read(JsonNode rack) => rack.Deserialize(ContractJson.Default.RackDescription)!;

    private static JsonNode? OfSheet(JsonNode? node, string key)
    {
        if (Sheet.Contains(key))
        {
            return node?.DeepClone();
        }

        if (node is JsonArray list)
        {
            return key is "/items" or "/supplies" or "/pdus" ? new JsonArray([.. list.Select(e => OfSheet(e, key + "/*"))]) : null;
        }

        if (node is not JsonObject record)
        {
            return null;
        }

        var kept = new JsonObject();
        foreach (var (name, value) in record)
        {
            if (OfSheet(value, $"{key}/{name}") is { } some)
            {
                kept[name] = some;
            }
        }

        return kept.Count == 0 && key.Length > 0 ? null : kept;
    }

    private static void Answer(JsonNode sheet, JsonNode whole, string pointer)
    {
        var tokens = pointer[1..].Split('/');
        JsonNode? value = whole;
        foreach (var token in tokens)
        {
            value = value is JsonArray list ? list[int.Parse(token, System.Globalization.CultureInfo.InvariantCulture)] : value?[token];
        }

        Assert.True(value is not null, $"{pointer} has no answer");
        var at = sheet;
        foreach (var token in tokens[..^1])
        {
            if (at is JsonObject record && record[token] is null)
            {
                record[token] = new JsonObject();
            }

            at = at is JsonArray list ? list[int.Parse(token, System.Globalization.CultureInfo.InvariantCulture)]! : at[token]!;
        }

        at[tokens[^1]] = value.DeepClone();
    }
}
