using System.Buffers;
using System.Text.Json;
using Microsoft.Extensions.ObjectPool;

namespace RackCheck.Api.Http;

/// <summary>A prepared answer: a buffer and its writer. It has one owner, which gives it back once, after success.</summary>
internal sealed class AnswerLease
{
    private const int FirstBytes = 16 * 1024;
    private const int MostBytesKept = 256 * 1024;

    private static readonly DefaultObjectPool<AnswerLease> Spare = new(new Policy());

    private readonly ArrayBufferWriter<byte> buffer = new(FirstBytes);

    private AnswerLease() => Writer = new Utf8JsonWriter(buffer, JsonAnswer.Options);

    /// <summary>Writes into the buffer.</summary>
    public Utf8JsonWriter Writer { get; }

    /// <summary>What was written.</summary>
    public ReadOnlyMemory<byte> Written => buffer.WrittenMemory;

    /// <summary>Takes an empty lease.</summary>
    public static AnswerLease Take() => Spare.Get();

    /// <summary>Takes bytes that are no JSON.</summary>
    public IBufferWriter<byte> Bytes => buffer;

    /// <summary>Adds bytes that are no JSON.</summary>
    /// <param name="bytes">The bytes.</param>
    public void Append(ReadOnlySpan<byte> bytes) => buffer.Write(bytes);

    /// <summary>Removes what was written.</summary>
    public void Clear()
    {
        buffer.ResetWrittenCount();
        Writer.Reset();
    }

    /// <summary>Gives the lease back. After a failure it is dropped instead, since its buffer may still be in use.</summary>
    public void GiveBack() => Spare.Return(this);

    private sealed class Policy : PooledObjectPolicy<AnswerLease>
    {
        public override AnswerLease Create() => new();

        // A large buffer is left to the garbage collector.
        public override bool Return(AnswerLease obj)
        {
            if (obj.buffer.Capacity > MostBytesKept)
            {
                return false;
            }

            obj.Clear();
            return true;
        }
    }
}
