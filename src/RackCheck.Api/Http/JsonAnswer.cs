using System.Buffers;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace RackCheck.Api.Http;

/// <summary>Writes an answer as JSON straight into the response's buffer.</summary>
internal static class JsonAnswer
{
    private const string MediaType = "application/json; charset=utf-8";

    // Answers are JSON documents of their own, never part of a page: "30 + 60 > 80" stays readable where the default encoder would
    // escape it for HTML.
    private static readonly JsonWriterOptions Options = new() { SkipValidation = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    [ThreadStatic]
    private static Utf8JsonWriter? spare;

    /// <summary>Writes a value.</summary>
    public static async Task WriteAsync<T>(HttpContext context, T value, JsonTypeInfo<T> type)
    {
        context.Response.ContentType = MediaType;
        Fill(context, value, type);
        await context.Response.BodyWriter.FlushAsync(context.RequestAborted);
    }

    /// <summary>Writes bytes made before.</summary>
    public static Task WriteAsync(HttpContext context, ReadOnlyMemory<byte> json)
    {
        context.Response.ContentType = MediaType;
        context.Response.ContentLength = json.Length;
        return context.Response.Body.WriteAsync(json, context.RequestAborted).AsTask();
    }

    /// <summary>The bytes of an answer that is made once.</summary>
    public static byte[] Bytes<T>(T value, JsonTypeInfo<T> type)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var writer = new Utf8JsonWriter(buffer, Options))
        {
            JsonSerializer.Serialize(writer, value, type);
        }

        return buffer.WrittenSpan.ToArray();
    }

    private static void Fill<T>(HttpContext context, T value, JsonTypeInfo<T> type)
    {
        var writer = spare ?? new Utf8JsonWriter(Stream.Null, Options);
        spare = null;
        writer.Reset(context.Response.BodyWriter);
        JsonSerializer.Serialize(writer, value, type);
        writer.Flush();
        writer.Reset(Stream.Null);
        spare = writer;
    }
}
