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
    private const string MediaType = "application/json; charset=utf-8";

    // Responses are JSON documents, never part of an HTML page. "30 + 60 > 80" stays readable; the default encoder would escape it.
    private static readonly JsonWriterOptions Options = new() { SkipValidation = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Maximum length of a response, bytes.</summary>
    public const int MostBytes = 2_000_000;

    /// <summary>Writes a value.</summary>
    /// <param name="context">The request.</param>
    /// <param name="value">The value.</param>
    /// <param name="type">The serializer's metadata of its type.</param>
    /// <param name="shorten">Shortens a value by a number of bytes; null if the value cannot be too long.</param>
    /// <returns>Completes when the server has taken the response.</returns>
    public static async Task WriteAsync<T>(HttpContext context, T value, JsonTypeInfo<T> type, Func<T, int, T>? shorten = null)
    {
        // Not in a finally block: after a failure the buffer is dropped, since it may still be in use.
        var lease = AnswerLease.Take();
        Fill(lease, value, type);
        if (lease.Written.Length > MostBytes && shorten is not null)
        {
            var shorter = shorten(value, lease.Written.Length - MostBytes);
            lease.Clear();
            Fill(lease, shorter, type);
        }

        await WriteAsync(context, lease.Written);
        lease.GiveBack();
    }

    /// <summary>Writes a prepared response.</summary>
    public static Task WriteAsync(HttpContext context, ReadOnlyMemory<byte> json) => SendAsync(context, json, MediaType);

    /// <summary>Sends a complete response. On failure the connection is closed, so that no caller takes a partial response for a complete one.</summary>
    /// <returns>Completes when the server has taken all bytes.</returns>
    public static async Task SendAsync(HttpContext context, ReadOnlyMemory<byte> body, string mediaType)
    {
        try
        {
            context.Response.ContentType = mediaType;
            context.Response.ContentLength = body.Length;
            if (!HttpMethods.IsHead(context.Request.Method))
            {
                await context.Response.Body.WriteAsync(body, context.RequestAborted);
            }
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
        Fill(lease, value, type);
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

    private static void Fill<T>(AnswerLease lease, T value, JsonTypeInfo<T> type)
    {
        JsonSerializer.Serialize(lease.Writer, value, type);
        lease.Writer.Flush();
    }

    // A buffer and its writer. It has one owner, which gives it back once, after success, for the next response on this thread.
    private sealed class AnswerLease
    {
        private const int FirstBytes = 16 * 1024;
        private const int MostBytesKept = 256 * 1024;

        [ThreadStatic]
        private static AnswerLease? spare;

        private readonly ArrayBufferWriter<byte> buffer = new(FirstBytes);

        private AnswerLease() => Writer = new Utf8JsonWriter(buffer, Options);

        public Utf8JsonWriter Writer { get; }

        public ReadOnlyMemory<byte> Written => buffer.WrittenMemory;

        public static AnswerLease Take()
        {
            var lease = spare ?? new AnswerLease();
            spare = null;
            return lease;
        }

        public void Clear()
        {
            buffer.ResetWrittenCount();
            Writer.Reset();
        }

        public void GiveBack()
        {
            if (buffer.Capacity <= MostBytesKept)
            {
                Clear();
                spare = this;
            }
        }
    }
}
