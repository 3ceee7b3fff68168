using RackCheck.Model;
using RackCheck.Remedies.Patches;
using RackCheck.Rules.Catalogue;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Survey.Catalogue;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Catalogue;

public sealed class UnknownPartTests : RuleTests<UnknownPart>
{
    [Fact]
    public void Unknown_part_number_is_error_and_the_rest_is_checked()
    {
        var rack = Parts.Rack(Parts.Pc("a"), new Item { Id = "b", PartNumber = "QWL-NONE", HeightU = 4, Position = new Position { U = 2 } });
        var report = Judge.Checker.Check(rack);
        var finding = Assert.Single(rack.Of<UnknownPart>());
        Assert.Equal((Severity.Error, "/items/1/partNumber", "QWL-NONE"), (finding.Severity, finding.Pointers[0], finding.MessageData["partNumber"].Text));
        Assert.Contains(report.Findings, f => f.Rule == "layout.overlap");

        // Described by hand, it can do without.
        Assert.Empty(Judge.Faults(rack, report, finding, finding.Remedies[0]));
        Assert.Null(RackPatch.Apply(rack.Posted, finding.Remedies[0]).Items[1].PartNumber);
    }

    [Fact]
    public void Essential_data_missing_leaves_all_rules_not_assessed()
    {
        var rack = Parts.Rack(Parts.Pc("a"), new Item { Id = "b", PartNumber = "QWL-NONE", Position = new Position { U = 2 } });
        var report = Judge.Checker.Check(rack);
        Assert.Equal(Verdict.Hold, report.Verdict);
        Assert.Equal("catalogue.unknown-part", Assert.Single(report.Findings).Rule);
        Assert.NotNull(report.Findings[0].NoRemedy);
        Assert.Equal(RuleSet.Default.RackRules.Select(r => r.Descriptor.Id), report.NotAssessed.Select(n => n.Rule));
        Assert.All(report.NotAssessed, n => Assert.Equal(["/items/1/heightU"], n.Missing));
        Assert.Null(report.Figures.Space);
    }

    [Fact]
    public void Rules_not_applied_or_switched_off_are_listed()
    {
        var posted = Parts.Rack(new Item { Id = "b", PartNumber = "QWL-NONE" }).Posted with
        {
            Acceptances = [new Acceptance { Rule = "layout.reserve", Pointer = "/cabinet", Reason = "r", AcceptedBy = "b" }],
            Policy = new Policy { Rules = new Dictionary<string, RulePolicy> { ["layout.reserve"] = new() { Severity = PolicySeverity.Off } } },
        };
        var told = Judge.Checker.Check(Parts.Rack().With(posted)).NotAssessed;
        Assert.Equal(["/items/0/heightU"], Assert.Single(told, n => n.Rule == "acceptance.unused").Missing);
        Assert.Equal(["/policy/rules/layout.reserve/severity"], Assert.Single(told, n => n.Rule == "layout.reserve").Missing);
        Assert.Equal(RuleSet.Default.RackRules.Length + 1, told.Count);
    }

    [Fact]
    public void Cabinet_and_pdus_are_looked_up_too()
    {
        var rack = Parts.Rack(
            new Cabinet { PartNumber = "QWL-NONE" }, [Parts.Pc("a")], new Pdu { Id = "s", Supply = "A", PartNumber = "QWL-NEITHER" });
        Assert.Equal(["/cabinet/partNumber", "/pdus/0/partNumber"], rack.Of<UnknownPart>().Select(f => f.Pointers[0]));
        Assert.Equal(["/cabinet/heightU", "/cabinet/widthMm", "/cabinet/depthMm", "/pdus/0/ratedA", "/pdus/0/groups"], rack.Missing());
        Assert.Empty(Parts.Rack(new Cabinet { PartNumber = "QWL-T-CAB" }, [Parts.Pc("a")], new Pdu { Id = "s", Supply = "A", PartNumber = "QWL-T-DU" })
            .Of<UnknownPart>());
    }

    [Fact]
    public void Product_of_another_kind_is_error()
    {
        var finding = Assert.Single(Parts.Rack(Parts.Pc("a") with { PartNumber = "QWL-T-DU", HeightU = 1 }).Of<UnknownPart>());
        Assert.Equal(("equipment", "pdu"), (finding.MessageData["neededKind"].Text, finding.MessageData["kind"].Text));
        Assert.Equal("cabinet", Assert.Single(Parts.Rack(new Cabinet { PartNumber = "QWL-T-PC", HeightU = 42, WidthMm = 600, DepthMm = 800 }, [])
            .Of<UnknownPart>()).MessageData["neededKind"].Text);
        Assert.Equal("PDU", Assert.Single(Parts.Rack(new Cabinet { PartNumber = "QWL-T-CAB" }, [], new Pdu { Id = "s", Supply = "A", PartNumber = "QWL-T-PC" })
            .Of<UnknownPart>()).MessageData["neededKind"].Text);
    }

    [Fact]
    public void Product_with_wrong_catalogue_data_is_error_that_names_the_fault()
    {
        var fault = new Fault { Pointer = "/item/heightU", Code = "out-of-range", Detail = "61 is outside 0 to 60." };
        var posted = Parts.Rack(Parts.Pc("a"), new Item { Id = "b", PartNumber = "QWL-BAD" }).Posted;
        var rack = ResolvedRack.Of(
            posted,
            new ProductDictionary(new Dictionary<string, Product> { ["QWL-T-PC"] = Parts.Computer }, new Dictionary<string, Fault> { ["QWL-BAD"] = fault }));
        var finding = Assert.Single(rack.Of<UnknownPart>());
        Assert.Equal("catalogue.unknown-part.faulty", finding.MessageKey);
        Assert.Equal(("/item/heightU", "out-of-range"), (finding.MessageData["member"].Text, finding.MessageData["fault"].Text));
        Assert.Equal(["/items/1/partNumber"], finding.Pointers);

        // Resolved again, as for a remedy, it is the same.
        Assert.Equal(finding.Fingerprint, Assert.Single(rack.With(posted).Of<UnknownPart>()).Fingerprint);
    }

    [Fact]
    public void Part_numbers_not_looked_up_have_no_effect() =>
        Assert.DoesNotContain(Judge.Checker.Check(Parts.Rack(Parts.Pc("a") with { HeightU = 4, PartNumber = "QWL-NONE" }).Posted).Findings,
            f => f.Rule == "catalogue.unknown-part");
}
