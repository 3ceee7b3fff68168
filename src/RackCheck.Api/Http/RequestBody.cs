using System.Buffers;

namespace RackCheck.Api.Http;

/// <summary>The complete body of a request, in a pooled buffer.</summary>
/// <remarks>
/// The framework's readers refuse a bad body without a reason, so the service reads bodies itself. A body has one owner, which returns the buffer
/// once, and only after success. After a failure, also of the pool, the buffer may still be in use, and a buffer returned twice would serve two
/// requests at a time. A buffer that is not returned is left to the garbage collector.
/// </remarks>
internal sealed class RequestBody
{
    private const int FirstBytes = 16 * 1024;
    private readonly ArrayPool<byte> pool;
    private byte[] buffer;
    private int length;

    private RequestBody(ArrayPool<byte> pool, int capacity) => (this.pool, buffer) = (pool, pool.Rent(capacity));

    /// <summary>The bytes.</summary>
    public ReadOnlyMemory<byte> Bytes => buffer.AsMemory(0, length);

    /// <summary>Reads a body.</summary>
    /// <param name="request">The request.</param>
    /// <param name="pool">Pool of buffers.</param>
    /// <param name="mostBytes">Maximum length, bytes.</param>
    /// <param name="cancellation">Stops reading.</param>
    /// <returns>The body; null if it is larger.</returns>
    /// <exception cref="BadHttpRequestException">A limit of the connection is exceeded, or the body is incomplete.</exception>
    public static async ValueTask<RequestBody?> ReadAsync(HttpRequest request, ArrayPool<byte> pool, int mostBytes, CancellationToken cancellation)
    {
        if (request.ContentLength > mostBytes)
        {
            return null;
        }

        var body = new RequestBody(pool, Math.Min((int)(request.ContentLength ?? FirstBytes) + 1, mostBytes + 1));
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
                body.GiveBack();
                return null;
            }

            body.GrowWhenFull();
        }
    }

    /// <summary>Returns the buffer to the pool, once, after successful use.</summary>
    public void GiveBack()
    {
        var lease = buffer;
        buffer = [];
        length = 0;
        if (lease.Length > 0)
        {
            pool.Return(lease);
        }
    }

    private void GrowWhenFull()
    {
        if (length < buffer.Length)
        {
            return;
        }

        var smaller = buffer;
        var larger = pool.Rent(2 * smaller.Length);
        smaller.AsSpan(0, length).CopyTo(larger);

        // Assigned before the return: a pool that throws on return may still have taken the buffer.
        buffer = larger;
        pool.Return(smaller);
    }
}
