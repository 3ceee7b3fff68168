using System.Globalization;
using System.Text.Json;
using CsCheck;
using RackCheck.Documents.Drawings;
using RackCheck.Documents.Parts;
using RackCheck.Documents.Sheets;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Survey;
using RackCheck.Survey.Bounds;
using RackCheck.Survey.Power;
using RackCheck.Testing;
using UglyToad.PdfPig;

namespace RackCheck.Documents.Tests.Sheets;

public sealed class SheetTests
{
    private static readonly string[] ExampleNames =
    [
        "rack-sound", "rack-power-and-earth", "rack-part-numbers", "rack-doors-do-not-close", "rack-layout-clashes", "rack-runner-stack",
    ];

    /// <summary>Racks of the examples and those that are hard to draw.</summary>
    public static TheoryData<string> Names => [.. ExampleNames, .. DrawingRacks.All.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_id_is_in_every_document_in_both_forms(string name)
    {
        var rack = RackOf(name);
        foreach (var kind in ReadSheet.Kinds)
        {
            var sheet = ReadSheet.Of(rack, kind).Sheet;
            var texts = ReadSheet.Html(sheet).Texts();
            using var pdf = ReadSheet.Pdf(sheet);
            var letters = ReadSheet.Letters(pdf);
            string[] ids = [.. rack.Items.Select(i => i.Id), .. (rack.Pdus ?? []).Select(p => p.Id), .. (rack.Supplies ?? []).Select(s => s.Id)];
            foreach (var id in ids.Select(TextFit.Clean))
            {
                Assert.Contains(texts, t => t.Contains(id, StringComparison.Ordinal));

                // A reader without the text behind the glyphs sees boxes and the order of the eye; those names are read from the HTML.
                if (id.All(c => c < '\u0300'))
                {
                    Assert.Contains(ReadSheet.Tight(id), letters, StringComparison.Ordinal);
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Specification_has_all_findings_questions_and_assumptions(string name)
    {
        var (sheet, report) = ReadSheet.Of(RackOf(name), SheetKind.Specification);
        var page = ReadSheet.Html(sheet);
        var findings = page.Table("Findings, by their number in the drawing");
        var at = 0;
        foreach (var row in findings)
        {
            // Findings alike have one row: the first in full, the others by what they are about.
            int[] numbers = [.. row[0].Split('-').Select(n => int.Parse(n, CultureInfo.InvariantCulture))];
            Assert.Equal(at + 1, numbers[0]);
            foreach (var (index, finding) in report.Findings.Take(numbers[^1]).Skip(at).Index())
            {
                Assert.StartsWith(finding.Severity.ToString().ToLowerInvariant(), row[1], StringComparison.Ordinal);
                Assert.Equal(finding.Safety, row[1].Contains("safety", StringComparison.Ordinal));
                var about = index == 0 ? TextFit.Clean(finding.Message) : SheetContext.Name(OwnerOf(finding, RackOf(name)));
                Assert.Contains(about, row[2], StringComparison.Ordinal);
                Assert.Contains(TextFit.Clean(finding.Calculation ?? ""), row[2], StringComparison.Ordinal);
                Assert.EndsWith($"({finding.Rule})", row[2], StringComparison.Ordinal);
            }

            at = numbers[^1];
        }

        Assert.Equal(report.Findings.Count, at);

        Assert.Equal(report.Questions.Select(q => TextFit.Clean(q.Ask)), page.Table("Open questions").Select(r => r[1]));
        Assert.Equal(report.NotAssessed.Select(n => TextFit.Clean(n.Message)), page.Table("Not assessed").Select(r => r[1]));
        var assumed = page.Table(FindingBlocks.AssumptionsCaption).Select(r => r[2]).ToList();
        Assert.Equal(
            report.Assumptions.Where(a => a.BasisKey != "assumption.catalogue")
                .Select(a => TextFit.Clean(a.Basis.Replace(Fact.RangeWords, "", StringComparison.Ordinal))),
            assumed.Take(report.Assumptions.Count(a => a.BasisKey != "assumption.catalogue")));
        var texts = page.Texts();
        Assert.All(report.Cautions, c => Assert.Contains(c, texts));
    }

    private static string OwnerOf(Finding finding, RackDescription rack)
    {
        var steps = finding.Pointers[0].Split('/');
        var index = int.Parse(steps[2], CultureInfo.InvariantCulture);
        return steps[1] switch { "items" => rack.Items[index].Id, "supplies" => rack.Supplies![index].Id, _ => rack.Pdus![index].Id };
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Specification_has_every_figure_of_the_report(string name)
    {
        var (sheet, report) = ReadSheet.Of(RackOf(name), SheetKind.Specification);
        var texts = ReadSheet.Html(sheet).Texts();
        var figures = JsonSerializer.SerializeToElement(report.Figures, ContractJson.Default.Figures);
        foreach (var (path, value) in Numbers(figures, ""))
        {
            var number = value.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture);
            Assert.True(texts.Any(t => Words(t).Contains(number)), $"{path} = {number}");
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Installation_has_every_cord_in_its_outlet_and_every_item_from_the_bottom_up(string name)
    {
        var rack = RackOf(name);
        var (sheet, report) = ReadSheet.Of(rack, SheetKind.Installation);
        var page = ReadSheet.Html(sheet);
        var cords = page.Table("Cords in their outlets; each end has a label with the same text");
        var loose = page.Table("Cords without an outlet of their own: do not connect them before this is settled");
        var listed = cords.Select(r => (Item: r[5], Plug: r[6], Pdu: r[0], Group: r[1]))
            .Concat(loose.Where(r => r[3] != "nothing").Select(r => (Row: r, End: r[3].Split(", group ")))
                .Select(r => (Item: r.Row[0], Plug: r.Row[1], Pdu: r.End[0], Group: r.End[1])));
        var expected = (report.Figures.Power?.Assignment ?? [])
            .Select(c => (Item: TextFit.Clean(c.Item), Plug: FormattableString.Invariant($"{c.Plug + 1}"), c.Pdu, c.Group));
        Assert.Equal(expected.Order(), listed.Order());
        Assert.Equal(cords.Count, cords.Select(r => (r[0], r[1], r[2])).Distinct().Count());
        var survey = new RackSurvey(Judge.Resolve(rack));
        Assert.Equal(survey.Power.Cords.Length, cords.Count + loose.Count);

        var steps = page.Table("Support first, then the item; each nut with its screw; heavy items with the people or the aid named");
        var bottoms = survey.Items.Concat(survey.Units).ToLookup(i => TextFit.Clean(i.Id), i => (i.Shelf ?? i).Bottom ?? int.MaxValue);
        Assert.Equal(rack.Items.Count + survey.Units.Length, steps.Count);
        int[] order = [.. steps.Select(s => bottoms[s[3]].First())];
        Assert.Equal(order.Order(), order);
        var terminals = survey.Earth.TerminalsNeeded;
        Assert.Equal(survey.Earth.IsElectrical ? terminals : 0, page.Table($"Protective conductors, {terminals} terminals").Count);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Service_sheet_says_what_feeds_each_item_and_how_far_it_pulls_out(string name)
    {
        var rack = RackOf(name);
        var rows = ReadSheet.Html(ReadSheet.Of(rack, SheetKind.Service).Sheet).Table("Items from the top down").ToLookup(r => r[1]);
        var survey = new RackSurvey(Judge.Resolve(rack));
        var plan = new OutletPlan(survey.Power);
        foreach (var item in survey.Items)
        {
            var row = Assert.Single(rows[TextFit.Clean(item.Id)]);
            foreach (var cord in survey.Power.CordsOf(item).Where(c => c.Group is not null))
            {
                Assert.Contains(plan.EndOf(cord), row[5], StringComparison.Ordinal);
                Assert.Equal(cord.Group!.Unit.FedBy is not null, row[5].Contains("live from UPS", StringComparison.Ordinal));
            }

            if (item is { SupportStyle: SupportStyle.Slides, Shelf: null } && Balance.ExtensionMm(item) is { } pull)
            {
                Assert.Contains(FormattableString.Invariant($"{pull:0.###} mm"), row[3], StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public void Packing_list_names_the_tightest_place_and_the_gross_mass()
    {
        var rack = RackOf("rack-sound");
        var delivery = rack.Site!.Delivery! with
        {
            Openings = [new Opening { Name = "hall", WidthMm = 1200, HeightMm = 2400 }, new Opening { Name = "store", WidthMm = 790, HeightMm = 2400 }],
            Corridors = [], Lift = null,
        };
        var (sheet, report) = ReadSheet.Of(rack with { Site = rack.Site with { Delivery = delivery } }, SheetKind.PackingList);
        var page = ReadSheet.Html(sheet);

        // 800 mm wide with 20 mm clearance through 790 mm.
        Assert.Contains(page.Texts(), t => t.StartsWith("Tightest place: store, 30 mm short. Does not pass.", StringComparison.Ordinal));
        Assert.Equal(["236", "-30"], page.Table("Places on the route, on the pallet unless stated").Select(r => r[3]));
        var gross = FormattableString.Invariant($" = {report.Figures.Delivery!.GrossKg:0.###} kg");
        Assert.Contains(page.Texts(), t => t.EndsWith(gross, StringComparison.Ordinal));
        var pieces = page.Table("Main pieces; PDUs, rails and cords have no mass in the description");
        Assert.Equal(1 + rack.Items.Count + rack.Pdus!.Count, pieces.Count);
        Assert.Equal(
            report.Figures.Mass!.TotalKg!.Value,
            pieces.Where(p => p[3].Length > 0).Sum(p => double.Parse(p[3], System.Globalization.CultureInfo.InvariantCulture)), 0.001);
    }

    [Theory]
    [InlineData("rack-doors-do-not-close", "On hold")]
    [InlineData("crowded", "Under review")]
    [InlineData("rack-sound", null)]
    public void Documents_say_when_the_rack_is_not_released(string name, string? head)
    {
        foreach (var kind in ReadSheet.Kinds)
        {
            var notices = ReadSheet.Of(RackOf(name), kind).Sheet.Blocks.OfType<Notice>().Select(n => n.Head).Where(h => h != "Cautions");
            Assert.Equal(head is null ? [] : [head], notices);
        }
    }

    [Fact]
    public void Acceptances_and_sign_offs_are_listed()
    {
        var rack = RackOf("rack-power-and-earth");
        var report = Judge.Check(rack);
        var (accepted, signed) = (report.Findings.First(f => !f.Safety), report.Findings.First(f => f is { Safety: true, Severity: Severity.Warning }));
        var agreed = rack with
        {
            AsOf = "2026-11-29T08:00:00Z",
            Acceptances =
            [
                new Acceptance { Rule = accepted.Rule, Fingerprint = accepted.Fingerprint, Reason = "agreed <b>so</b>", AcceptedBy = "bay planner" },
            ],
            SignOffs =
            [
                new SignOff
                {
                    Rule = signed.Rule, Fingerprint = signed.Fingerprint, By = "test engineer", Role = "electrician", Reason = "measured",
                    At = "2026-11-28T08:00:00Z",
                },
            ],
        };
        var rows = ReadSheet.Html(ReadSheet.Of(agreed, SheetKind.Specification).Sheet).Table("Acceptances and sign-offs");
        Assert.Contains(rows, r => r[1] == "accepted" && r[2] == "bay planner" && r[4] == "agreed <b>so</b>");
        Assert.Contains(rows, r => r[1] == "signed off" && r[2] == "test engineer, electrician" && r[3] == "2026-11-28T08:00:00Z");
    }

    [Theory]
    [InlineData("rack-sound")]
    [InlineData("rack-power-and-earth")]
    [InlineData("rack-part-numbers")]
    [InlineData("rack-doors-do-not-close")]
    [InlineData("proposal-fourteen-items")]
    public void Pdf_of_an_ordinary_rack_has_two_to_four_pages(string name)
    {
        var rack = name.StartsWith("proposal-", StringComparison.Ordinal) ? Proposed(name) : RackOf(name);
        foreach (var kind in ReadSheet.Kinds)
        {
            using var pdf = ReadSheet.Pdf(ReadSheet.Of(rack, kind).Sheet);
            Assert.InRange(pdf.NumberOfPages, 2, 4);
        }
    }

    // The first rack of a recorded answer.
    private static RackDescription Proposed(string name) => JsonSerializer.Deserialize(
        JsonDocument.Parse(Repository.Read("openapi", "examples", "answers", name + ".json")).RootElement.GetProperty("alternatives")[0].GetProperty("rack"),
        ContractJson.Default.RackDescription)!;

    [Theory]
    [MemberData(nameof(Names))]
    public void Pdf_embeds_its_fonts_and_keeps_its_text_on_the_page(string name)
    {
        foreach (var kind in ReadSheet.Kinds)
        {
            var sheet = ReadSheet.Of(RackOf(name), kind).Sheet;
            var bytes = SheetPdf.Document(sheet);
            Assert.Equal(bytes, SheetPdf.Document(ReadSheet.Of(RackOf(name), kind).Sheet));
            using var pdf = PdfDocument.Open(bytes);
            var fonts = System.Text.Encoding.Latin1.GetString(bytes).Split("/FontFile2").Length - 1;
            Assert.Equal(pdf.GetPages().SelectMany(p => p.Letters).Select(l => l.FontName).Distinct().Count(), fonts);
            foreach (var page in pdf.GetPages())
            {
                Assert.All(page.Letters, l => Assert.True(l.BoundingBox.Left >= 0 && l.BoundingBox.Right <= page.Width && l.StartBaseLine.Y > 0));
                Assert.Contains(
                    $"page{page.Number}of{pdf.NumberOfPages}", ReadSheet.Tight(string.Concat(page.Letters.Select(l => l.Value))), StringComparison.Ordinal);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Texts_of_a_page_do_not_overlap(string name)
    {
        foreach (var kind in ReadSheet.Kinds)
        {
            foreach (var page in SheetPages.Of(ReadSheet.Of(RackOf(name), kind).Sheet))
            {
                Assert.Empty(DrawnSvg.Overlaps(new Drawing(SheetPages.Width, SheetPages.Height, "", "", page.Canvas.Marks)));
                Assert.All(page.Figures, f => Assert.True(f.Scale <= 1 && f.Y + (f.Scale * f.Drawing.Height) < SheetPages.Height));
            }
        }
    }

    [Fact]
    public void Names_with_markup_stay_text()
    {
        foreach (var kind in ReadSheet.Kinds)
        {
            var sheet = ReadSheet.Of(DrawingRacks.LongNames with { Reference = "</title><script>1</script>'}*{color:red}" }, kind).Sheet;
            var page = ReadSheet.Html(sheet);
            Assert.Empty(page.Named("script").Concat(page.Named("b")));
            Assert.Contains(page.Texts(), t => t == "<script>alert(1)</script>");
            Assert.Contains(page.Texts(), t => t == "=HYPERLINK(\"http://192.0.2.1\")");

            // The style sheets are exactly those that the policy allows, whatever the reference.
            Assert.Equal(
                SheetHtml.Styles(sheet).Take(kind == SheetKind.PackingList ? 2 : 3),
                page.Named("style").Select(s => s.Value));
            Assert.DoesNotContain("color:red", SheetHtml.Styles(sheet)[1], StringComparison.Ordinal);
            var attributes = page.Descendants().SelectMany(e => e.Attributes()).Select(a => a.Name.LocalName);
            Assert.DoesNotContain(attributes, a => a == "style" || a.StartsWith("on", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Rack_without_essential_data_gets_what_was_posted()
    {
        var rack = new RackDescription
        {
            Cabinet = new Cabinet { PartNumber = "QWL-NONE" }, Items = [new Item { Id = "a-1", PartNumber = "QWL-NONE-2", MassKg = 3 }],
        };
        foreach (var kind in ReadSheet.Kinds)
        {
            var sheet = ReadSheet.Of(rack, kind).Sheet;
            var page = ReadSheet.Html(sheet);
            Assert.Equal(["a-1", "QWL-NONE-2", "3"], Assert.Single(page.Table("Items as posted")));
            Assert.Contains("/cabinet/heightU", page.Texts());
            Assert.NotEmpty(SheetPdf.Document(sheet));
        }
    }

    [Fact]
    [Trait("Kind", "property")]
    public void Random_racks_have_every_document_in_both_forms() =>
        RackGenerator.AllRacks.Sample(
            rack =>
            {
                foreach (var kind in ReadSheet.Kinds)
                {
                    var sheet = ReadSheet.Of(rack, kind).Sheet;
                    Assert.NotEmpty(ReadSheet.Html(sheet).Texts());
                    Assert.True(SheetPdf.Document(sheet).AsSpan().StartsWith("%PDF-"u8));
                }
            },
            iter: Samples.Of(200),
            print: Wording.Of);

    [Fact]
    public void Two_hundred_items_with_eight_cords_are_set_in_bounded_time()
    {
        var items = Enumerable.Range(0, RackSurvey.MostItems).Select(i => new Item
        {
            Id = new string('x', 60) + i, HeightU = 1, Position = new Position { U = 1 + (i % 60) }, Description = new string('W', 200),
            Power = new ItemPower { RatedW = 20, Plugs = [.. Enumerable.Repeat(ConnectorCode.C14, 8)] },
        });
        var rack = DrawingRacks.Tall with { Items = [.. items] };
        var resolved = Judge.Resolve(rack);
        var drawn = Drawings.Elevations.DrawnRack.Of(resolved, Judge.Checker);
        var clock = System.Diagnostics.Stopwatch.StartNew();
        foreach (var kind in ReadSheet.Kinds)
        {
            var sheet = OrderSheets.Of(resolved, drawn, kind, []);
            Assert.NotEmpty(SheetHtml.Document(sheet));
            Assert.NotEmpty(SheetPdf.Document(sheet));
        }

        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(30), clock.Elapsed.ToString());
    }

    private static RackDescription RackOf(string name) => DrawingRacks.All.TryGetValue(name, out var racks) ? racks[0]
        : JsonSerializer.Deserialize(Repository.Read("openapi", "examples", name + ".json"), ContractJson.Default.RackDescription)!;

    private static HashSet<string> Words(string text) => [.. text.Split([' ', 'U', ','], StringSplitOptions.RemoveEmptyEntries)];

    private static IEnumerable<(string Path, double Value)> Numbers(JsonElement element, string path) => element.ValueKind switch
    {
        JsonValueKind.Number => [(path, element.GetDouble())],
        JsonValueKind.Object => element.EnumerateObject().Where(m => m.Name != "assignment").SelectMany(m => Numbers(m.Value, $"{path}/{m.Name}")),
        JsonValueKind.Array => element.EnumerateArray().SelectMany((e, i) => Numbers(e, $"{path}/{i}")),
        _ => [],
    };
}
