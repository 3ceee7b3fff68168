using RackCheck.Api.Access;
using RackCheck.Api.Admission;
using RackCheck.Api.Catalogue;
using RackCheck.Api.Http;
using RackCheck.Api.Reading;
using RackCheck.Api.Telemetry;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Planning.Baskets;
using RackCheck.Planning.Comparisons;
using RackCheck.Rules;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Api.Endpoints;

/// <summary>POST /v1/comparisons.</summary>
internal static class ComparisonsEndpoints
{
    /// <summary>Name of the operation in the contract.</summary>
    public const string CompareRacks = "compareRacks";

    /// <summary>Maps the group.</summary>
    public static void MapComparisons(this IEndpointRouteBuilder routes) => routes
        .MapPost("/v1/comparisons", CompareAsync)
        .WithName(CompareRacks)
        .WithTags("Comparisons")
        .WithSummary("Compare two racks")
        .WithDescription(
            "Takes two racks, each as a description, a basket or a report, and lists what changed: items, positions, parts to add and to return, "
            + "figures side by side, findings that are new, gone or shared, and the verdicts.")
        .Accepts<ComparisonRequest>("application/json")
        .Produces<ComparisonAnswer>(StatusCodes.Status200OK, "application/json")
        .ComputesIn(static pools => pools.Planning)
        .RequireScope(Scopes.Plan)
        .RefusesWithProblems();

    private static async Task CompareAsync(
        HttpContext context,
        JsonRequest requests,
        ComputePools pools,
        ComparisonReader reader,
        DescriptionReader descriptions,
        PartLookUp parts,
        RackChecker checker,
        BasketPlanner planner,
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

        var before = await SideAsync(request.Before, "/before", parts, context.RequestAborted);
        var after = await SideAsync(request.After, "/after", parts, context.RequestAborted);
        var reply = await JsonRequest.ComputeAsync(context, pools.Planning, cancellation =>
        {
            List<Fault> faults = [];
            var first = before.Check(descriptions, checker, planner, faults, cancellation);
            var second = after.Check(descriptions, checker, planner, faults, cancellation);
            if (faults.Count > 0)
            {
                return new Reply(null, ProblemKind.Invalid, Problems.NothingChecked, faults);
            }

            metrics.Count(first!.Report);
            metrics.Count(second!.Report);
            var answer = RackComparison.Of(first, second) with { Reference = request.Reference };
            return new Reply(JsonAnswer.Prepare(answer, ContractJson.Default.ComparisonAnswer, ReportLength.Shorten));
        });
        if (reply is not null)
        {
            await requests.SendAsync(context, reply);
        }
    }

    private static async Task<Side> SideAsync(ComparedSide side, string pointer, PartLookUp parts, CancellationToken cancellation)
    {
        if (side.Basket is { } basket)
        {
            var numbers = basket.Lines.SelectMany(BasketPlanner.PartNumbers).ToHashSet(StringComparer.Ordinal);
            return new Side(side, pointer, null, await parts.ForPlanAsync(numbers, cancellation));
        }

        return new Side(side, pointer, side.Description is { } rack && side.Report is null ? await parts.ResolveAsync(rack, cancellation) : null, null);
    }

    // One side with the products that it needs.
    private sealed record Side(ComparedSide Given, string Pointer, ResolvedRack? Rack, PlanParts? Parts)
    {
        /// <summary>The rack and its report; null if there are faults.</summary>
        public ComparedRack? Check(
            DescriptionReader descriptions, RackChecker checker, BasketPlanner planner, List<Fault> faults, CancellationToken cancellation)
        {
            if (Given.Basket is { } basket)
            {
                var answer = planner.Plan(basket, Parts!.Found, Parts.Offered, cancellation);
                Parts.Require(answer.Report is { Unmet.Count: 0 });
                faults.AddRange(answer.Faults.Select(f => f with { Pointer = $"{Pointer}/basket{f.Pointer}" }));
                if (answer.Report is { Report: { } checkedRack } planned)
                {
                    return new ComparedRack(checkedRack, planned.Rack, basket.Lines);
                }

                if (answer.Report is not null)
                {
                    faults.Add(new Fault
                    {
                        Pointer = $"{Pointer}/basket/lines",
                        Code = FaultCodes.Inconsistent,
                        Detail = "The basket makes no rack to compare.",
                    });
                }

                return null;
            }

            if (Given.Report is { } report)
            {
                return new ComparedRack(report, Given.Description, null);
            }

            faults.AddRange(descriptions.FaultsOf(Rack!).Select(f => f with { Pointer = $"{Pointer}/description{f.Pointer}" }));
            return faults.Count > 0 ? null : new ComparedRack(checker.Check(Rack!, cancellation), Rack!.Posted, null);
        }
    }
}
