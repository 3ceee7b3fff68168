using System.Text.Json;
using BenchmarkDotNet.Attributes;
using RackCheck.Api.Reading;
using RackCheck.Model;
using RackCheck.Model.Canonical;
using RackCheck.Model.Json;
using RackCheck.Planning.Baskets;
using RackCheck.Rules;
using RackCheck.Survey;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Benchmarks;

/// <summary>One check of a sound rack of 42 units and 30 items, stage by stage.</summary>
[MemoryDiagnoser]
public class CheckBenchmarks
{
    private readonly RackDescription rack = Racks.Sound30;
    private readonly RackDescription cords30Unwired = Racks.Cords30 with { Pdus = null };
    private readonly RackChecker checker = new(RuleSet.Default, (rule, fault) => throw new InvalidOperationException(rule.Id, fault));
    private readonly DescriptionReader reader = new(new DescriptionValidator(RuleSet.Default));
    private readonly byte[] json = JsonSerializer.SerializeToUtf8Bytes(Racks.Sound30, ContractJson.Default.RackDescription);
    private readonly CheckReport report = new RackChecker(RuleSet.Default, (_, _) => { }).Check(Racks.Sound30);

    private readonly Dictionary<string, Product> parts = new(StringComparer.Ordinal);
    private readonly RackDescription told;
    private readonly Product[] products;
    private readonly BasketRequest basket;
    private readonly BasketPlanner planner;

    /// <summary>Makes the racks and baskets.</summary>
    public CheckBenchmarks()
    {
        told = Racks.Sound30 with { Items = [.. Racks.Sound30.Items.Select(Told)] };
        products = [.. Read("Catalogue/products.json", ContractJson.Default.ProductList).Products];
        basket = Read("basket-incomplete.json", ContractJson.Default.BasketRequest);
        planner = new BasketPlanner(checker);
    }

    /// <summary>Guards that the rack measured is what the figures are quoted for.</summary>
    /// <exception cref="InvalidOperationException">It is not.</exception>
    [GlobalSetup]
    public void Guard()
    {
        if (rack.Items.Count != 30 || report.Verdict != Verdict.Release || report.NotAssessed.Count > 0)
        {
            throw new InvalidOperationException(
                $"{rack.Items.Count} items, {report.Verdict}: {string.Join("; ", report.Findings.Select(f => f.Message))} "
                    + $"{string.Join("; ", report.NotAssessed.Select(f => f.Rule))}");
        }
    }

    /// <summary>Survey, rules, policy, report with its digest: the whole pipeline.</summary>
    [Benchmark(Baseline = true)]
    public CheckReport Pipeline() => checker.Check(rack);

    /// <summary>The survey alone.</summary>
    [Benchmark]
    public RackSurvey Survey() => new(rack);

    /// <summary>The survey of the usual rack of 30 cords; less that of the same without units it is the power tree and the assignment.</summary>
    [Benchmark]
    public RackSurvey Cords30() => new(Racks.Cords30);

    /// <summary>The same without PDUs.</summary>
    [Benchmark]
    public RackSurvey Cords30Unwired() => new(cords30Unwired);

    /// <summary>The survey of 40 cords that only just fit.</summary>
    [Benchmark]
    public RackSurvey Cords40Tight() => new(Racks.Cords40Tight);

    /// <summary>Filling in 30 items that give nothing but id, part number and place.</summary>
    [Benchmark]
    public ResolvedRack PartNumbers() => ResolvedRack.Of(told, parts);

    /// <summary>A basket of eight lines: mounted, checked, and completed.</summary>
    [Benchmark]
    public BasketAnswer Basket() => planner.Plan(basket, products.ToDictionary(p => p.PartNumber, StringComparer.Ordinal), products);

    /// <summary>Both digests alone.</summary>
    [Benchmark]
    public (string Description, string Rack) Digests() => (DescriptionDigest.Of(rack), DescriptionDigest.OfRack(rack));

    /// <summary>Relations between members of a description that is read already.</summary>
    [Benchmark]
    public bool Relations() => reader.HasSoundRelations(rack);

    /// <summary>Bytes to description, with validation.</summary>
    [Benchmark]
    public ReadResult<RackDescription> Read() => reader.Read(json);

    /// <summary>The same bytes by the serializer alone, without validation, for comparison.</summary>
    [Benchmark]
    public RackDescription? ReadBySerializer() => JsonSerializer.Deserialize(json, ContractJson.Default.RackDescription);

    /// <summary>Report to bytes.</summary>
    [Benchmark]
    public byte[] Write() => JsonSerializer.SerializeToUtf8Bytes(report, ContractJson.Default.CheckReport);

    private static T Read<T>(string file, System.Text.Json.Serialization.Metadata.JsonTypeInfo<T> type) =>
        JsonSerializer.Deserialize(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, file)), type)!;

    private Item Told(Item item)
    {
        var node = JsonSerializer.SerializeToNode(item, ContractJson.Default.Item)!.AsObject();
        foreach (var own in (string[])["id", "partNumber", "position", "onShelf", "earthLead", "spare"])
        {
            node.Remove(own);
        }

        var product = new Product
        {
            PartNumber = item.Id, Name = item.Id, Kind = ProductKind.Equipment, Item = node.Deserialize(ContractJson.Default.ProductItem),
        };
        parts[item.Id] = product;
        return new Item
        {
            Id = item.Id, PartNumber = item.Id, Position = item.Position, OnShelf = item.OnShelf, EarthLead = item.EarthLead, Spare = item.Spare,
        };
    }
}
