using System.Buffers;
using RackCheck.Api.Admission;

namespace RackCheck.Api.Http;

/// <summary>The complete body of a request, in a pooled buffer.</summary>
/// <remarks>
/// The framework's readers refuse a bad body without a reason, so the service reads bodies itself. A body has one owner, which returns the buffer
/// once, and only after success. After a failure, also of the pool, the buffer may still be in use, and a buffer returned twice would serve two
/// requests at a time. A buffer that is not returned is left to the garbage collector. Its room in the memory budget is returned in any case.
/// </remarks>
internal sealed class RequestBody : IDisposable
{
    // Grows with what arrives: a client that announces much and sends little holds little.
    private const int FirstBytes = 16 * 1024;
    private const int MostFirstBytes = 64 * 1024;

    private readonly ArrayPool<byte> pool;
    private readonly MemoryBudget memory;
    private byte[] buffer = [];
    private int length;
    private int room;

    private RequestBody(ArrayPool<byte> pool, MemoryBudget memory) => (this.pool, this.memory) = (pool, memory);

    /// <summary>The bytes.</summary>
    public ReadOnlyMemory<byte> Bytes => buffer.AsMemory(0, length);

    /// <summary>Reads a body.</summary>
    /// <param name="request">The request.</param>
    /// <param name="pool">Pool of buffers.</param>
    /// <param name="memory">Memory of all requests.</param>
    /// <param name="mostBytes">Maximum length, bytes.</param>
    /// <param name="cancellation">Stops reading.</param>
    /// <returns>The body, or the kind of problem: too large, or no memory for it.</returns>
    /// <exception cref="BadHttpRequestException">A limit of the connection is exceeded, or the body is incomplete.</exception>
    public static async ValueTask<(RequestBody? Body, ProblemKind? Refusal)> ReadAsync(
        HttpRequest request, ArrayPool<byte> pool, MemoryBudget memory, int mostBytes, CancellationToken cancellation)
    {
        if (request.ContentLength > mostBytes)
        {
            return (null, ProblemKind.TooLarge);
        }

        var body = new RequestBody(pool, memory);
        ProblemKind? refusal;
        try
        {
            refusal = await body.FillAsync(request, mostBytes, cancellation);
        }
        catch
        {
            body.Dispose();
            throw;
        }

        if (refusal is null)
        {
            return (body, null);
        }

        body.Dispose();
        body.GiveBack();
        return (null, refusal);
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

    /// <summary>Returns the room of the body in the memory budget.</summary>
    public void Dispose()
    {
        memory.GiveBack(room);
        room = 0;
    }

    private async ValueTask<ProblemKind?> FillAsync(HttpRequest request, int mostBytes, CancellationToken cancellation)
    {
        if (!Grow(Math.Min((int)Math.Min(request.ContentLength ?? FirstBytes, MostFirstBytes) + 1, mostBytes + 1)))
        {
            return ProblemKind.Overloaded;
        }

        while (true)
        {
            var read = await request.Body.ReadAsync(buffer.AsMemory(length), cancellation);
            length += read;
            if (read == 0)
            {
                return null;
            }

            if (length > mostBytes)
            {
                return ProblemKind.TooLarge;
            }

            if (length == buffer.Length && !Grow(2 * buffer.Length))
            {
                return ProblemKind.Overloaded;
            }
        }
    }

    private bool Grow(int capacity)
    {
        if (!memory.TryTake(capacity - room))
        {
            return false;
        }

        room = capacity;
        var smaller = buffer;
        var larger = pool.Rent(capacity);
        smaller.AsSpan(0, length).CopyTo(larger);

        // Assigned before the return: a pool that throws on return may still have taken the buffer.
        buffer = larger;
        if (smaller.Length > 0)
        {
            pool.Return(smaller);
        }

        return true;
    }
}
