using Microsoft.CodeAnalysis;

namespace RackCheck.ContractGenerator;

/// <summary>The records that one class needs a method for, each once.</summary>
internal sealed class RecordQueue
{
    private readonly Queue<INamedTypeSymbol> waiting = new();
    private readonly HashSet<string> known = [];

    /// <summary>Adds a record, if it is new.</summary>
    public void Need(INamedTypeSymbol record)
    {
        if (known.Add(record.ToDisplayString()))
        {
            waiting.Enqueue(record);
        }
    }

    /// <summary>Takes the records in turn, those that come meanwhile too.</summary>
    public IEnumerable<INamedTypeSymbol> TakeAll()
    {
        while (waiting.Count > 0)
        {
            yield return waiting.Dequeue();
        }
    }
}
