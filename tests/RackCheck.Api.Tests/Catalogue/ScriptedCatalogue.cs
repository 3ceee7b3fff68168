using RackCheck.Api.Catalogue;
using RackCheck.Model;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Api.Tests.Catalogue;

/// <summary>A catalogue whose calls answer when the test says so, and that counts them.</summary>
internal sealed class ScriptedCatalogue : IProductCatalogue
{
    private readonly Lock gate = new();
    private readonly List<int> asked = [];
    private TaskCompletionSource open = Opened();
    private int running;

    /// <summary>The products.</summary>
    public IReadOnlyList<Product> Products { get; set; } = [];

    /// <summary>The wrong products.</summary>
    public IReadOnlyDictionary<string, Fault>? Faults { get; set; }

    /// <summary>Whether calls fail.</summary>
    public bool Fails { get; set; }

    /// <summary>Part numbers of each call; 0 for the products on offer.</summary>
    public IReadOnlyList<int> Asked
    {
        get
        {
            lock (gate)
            {
                return [.. asked];
            }
        }
    }

    /// <summary>Most calls at a time.</summary>
    public int MostRunning { get; private set; }

    /// <summary>Calls wait from now on.</summary>
    public void Hold() => open = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>Calls answer.</summary>
    public void Release() => open.SetResult();

    public async ValueTask<ProductDictionary> FindAsync(IReadOnlyCollection<string> partNumbers, CancellationToken cancellation)
    {
        await CallAsync(partNumbers.Count, cancellation);
        return new ProductDictionary(Products.Where(p => partNumbers.Contains(p.PartNumber)).ToDictionary(p => p.PartNumber), Faults);
    }

    public async ValueTask<IReadOnlyList<Product>> OfferedAsync(CancellationToken cancellation)
    {
        await CallAsync(0, cancellation);
        return [.. Products];
    }

    private static TaskCompletionSource Opened()
    {
        var opened = new TaskCompletionSource();
        opened.SetResult();
        return opened;
    }

    private async Task CallAsync(int count, CancellationToken cancellation)
    {
        lock (gate)
        {
            asked.Add(count);
            MostRunning = Math.Max(MostRunning, ++running);
        }

        try
        {
            await open.Task.WaitAsync(cancellation);
            if (Fails)
            {
                throw new CatalogueUnavailableException("It does not respond.", TimeSpan.FromSeconds(7));
            }
        }
        finally
        {
            lock (gate)
            {
                running--;
            }
        }
    }
}
