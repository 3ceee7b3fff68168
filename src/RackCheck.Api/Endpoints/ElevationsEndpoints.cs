using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Microsoft.Net.Http.Headers;
using RackCheck.Api.Access;
using RackCheck.Api.Admission;
using RackCheck.Api.Catalogue;
using RackCheck.Api.Http;
using RackCheck.Api.Reading;
using RackCheck.Api.Telemetry;
using RackCheck.Documents.Drawings;
using RackCheck.Documents.Drawings.Elevations;
using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Survey.Catalogue;
using static System.FormattableString;

namespace RackCheck.Api.Endpoints;

/// <summary>POST /v1/elevations.</summary>
internal static class ElevationsEndpoints
{
    /// <summary>Name of the operation in the contract.</summary>
    public const string DrawRacks = "drawRacks";

    /// <summary>Query parameter that chooses the sides to draw.</summary>
    public const string ViewParameter = "view";

    /// <summary>Query parameter that sets the width of a PNG.</summary>
    public const string WidthParameter = "width";

    /// <summary>Query parameter that leaves out what stands around the racks.</summary>
    public const string FrameParameter = "frame";

    /// <summary>Query parameter that keeps an SVG light.</summary>
    public const string ThemeParameter = "theme";

    /// <summary>Values of the frame: the sheet, which is the default, or the rack alone.</summary>
    public static readonly string[] Frames = ["sheet", "none"];

    /// <summary>Values of the theme: as the viewer prefers, which is the default, or light.</summary>
    public static readonly string[] Themes = ["auto", "light"];

    /// <summary>Media type of SVG.</summary>
    public const string Svg = "image/svg+xml";

    /// <summary>Media type of PNG.</summary>
    public const string Png = "image/png";

    /// <summary>Narrowest PNG, pixels.</summary>
    public const int LeastWidth = 200;

    /// <summary>Widest PNG, pixels.</summary>
    public const int MostWidth = 8_000;

    /// <summary>Width of a PNG for each rack where none is asked for, pixels.</summary>
    public const int DefaultWidth = 1_600;

    /// <summary>Most pixels of a PNG, which takes a byte for each while it is made.</summary>
    public const long MostPixels = 16_000_000;

    private static readonly string[] MediaTypes = [Svg, Png];

    private static readonly Dictionary<string, ElevationView> Views = new(StringComparer.Ordinal)
    {
        ["all"] = ElevationView.All, ["front"] = ElevationView.Front, ["rear"] = ElevationView.Rear, ["side"] = ElevationView.Side,
    };

    // A drawing that is opened by itself runs nothing and loads nothing; the hash allows its one style sheet.
    private static readonly string ContentSecurityPolicy =
        $"default-src 'none'; style-src 'sha256-{HashOf(SvgWriter.Style)}' 'sha256-{HashOf(SvgWriter.LightStyle)}'";

