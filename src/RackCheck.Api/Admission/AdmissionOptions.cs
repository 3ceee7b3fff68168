using System.ComponentModel.DataAnnotations;

namespace RackCheck.Api.Admission;

/// <summary>Settings of admission, section <c>Admission</c>: how much the service computes and holds at a time.</summary>
public sealed class AdmissionOptions : IValidatableObject
{
    /// <summary>Name of the section.</summary>
    public const string Section = "Admission";

    /// <summary>Checks of racks.</summary>
    public PoolOptions Checks { get; init; } = new();

    /// <summary>Baskets, comparisons and quick proposals.</summary>
    public PoolOptions Planning { get; init; } = new() { Queue = 32, TargetMs = 1_000, WorkMs = 40_000 };

    /// <summary>Thorough proposals. One computes for up to half a minute on one thread, so they wait for each other and keep nothing else waiting.</summary>
    public PoolOptions Searches { get; init; } = new() { Workers = 1, Queue = 8, TargetMs = 5_000, WorkMs = 40_000 };

    /// <summary>Drawings, lists and sheets.</summary>
    public PoolOptions Documents { get; init; } = new() { Queue = 32, TargetMs = 500 };

    /// <summary>Checks of streams: on all processors while nothing else is computed, else on one.</summary>
    public StreamOptions Streams { get; init; } = new();

    /// <summary>Maximum total size of the request bodies and prepared answers in memory, MiB. Above it requests are refused.</summary>
    [Range(4, 65_536)]
    public int MemoryMiB { get; init; } = 32;

    /// <inheritdoc/>
    public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
    {
        foreach (var (name, own) in new (string, object)[]
        {
            (nameof(Checks), Checks), (nameof(Planning), Planning), (nameof(Searches), Searches), (nameof(Documents), Documents),
            (nameof(Streams), Streams),
        })
        {
            var faults = new List<ValidationResult>();
            Validator.TryValidateObject(own, new ValidationContext(own), faults, validateAllProperties: true);
            foreach (var fault in faults)
            {
                yield return new ValidationResult($"{name}: {fault.ErrorMessage}", [name]);
            }
        }
    }
}

/// <summary>Settings of one pool of threads.</summary>
public sealed class PoolOptions
{
    /// <summary>Number of threads; 0 is one less than the processors, at least one.</summary>
    [Range(0, 256)]
    public int Workers { get; init; }

    /// <summary>Maximum number of waiting requests; further requests are refused.</summary>
    [Range(1, 100_000)]
    public int Queue { get; init; } = 64;

    /// <summary>Time in the queue up to which more than its least share is used under lasting overload, ms. A short burst may fill the queue.</summary>
    [Range(1, 600_000)]
    public int TargetMs { get; init; } = 4;

    /// <summary>Maximum time in the queue, ms. A request that has waited longer is refused.</summary>
    [Range(1, 600_000)]
    public int WaitMs { get; init; } = 5_000;

    /// <summary>Maximum time of the computation, ms. A request that takes longer is refused.</summary>
    [Range(1, 600_000)]
    public int WorkMs { get; init; } = 10_000;

    /// <summary>Number of threads in force.</summary>
    internal int WorkersInForce => Workers > 0 ? Workers : Math.Max(1, Environment.ProcessorCount - 1);
}

/// <summary>Settings of streams of checks.</summary>
public sealed class StreamOptions
{
    /// <summary>Number of threads; 0 is the number of processors.</summary>
    [Range(0, 256)]
    public int Workers { get; init; }

    /// <summary>Maximum number of streams at a time; further ones are refused.</summary>
    [Range(1, 1_000)]
    public int Most { get; init; } = 4;

    /// <summary>Maximum time of one check, ms. A line that takes longer gets a problem.</summary>
    [Range(1, 600_000)]
    public int WorkMs { get; init; } = 10_000;

    /// <summary>Lines that a stream reads ahead for each thread, so that no thread waits for the next.</summary>
    internal const int AheadPerWorker = 4;

    /// <summary>Number of threads in force.</summary>
    internal int WorkersInForce => Workers > 0 ? Workers : Environment.ProcessorCount;

    /// <summary>Lines of one stream that are in work at a time.</summary>
    internal int Window => AheadPerWorker * WorkersInForce;

    /// <summary>The pool: it has a place for each line that streams have in work, so that none is refused, and a line may wait for those before it.</summary>
    internal PoolOptions Pool => new() { Workers = WorkersInForce, Queue = Most * Window, WaitMs = 600_000, WorkMs = WorkMs };
}
