using RackCheck.Api.Catalogue;

namespace RackCheck.ProductService;

/// <summary>Starts the product service by hand: <c>--urls</c> sets the address, <c>--Catalogue:File</c> the products.</summary>
internal static class EntryPoint
{
    private static async Task Main(string[] args)
    {
        var app = ProductServiceHost.Build(args, builder => builder.Configuration[$"{CatalogueOptions.Section}:{nameof(CatalogueOptions.File)}"]);
        await app.RunAsync();
    }
}
