using RackCheck.Api.Access;
using RackCheck.Api.Admission;
using RackCheck.Api.Catalogue;
using RackCheck.Api.Http;
using RackCheck.Api.Reading;
using RackCheck.Api.Telemetry;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Planning.Proposals;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Api.Endpoints;

/// <summary>POST /v1/proposals.</summary>
internal static class ProposalsEndpoints
{
    /// <summary>Name of the operation in the contract.</summary>
    public const string ProposeRack = "proposeRack";

    /// <summary>Maps the group.</summary>
    public static void MapProposals(this IEndpointRouteBuilder routes) => routes
        .MapPost("/v1/proposals", ProposeAsync)
        .WithName(ProposeRack)
        .WithTags("Proposals")
        .WithSummary("Propose a rack")
        .WithDescription(
            "Takes equipment, of the catalogue or with its own data, and chooses the cabinet, the positions and the parts. The response has up to "
            + "three racks without an open error, each with its report, the lines that it adds and how far it is proven to be the best. If there is "
            + "none, it names the requirements in conflict.")
        .Accepts<ProposalRequest>("application/json")
        .Produces<ProposalAnswer>(StatusCodes.Status200OK, "application/json")
        .ComputesIn(static pools => pools.Planning)
        .RequireScope(Scopes.Plan)
        .RefusesWithProblems();

    /// <summary>The part numbers of a request.</summary>
    public static IReadOnlySet<string> PartNumbers(ProposalRequest request) =>
        (request.Cabinets ?? [new Cabinet()]).SelectMany(c => ResolvedRack.PartNumbers(request.In(c))).ToHashSet(StringComparer.Ordinal);

    private static async Task ProposeAsync(
        HttpContext context,
        JsonRequest requests,
        ComputePools pools,
        ProposalReader reader,
        PartLookUp parts,
        ProposalPlanner planner,
        CheckMetrics metrics)
    {
        using var body = await requests.ReceiveAsync(context, pools.Planning);
        if (body is null || await JsonRequest.ComputeAsync(context, pools.Planning, _ => reader.Read(body.Bytes)) is not { } read)
        {
            return;
        }

        body.GiveBack();
        if (read.Document is not { } request)
        {
            await requests.SendAsync(context, read.Refuse());
            return;
        }

        var needed = await parts.ForPlanAsync(PartNumbers(request), context.RequestAborted);
        var pool = request.Effort == SearchEffort.Thorough ? pools.Searches : pools.Planning;
        var reply = await JsonRequest.ComputeAsync(context, pool, cancellation =>
        {
            var answer = planner.Plan(request, needed.Found, needed.Offered, cancellation);
            needed.Require(answer.Alternatives.Count > 0);
            if (needed.Unavailable is not null)
            {
                answer = answer with
                {
                    Alternatives =
                    [
                        .. answer.Alternatives.Select(a => a with
                        {
                            GivenUp = [ProposalWordings.NoCatalogue.Text, .. a.GivenUp],
                            GivenUpKeys = [ProposalWordings.NoCatalogue.Keyed, .. a.GivenUpKeys],
                        }),
                    ],
                };
            }

            foreach (var report in answer.Alternatives.SelectMany(a => a.Racks?.Select(r => r.Report) ?? [a.Report!]))
            {
                metrics.Count(report);
            }

            return new Reply(JsonAnswer.Prepare(answer, ContractJson.Default.ProposalAnswer, ReportLength.Shorten));
        });
        if (reply is not null)
        {
            await requests.SendAsync(context, reply);
        }
    }
}
