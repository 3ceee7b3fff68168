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
        ["/cabinet/uprights/pitchMm"] = "default 25 mm",
        ["/cooling/airConditioner/ratedAmbientC"] = "default 35 C, the rating condition of the standard",
        ["/cooling/filter/areaCm2"] = "default the opening that the mat covers",
        ["/cooling/filter/atM3h"] = "default by the area of the mat",
        ["/cooling/filter/lossPa"] = "default of a mat before it is changed",
        ["/cooling/fanTrays/*/inputW"] = "a few watts",
        ["/cooling/roofFans/*/inputW"] = "a few watts",
        ["/items/*/power/typicalW"] = "default the rated power, the adverse end",
        ["/items/*/power/voltageV"] = "default 100 to 240 V",
        ["/supplies/*/cable/ambientC"] = "default the room",
        ["/supplies/*/phases"] = "default by the lines of the outlet groups",
    };

    // Members that a case gives a value out of the usual range, without a finding about it, with the reason. The list may only get shorter.
    private static readonly Dictionary<string, string> BeyondBounds = new(StringComparer.Ordinal)
    {
        ["/cabinet/frontDoor/depthMm"] = "a door without depth, so that the depth of the cabinet is a round number",
        ["/cabinet/frontDoor/perforatedAreaM2"] = "a door with half its face perforated, at the limit of cooling.door-restriction",
        ["/cabinet/heightMm"] = "over 1.4 m of air above the mounting space, at the limit of cooling.sealed-rise",
        ["/cabinet/massKg"] = "42U of 30 kg, so that the equipment alone decides",
        ["/cabinet/ratedLoadKg"] = "a full-height cabinet rated for 60 kg, at the limit of the rating",
        ["/cabinet/rearDoor/depthMm"] = "a rear door of 60 mm, at the limit of the depth behind the uprights",
        ["/cabinet/rollingLoadKg"] = "rated for 400 kg and rolled with 60 kg, at the limit of the rating",
        ["/items/*/airflow/flowM3h"] = "air that warms up by 3 K, at the limit of cooling.item-rise",
        ["/items/*/body/heightMm"] = "a body that leaves its runners nothing, at the limit of layout.body-too-high",
        ["/items/*/frontProjectionMm"] = "350 mm in front of the panel, at the limit of depth.front-clearance",
        ["/items/*/massKg"] = "25 kg for each U, at the limit of its support",
        ["/items/*/power/inrushA"] = "80 A of 100 W, at the limit of power.inrush",
        ["/items/*/power/leakageMa"] = "4.5 mA of 100 W, at the limits of earthing.leakage",
        ["/items/*/support/extensionMm"] = "slides half as long again as the body, at the limit of service.aisle",
        ["/site/aisleFrontMm"] = "an aisle of 400 mm, at the limit of service.aisle",
        ["/site/altitudeM"] = "sites above 1800 m, about thin air",
        ["/site/ambientMaxC"] = "rooms hotter than 35 C, which is assumed for want of a value",
        ["/site/delivery/corridors"] = "corridors through which the rack just passes",
        ["/site/delivery/lift/ratedKg"] = "a lift that just carries the rack",
        ["/site/delivery/lift/widthMm"] = "a lift into which the rack just fits",
        ["/site/delivery/openings"] = "a door through which the rack just passes",
        ["/supplies/*/faultCurrentA"] = "weaker than a public supply may be, at the limit of power.fault-disconnection",
    };

    public static TheoryData<string> Members => [.. FactPlaces.Kinds.Where(k => k.Value == MemberKind.Fact).Select(k => k.Key).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Members))]
    public void Fact_of_the_contract_is_in_the_table_or_has_a_reason(string member) =>
        Assert.True(FactTable.All.Any(f => f.Key == member) != NotInTable.ContainsKey(member), member);

    // The first index is that of the owner; what is no whole number without sign is a name.
    [Theory]
    [InlineData("/items/12/power/ratedW", "/items/*/power/ratedW", 12)]
    [InlineData("/pdus/3/groups/7/breakerA", "/pdus/*/groups/*/breakerA", 3)]
    [InlineData("/site/region", "/site/region", 0)]
    [InlineData("/items/-1/massKg", "/items/-1/massKg", 0)]
    [InlineData("/items/99999999999/massKg", "/items/99999999999/massKg", 0)]
    [InlineData("/items//massKg", "/items//massKg", 0)]
    [InlineData("", "", 0)]
    public void Key_of_a_pointer_has_a_star_for_each_index(string pointer, string key, int owner) => Assert.Equal((key, owner), FactTable.KeyOf(pointer));

    [Fact]
    public void Every_optional_member_has_a_kind() =>
        Assert.Equal(FactPlaces.Optional.Order(StringComparer.Ordinal), FactPlaces.Kinds.Keys.Order(StringComparer.Ordinal));

    [Fact]
    public void Ids_and_keys_are_unique()
    {
        Assert.Equal(FactTable.All.Length, FactTable.All.Select(f => f.Key).Distinct().Count());
        var asked = FactTable.All.Where(f => f.AskedWith is null).ToArray();
        Assert.Equal(asked.Length, asked.Select(f => f.Id).Distinct().Count());
        Assert.All(FactTable.All.Where(f => f.AskedWith is not null), f => Assert.Equal(FactTable.AskedBy(f.Key.Replace('*', '0')).Ask, f.Ask));
        Assert.InRange(FactTable.Bounded.Length, 1, 128);
    }

    [Fact]
    public void Questions_end_with_a_question_mark_and_name_what_they_ask_of()
    {
        Assert.All(FactTable.All, f => Assert.EndsWith("?", f.One.Template, StringComparison.Ordinal));
        Assert.All(FactTable.All, f => Assert.DoesNotContain("{each}", f.Many.Template, StringComparison.Ordinal));
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
        Assert.Equal(BeyondBounds.Keys.Order(StringComparer.Ordinal), members.Order(StringComparer.Ordinal));
        Assert.True(tried > 150, $"{tried}");
    }

    private static MissingFacts FactsOf(ResolvedRack rack) => new(rack, new RackSurvey(rack));

    [Fact]
    public void Completed_description_misses_nothing_that_has_a_range()
    {
        var rack = ResolvedRack.Plain(TestRacks.EmptyRack().With(TestRacks.Unit("wave-pc", 4).At(1)));
        foreach (var end in Enum.GetValues<End>())
        {
            var whole = FactsOf(rack).Complete(end);
            Assert.DoesNotContain(
                Enumerable.Range(0, FactTable.Bounded.Length),
                i => FactsOf(rack).Set.Has(i) && FactsOf(ResolvedRack.Plain(whole)).Set.Has(i));
        }
    }

    [Fact]
    public void Adverse_and_favourable_ends_are_the_ends_of_the_range()
    {
        var facts = FactsOf(ResolvedRack.Plain(TestRacks.EmptyRack().With(TestRacks.Unit("wave-pc", 4).At(1))));
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
