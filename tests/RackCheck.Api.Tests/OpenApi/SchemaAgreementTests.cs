using System.Collections.Concurrent;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Microsoft.Extensions.DependencyInjection;
using RackCheck.Api.Reading;
using RackCheck.Api.Tests.Http;
using RackCheck.Model;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.OpenApi;

/// <summary>
/// Changed requests are accepted or refused by the schemas of the contract, in the hands of an independent validator, and by the service alike. Schemas do not
/// express relations between members: references, duplicate ids, contradictions, what the policy of a rule allows, and what a part number makes optional.
/// </summary>
public sealed partial class SchemaAgreementTests(Service service) : IClassFixture<Service>
{
    // Codes of relations between members.
    private static readonly HashSet<string> Relations =
    [
        FaultCodes.DuplicateId, FaultCodes.UnknownId, FaultCodes.UnknownLimit, FaultCodes.SafetyWeakened, FaultCodes.Inconsistent, FaultCodes.NotHere,
    ];

    // A request for a drawing has either the one or the other.
    private static readonly HashSet<string> Either = ["/racks", "/before", "/after"];

    [Theory]
    [InlineData("RackDescription", "rack-")]
    [InlineData("BasketRequest", "basket-")]
    [InlineData("ProposalRequest", "proposal-")]
    [InlineData("ComparisonRequest", "comparison-")]
    [InlineData("ElevationRequest", "elevation-")]
    [Trait("Kind", "property")]
    public void Changed_request_is_judged_alike_by_schema_and_service(string schema, string prefix)
    {
        JsonNode[] examples =
        [
            .. Directory.EnumerateFiles(Repository.PathOf("openapi", "examples"), prefix + "*.json").Order(StringComparer.Ordinal)
                .Select(f => JsonNode.Parse(File.ReadAllText(f))!),
            .. prefix == "basket-" ? [FilledRack.Basket()] : (JsonNode[])[],
        ];
        var services = service.Services;
        var (differences, verdicts) = (new ConcurrentQueue<string>(), new ConcurrentBag<bool>());
        var first = Random.Shared.Next(1_000_000_000);
        Parallel.For(first, first + Samples.Of(20_000, least: 400), seed =>
        {
            var random = new Random(seed);
            var changed = new RequestMutator(random).Change(schema, examples[random.Next(examples.Length)]).ToJsonString();
            var faults = Read(services, schema, Encoding.UTF8.GetBytes(changed));
            if (faults.Any(f => f.Code == FaultCodes.More))
            {
                // Which further faults there are is not said.
                return;
            }

            var violations = ContractSchemas.Faults(FormOf(schema, changed), changed);
            verdicts.Add(violations.Count == 0);
            var ofForm = faults.Where(f => !IsRelation(schema, f)).ToArray();

            // Where relations alone are reported, faults of form may be hidden behind them.
            if (ofForm.Length > 0 ? violations.Count == 0 : faults.Count == 0 && violations.Count > 0)
            {
                differences.Enqueue($"seed {seed}: service {string.Join(", ", ofForm.Select(f => $"{f.Pointer} {f.Code}"))}; schema {
                    string.Join(" | ", violations.Where(v => !v.EndsWith("but should be \"null\"", StringComparison.Ordinal)).Take(6))}");
            }
        });
        Assert.True(differences.IsEmpty, string.Join(Environment.NewLine, differences.Take(10)));
        Assert.InRange(verdicts.Count(v => v), verdicts.Count / 20, verdicts.Count * 19 / 20);
    }

    // A drawing takes one rack as well, and a request without the members of several is read as one.
    private static string FormOf(string schema, string request) =>
        schema == "ElevationRequest" && !JsonNode.Parse(request)!.AsObject().Any(m => m.Key is "racks" or "before" or "after") ? "RackDescription" : schema;

    private static bool IsRelation(string schema, Fault fault) =>
        Relations.Contains(fault.Code)
        || (fault.Code == FaultCodes.MissingMember && Conditional().IsMatch(fault.Pointer))
        || (schema == "ElevationRequest" && fault.Code == FaultCodes.MissingMember && Either.Contains(fault.Pointer))
        || (fault.Code == FaultCodes.OutOfRange && fault.Pointer.Contains("/limits/", StringComparison.Ordinal));

    private static IReadOnlyList<Fault> Read(IServiceProvider services, string schema, byte[] body) => schema switch
    {
        "RackDescription" => services.GetRequiredService<DescriptionReader>().Read(body).Faults,
        "BasketRequest" => services.GetRequiredService<BasketReader>().Read(body).Faults,
        "ProposalRequest" => services.GetRequiredService<ProposalReader>().Read(body).Faults,
        "ComparisonRequest" => services.GetRequiredService<ComparisonReader>().Read(body).Faults,
        _ => services.GetRequiredService<ElevationReader>().Read(body, out _).Faults,
    };

    // Members that are required where no part number or other member stands in for them.
    [GeneratedRegex(@"(^|/)cabinet$|/(cabinet|existing|cabinets/[0-9]+)/(heightU|widthMm|depthMm|(front|rear)Door/style)$|/items?(/[0-9]+)?/heightU$|"
        + @"/pdus/[0-9]+/(ratedA|groups)$|/lines/[0-9]+/partNumber$")]
    private static partial Regex Conditional();
}
