using System.Buffers;

namespace RackCheck.Api.Http;

/// <summary>The whole body of a request in memory, borrowed from a pool.</summary>
/// <remarks>
/// The framework's own readers answer a bad body without a word of why; hence the service reads bodies itself. A body has one owner, which gives
/// it back once, and only when all went well: after a failure, that of the pool included, nobody can say who still writes to the buffer, and a
/// buffer that is given back twice serves two requests at a time. What is not given back is the garbage collector's.
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
    /// <param name="pool">Where buffers come from.</param>
    /// <param name="mostBytes">Bytes that it may have.</param>
    /// <param name="cancellation">Stops reading.</param>
    /// <returns>The body, or null where it is larger.</returns>
    /// <exception cref="BadHttpRequestException">The connection's own limits, or a body that breaks off.</exception>
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

    /// <summary>Gives the buffer back, once: whoever read from it is done, and nothing failed.</summary>
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

        // Before it is given back: a pool that fails while it takes a buffer may have taken it all the same.
        buffer = larger;
        pool.Return(smaller);
    }
}
