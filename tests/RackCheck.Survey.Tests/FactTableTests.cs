using System.Text.Json;
using System.Text.Json.Nodes;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Rules;
using RackCheck.Survey.Bounds;
using RackCheck.Survey.Catalogue;
using RackCheck.Testing;

namespace RackCheck.Survey.Tests;

public sealed class FactTableTests
{
    // Facts that are never missing, or whose default is the only plausible value, with the reason.
    private static readonly Dictionary<string, string> NotInTable = new(StringComparer.Ordinal)
    {
        ["/cabinet/earthBar/crossSectionMm2"] = "no rule reads it",
        ["/cabinet/earthBar/lengthMm"] = "no rule reads it",
        ["/cabinet/frontDoor/bonded"] = "asked for with the list of bonded parts",
        ["/cabinet/rearDoor/bonded"] = "asked for with the list of bonded parts",
        ["/cabinet/uprights/pitchMm"] = "default 25 mm",
        ["/cooling/airConditioner/ratedAmbientC"] = "default 35 C, the rating condition of the standard",
        ["/cooling/filter/areaCm2"] = "default the opening that the mat covers",
        ["/cooling/filter/atM3h"] = "default by the area of the mat",
        ["/cooling/filter/lossPa"] = "default of a mat before it is changed",
        ["/cooling/fanTrays/*/curve"] = "default the airflow that an installed fan keeps",
        ["/cooling/fanTrays/*/inputW"] = "a few watts",
        ["/cooling/fanTrays/*/maxPressurePa"] = "default the airflow that an installed fan keeps",
        ["/cooling/roofFans/*/curve"] = "default the airflow that an installed fan keeps",
        ["/cooling/roofFans/*/inputW"] = "a few watts",
        ["/cooling/roofFans/*/maxPressurePa"] = "default the airflow that an installed fan keeps",
        ["/items/*/power/typicalW"] = "default the rated power, the adverse end",
        ["/items/*/power/voltageV"] = "default 100 to 240 V",
        ["/items/*/ups/outlets"] = "asked for with the plug of the PDU that the UPS feeds",
        ["/supplies/*/cable/ambientC"] = "default the room",
        ["/supplies/*/phases"] = "default by the lines of the outlet groups",
    };

    // Cases at a limit choose round or extreme numbers for these, out of the usual range though within what a rule accepts. The list may only get shorter.
    private static readonly string[] BeyondBounds =
    [
        "/cabinet/frontDoor/depthMm", "/cabinet/frontDoor/perforatedAreaM2", "/cabinet/heightMm", "/cabinet/massKg", "/cabinet/ratedLoadKg",
        "/cabinet/rearDoor/depthMm", "/cabinet/rollingLoadKg", "/items/*/airflow/flowM3h",
        "/items/*/body/heightMm", "/items/*/frontProjectionMm", "/items/*/massKg", "/items/*/power/inrushA", "/items/*/power/leakageMa",
        "/items/*/power/ratedW", "/items/*/support/extensionMm", "/items/*/support/ratedKg", "/site/aisleFrontMm", "/site/altitudeM",
        "/site/ambientMaxC", "/site/delivery/corridors", "/site/delivery/lift/ratedKg", "/site/delivery/lift/widthMm", "/site/delivery/openings",
        "/supplies/*/faultCurrentA",
    ];

