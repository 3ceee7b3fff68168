using RackCheck.Api.Access;
using RackCheck.Api.Http;
using RackCheck.Model;

namespace RackCheck.Api.Endpoints;

/// <summary>Common setup of GET operations.</summary>
internal static class GetMetadata
{
    /// <summary>Adds a JSON response of a type and refusals of clients that do not accept JSON or lack credentials, all also to the contract.</summary>
    public static RouteHandlerBuilder AnswersWith<T>(this RouteHandlerBuilder builder) => builder
        .AddEndpointFilter(static async (invocation, next) =>
        {
            if (Negotiation.TakesJson(invocation.HttpContext.Request))
            {
                return await next(invocation);
            }

            await Problems.WriteAsync(invocation.HttpContext, StatusCodes.Status406NotAcceptable, "The response is application/json.");
            return Results.Empty;
        })
        .RequireReader()
        .Produces<T>(StatusCodes.Status200OK, "application/json")
        .Produces<Problem>(StatusCodes.Status401Unauthorized, Problems.MediaType)
        .Produces<Problem>(StatusCodes.Status406NotAcceptable, Problems.MediaType);
}
