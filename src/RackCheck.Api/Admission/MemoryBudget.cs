namespace RackCheck.Api.Admission;

/// <summary>Total size of the request bodies and prepared answers in memory.</summary>
/// <param name="mostBytes">Maximum, bytes.</param>
internal sealed class MemoryBudget(long mostBytes)
{
    private long used;

    /// <summary>Size in use, bytes.</summary>
    public long Used => Volatile.Read(ref used);

    /// <summary>Whether new requests are refused.</summary>
    public bool IsExhausted => Used >= mostBytes;

    /// <summary>Takes room for a part of a request body.</summary>
    /// <returns>Whether there was room.</returns>
    public bool TryTake(int bytes)
    {
        if (Interlocked.Add(ref used, bytes) <= mostBytes)
        {
            return true;
        }

        GiveBack(bytes);
        return false;
    }

    /// <summary>Takes room for a finished answer, which is sent in any case. New requests are refused until there is room again.</summary>
    public void Take(int bytes) => Interlocked.Add(ref used, bytes);

    /// <summary>Returns room.</summary>
    public void GiveBack(int bytes) => Interlocked.Add(ref used, -bytes);
}
