using System.Buffers;
using RackCheck.Api.Reading;
using RackCheck.Model;

namespace RackCheck.Api.Http;

/// <summary>Reads a JSON document from a request, or writes a problem document.</summary>
internal static class JsonRequest
{
    /// <summary>Adds the problem responses of a request with a document to the contract.</summary>
    public static RouteHandlerBuilder RefusesWithProblems(this RouteHandlerBuilder operation)
    {
        foreach (var status in (ReadOnlySpan<int>)[400, 406, 413, 415, 422, 503])
        {
            operation.Produces<Problem>(status, Problems.MediaType);
        }

        return operation;
    }

    /// <summary>Reads the document of a request.</summary>
    /// <typeparam name="T">The record type.</typeparam>
    /// <returns>The document; null if a problem document was written.</returns>
    public static async ValueTask<T?> ReadAsync<T>(HttpContext context, RequestReader<T> reader, int mostBytes)
        where T : class
    {
        if (!Negotiation.TakesJson(context.Request))
        {
            await Problems.WriteAsync(context, StatusCodes.Status406NotAcceptable, "The response is application/json.");
            return null;
        }

        if (!Negotiation.SendsJson(context.Request))
        {
            await Problems.WriteAsync(context, StatusCodes.Status415UnsupportedMediaType, "Send the description as application/json in UTF-8.");
            return null;
        }

        var pool = context.RequestServices.GetRequiredService<ArrayPool<byte>>();
        if (await RequestBody.ReadAsync(context.Request, pool, mostBytes, context.RequestAborted) is not { } body)
        {
            await Problems.WriteAsync(context, StatusCodes.Status413PayloadTooLarge, $"The maximum length of a request body is {mostBytes} bytes.");
            return null;
        }

        var result = reader.Read(body.Bytes);
        body.GiveBack();
        if (result.Document is null)
        {
            await (result.IsJson
                ? Problems.WriteAsync(context, StatusCodes.Status422UnprocessableEntity, Problems.NothingChecked, result.Faults)
                : Problems.WriteAsync(context, StatusCodes.Status400BadRequest, result.Faults[0].Detail, result.Faults));
        }

        return result.Document;
    }
}
