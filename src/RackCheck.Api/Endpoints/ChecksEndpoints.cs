using Microsoft.Extensions.Options;
using RackCheck.Api.Catalogue;
using RackCheck.Api.Http;
using RackCheck.Api.Reading;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Planning;
using RackCheck.Rules;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Api.Endpoints;

/// <summary>POST /v1/checks.</summary>
internal static class ChecksEndpoints
{
    /// <summary>Name of the operation in the contract.</summary>
    public const string CheckRack = "checkRack";

    /// <summary>Query parameter that requests remedies to be applied.</summary>
    public const string ApplyParameter = "apply";

    /// <summary>Maps the group.</summary>
    public static void MapChecks(this IEndpointRouteBuilder routes) => routes
        .MapPost("/v1/checks", CheckAsync)
        .WithName(CheckRack)
        .WithTags("Checks")
        .WithSummary("Check a rack")
        .WithDescription(
            "Checks whether the rack can be built, closed, powered, cooled, earthed, delivered and serviced. The response has findings, the figures "
            + "behind them, the assumptions and what could not be assessed. A fault of the rack is a finding; a fault of the description is a problem.")
        .Accepts<RackDescription>("application/json")
        .Produces<CheckReport>(StatusCodes.Status200OK, "application/json")
        .RefusesWithProblems();

    private static async Task CheckAsync(HttpContext context, DescriptionReader reader, PartLookUp parts, RackChecker checker, IOptions<ServiceOptions> options)
    {
        var isToBeApplied = IsToBeApplied(context.Request.Query);
        if (isToBeApplied is null)
        {
            await Problems.WriteAsync(context, StatusCodes.Status400BadRequest, $"The only query parameter is {ApplyParameter}=remedies.");
            return;
        }

        if (await JsonRequest.ReadAsync(context, reader, options.Value.MaxBodyBytes) is not { } description)
        {
            return;
        }

        var rack = await parts.ResolveAsync(description, context.RequestAborted);
        if (reader.FaultsOf(rack) is { Count: > 0 } faults)
        {
            await Problems.WriteAsync(
                context,
                StatusCodes.Status422UnprocessableEntity,
                "The description contradicts the product data of its part numbers. Correct the faults listed and send the request again.",
                faults);
            return;
        }

        var report = Report(rack, isToBeApplied.Value, checker, context.RequestAborted);
        await JsonAnswer.WriteAsync(context, report, ContractJson.Default.CheckReport, ReportLength.Shorten);
    }

    private static CheckReport Report(ResolvedRack rack, bool isToBeApplied, RackChecker checker, CancellationToken cancellation)
    {
        if (!isToBeApplied)
        {
            return checker.Check(rack, cancellation);
        }

        var run = new RemedyLoop(checker).Run(rack, cancellation: cancellation);
        return run.Report with { Applied = new AppliedRemedies { Rack = run.Description, Steps = run.Steps } };
    }

    // Whether the query requests remedies to be applied; null for any other query.
    private static bool? IsToBeApplied(IQueryCollection query) =>
        query.Count == 0 ? false : query.Count == 1 && query.TryGetValue(ApplyParameter, out var value) && value == "remedies" ? true : null;
}
