using System.Text.Json.Nodes;
using CsCheck;
using Microsoft.Extensions.DependencyInjection;
using RackCheck.Api.Http;
using RackCheck.Api.Tests.Acceptance;
using RackCheck.Model.Json;
using RackCheck.Rules;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.OpenApi;

/// <summary>Answers satisfy the contract in the hands of an independent validator: of all acceptance cases, baskets, and random racks.</summary>
public sealed class AnswerSchemaTests(Service service) : IClassFixture<Service>
{
    [Fact]
    public async Task Answer_to_an_acceptance_case_satisfies_the_contract()
    {
        foreach (var name in AcceptanceCase.Names)
        {
            var test = AcceptanceCase.Read(name);
            var answer = await service.PostAsync(test.Request.ToJsonString(), test.Post);
            AssertValid(name, answer, test.Post == "/v1/checks" ? "CheckReport" : "BasketReport");
        }
    }

    [Fact]
    public async Task Answer_to_a_basket_satisfies_the_contract()
    {
        var files = Directory.EnumerateFiles(Repository.PathOf("tests", "acceptance", "baskets"), "*.json").Order(StringComparer.Ordinal);
        foreach (var file in files)
        {
            var test = JsonNode.Parse(await File.ReadAllTextAsync(file))!;
            if (test["request"]?["lines"] is not null)
            {
                AssertValid(Path.GetFileName(file), await service.PostAsync(test["request"]!.ToJsonString(), "/v1/baskets/checks"), "BasketReport");
            }
        }
    }

    [Fact]
    [Trait("Kind", "property")]
    public void Report_on_a_random_rack_satisfies_the_contract()
    {
        var checker = service.Services.GetRequiredService<RackChecker>();
        RackGenerator.RacksWithPolicy.Sample(
            rack =>
            {
                var report = JsonAnswer.Bytes(checker.Check(rack), ContractJson.Default.CheckReport);
                Assert.Empty(ContractSchemas.Faults("CheckReport", System.Text.Encoding.UTF8.GetString(report)));
                Assert.Empty(ContractSchemas.Faults(
                    "RackDescription", System.Text.Encoding.UTF8.GetString(JsonAnswer.Bytes(rack, ContractJson.Default.RackDescription))));
            },
            iter: Samples.Of(5_000, least: 100));
    }

    private static void AssertValid(string name, Answer answer, string schema)
    {
        var faults = ContractSchemas.Faults(answer.Status == 200 ? schema : "Problem", answer.Text);
        Assert.True(faults.Count == 0, $"{name}: {string.Join("; ", faults.Take(5))}");
    }
}
