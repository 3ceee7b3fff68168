using RackCheck.Api.Access;
using RackCheck.Api.Admission;
using RackCheck.Api.Catalogue;
using RackCheck.Api.Http;
using RackCheck.Api.Reading;
using RackCheck.Api.Telemetry;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Planning.Baskets;

namespace RackCheck.Api.Endpoints;

/// <summary>POST /v1/baskets/checks.</summary>
internal static class BasketsEndpoints
{
    /// <summary>Name of the operation in the contract.</summary>
    public const string CheckBasket = "checkBasket";

    /// <summary>Maps the group.</summary>
    public static void MapBaskets(this IEndpointRouteBuilder routes) => routes
        .MapPost("/v1/baskets/checks", CheckAsync)
        .WithName(CheckBasket)
        .WithTags("Baskets")
        .WithSummary("Check a basket")
        .WithDescription(
            "Takes part numbers and quantities, builds the racks that they make and checks them. The response has the racks, the findings with the lines "
            + "that they come from and those that clear them, the lines to add (cabinet, shelves, rails, KVM switch, fans, PDUs, earth bar and leads, cords, "
            + "blanking panels, fixings), to exchange and to leave out, and the completed basket, which can be posted as it is.")
        .Accepts<BasketRequest>("application/json")
        .Produces<BasketReport>(StatusCodes.Status200OK, "application/json")
        .ComputesIn(static pools => pools.Planning)
        .RequireScope(Scopes.Plan)
        .RefusesWithProblems();

    private static async Task CheckAsync(
        HttpContext context,
        JsonRequest requests,
        ComputePools pools,
        BasketReader reader,
        PartLookUp parts,
        BasketPlanner planner,
        CheckMetrics metrics)
    {
        using var body = await requests.ReceiveAsync(context, pools.Planning);
        if (body is null || await JsonRequest.ComputeAsync(context, pools.Planning, _ => reader.Read(body.Bytes)) is not { } read)
        {
            return;
        }

        body.GiveBack();
        if (read.Document is not { } basket)
        {
            await requests.SendAsync(context, read.Refuse());
            return;
        }

        var numbers = new HashSet<string>(StringComparer.Ordinal);
        foreach (var line in basket.Lines)
        {
            numbers.UnionWith(BasketPlanner.PartNumbers(line));
        }

        var needed = await parts.ForPlanAsync(numbers, context.RequestAborted);
        var reply = await JsonRequest.ComputeAsync(context, pools.Planning, cancellation =>
        {
            var answer = planner.Plan(basket, needed.Found, needed.Offered, cancellation);
            needed.Require(answer.Report is { Unmet.Count: 0 });
            if (answer.Report is not { } report)
            {
                return new Reply(null, ProblemKind.Invalid, Problems.NothingChecked, answer.Faults);
            }

            foreach (var rack in report.Racks)
            {
                metrics.Count(rack.Report);
            }

            return new Reply(JsonAnswer.Prepare(report, ContractJson.Default.BasketReport, ReportLength.Shorten));
        });
        if (reply is not null)
        {
            await requests.SendAsync(context, reply);
        }
    }
}
