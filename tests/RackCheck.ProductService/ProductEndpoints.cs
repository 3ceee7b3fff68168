using System.Buffers;
using System.Text;
using System.Text.Json;
using RackCheck.Api.Admission;
using RackCheck.Api.Http;
using RackCheck.Api.Reading;
using RackCheck.Model;
using RackCheck.Model.Converters;
using RackCheck.Model.Json;

namespace RackCheck.ProductService;

/// <summary>The two operations of the contract, and GET and PUT /faults.</summary>
internal static class ProductEndpoints
{
    private const int MostBytes = 128 * 1024;
    private const int LargeBytes = 64 * 1024 * 1024;

    /// <summary>Maps the operations.</summary>
    public static void MapProducts(this IEndpointRouteBuilder routes)
    {
        routes.MapPost("/v1/products/look-up", LookUpAsync)
            .WithName("lookUpProducts")
            .WithTags("Products")
            .WithSummary("Look products up by part number")
            .WithDescription(
                "Returns the known products, in any order. Unknown part numbers are left out. The response contains no product that was not requested.")
            .Accepts<ProductLookUp>("application/json")
            .Produces<ProductList>(StatusCodes.Status200OK, "application/json")
            .Produces<Problem>(StatusCodes.Status400BadRequest, Problems.MediaType)
            .Produces<Problem>(StatusCodes.Status413PayloadTooLarge, Problems.MediaType)
            .Produces<Problem>(StatusCodes.Status415UnsupportedMediaType, Problems.MediaType)
            .Produces<Problem>(StatusCodes.Status422UnprocessableEntity, Problems.MediaType)
            .Produces<Problem>(StatusCodes.Status429TooManyRequests, Problems.MediaType)
            .Produces<Problem>(StatusCodes.Status503ServiceUnavailable, Problems.MediaType);

        routes.MapGet("/v1/products/offered", OfferedAsync)
            .WithName("listOfferedProducts")
            .WithTags("Products")
            .WithSummary("List the products that may be added to a basket")
            .WithDescription(
                "Returns the products that the rack check service may propose: cabinets, shelves, rails, KVM switches, roof fans, PDUs, earth bars and "
                + "leads, cords, blanking panels, fixings. Products of other kinds may be in the list; they are not proposed.")
            .Produces<ProductList>(StatusCodes.Status200OK, "application/json")
            .Produces<Problem>(StatusCodes.Status429TooManyRequests, Problems.MediaType)
            .Produces<Problem>(StatusCodes.Status503ServiceUnavailable, Problems.MediaType);
    }

    /// <summary>Maps the switch.</summary>
    public static void MapFaults(this IEndpointRouteBuilder routes)
    {
        routes
            .MapGet("/faults", (HttpContext context, FaultSwitch faults) =>
                JsonAnswer.WriteAsync(context, JsonAnswer.Prepare(faults.Order, FaultJson.Default.FaultOrder)))
            .ExcludeFromDescription();
        routes.MapPut("/faults", SetFaultAsync).ExcludeFromDescription();
    }

    private static async Task SetFaultAsync(HttpContext context, FaultSwitch faults)
    {
        try
        {
            faults.Set((await JsonSerializer.DeserializeAsync(context.Request.Body, FaultJson.Default.FaultOrder, context.RequestAborted))!);
            await JsonAnswer.WriteAsync(context, JsonAnswer.Prepare(faults.Order, FaultJson.Default.FaultOrder));
        }
        catch (JsonException)
        {
            await Problems.WriteAsync(
                context,
                StatusCodes.Status400BadRequest,
                $"A fault has a kind and may have delayMs, retryAfterS and times. Kinds: {string.Join(", ", NamedEnumConverter<FaultKind>.Names)}.");
        }
    }

    private static async Task LookUpAsync(HttpContext context, ProductList catalogue, FaultSwitch faults)
    {
        if (!Negotiation.SendsJson(context.Request))
        {
            await Problems.WriteAsync(context, StatusCodes.Status415UnsupportedMediaType, "Send the part numbers as application/json in UTF-8.");
            return;
        }

        var (read, refusal) = await RequestBody.ReadAsync(
            context.Request, ArrayPool<byte>.Shared, new MemoryBudget(long.MaxValue), MostBytes, context.RequestAborted);
        using var body = read;
        if (body is null)
        {
            await Problems.WriteAsync(context, refusal!);
            return;
        }

        var found = new FaultList();
        if (Read(body.Bytes, found) is not { } lookUp)
        {
            var status = found.ToList() is [{ Code: FaultCodes.NotJson }] ? StatusCodes.Status400BadRequest : StatusCodes.Status422UnprocessableEntity;
            await Problems.WriteAsync(context, ProblemKind.Of(status), errors: found.ToList());
            return;
        }

        body.GiveBack();
        var wanted = lookUp.PartNumbers.ToHashSet(StringComparer.Ordinal);
        var order = faults.Take(wanted.Count);
        var products = catalogue.Products.Where(p => wanted.Contains(p.PartNumber) || order.Kind == FaultKind.NotAskedFor).ToList();
        await AnswerAsync(context, order, LetsIn(context, faults), products);
    }

