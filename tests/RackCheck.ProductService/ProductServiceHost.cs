using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using RackCheck.Api.Catalogue;
using RackCheck.Model;
using RackCheck.Model.Json;

namespace RackCheck.ProductService;

/// <summary>A product service that implements <c>openapi/catalogue.v1.json</c> and simulates faults on request.</summary>
public sealed class ProductServiceHost : IAsyncDisposable
{
    private readonly WebApplication app;

    private ProductServiceHost(WebApplication app) => this.app = app;

    /// <summary>Address of the service.</summary>
    public Uri BaseUrl => new(app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single());

    /// <summary>The active fault and the calls received.</summary>
    public FaultSwitch Faults => app.Services.GetRequiredService<FaultSwitch>();

    /// <summary>Starts the service on a free or a given port of this machine.</summary>
    /// <param name="products">The products; default the bundled catalogue.</param>
    /// <param name="port">The port; 0 for a free one.</param>
    /// <returns>The host.</returns>
    public static async Task<ProductServiceHost> StartAsync(IReadOnlyList<Product>? products = null, int port = 0)
    {
        var app = Build(["--urls", FormattableString.Invariant($"http://127.0.0.1:{port}")], _ => null, products);
        await app.StartAsync();
        return new ProductServiceHost(app);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        // Delayed calls must not delay the shutdown.
        using var now = new CancellationTokenSource(TimeSpan.Zero);
        await app.StopAsync(now.Token);
        await app.DisposeAsync();
    }

    internal static WebApplication Build(string[] args, Func<WebApplicationBuilder, string?> file, IReadOnlyList<Product>? products = null)
    {
        var builder = WebApplication.CreateSlimBuilder(args);
        builder.Logging.AddFilter("Microsoft.AspNetCore", LogLevel.Error);
        builder.Services.ConfigureHttpJsonOptions(o => o.SerializerOptions.TypeInfoResolverChain.Insert(0, ContractJson.Default));
        builder.Services.AddSingleton(new ProductList { Products = products ?? FileCatalogue.Read(file(builder) ?? new CatalogueOptions().File).Products });
        builder.Services.AddSingleton<FaultSwitch>();
        builder.Services.AddProductContract();
        var app = builder.Build();
        app.MapProductContract();
        app.MapProducts();
        app.MapFaults();
        return app;
    }
}
