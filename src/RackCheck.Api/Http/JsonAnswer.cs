using System.Buffers;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace RackCheck.Api.Http;

/// <summary>
/// Writes JSON responses. A response is complete in memory before its first byte is sent, so that a failure before that still gives a problem document.
/// </summary>
internal static class JsonAnswer
{
    /// <summary>Media type of a response.</summary>
    public const string MediaType = "application/json; charset=utf-8";

    /// <summary>Maximum length of a response, bytes.</summary>
    public const int MostBytes = 2_000_000;

    /// <summary>
    /// Options of the writer. Responses are JSON documents, never part of an HTML page. "30 + 60 > 80" stays readable; the default encoder would escape it.
    /// </summary>
    public static readonly JsonWriterOptions Options = new() { SkipValidation = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Prepares a response.</summary>
    /// <param name="value">The value.</param>
    /// <param name="type">The serializer's metadata of its type.</param>
    /// <param name="shorten">Shortens a value by a number of bytes; null if the value cannot be too long.</param>
    /// <returns>The response; the caller sends it.</returns>
    public static AnswerLease Prepare<T>(T value, JsonTypeInfo<T> type, Func<T, int, T>? shorten = null) =>
        Prepare(value, (writer, own) => JsonSerializer.Serialize(writer, own, type), shorten);

    /// <summary>Prepares a response.</summary>
    /// <param name="value">The value.</param>
    /// <param name="write">Writes the value.</param>
    /// <param name="shorten">Shortens a value by a number of bytes; null if the value cannot be too long.</param>
    /// <returns>The response; the caller sends it.</returns>
    public static AnswerLease Prepare<T>(T value, Action<Utf8JsonWriter, T> write, Func<T, int, T>? shorten)
    {
        // Not given back after a failure: the buffer may still be in use.
        var lease = AnswerLease.Take();
        Fill(lease, value, write);
        if (lease.Written.Length > MostBytes && shorten is not null)
        {
            var shorter = shorten(value, lease.Written.Length - MostBytes);
            lease.Clear();
            Fill(lease, shorter, write);
        }

        return lease;
    }

    /// <summary>Sends a prepared response.</summary>
    /// <returns>Completes when the server has taken the response.</returns>
    public static async Task WriteAsync(HttpContext context, AnswerLease prepared, string mediaType = MediaType)
    {
        await SendAsync(context, prepared.Written, mediaType);
        prepared.GiveBack();
    }

    /// <summary>Writes a response that is made once.</summary>
    public static Task WriteAsync(HttpContext context, ReadOnlyMemory<byte> json) => SendAsync(context, json, MediaType);

    /// <summary>Sends a complete response. On failure the connection is closed, so that no caller takes a partial response for a complete one.</summary>
    /// <returns>Completes when the server has taken all bytes.</returns>
    public static async Task SendAsync(HttpContext context, ReadOnlyMemory<byte> body, string mediaType)
    {
        try
        {
            context.Response.ContentType = mediaType;
            context.Response.ContentLength = body.Length;
            await context.Response.Body.WriteAsync(body, context.RequestAborted);
        }
        catch
        {
            context.Abort();
            throw;
        }
    }

    /// <summary>Length of a value as JSON, bytes.</summary>
    public static int Length<T>(T value, JsonTypeInfo<T> type)
    {
        var lease = AnswerLease.Take();
        Fill(lease, value, (writer, own) => JsonSerializer.Serialize(writer, own, type));
        var length = lease.Written.Length;
        lease.GiveBack();
        return length;
    }

    /// <summary>A value as JSON, for a response that is made once.</summary>
    public static byte[] Bytes<T>(T value, JsonTypeInfo<T> type)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var writer = new Utf8JsonWriter(buffer, Options))
        {
            JsonSerializer.Serialize(writer, value, type);
        }

        return buffer.WrittenSpan.ToArray();
    }

    private static void Fill<T>(AnswerLease lease, T value, Action<Utf8JsonWriter, T> write)
    {
        write(lease.Writer, value);
        lease.Writer.Flush();
    }
}
