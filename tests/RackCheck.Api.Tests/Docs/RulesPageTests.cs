using RackCheck.Rules;

namespace RackCheck.Api.Tests.Docs;

/// <summary>The rules as an HTML page.</summary>
public sealed class RulesPageTests(Service service) : IClassFixture<Service>
{
    [Fact]
    public async Task Page_has_all_data_of_every_rule()
    {
        var answer = await service.GetAsync("/docs/rules");
        Assert.Equal((200, "text/html"), (answer.Status, answer.MediaType));
        var page = System.Net.WebUtility.HtmlDecode(answer.Text);
        foreach (var rule in RuleSet.Default.All.Select(r => r.Descriptor))
        {
            string[] said =
            [
                $"<article id=\"{rule.Id}\">",
                rule.Title,
                rule.What,
                rule.Why,
                rule.Formula,
                .. rule.Remedies,
                .. rule.Sources.Select(s => s.Text),
                .. rule.Limits.Select(l => l.Name),
            ];
            Assert.All(said, s => Assert.Contains(s, page, StringComparison.Ordinal));
        }

        Assert.Contains(Cautions.General, page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Page_has_no_script_and_an_external_style_sheet()
    {
        var answer = await service.GetAsync("/docs/rules");
        Assert.DoesNotContain("<script", answer.Text, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("style=", answer.Text, StringComparison.Ordinal);
        Assert.NotEmpty(answer.Headers.GetValues("Content-Security-Policy"));
        Assert.Equal((200, "text/css"), ((await service.GetAsync("/docs/rules.css")).Status, (await service.GetAsync("/docs/rules.css")).MediaType));
    }
}
