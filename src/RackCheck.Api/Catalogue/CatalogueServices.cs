using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Options;

namespace RackCheck.Api.Catalogue;

/// <summary>Registers the product catalogue.</summary>
internal static class CatalogueServices
{
    /// <summary>Registers the configured catalogue: the product service if an address is set, otherwise the file.</summary>
    public static void AddCatalogue(this IServiceCollection services)
    {
        services.AddOptions<CatalogueOptions>().BindConfiguration(CatalogueOptions.Section).ValidateDataAnnotations().ValidateOnStart();
        services.TryAddSingleton(TimeProvider.System);
        services.AddSingleton<CatalogueMetrics>();
        services.AddSingleton<CatalogueState>();
        services.AddSingleton(Make);
        services.AddSingleton<PartLookUp>();
        services.AddHostedService<Start>();
    }

    private static IProductCatalogue Make(IServiceProvider provider)
    {
        var (options, state) = (provider.GetRequiredService<IOptions<CatalogueOptions>>().Value, provider.GetRequiredService<CatalogueState>());
        if (options.BaseUrl is null)
        {
            var file = new FileCatalogue(FileCatalogue.Read(options.File, options.UnknownInFile));
            state.Set(true);
            return file;
        }

        var (time, metrics) = (provider.GetRequiredService<TimeProvider>(), provider.GetRequiredService<CatalogueMetrics>());
        var http = new HttpCatalogue(options, time, metrics, state, provider.GetRequiredService<ILogger<HttpCatalogue>>());
        return new CachingCatalogue(http, options, time, metrics);
    }

    // Creates the catalogue when the service starts, so that an invalid file stops it before the first request. The start does not wait for the
    // product service, which may start later.
    private sealed class Start(IServiceProvider provider) : IHostedService, IAsyncDisposable
    {
        private CatalogueWatch? watch;

        public Task StartAsync(CancellationToken cancellationToken)
        {
            var interval = TimeSpan.FromSeconds(provider.GetRequiredService<IOptions<CatalogueOptions>>().Value.WatchSeconds);
            if (provider.GetRequiredService<IProductCatalogue>() is CachingCatalogue catalogue && interval > TimeSpan.Zero)
            {
                watch = new CatalogueWatch(
                    catalogue, provider.GetRequiredService<CatalogueState>(), interval, provider.GetRequiredService<TimeProvider>());
                watch.Start();
            }

            return Task.CompletedTask;
        }

        public async Task StopAsync(CancellationToken cancellationToken) => await DisposeAsync();

        public async ValueTask DisposeAsync()
        {
            if (Interlocked.Exchange(ref watch, null) is { } running)
            {
                await running.DisposeAsync();
            }
        }
    }
}