    private static Task OfferedAsync(HttpContext context, ProductList catalogue, FaultSwitch faults) =>
        AnswerAsync(context, faults.Take(0), LetsIn(context, faults), catalogue.Products);

    private static bool LetsIn(HttpContext context, FaultSwitch faults) => faults.LetsIn?.Invoke(context.Request.Headers) != false;

    private static ProductLookUp? Read(ReadOnlyMemory<byte> body, FaultList faults)
    {
        if (!RequestDiagnostics.IsJson(body.Span, faults)
            || !faults.IsEmpty
            || RequestDiagnostics.Find(body, ContractJson.Default.ProductLookUp, faults) is not { } lookUp
            || !faults.IsEmpty)
        {
            return null;
        }

        RangeValidation<ProductLookUp>.Instance.Report(lookUp, "", faults);
        return faults.IsEmpty ? lookUp : null;
    }

    private static async Task AnswerAsync(HttpContext context, FaultOrder order, bool isLetIn, IReadOnlyList<Product> products)
    {
        var json = JsonAnswer.Bytes(new ProductList { Products = order.Kind == FaultKind.UnknownPart ? [] : products }, ContractJson.Default.ProductList);
        if (!isLetIn)
        {
            await Problems.WriteAsync(context, StatusCodes.Status401Unauthorized);
            return;
        }

        switch (order.Kind)
        {
            case FaultKind.Slow:
                await Task.Delay(order.DelayMs ?? 1000, context.RequestAborted);
                break;
            case FaultKind.Reset:
                context.Abort();
                return;
            case FaultKind.ResetMidway:
                context.Response.ContentType = "application/json";
                context.Response.ContentLength = json.Length;
                await context.Response.Body.WriteAsync(json.AsMemory(0, json.Length / 2), context.RequestAborted);
                await context.Response.Body.FlushAsync(context.RequestAborted);
                context.Abort();
                return;
            case FaultKind.Failed:
                await Problems.WriteAsync(context, StatusCodes.Status500InternalServerError);
                return;
            case FaultKind.Busy:
                context.Response.Headers.RetryAfter = (order.RetryAfterS ?? 1).ToString(System.Globalization.CultureInfo.InvariantCulture);
                await Problems.WriteAsync(context, StatusCodes.Status429TooManyRequests);
                return;
            case FaultKind.NotFound:
                await Problems.WriteAsync(context, StatusCodes.Status404NotFound);
                return;
            case FaultKind.BadRequest:
                await Problems.WriteAsync(context, StatusCodes.Status400BadRequest);
                return;
            case FaultKind.Redirect:
                context.Response.Redirect(context.Request.Path);
                return;
            case FaultKind.TruncatedJson:
                json = json[..(json.Length / 2)];
                break;
            case FaultKind.WrongContentType:
                context.Response.ContentType = "text/html";
                await context.Response.Body.WriteAsync("<title>Sign in</title>"u8.ToArray(), context.RequestAborted);
                return;
            case FaultKind.WrongSchema:
                json = Spoil(products, "\"warehouse\":7,\"partNumber\"");
                break;
            case FaultKind.WrongValue:
                json = Spoil(products, "\"pieces\":0,\"partNumber\"");
                break;
            case FaultKind.Nameless:
                json = Spoil(products, "\"partNumber\":7,\"label\"");
                break;
            case FaultKind.TooLarge:
                await WriteLargeAsync(context);
                return;
        }

        await JsonAnswer.WriteAsync(context, json);
    }

    // Another text in place of the name of the first product's first member.
    private static byte[] Spoil(IReadOnlyList<Product> products, string text)
    {
        const string Name = "\"partNumber\"";
        var list = new ProductList { Products = [products[0] with { Pieces = null }, .. products.Skip(1)] };
        var json = Encoding.UTF8.GetString(JsonAnswer.Bytes(list, ContractJson.Default.ProductList));
        var at = json.IndexOf(Name, StringComparison.Ordinal);
        return Encoding.UTF8.GetBytes(json[..at] + text + json[(at + Name.Length)..]);
    }

    // Valid JSON without a Content-Length header: only a client that counts while reading notices the size.
    private static async Task WriteLargeAsync(HttpContext context)
    {
        context.Response.ContentType = "application/json";
        await context.Response.Body.WriteAsync("{\"products\":["u8.ToArray(), context.RequestAborted);
        var blanks = Encoding.ASCII.GetBytes(new string(' ', 64 * 1024));
        for (var written = 0; written < LargeBytes; written += blanks.Length)
        {
            await context.Response.Body.WriteAsync(blanks, context.RequestAborted);
        }

        await context.Response.Body.WriteAsync("]}"u8.ToArray(), context.RequestAborted);
    }
}
