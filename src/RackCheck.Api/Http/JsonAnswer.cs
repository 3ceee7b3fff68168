using System.Buffers;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace RackCheck.Api.Http;

/// <summary>Writes answers as JSON: each is whole in memory before its first byte is sent, so a failure while it is made still gets a problem document.</summary>
internal static class JsonAnswer
{
    private const string MediaType = "application/json; charset=utf-8";

    // Answers are JSON documents of their own, never part of a page: "30 + 60 > 80" stays readable where the default encoder would
    // escape it for HTML.
    private static readonly JsonWriterOptions Options = new() { SkipValidation = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Bytes that an answer has at most.</summary>
    public const int MostBytes = 2_000_000;

    /// <summary>Writes a value.</summary>
    /// <param name="context">The request.</param>
    /// <param name="value">The value.</param>
    /// <param name="type">The serializer's metadata of it.</param>
    /// <param name="shorten">Makes of a value that is too long one that is shorter by so many bytes; absent where none can be too long.</param>
    /// <returns>Done when the server has taken it.</returns>
    public static async Task WriteAsync<T>(HttpContext context, T value, JsonTypeInfo<T> type, Func<T, int, T>? shorten = null)
    {
        // Not in a finally: after a failure the lease is dropped, since nobody can say who still reads from it.
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

    /// <summary>Writes bytes made before.</summary>
    public static Task WriteAsync(HttpContext context, ReadOnlyMemory<byte> json) => SendAsync(context, json, MediaType);

    /// <summary>Sends a whole answer. Where that fails, the connection is closed: a caller never takes half an answer for a whole one.</summary>
    /// <param name="context">The request.</param>
    /// <param name="body">The bytes.</param>
    /// <param name="mediaType">Their form.</param>
    /// <returns>Done when the server has taken them all.</returns>
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

    /// <summary>How many bytes a value takes as an answer.</summary>
    public static int Length<T>(T value, JsonTypeInfo<T> type)
    {
        var lease = AnswerLease.Take();
        Fill(lease, value, type);
        var length = lease.Written.Length;
        lease.GiveBack();
        return length;
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

    private static void Fill<T>(AnswerLease lease, T value, JsonTypeInfo<T> type)
    {
        JsonSerializer.Serialize(lease.Writer, value, type);
        lease.Writer.Flush();
    }

    // A buffer and its writer. Whoever takes one owns it alone; it goes back once, when all went well, for the next answer that this thread makes.
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
