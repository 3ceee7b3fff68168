using Microsoft.Extensions.Options;
using RackCheck.Api.Catalogue;
using RackCheck.Api.Http;
using RackCheck.Api.Reading;
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
            "Takes part numbers and quantities, builds a rack from them and checks it. The response has the rack, the findings with the lines that "
            + "they come from, the parts missing for a complete rack (shelves, rails, KVM switch, fans, PDUs, earth bar and leads, cords, blanking "
            + "panels, fixings) and the parts that the rack does not need.")
        .Accepts<BasketRequest>("application/json")
        .Produces<BasketReport>(StatusCodes.Status200OK, "application/json")
        .RefusesWithProblems();

    private static async Task CheckAsync(
        HttpContext context, BasketReader reader, IProductCatalogue catalogue, BasketPlanner planner, IOptions<ServiceOptions> options)
    {
        if (await JsonRequest.ReadAsync(context, reader, options.Value.MaxBodyBytes) is not { } basket)
        {
            return;
        }

        var numbers = new HashSet<string>(StringComparer.Ordinal);
        foreach (var line in basket.Lines)
        {
            numbers.Add(line.PartNumber);
        }

        // In parallel, so that the wait for both is no longer than for one.
        var products = catalogue.FindAsync(numbers, context.RequestAborted).AsTask();
        var offered = catalogue.OfferedAsync(context.RequestAborted).AsTask();
        await Task.WhenAll(products, offered);
        var answer = planner.Plan(basket, await products, await offered, context.RequestAborted);
        await (answer.Report is { } report
            ? JsonAnswer.WriteAsync(context, report, ContractJson.Default.BasketReport, ReportLength.Shorten)
            : Problems.WriteAsync(context, StatusCodes.Status422UnprocessableEntity, Problems.NothingChecked, answer.Faults));
    }
}
