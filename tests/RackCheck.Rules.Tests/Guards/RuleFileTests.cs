using System.Text.Json;
using RackCheck.Testing;
using RackCheck.Model.Json;

namespace RackCheck.Rules.Tests.Guards;

/// <summary>Whoever reads an id in a report finds the rule, its tests and its example racks by it.</summary>
public sealed class RuleFileTests
{
    // Namespaces Load and Acceptance would hide a word of the tests and a record of the contract.
    private static readonly Dictionary<string, string> Plural = new() { ["load"] = "Loads", ["acceptance"] = "Acceptances" };

    public static TheoryData<string> Ids => [.. RuleSet.Default.All.Select(r => r.Descriptor.Id)];

    private static IEnumerable<string> ExampleFiles => Directory
        .EnumerateFiles(Repository.PathOf("src", "RackCheck.Rules"), "*.json", SearchOption.AllDirectories)
        .Select(f => Path.GetRelativePath(Repository.PathOf("src", "RackCheck.Rules"), f).Replace('\\', '/'))
        .Where(f => f.Contains('/') && !f.StartsWith("obj/", StringComparison.Ordinal) && !f.StartsWith("bin/", StringComparison.Ordinal));

    [Theory]
    [InlineData("cooling.airflow-conflict", "AirflowConflict")]
    [InlineData("cooling.ip-conflict", "IpConflict")]
    [InlineData("power.redundancy", "Redundancy")]
    public void A_class_name_is_the_slug_in_words(string id, string name) => Assert.Equal(name, RuleSet.Default.Find(id)!.ClassName);

    [Theory]
    [MemberData(nameof(Ids))]
    public void Class_namespace_and_files_carry_the_id(string id)
    {
        var rule = RuleSet.Default.All.Single(r => r.Descriptor.Id == id);
        var (name, folder) = (rule.Descriptor.ClassName, Folder(id));
        Assert.Equal($"RackCheck.Rules.{folder}.{name}", rule.GetType().FullName);
        Assert.Contains($"class {name} : ", Repository.Read("src", "RackCheck.Rules", folder, $"{name}.cs"), StringComparison.Ordinal);
        Assert.Contains($"class {name}Tests : ", Repository.Read("tests", "RackCheck.Rules.Tests", folder, $"{name}Tests.cs"), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_rule_has_two_example_racks() => Assert.Equal(
        RuleSet.Default.All.SelectMany(r => new[] { Example(r.Descriptor, "fails"), Example(r.Descriptor, "passes") }).Order(StringComparer.Ordinal),
        ExampleFiles.Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_racks_of_the_descriptor_are_the_files(string id)
    {
        var facts = RuleSet.Default.Find(id)!;
        Assert.Equal(Repository.Read("src", "RackCheck.Rules", Example(facts, "fails")), facts.FailingRack);
        Assert.Equal(Repository.Read("src", "RackCheck.Rules", Example(facts, "passes")), facts.PassingRack);
        Assert.All([facts.FailingRack, facts.PassingRack], text =>
        {
            Assert.NotNull(JsonSerializer.Deserialize(text, ContractJson.Default.RackDescription));
            Assert.Matches("\\A\\{\n(  .*\n)+\\}\n\\z", text);
        });
    }

    private static string Folder(string id)
    {
        var theme = id.Split('.')[0];
        return Plural.GetValueOrDefault(theme) ?? char.ToUpperInvariant(theme[0]) + theme[1..];
    }

    private static string Example(RuleDescriptor rule, string outcome) => $"{Folder(rule.Id)}/{rule.ClassName}.{outcome}.json";
}
