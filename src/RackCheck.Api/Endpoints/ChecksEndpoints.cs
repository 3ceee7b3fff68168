using RackCheck.Api.Access;
using RackCheck.Api.Admission;
using RackCheck.Api.Http;
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
        HttpContext context, JsonRequest requests, ComputePools pools, RackJudge judge, RackChecker checker)
    {
        var isToBeApplied = IsToBeApplied(context.Request.Query);
        if (isToBeApplied is null)
        {
            await Problems.WriteQueryAsync(context, ApplyParameter, $"The only value of the query parameter '{ApplyParameter}' is 'remedies'.");
            return;
        }

        if (!ReportFields.TryParse(context.Request.Query[FieldsParameter], out var fields))
        {
            await RefuseFieldsAsync(context);
            return;
        }

        using var body = await requests.ReceiveAsync(context, pools.Checks);
        if (body is null)
        {
            return;
        }

        CheckReport Check(ResolvedRack rack, CancellationToken cancellation) =>
            isToBeApplied.Value ? Applied(rack, checker, cancellation) : judge.Check(rack, fields, cancellation);

        var answer = await JsonRequest.ComputeAsync(
            context,
            pools.Checks,
            cancellation => Written(judge.Read(body.Bytes, rack => Check(rack, cancellation), context.RequestAborted), fields));
        if (answer is null)
        {
            return;
        }

        body.GiveBack();
        if (answer.Resolving is { } resolving)
        {
            var rack = await resolving;
            answer = await JsonRequest.ComputeAsync(
                context, pools.Checks, cancellation => Written(judge.Resolved(rack, own => Check(own, cancellation)), fields));
        }

        if (answer?.Reply is { } reply)
        {
            await requests.SendAsync(context, reply);
        }
    }

    /// <summary>Refuses the members that a request asks for.</summary>
    /// <param name="context">The request.</param>
    /// <returns>Completes when the document is written.</returns>
    public static Task RefuseFieldsAsync(HttpContext context) => Problems.WriteQueryAsync(
        context,
        FieldsParameter,
        $"The query parameter '{FieldsParameter}' is a list of members of the report, separated by commas: {string.Join(", ", ReportFields.All)}.");

    private static Step Written(ReadRack read, ReportFields fields) =>
        new(read.Report is { } report ? new Reply(fields.Prepare(report)) : read.Refusal, read.Resolving);

    private static CheckReport Applied(ResolvedRack rack, RackChecker checker, CancellationToken cancellation)
    {
        var run = new RemedyLoop(checker).Run(rack, cancellation: cancellation);
        return run.Report with { Applied = new AppliedRemedies { Rack = run.Description, Steps = run.Steps } };
    }

    // Whether the query requests remedies to be applied; null for an unsupported value.
    private static bool? IsToBeApplied(IQueryCollection query) =>
        !query.TryGetValue(ApplyParameter, out var value) ? false : value.Count == 1 && value == "remedies" ? true : null;

    // The answer, or the look-up that comes first.
    private sealed record Step(Reply? Reply, Task<ResolvedRack>? Resolving);
}