    public static TheoryData<string> Members => [.. FactPlaces.Kinds.Where(k => k.Value == MemberKind.Fact).Select(k => k.Key).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Members))]
    public void Fact_of_the_contract_is_in_the_table_or_has_a_reason(string member) =>
        Assert.True(FactTable.All.Any(f => f.Key == member) != NotInTable.ContainsKey(member), member);

    [Fact]
    public void Every_optional_member_has_a_kind() =>
        Assert.Equal(FactPlaces.Optional.Order(StringComparer.Ordinal), FactPlaces.Kinds.Keys.Order(StringComparer.Ordinal));

    [Fact]
    public void Ids_and_keys_are_unique()
    {
        Assert.Equal(FactTable.All.Length, FactTable.All.Select(f => f.Key).Distinct().Count());
        Assert.Equal(FactTable.All.Length, FactTable.All.Select(f => f.Id).Distinct().Count());
        Assert.InRange(FactTable.Bounded.Length, 1, 128);
    }

    [Fact]
    public void Questions_end_with_a_question_mark_and_name_what_they_ask_of()
    {
        Assert.All(FactTable.All, f => Assert.EndsWith("?", f.Ask, StringComparison.Ordinal));
        Assert.All(FactTable.All, f => Assert.Equal(f.Key.Contains('*', StringComparison.Ordinal), f.Ask.Contains("{each}", StringComparison.Ordinal)));
    }

    [Fact]
    public void Bounds_contain_every_value_of_the_catalogue()
    {
        foreach (var product in DemoProducts.All)
        {
            var rack = RackOf(product);
            Assert.Empty(FactPlaces.Given(rack).Where(p => !FactPlaces.IsInsideOrUnbounded(rack, p)).Select(p => $"{product.PartNumber} {p}"));
        }
    }

    // A value outside its bounds is the defect that its case is about, so that a rule that reads it has a finding, or one of a few chosen for a limit.
    [Fact]
    public void Bounds_contain_the_values_of_the_cases_but_defects_and_limits()
    {
        var tried = 0;
        var outside = new List<string>();
        foreach (var file in Directory.GetFiles(Repository.PathOf("tests", "acceptance", "cases"), "*.json"))
        {
            var node = JsonNode.Parse(File.ReadAllText(file))!;
            if ((node["post"]?.GetValue<string>() ?? "/v1/checks") != "/v1/checks" || (node["expect"]?["status"]?.GetValue<int>() ?? 200) != 200)
            {
                continue;
            }

            var rack = node["request"].Deserialize(ContractJson.Default.RackDescription)!;
            if (Judge.Resolve(rack).Missing().Count > 0)
            {
                continue;
            }

            string[] found = [.. Judge.Check(rack).Findings.Select(f => f.Rule)];
            foreach (var pointer in FactPlaces.Given(rack).Where(p => !FactPlaces.IsInsideOrUnbounded(rack, p)))
            {
                var key = FactTable.KeyOf(pointer).Key;
                if (!found.Any(r => RuleSet.Default.Find(r)!.Needs.Any(n => key == n || key.StartsWith(n + "/", StringComparison.Ordinal))))
                {
                    outside.Add($"{Path.GetFileName(file)} {pointer}");
                }
            }

            tried++;
        }

        var members = outside.Select(o => FactTable.KeyOf(o[o.IndexOf('/', StringComparison.Ordinal)..]).Key).ToHashSet(StringComparer.Ordinal);
        Assert.Equal([], members.Except(BeyondBounds).Order(StringComparer.Ordinal));
        Assert.True(tried > 150, $"{tried}");
    }

    [Fact]
    public void Completed_description_misses_nothing_that_has_a_range()
    {
        var rack = ResolvedRack.Plain(TestRacks.EmptyRack().With(TestRacks.Unit("wave-pc", 4).At(1)));
        foreach (var end in Enum.GetValues<End>())
        {
            var whole = new MissingFacts(rack).Complete(end);
            Assert.DoesNotContain(
                Enumerable.Range(0, FactTable.Bounded.Length),
                i => new MissingFacts(rack).Set.Has(i) && new MissingFacts(ResolvedRack.Plain(whole)).Set.Has(i));
        }
    }

    [Fact]
    public void Adverse_and_favourable_ends_are_the_ends_of_the_range()
    {
        var facts = new MissingFacts(ResolvedRack.Plain(TestRacks.EmptyRack().With(TestRacks.Unit("wave-pc", 4).At(1))));
        Assert.Equal(80, facts.Complete(End.Adverse).Items[0].MassKg);
        Assert.Equal(1.2, facts.Complete(End.Favourable).Items[0].MassKg!.Value, 1e-9);
        Assert.Equal(40.6, facts.Complete(End.Middle).Items[0].MassKg!.Value, 1e-9);
    }

    private static RackDescription RackOf(Product product)
    {
        var rack = TestRacks.EmptyRack();
        return product switch
        {
            { Cabinet: { } cabinet } => rack with { Cabinet = cabinet },
            { Item: { } item } => JsonSerializer.SerializeToNode(rack, ContractJson.Default.RackDescription)!.AsObject() is var node
                && JsonSerializer.SerializeToNode(item, ContractJson.Default.ProductItem)!.AsObject() is var own
                ? WithItem(node, own)
                : rack,
            { Pdu: { } pdu } => rack with
            {
                Supplies = [new Supply { Id = "A", VoltageV = 230, RatedA = 16 }],
                Pdus =
                [
                    new Pdu
                    {
                        Id = "strip", Supply = "A", RatedA = pdu.RatedA, Groups = pdu.Groups, Mounting = pdu.Mounting, LengthMm = pdu.LengthMm,
                        MaxAmbientC = pdu.MaxAmbientC,
                    },
                ],
            },
            _ => rack,
        };
    }

    private static RackDescription WithItem(JsonObject rack, JsonObject item)
    {
        item["id"] = "part";
        rack["items"] = new JsonArray(item);
        return rack.Deserialize(ContractJson.Default.RackDescription)!;
    }
}