    private static string HashOf(string style) => Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(style)));

    /// <summary>Names of the views.</summary>
    public static IEnumerable<string> ViewNames => Views.Keys;

    /// <summary>Maps the group.</summary>
    public static void MapElevations(this IEndpointRouteBuilder routes) => routes
        .MapPost("/v1/elevations", DrawAsync)
        .WithName(DrawRacks)
        .WithTags("Documents")
        .WithSummary("Draw racks")
        .WithDescription(
            "Checks racks and draws them to scale 1:10 on one sheet: front, rear and side, U numbers, masses, free U positions, doors, uprights, PDUs, cords "
            + "by feed, airflow, the depth stack of the deepest item, and the findings at their places with a legend. Takes one rack as a check does, up to "
            + "six racks, or a rack before and after a change, with what is new, goes and moved marked. Items are groups with `data-item`, `data-u` (as "
            + "given), `data-height-u` and `data-face`; findings have `data-fingerprint`. A sheet marks the 300 most severe findings and "
            + "counts the rest. With `Accept: image/png` the drawing is a picture. The same request gives the same bytes. "
            + "![A rack elevation](../../docs/elevation.svg)")
        .Accepts<RackDescription>("application/json")
        .Produces<string>(StatusCodes.Status200OK, Svg, Png)
        .ComputesIn(static pools => pools.Documents)
        .RequireScope(Scopes.Documents)
        .TakesQuery(ViewParameter, WidthParameter, FrameParameter, ThemeParameter)
        .RefusesWithProblems();

    private static async Task DrawAsync(
        HttpContext context, JsonRequest requests, ComputePools pools, ElevationReader reader, DescriptionReader descriptions, PartLookUp parts,
        RackChecker checker, CheckMetrics metrics)
    {
        if (ViewOf(context.Request.Query) is not { } view)
        {
            await Problems.WriteQueryAsync(
                context, ViewParameter, $"The query parameter '{ViewParameter}' is one of {string.Join(", ", Views.Keys)}.");
            return;
        }

        if (WidthOf(context.Request.Query) is not { } wanted)
        {
            await Problems.WriteQueryAsync(
                context, WidthParameter, Invariant($"The query parameter '{WidthParameter}' is a whole number from {LeastWidth} to {MostWidth}."));
            return;
        }

        foreach (var (name, values) in ((string, string[])[])[(FrameParameter, Frames), (ThemeParameter, Themes)])
        {
            if (context.Request.Query.TryGetValue(name, out var value) && !(value.Count == 1 && values.Contains(value[0])))
            {
                await Problems.WriteQueryAsync(context, name, $"The query parameter '{name}' is one of {string.Join(", ", values)}.");
                return;
            }
        }

        var isAlone = context.Request.Query[FrameParameter] == Frames[1];
        var isLight = context.Request.Query[ThemeParameter] == Themes[1];
        using var body = await requests.ReceiveAsync(context, pools.Documents, MediaTypes);
        if (body is null)
        {
            return;
        }

        var mediaType = Negotiation.Choose(context.Request, MediaTypes)!;
        var isOneRack = false;
        if (await JsonRequest.ComputeAsync(context, pools.Documents, _ => reader.Read(body.Bytes, out isOneRack)) is not { } read)
        {
            return;
        }

        body.GiveBack();
        if (read.Document is not { } request)
        {
            await requests.SendAsync(context, read.Refuse());
            return;
        }

        if (isAlone && request.Racks is not [_])
        {
            await Problems.WriteQueryAsync(context, FrameParameter, $"With '{FrameParameter}={Frames[1]}' the request has one rack.");
            return;
        }

        var racks = new List<(string Pointer, ResolvedRack Rack)>();
        foreach (var (pointer, rack) in Sides(request, isOneRack))
        {
            racks.Add((pointer, await parts.ResolveAsync(rack, context.RequestAborted)));
        }

        var reply = await JsonRequest.ComputeAsync(context, pools.Documents, cancellation =>
        {
            List<Fault> faults = [.. racks.SelectMany(r => descriptions.FaultsOf(r.Rack).Select(f => f with { Pointer = r.Pointer + f.Pointer }))];
            if (faults.Count > 0)
            {
                return new Reply(null, ProblemKind.Invalid, Problems.Contradiction, faults);
            }

            IReadOnlyList<DrawnRack> drawn = [.. racks.Select(r => DrawnRack.Of(r.Rack, checker, cancellation))];
            foreach (var rack in drawn)
            {
                metrics.Count(rack.Report);
            }

            drawn = request.Racks is null ? DrawnRack.Compare(drawn[0], drawn[1]) : drawn;
            var drawing = (isAlone ? ElevationDrawing.Figure(drawn[0], ElevationDrawing.ViewsOf(view)) : null) ?? ElevationDrawing.Of(drawn, view);
            var width = wanted > 0 ? wanted : Math.Min(MostWidth, DefaultWidth * drawn.Count);
            var answer = AnswerLease.Take();
            if (mediaType == Png)
            {
                answer.Append(SkiaPainter.Png(drawing, width, MostPixels));
            }
            else
            {
                SvgWriter.Document(drawing, answer.Bytes, isLight);
            }

            return new Reply(answer) { MediaType = mediaType };
        });
        if (reply is not null)
        {
            context.Response.Headers.Append(HeaderNames.Vary, HeaderNames.Accept);
            context.Response.Headers.ContentSecurityPolicy = ContentSecurityPolicy;
            await requests.SendAsync(context, reply);
        }
    }

    private static IEnumerable<(string Pointer, RackDescription Rack)> Sides(ElevationRequest request, bool isOneRack) =>
        request.Racks is { } racks ? racks.Select((r, i) => (isOneRack ? "" : Invariant($"/racks/{i}"), r))
        : [("/before", request.Before!), ("/after", request.After!)];

    // Null for an unsupported value.
    private static ElevationView? ViewOf(IQueryCollection query) =>
        !query.TryGetValue(ViewParameter, out var value) ? ElevationView.All
        : value.Count == 1 && Views.TryGetValue(value[0]!, out var view) ? view
        : null;

    // 0 where none is asked for.
    private static int? WidthOf(IQueryCollection query) =>
        !query.TryGetValue(WidthParameter, out var value) ? 0
        : value.Count == 1 && int.TryParse(value[0], NumberStyles.None, CultureInfo.InvariantCulture, out var width) && width is >= LeastWidth and <= MostWidth
            ? width
            : null;
}
