using System.Buffers;
using System.IO.Pipelines;

namespace RackCheck.Api.Streaming;

/// <summary>Reads the lines of a body. Blank lines are skipped, and a line that is too long is passed over to its end.</summary>
/// <param name="body">The body.</param>
/// <param name="mostBytes">Maximum length of a line without its end, bytes.</param>
/// <param name="silence">Maximum time without a byte.</param>
/// <param name="time">Measures it.</param>
internal sealed class LineReader(PipeReader body, int mostBytes, TimeSpan silence, TimeProvider time)
{
    private static readonly SearchValues<byte> Blanks = SearchValues.Create(" \t\r"u8);

    /// <summary>Maximum length of a line without its end, bytes.</summary>
    public int MostBytes => mostBytes;

    /// <summary>Number of the line read last, from 1; blank lines count.</summary>
    public long Number { get; private set; }

    /// <summary>Reads the next line that is not blank.</summary>
    /// <param name="cancellation">Stops reading.</param>
    /// <returns>The line; null at the end.</returns>
    /// <exception cref="TimeoutException">Nothing has arrived for too long.</exception>
    public async ValueTask<StreamedLine?> NextAsync(CancellationToken cancellation)
    {
        var isTooLong = false;
        while (true)
        {
            var read = await ReadAsync(cancellation);
            var bytes = read.Buffer;
            if (bytes.PositionOf((byte)'\n') is { } end)
            {
                var line = Take(bytes.Slice(0, end), isTooLong);
                body.AdvanceTo(bytes.GetPosition(1, end));
                if (line is not null)
                {
                    return line;
                }

                isTooLong = false;
            }
            else if (read.IsCompleted)
            {
                var line = bytes.IsEmpty && !isTooLong ? null : Take(bytes, isTooLong);
                body.AdvanceTo(bytes.End);
                return line;
            }
            else if (isTooLong || bytes.Length > mostBytes)
            {
                isTooLong = true;
                body.AdvanceTo(bytes.End);
            }
            else
            {
                body.AdvanceTo(bytes.Start, bytes.End);
            }
        }
    }

    private async ValueTask<ReadResult> ReadAsync(CancellationToken cancellation)
    {
        if (body.TryRead(out var ready))
        {
            return ready;
        }

        using var limit = new CancellationTokenSource(silence, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(limit.Token, cancellation);
        try
        {
            return await body.ReadAsync(either.Token);
        }
        catch (OperationCanceledException fault) when (limit.IsCancellationRequested && !cancellation.IsCancellationRequested)
        {
            throw new TimeoutException(FormattableString.Invariant($"Nothing has arrived for {silence.TotalSeconds:0.###} s."), fault);
        }
    }

    private StreamedLine? Take(ReadOnlySequence<byte> bytes, bool isTooLong)
    {
        Number++;
        if (isTooLong || bytes.Length > mostBytes)
        {
            return new StreamedLine(Number, null, 0);
        }

        var length = (int)bytes.Length;
        var buffer = ArrayPool<byte>.Shared.Rent(length);
        bytes.CopyTo(buffer);
        if (!buffer.AsSpan(0, length).ContainsAnyExcept(Blanks))
        {
            ArrayPool<byte>.Shared.Return(buffer);
            return null;
        }

        return new StreamedLine(Number, buffer, length);
    }
}

/// <summary>A line of a stream, in a pooled buffer with one owner, which returns it once, after success.</summary>
/// <param name="number">Its number.</param>
/// <param name="buffer">The buffer; null for a line that is too long.</param>
/// <param name="length">Length, bytes.</param>
internal sealed class StreamedLine(long number, byte[]? buffer, int length)
{
    private byte[]? buffer = buffer;

    /// <summary>Its number, from 1.</summary>
    public long Number => number;

    /// <summary>Whether it was passed over.</summary>
    public bool IsTooLong => buffer is null;

    /// <summary>Length, bytes.</summary>
    public int Length => length;

    /// <summary>The bytes.</summary>
    public ReadOnlyMemory<byte> Bytes => buffer.AsMemory(0, length);

    /// <summary>Returns the buffer to the pool.</summary>
    public void GiveBack()
    {
        if (Interlocked.Exchange(ref buffer, null) is { } lease)
        {
            ArrayPool<byte>.Shared.Return(lease);
        }
    }
}
