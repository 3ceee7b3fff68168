using RackCheck.Api.Access;
using RackCheck.Api.Admission;
using RackCheck.Api.Catalogue;
using RackCheck.Api.Http;
using RackCheck.Api.Reading;
using RackCheck.Api.Telemetry;
using RackCheck.Model;
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

    /// <summary>Query parameter that requests members of the report.</summary>
    public const string FieldsParameter = "fields";

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
        .ComputesIn(static pools => pools.Checks)
        .RequireScope(Scopes.Check)
        .TakesQuery(ApplyParameter, FieldsParameter)
        .RefusesWithProblems();

    private static async Task CheckAsync(
        HttpContext context, JsonRequest requests, ComputePools pools, DescriptionReader reader, PartLookUp parts, RackChecker checker, CheckMetrics metrics)
    {
        var isToBeApplied = IsToBeApplied(context.Request.Query);
        if (isToBeApplied is null)
        {
            await Problems.WriteQueryAsync(context, ApplyParameter, $"The only value of the query parameter '{ApplyParameter}' is 'remedies'.");
            return;
        }

        if (!ReportFields.TryParse(context.Request.Query[FieldsParameter], out var fields))
        {
            await Problems.WriteQueryAsync(
                context,
                FieldsParameter,
                $"The query parameter '{FieldsParameter}' is a list of members of the report, separated by commas: {string.Join(", ", ReportFields.All)}.");
            return;
        }

        using var body = await requests.ReceiveAsync(context, pools.Checks);
        if (body is null)
        {
            return;
        }

        Reply Judge(ResolvedRack rack, CancellationToken cancellation)
        {
            var report = isToBeApplied.Value ? Applied(rack, checker, cancellation)
                : fields.NeedRemedies ? checker.Check(rack, cancellation)
                : checker.Recheck(rack, cancellation);
            metrics.Count(report);
            return new Reply(fields.Prepare(report));
        }

        // A description without part numbers is read and checked in one go.
        var first = await JsonRequest.ComputeAsync(context, pools.Checks, cancellation =>
        {
            var read = reader.Read(body.Bytes);
            return read.Document is not { } description ? new Step(read.Refuse(), null)
                : PartLookUp.WithoutParts(description) is { } plain ? new Step(Judge(plain, cancellation), null)
                : new Step(null, description);
        });
        if (first is null)
        {
            return;
        }

        body.GiveBack();
        var reply = first.Reply;
        if (first.ToResolve is { } description)
        {
            var rack = await parts.ResolveAsync(description, context.RequestAborted);
            reply = await JsonRequest.ComputeAsync(context, pools.Checks, cancellation => reader.FaultsOf(rack) is { Count: > 0 } faults
                ? new Reply(null, ProblemKind.Invalid, Problems.Contradiction, faults)
                : Judge(rack, cancellation));
        }

        if (reply is not null)
        {
            await requests.SendAsync(context, reply);
        }
    }

    private static CheckReport Applied(ResolvedRack rack, RackChecker checker, CancellationToken cancellation)
    {
        var run = new RemedyLoop(checker).Run(rack, cancellation: cancellation);
        return run.Report with { Applied = new AppliedRemedies { Rack = run.Description, Steps = run.Steps } };
    }

    // Whether the query requests remedies to be applied; null for an unsupported value.
    private static bool? IsToBeApplied(IQueryCollection query) =>
        !query.TryGetValue(ApplyParameter, out var value) ? false : value.Count == 1 && value == "remedies" ? true : null;

    // The answer, or a description whose part numbers are looked up first.
    private sealed record Step(Reply? Reply, RackDescription? ToResolve);
}
