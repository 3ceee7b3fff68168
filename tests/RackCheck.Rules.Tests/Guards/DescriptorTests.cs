using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Guards;

/// <summary>What holds for every rule, found by reflection, so that a new rule is guarded without being listed.</summary>
public sealed partial class DescriptorTests
{
    private static readonly RuleBase[] Rules = [.. RuleSet.Default.All];

    private static readonly Source[] House =
        [.. typeof(Sources).GetProperties(BindingFlags.Public | BindingFlags.Static).Select(p => (Source)p.GetValue(null)!)];

    // Findings of the failing racks that have no remedy, with the reason.
    private static readonly Dictionary<string, string> NoRemedy = new(StringComparer.Ordinal)
    {
        ["catalogue.inconsistent-values"] = "only whoever wrote the values knows which one is wrong",
        ["cooling.item-rise"] = "the airflow is that of the item's data sheet",
        ["power.altitude"] = "the manufacturer confirms or does not; a sign-off records it",
    };

    public static TheoryData<string> Ids => [.. Rules.Select(r => r.Descriptor.Id)];

    [Fact]
    public void The_set_holds_every_rule_of_the_assembly_once()
    {
        var classes = typeof(RuleBase).Assembly.GetTypes().Where(t => !t.IsAbstract && t.IsSubclassOf(typeof(RuleBase)));
        Assert.Equal(classes.Select(t => t.Name).Order(), Rules.Select(r => r.GetType().Name).Order());
    }

    [Fact]
    public void Ids_and_titles_are_unique()
    {
        Assert.Equal(Rules.Length, Rules.Select(r => r.Descriptor.Id).Distinct(StringComparer.OrdinalIgnoreCase).Count());
        Assert.Equal(Rules.Length, Rules.Select(r => r.Descriptor.Title).Distinct(StringComparer.OrdinalIgnoreCase).Count());
    }

    [Fact]
    public void Rule_is_sealed_class_without_state() =>
        Assert.All(Rules.Select(r => r.GetType()), t =>
        {
            Assert.True(t.IsSealed);
            Assert.Empty(t.GetFields(BindingFlags.Instance | BindingFlags.NonPublic | BindingFlags.Public));
            Assert.StartsWith("RackCheck.Rules.", t.Namespace, StringComparison.Ordinal);
        });

    [Fact]
    public void Every_rule_has_a_test_class_that_mirrors_it() =>
        Assert.All(Rules.Select(r => r.GetType()), rule =>
        {
            var name = rule.FullName!.Replace("RackCheck.Rules.", "RackCheck.Rules.Tests.", StringComparison.Ordinal) + "Tests";
            var tests = typeof(DescriptorTests).Assembly.GetType(name);
            Assert.True(tests is not null, name);
            Assert.Equal(typeof(RuleTests<>).MakeGenericType(rule), tests.BaseType);
            Assert.True(tests.GetMethods().Count(m => m.GetCustomAttributes<FactAttribute>().Any()) >= 3, $"{name} has fewer than three tests");
        });

    [Theory]
    [MemberData(nameof(Ids))]
    public void Descriptor_is_complete(string id)
    {
        var rule = Rule(id);
        var facts = rule.Descriptor;
        Assert.Matches(ThemeAndSlug(), facts.Id);
        Assert.All([facts.What, facts.Why], text => Assert.Matches("^[A-Z].*[.]$", text));
        Assert.All(facts.Remedies, text => Assert.Matches("^[A-Z].*[.]$", text));
        Assert.DoesNotMatch("[.]$", facts.Title);
        Assert.NotEqual("", facts.Formula);
        Assert.NotEmpty(facts.Remedies);
        Assert.True(facts.MilderSeverity is null || facts.MilderSeverity > facts.Severity);
    }

