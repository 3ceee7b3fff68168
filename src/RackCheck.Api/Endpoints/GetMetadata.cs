using RackCheck.Api.Http;
using RackCheck.Model;

namespace RackCheck.Api.Endpoints;

/// <summary>What all operations that only answer have in common.</summary>
internal static class GetMetadata
{
    /// <summary>Answers with JSON of a type, refuses who does not take it, and says so in the contract.</summary>
    public static RouteHandlerBuilder AnswersWith<T>(this RouteHandlerBuilder builder) => builder
        .AddEndpointFilter(static async (invocation, next) =>
        {
            if (Negotiation.TakesJson(invocation.HttpContext.Request))
            {
                return await next(invocation);
            }

            await Problems.WriteAsync(invocation.HttpContext, StatusCodes.Status406NotAcceptable, "The answer is application/json.");
            return Results.Empty;
        })
        .Produces<T>(StatusCodes.Status200OK, "application/json")
        .Produces<Problem>(StatusCodes.Status406NotAcceptable, Problems.MediaType);
}
