using System.Buffers;

namespace RackCheck.Api.Http;

/// <summary>The whole body of a request in memory, borrowed from the pool.</summary>
/// <remarks>The framework's own readers answer a bad body without a word of why; hence the service reads bodies itself.</remarks>
internal sealed class RequestBody : IDisposable
{
    private const int FirstBytes = 16 * 1024;
    private byte[] buffer;
    private int length;

    private RequestBody(int capacity) => buffer = ArrayPool<byte>.Shared.Rent(capacity);

    /// <summary>The bytes.</summary>
    public ReadOnlyMemory<byte> Bytes => buffer.AsMemory(0, length);

    /// <summary>Reads a body.</summary>
    /// <param name="request">The request.</param>
    /// <param name="mostBytes">Bytes that it may have.</param>
    /// <param name="cancellation">Stops reading.</param>
    /// <returns>The body, or null where it is larger.</returns>
    /// <exception cref="BadHttpRequestException">The connection's own limits, or a body that breaks off.</exception>
    public static async ValueTask<RequestBody?> ReadAsync(HttpRequest request, int mostBytes, CancellationToken cancellation)
    {
        if (request.ContentLength > mostBytes)
        {
            return null;
        }

        var body = new RequestBody(Math.Min((int)(request.ContentLength ?? FirstBytes) + 1, mostBytes + 1));
        try
        {
            while (true)
            {
                var read = await request.Body.ReadAsync(body.buffer.AsMemory(body.length), cancellation);
                body.length += read;
                if (read == 0)
                {
                    return body;
                }

                if (body.length > mostBytes)
                {
                    body.Dispose();
                    return null;
                }

                body.GrowWhenFull();
            }
        }
        catch
        {
            body.Dispose();
            throw;
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (buffer.Length > 0)
        {
            ArrayPool<byte>.Shared.Return(buffer);
            buffer = [];
            length = 0;
        }
    }

    private void GrowWhenFull()
    {
        if (length < buffer.Length)
        {
            return;
        }

        var larger = ArrayPool<byte>.Shared.Rent(2 * buffer.Length);
        buffer.AsSpan(0, length).CopyTo(larger);
        ArrayPool<byte>.Shared.Return(buffer);
        buffer = larger;
    }
}
