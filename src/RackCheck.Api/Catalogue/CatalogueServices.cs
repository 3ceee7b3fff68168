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
        services.AddSingleton(Make);
        services.AddSingleton<PartLookUp>();
        services.AddHostedService<Start>();
    }

    private static IProductCatalogue Make(IServiceProvider provider)
    {
        var options = provider.GetRequiredService<IOptions<CatalogueOptions>>().Value;
        if (options.BaseUrl is null)
        {
            return new FileCatalogue(FileCatalogue.Read(options.File));
        }

        var (time, metrics) = (provider.GetRequiredService<TimeProvider>(), provider.GetRequiredService<CatalogueMetrics>());
        return new CachingCatalogue(new HttpCatalogue(options, time, metrics, provider.GetRequiredService<ILogger<HttpCatalogue>>()), options, time, metrics);
    }

    // Creates the catalogue when the service starts, so that an invalid file stops it before the first request. The product service is not
    // called: it may start later.
    private sealed class Start(IServiceProvider provider) : IHostedService
    {
        public Task StartAsync(CancellationToken cancellationToken)
        {
            provider.GetRequiredService<IProductCatalogue>();
            return Task.CompletedTask;
        }

        public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
    }
}
