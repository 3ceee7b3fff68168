using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Survey.Catalogue;
using RackCheck.Testing;

namespace RackCheck.Survey.Tests.Catalogue;

public sealed class ResolvedRackTests
{
    [Fact]
    public void What_is_absent_is_the_products_and_is_listed()
    {
        var rack = Parts.Rack(
            new Cabinet { PartNumber = "QWL-T-CAB", FrontDoor = new Door { Style = DoorStyle.Perforated } },
            [Parts.Pc("a") with { Power = new ItemPower { RatedW = 301 } }]);
        var item = rack.Description.Items[0];
        Assert.Equal((4, 301d, 0.95, 15d), (item.HeightU, item.Power!.RatedW, item.Power.PowerFactor, item.MassKg));
        Assert.Equal(25, rack.Description.Cabinet!.FrontDoor!.DepthMm);
        Assert.Equal(["/cabinet/partNumber", "/items/0/partNumber"], rack.Filled.Select(f => f.Pointer));
        Assert.Contains("massKg", rack.Filled[1].Basis.Text, StringComparison.Ordinal);
        var report = Judge.Checker.Check(rack);
        Assert.Contains(report.Assumed(), a => a.Pointer == "/items/0/partNumber" && a.Value.Text == "QWL-T-PC");
        Assert.NotNull(report.ResolvedDigest);
        Assert.Equal(
            Judge.Checker.Check(rack.Posted with { Cabinet = rack.Description.Cabinet, Items = rack.Description.Items }).DescriptionDigest,
            report.ResolvedDigest);
    }

    [Fact]
    public void A_rack_without_part_numbers_is_itself()
    {
        var rack = TestRacks.EmptyRack().With(TestRacks.Unit("a", 1));
        Assert.Empty(ResolvedRack.PartNumbers(rack));
        Assert.Same(rack, ResolvedRack.Plain(rack).Description);
        Assert.Null(Judge.Checker.Check(rack).ResolvedDigest);
    }

    [Fact]
    public void A_part_number_is_asked_for_once() =>
        Assert.Equal(["QWL-T-PC"], ResolvedRack.PartNumbers(Parts.Rack(Parts.Pc("a"), Parts.Pc("b", 9)).Posted));

    [Fact]
    public void A_remedy_of_what_came_from_a_product_applies_to_what_was_posted()
    {
        // Too deep for a cabinet of 600: the cabinet of the catalogue goes, since a deeper one is another product.
        var deep = Parts.Rack(new Cabinet { PartNumber = "QWL-T-CAB", DepthMm = 450 }, [Parts.Pc("a")]);
        var report = Judge.Checker.Check(deep);
        var finding = report.Findings.First(f => f.Rule == "depth.cabinet-too-shallow");
        Assert.NotEmpty(finding.Remedies);
        Assert.All(finding.Remedies, r => Assert.Empty(Judge.Faults(deep, report, finding, r)));
    }

    [Fact]
    [Trait("Kind", "property")]
    public void A_rack_told_by_part_numbers_has_the_findings_of_the_one_written_out_and_remedies_that_hold() =>
        Gen.Select(RackGenerator.AllRacks, Gen.Int[0, int.MaxValue]).Sample(
            (rack, seed) =>
            {
                var told = Tell(rack, seed);
                Assert.Equal(Written(rack), Written(Plainly(told.Description)));
                var (report, whole) = (Judge.Checker.Check(told), Judge.Checker.Check(rack));
                Assert.DoesNotContain(report.Findings, f => f.Rule is "catalogue.unknown-part" or "catalogue.contradiction");
                Assert.Equal(Said(whole), Said(report));
                Assert.Equal(whole.Verdict, report.Verdict);
                foreach (var finding in report.Findings)
                {
                    Assert.All(finding.Remedies, r => Assert.Empty(Judge.Faults(told, report, finding, r)));
                }
            },
            iter: Samples.Of(600),
            print: c => Wording.Of(c.Item1));

    // Pointers lead into what was posted: to a record where a product tells its members. They order the findings of a rule.
    private static IEnumerable<(string Rule, string Fingerprint, Severity Severity, string Message)> Said(CheckReport report) =>
        report.Findings.Select(f => (f.Rule, f.Fingerprint, f.Severity, f.Message)).OrderBy(f => f.Rule, StringComparer.Ordinal)
            .ThenBy(f => f.Fingerprint, StringComparer.Ordinal);

