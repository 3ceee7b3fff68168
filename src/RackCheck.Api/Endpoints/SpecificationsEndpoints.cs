using System.Security.Cryptography;
using System.Text;
using Microsoft.Net.Http.Headers;
using RackCheck.Api.Access;
using RackCheck.Api.Admission;
using RackCheck.Api.Catalogue;
using RackCheck.Api.Http;
using RackCheck.Api.Reading;
using RackCheck.Api.Telemetry;
using RackCheck.Documents.Sheets;
using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Api.Endpoints;

/// <summary>POST /v1/specifications.</summary>
internal static class SpecificationsEndpoints
{
    /// <summary>Name of the operation in the contract.</summary>
    public const string WriteSheet = "writeSheet";

    /// <summary>Query parameter that chooses the document.</summary>
    public const string DocumentParameter = "document";

    /// <summary>Media type of HTML.</summary>
    public const string Html = "text/html";

    /// <summary>Media type of PDF.</summary>
    public const string Pdf = "application/pdf";

    private const string HtmlContentType = "text/html; charset=utf-8";

    private static readonly string[] MediaTypes = [Html, Pdf];

    private static readonly Dictionary<string, SheetKind> Documents = new(StringComparer.Ordinal)
    {
        ["specification"] = SheetKind.Specification, ["packing-list"] = SheetKind.PackingList, ["installation"] = SheetKind.Installation,
        ["service"] = SheetKind.Service,
    };

    /// <summary>Names of the documents.</summary>
    public static IEnumerable<string> DocumentNames => Documents.Keys;

    /// <summary>Maps the group.</summary>
    public static void MapSpecifications(this IEndpointRouteBuilder routes) => routes
        .MapPost("/v1/specifications", WriteAsync)
        .WithName(WriteSheet)
        .WithTags("Documents")
        .WithSummary("Write the sheets of an order")
        .WithDescription(
            "Checks a rack and writes a document of its order, as HTML or, where the header `Accept` is `application/pdf`, as PDF. The specification "
            + "has the verdicts with their reasons, the drawing, "
            + "equipment, power, cooling, masses and earthing with their arithmetic, small parts, findings, questions, acceptances, sign-offs and "
            + "assumptions. The packing list and delivery note has pieces, masses, pallet, the delivery route with its tightest place, and what the "
            + "receiver has ready. The installation sheet has the order of work from the bottom up, fixings, earthing, cords outlet by outlet, and checks "
            + "before switching on. The service sheet has what comes out where, what to switch off for it, fans, filter mats, batteries and spares. Each "
            + "names digest and ruleset, and says when the rack is not released. The same request gives the same bytes.")
        .Accepts<RackDescription>("application/json")
        .Produces<string>(StatusCodes.Status200OK, Html, Pdf)
        .ComputesIn(static pools => pools.Documents)
        .RequireScope(Scopes.Documents)
        .TakesQuery(DocumentParameter)
        .RefusesWithProblems();

    private static async Task WriteAsync(
        HttpContext context, JsonRequest requests, ComputePools pools, DescriptionReader reader, PartLookUp parts, RackChecker checker, CheckMetrics metrics)
    {
        if (KindOf(context.Request.Query) is not { } kind)
        {
            await Problems.WriteQueryAsync(
                context, DocumentParameter, $"The query parameter '{DocumentParameter}' is one of {string.Join(", ", Documents.Keys)}.");
            return;
        }

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
        var policy = "";
        var reply = await JsonRequest.ComputeAsync(context, pools.Documents, cancellation =>
        {
            if (reader.FaultsOf(rack) is { Count: > 0 } faults)
            {
                return new Reply(null, ProblemKind.Invalid, Problems.Contradiction, faults);
            }

            var (sheet, report) = OrderSheets.Of(rack, checker, kind, needed.Unavailable is null ? needed.Offered : null, cancellation);
            metrics.Count(report);
            var answer = AnswerLease.Take();
            if (mediaType == Pdf)
            {
                answer.Append(SheetPdf.Document(sheet));
                return new Reply(answer) { MediaType = Pdf };
            }

            policy = ContentSecurityPolicyOf(sheet);
            answer.Append(SheetHtml.Document(sheet));
            return new Reply(answer) { MediaType = HtmlContentType };
        });
        if (reply is not null)
        {
            context.Response.Headers.Append(HeaderNames.Vary, HeaderNames.Accept);
            if (policy.Length > 0)
            {
                context.Response.Headers.ContentSecurityPolicy = policy;
            }

            await requests.SendAsync(context, reply);
        }
    }

    // A page that is opened by itself runs nothing and loads nothing; the hashes allow its own style sheets.
    private static string ContentSecurityPolicyOf(Sheet sheet) => "default-src 'none'; style-src "
        + string.Join(' ', SheetHtml.Styles(sheet).Select(s => $"'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(s)))}'"));

    // Null for an unsupported value.
    private static SheetKind? KindOf(IQueryCollection query) =>
        !query.TryGetValue(DocumentParameter, out var value) ? SheetKind.Specification
        : value.Count == 1 && Documents.TryGetValue(value[0]!, out var kind) ? kind
        : null;
}
