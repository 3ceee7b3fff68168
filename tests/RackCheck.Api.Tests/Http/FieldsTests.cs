using System.Text;
using System.Text.Json.Nodes;
using CsCheck;
using Microsoft.Extensions.DependencyInjection;
using RackCheck.Api.Http;
using RackCheck.Model.Json;
using RackCheck.Rules;
using RackCheck.Survey.Catalogue;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Http;

/// <summary>POST /v1/checks?fields=: the members asked for, each as in the whole report.</summary>
public sealed class FieldsTests(Service service) : IClassFixture<Service>
{
    private static readonly string Rack = Repository.Read("openapi", "examples", "rack-power-and-earth.json");

    [Theory]
    [InlineData("verdict")]
    [InlineData("verdict,verdicts,descriptionDigest")]
    [InlineData("descriptionDigest,verdict")]
    [InlineData("reference,findings")]
    [InlineData("resolvedDigest,verdict")]
    public async Task Answer_has_the_members_asked_for_as_in_the_whole_report(string fields)
    {
        var whole = (await service.PostAsync(Rack)).Json.AsObject();
        var some = await service.PostAsync(Rack, "/v1/checks?fields=" + fields);
        Assert.Equal(200, some.Status);
        var expected = new JsonObject(whole.Where(m => fields.Split(',').Contains(m.Key)).Select(m => KeyValuePair.Create(m.Key, m.Value?.DeepClone())));
        Assert.Equal(expected.ToJsonString(), JsonNode.Parse(some.Text)!.ToJsonString());
        Assert.Equal(expected.Count > 0, some.Text.Length > 2);
    }

    [Theory]
    [InlineData("/v1/checks?fields=")]
    [InlineData("/v1/checks?fields=verdict,")]
    [InlineData("/v1/checks?fields=Verdict")]
    [InlineData("/v1/checks?fields=verdict, verdicts")]
    [InlineData("/v1/checks?fields=verdict&fields=verdicts")]
    public async Task Other_value_is_refused_and_the_parameter_named(string path)
    {
        var refused = await service.PostAsync(Rack, path);
        refused.IsProblem(400);
        Assert.Equal(("/docs/problems/invalid-query", "fields"), (refused.Json["type"]!.GetValue<string>(), refused.Json["parameter"]!.GetValue<string>()));
    }

    [Fact]
    public async Task Applied_remedies_can_be_asked_for()
    {
        var body = Repository.Read("openapi", "examples", "rack-doors-do-not-close.json");
        var whole = (await service.PostAsync(body, "/v1/checks?apply=remedies")).Json;
        var some = (await service.PostAsync(body, "/v1/checks?apply=remedies&fields=verdict,applied")).Json;
        Assert.Equal(["verdict", "applied"], some.AsObject().Select(m => m.Key));
        Assert.True(JsonNode.DeepEquals(whole["applied"], some["applied"]));
    }

    // Without findings the check is one that looks for no remedies.
    [Fact]
    [Trait("Kind", "property")]
    public void Every_other_member_is_the_same_without_the_search_for_remedies()
    {
        var checker = service.Services.GetRequiredService<RackChecker>();
        Assert.True(ReportFields.TryParse(string.Join(',', ReportFields.All.Where(f => f != "findings")), out var fields));
        Assert.False(fields.NeedRemedies);
        RackGenerator.RacksWithPolicy.Sample(
            rack =>
            {
                var whole = JsonNode.Parse(JsonAnswer.Bytes(checker.Check(rack), ContractJson.Default.CheckReport))!.AsObject();
                whole.Remove("findings");
                var lease = fields.Prepare(checker.Recheck(ResolvedRack.Plain(rack)));
                Assert.Equal(whole.ToJsonString(), JsonNode.Parse(Encoding.UTF8.GetString(lease.Written.Span))!.ToJsonString());
                lease.GiveBack();
            },
            iter: Samples.Of(2_000, least: 100));
    }
}