    // Every item, unit and the cabinet gets a part number; members are left to it by chance.
    private static ResolvedRack Tell(RackDescription rack, int seed)
    {
        var random = new Random(seed);
        var products = new Dictionary<string, Product>(StringComparer.Ordinal);
        var items = rack.Items.Select((item, i) =>
        {
            var product = new Product
            {
                PartNumber = $"P-{i}", Name = "p", Kind = ProductKind.Equipment,
                Item = Copy<Item, ProductItem>(item, "id", "partNumber", "quantity", "position", "onShelf", "earthLead", "spare"),
            };
            products[product.PartNumber] = product;
            return Strip(item with { PartNumber = product.PartNumber }, random, "id", "partNumber", "quantity", "position", "onShelf", "earthLead", "spare");
        }).ToArray();
        var units = rack.Pdus?.Select((unit, i) =>
        {
            var product = new Product
            {
                PartNumber = $"U-{i}", Name = "u", Kind = ProductKind.Pdu, Pdu = Copy<Pdu, ProductPdu>(unit, "id", "supply", "partNumber", "position"),
            };
            products[product.PartNumber] = product;
            return Strip(unit with { PartNumber = product.PartNumber }, random, "id", "supply", "partNumber", "position");
        }).ToArray();
        products["C"] = new Product { PartNumber = "C", Name = "c", Kind = ProductKind.Cabinet, Cabinet = rack.Cabinet };
        var cabinet = rack.Cabinet! with { PartNumber = "C" };

        // Now and then the cabinet comes with other doors and bar than those that are fitted.
        if (random.Next(2) == 0)
        {
            var other = new Door { Style = DoorStyle.Glazed, DepthMm = 31, OpenAreaPercent = 1, PerforatedAreaM2 = 0.5 };
            cabinet = cabinet with
            {
                FrontDoor = cabinet.FrontDoor is { } front ? front with { PartNumber = "F" } : null,
                RearDoor = cabinet.RearDoor is { } rear ? rear with { PartNumber = "R" } : null,
                EarthBar = cabinet.EarthBar is { } bar ? bar with { PartNumber = "B" } : null,
            };
            products["C"] = products["C"] with
            {
                Cabinet = rack.Cabinet with
                {
                    FrontDoor = cabinet.FrontDoor is null ? null : other, RearDoor = cabinet.RearDoor is null ? null : other,
                    EarthBar = cabinet.EarthBar is null ? null : new EarthBar { Terminals = 77, LengthMm = 400, CrossSectionMm2 = 60 },
                },
            };
            products["F"] = DoorOf("F", Face.Front, rack.Cabinet.FrontDoor ?? other);
            products["R"] = DoorOf("R", Face.Rear, rack.Cabinet.RearDoor ?? other);
            products["B"] = new Product { PartNumber = "B", Name = "b", Kind = ProductKind.EarthBar, EarthBar = rack.Cabinet.EarthBar };
        }

        Product DoorOf(string number, Face face, Door door) => new()
        {
            PartNumber = number, Name = "d", Kind = ProductKind.Door,
            Door = new ProductDoor { Door = door, Face = face, WidthMm = cabinet.WidthMm!.Value, HeightU = cabinet.HeightU!.Value },
        };

        return ResolvedRack.Of(rack with { Cabinet = Strip(cabinet, random, "partNumber"), Items = items, Pdus = units }, products);
    }

    private static RackDescription Plainly(RackDescription rack) => rack with
    {
        Cabinet = rack.Cabinet! with
        {
            PartNumber = null,
            FrontDoor = rack.Cabinet.FrontDoor is { } front ? front with { PartNumber = null } : null,
            RearDoor = rack.Cabinet.RearDoor is { } rear ? rear with { PartNumber = null } : null,
            EarthBar = rack.Cabinet.EarthBar is { } bar ? bar with { PartNumber = null } : null,
        },
        Items = [.. rack.Items.Select(i => i with { PartNumber = null })],
        Pdus = rack.Pdus?.Select(u => u with { PartNumber = null }).ToArray(),
    };

    private static string Written(RackDescription rack) => JsonSerializer.Serialize(rack, ContractJson.Default.RackDescription);

    private static TTo Copy<TFrom, TTo>(TFrom from, params string[] without)
    {
        var node = JsonSerializer.SerializeToNode(from, ContractJson.Default.GetTypeInfo(typeof(TFrom))!)!.AsObject();
        Array.ForEach(without, name => node.Remove(name));
        return (TTo)node.Deserialize(ContractJson.Default.GetTypeInfo(typeof(TTo))!)!;
    }

    private static T Strip<T>(T from, Random random, params string[] keep)
    {
        var node = JsonSerializer.SerializeToNode(from, ContractJson.Default.GetTypeInfo(typeof(T))!)!.AsObject();
        StripMembers(node, random, keep);
        return (T)node.Deserialize(ContractJson.Default.GetTypeInfo(typeof(T))!)!;
    }

    private static void StripMembers(JsonObject node, Random random, params string[] keep)
    {
        foreach (var (name, value) in node.ToArray())
        {
            if (keep.Contains(name) || name is "style" or "partNumber")
            {
                continue;
            }

            // A part with a part number of its own is there, or it would be the one that the cabinet comes with.
            if (random.Next(2) == 0 && (value as JsonObject)?["partNumber"] is null)
            {
                node.Remove(name);
            }
            else if (value is JsonObject members)
            {
                StripMembers(members, random, keep);
            }
        }
    }
}
