using Microsoft.Net.Http.Headers;
using RackCheck.Api.Access;
using RackCheck.Api.Admission;
using RackCheck.Api.Catalogue;
using RackCheck.Api.Http;
using RackCheck.Api.Reading;
using RackCheck.Api.Telemetry;
using RackCheck.Documents.Parts;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Rules;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Api.Endpoints;

/// <summary>POST /v1/parts-lists.</summary>
internal static class PartsListsEndpoints
{
    /// <summary>Name of the operation in the contract.</summary>
    public const string ListParts = "listParts";

    /// <summary>Media type of JSON.</summary>
    public const string Json = "application/json";

    /// <summary>Media type of CSV.</summary>
    public const string Csv = "text/csv";

    private const string CsvContentType = "text/csv; charset=utf-8; header=present";

    private static readonly string[] MediaTypes = [Json, Csv];

    /// <summary>Maps the group.</summary>
    public static void MapPartsLists(this IEndpointRouteBuilder routes) => routes
        .MapPost("/v1/parts-lists", ListAsync)
        .WithName(ListParts)
        .WithTags("Documents")
        .WithSummary("List the small parts of a rack")
        .WithDescription(
            "Checks a rack and lists its small parts: nuts and screws, blanking panels where the airflow needs them, slides, runners, shelves, cable arms, "
            + "cords by type and length, earth leads by length and cross-sectional area, KVM leads, fans, filter mats, batteries, spares, and labels. Each "
            + "line has its reason, and a part number where the description gives one or a product on offer suits. With `Accept: text/csv` "
            + "it is CSV, which follows RFC 4180 with a header "
            + "row; text that begins with =, +, -, @, tab, carriage return or line feed gets an apostrophe in front, so that no spreadsheet takes it for "
            + "a formula.")
        .Accepts<RackDescription>(Json)
        .Produces<PartsList>(StatusCodes.Status200OK, Json, Csv)
        .ComputesIn(static pools => pools.Documents)
        .RequireScope(Scopes.Documents)
        .RefusesWithProblems();

    private static async Task ListAsync(
        HttpContext context, JsonRequest requests, ComputePools pools, DescriptionReader reader, PartLookUp parts, RackChecker checker, CheckMetrics metrics)
    {
        using var body = await requests.ReceiveAsync(context, pools.Documents, MediaTypes);
        if (body is null || await JsonRequest.ComputeAsync(context, pools.Documents, _ => reader.Read(body.Bytes)) is not { } read)
        {
            return;
        }

        body.GiveBack();
        if (read.Document is not { } description)
        {
            await requests.SendAsync(context, read.Refuse());
            return;
        }

        var mediaType = Negotiation.Choose(context.Request, MediaTypes)!;
        var needed = await parts.ForPlanAsync(ResolvedRack.PartNumbers(description), context.RequestAborted);
        var rack = PartLookUp.WithoutParts(description) ?? ResolvedRack.Of(description, needed.Found);
        var reply = await JsonRequest.ComputeAsync(context, pools.Documents, cancellation =>
        {
            if (reader.FaultsOf(rack) is { Count: > 0 } faults)
            {
                return new Reply(null, ProblemKind.Invalid, Problems.Contradiction, faults);
            }

            var (list, report) = PartsLists.Of(rack, checker, needed.Unavailable is null ? needed.Offered : null, cancellation);
            metrics.Count(report);
            if (mediaType == Json)
            {
                return new Reply(JsonAnswer.Prepare(list, ContractJson.Default.PartsList));
            }

            var answer = AnswerLease.Take();
            answer.Append(PartsCsv.Of(list));
            return new Reply(answer) { MediaType = CsvContentType };
        });
        if (reply is not null)
        {
            context.Response.Headers.Append(HeaderNames.Vary, HeaderNames.Accept);
            await requests.SendAsync(context, reply);
        }
    }
}
