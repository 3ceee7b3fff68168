using System.Collections.Frozen;
using RackCheck.Api.Http;
using RackCheck.Documents;
using RackCheck.Model;
using RackCheck.Model.Json;

namespace RackCheck.Api.Endpoints;

/// <summary>GET /v1/reference/{table}: the tables that the rules calculate with.</summary>
internal static class ReferenceEndpoints
{
    /// <summary>Name of the operation in the contract.</summary>
    public const string GetTable = "getReferenceTable";

    /// <summary>Maps the group.</summary>
    public static void MapReference(this IEndpointRouteBuilder routes)
    {
        var tables = ReferencePages.All.ToFrozenDictionary(
            t => t.Table,
            t => new StaticAnswer(JsonAnswer.Bytes(t, ContractJson.Default.ReferenceTable)),
            StringComparer.Ordinal);
        var names = string.Join(", ", ReferencePages.All.Select(t => t.Table));

        routes.MapGet("/v1/reference/{table}", (HttpContext context, string table) => tables.TryGetValue(table, out var answer)
                ? answer.WriteAsync(context)
                : Problems.WriteAsync(context, StatusCodes.Status404NotFound, $"There is no such table. Tables: {names}."))
            .WithName(GetTable)
            .WithTags("Reference")
            .WithSummary("Read a reference table")
            .WithDescription("A table that the rules calculate with, and its sources.")
            .AnswersWith<ReferenceTable>()
            .Produces(StatusCodes.Status304NotModified)
            .Produces<Problem>(StatusCodes.Status404NotFound, Problems.MediaType);
    }
}