    [Fact]
    public void Class_names_are_unique_and_name_the_defect()
    {
        Assert.Equal(Rules.Length, Rules.Select(r => r.GetType().Name).Distinct(StringComparer.OrdinalIgnoreCase).Count());
        Assert.All(Rules, r => Assert.DoesNotMatch("(Rule|Check|Finding|Validator)$", r.GetType().Name));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Sources_are_those_of_the_house(string id)
    {
        var facts = Rule(id).Descriptor;
        Assert.NotEmpty(facts.Sources);
        Assert.All(facts.Sources, s => Assert.Contains(s, House));
        Assert.Equal(facts.Sources.Select(s => s.Key).Distinct(), facts.SourceKeys);
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Limits_are_named_with_their_unit_and_their_default_is_in_range(string id) =>
        Assert.All(Rule(id).Descriptor.Limits, l =>
        {
            Assert.Matches("^[a-z][A-Za-z0-9]+$", l.Name);
            Assert.InRange(l.Default, l.Minimum, l.Maximum);
            Assert.True(l.Minimum < l.Maximum);
            Assert.True(l.Meaning.Length > 0 && l.Unit.Length > 0);
            Assert.Equal(1, Rule(id).Descriptor.Limits.Count(other => other.Name == l.Name));
        });

    [Theory]
    [MemberData(nameof(Ids))]
    public void What_a_rule_needs_is_a_member_of_the_contract(string id) =>
        Assert.All(Rule(id).Descriptor.Needs, pointer =>
        {
            var type = typeof(RackDescription);
            foreach (var token in pointer.Split('/').Skip(1))
            {
                type = token == "*" ? type.GetGenericArguments()[0] : Members(type).GetValueOrDefault(token)
                    ?? throw new Xunit.Sdk.XunitException($"{pointer} has no {token}");
            }
        });

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_failing_rack_breaks_the_rule_and_the_passing_one_does_not(string id)
    {
        var facts = Rule(id).Descriptor;
        var failing = Judge.Check(Rack(facts.FailingRack));
        var passing = Judge.Check(Rack(facts.PassingRack));
        Assert.Contains(failing.Findings, f => f.Rule == id);
        Assert.DoesNotContain(passing.Findings, f => f.Rule == id);
        Assert.DoesNotContain(passing.NotAssessed, n => n.Rule == id);
        Assert.Empty(Judge.Unsound(Rack(facts.FailingRack)).Concat(Judge.Unsound(Rack(facts.PassingRack))));

        // Both racks show this rule and nothing besides, or the reader of its page learns the wrong thing.
        Assert.Equal([id], failing.Findings.Where(f => f.Rule == id || f.Rule != "power.rcd-absent").Select(f => f.Rule).Distinct().Except(Companions(id)));
        Assert.DoesNotContain(passing.Findings, f => f.Severity == Severity.Error);
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Every_finding_of_the_failing_rack_is_whole(string id)
    {
        var facts = Rule(id).Descriptor;
        var rack = Rack(facts.FailingRack);
        var request = JsonNode.Parse(facts.FailingRack)!;
        Assert.All(Judge.Check(rack).Findings.Where(f => f.Rule == id), f => FindingShape.Check(f, facts, request));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Remedy_of_failing_rack_clears_its_finding(string id)
    {
        var rack = Rack(Rule(id).Descriptor.FailingRack);
        var report = Judge.Check(rack);
        foreach (var finding in report.Findings.Where(f => f.Rule == id))
        {
            Assert.True(finding.Remedies.Count > 0 != NoRemedy.ContainsKey(id), $"{id} has no remedy, or a stale reason for none");
            Assert.All(finding.Remedies, r => Assert.Empty(Judge.Faults(rack, report, finding, r)));
            Assert.Equal(finding.Remedies.Count, finding.Remedies.Select(r => r.Title).Distinct().Count());
        }
    }

    // Rules that must fire with another: the same fact seen from two sides.
    private static string[] Companions(string id) => id switch
    {
        "depth.front-clearance" or "depth.rear-clearance" => ["depth.upright-position"],
        "depth.upright-position" => ["depth.cabinet-too-shallow"],
        _ => [],
    };

    private static RuleBase Rule(string id) => Rules.Single(r => r.Descriptor.Id == id);

    private static RackDescription Rack(string json) => JsonSerializer.Deserialize(json, ContractJson.Default.RackDescription)!;

    private static Dictionary<string, Type> Members(Type type) =>
        type.GetProperties().ToDictionary(p => JsonNamingPolicy.CamelCase.ConvertName(p.Name), p => Nullable.GetUnderlyingType(p.PropertyType)
            ?? p.PropertyType);

    [GeneratedRegex("^[a-z]+\\.[a-z]+(-[a-z]+)*$")]
    private static partial Regex ThemeAndSlug();
}
