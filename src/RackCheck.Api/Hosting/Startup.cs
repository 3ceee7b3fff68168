using Microsoft.Extensions.Options;
using RackCheck.Api.Access;
using RackCheck.Api.Admission;
using RackCheck.Api.Catalogue;
using RackCheck.Api.Http;

namespace RackCheck.Api.Hosting;

/// <summary>Starts the service. What prevents a start is one line on standard error and exit code 1.</summary>
internal static class Startup
{
    // Options of each section. Reading a value binds and validates it.
    private static readonly Dictionary<string, Func<IServiceProvider, object>> Sections = new(StringComparer.OrdinalIgnoreCase)
    {
        [ServiceOptions.Section] = Value<ServiceOptions>,
        [CatalogueOptions.Section] = Value<CatalogueOptions>,
        [AdmissionOptions.Section] = Value<AdmissionOptions>,
        [AccessOptions.Section] = Value<AccessOptions>,
        [RateLimitOptions.Section] = Value<RateLimitOptions>,
        [CorsOptions.Section] = Value<CorsOptions>,
        [ManagementOptions.Section] = Value<ManagementOptions>,
        [ShutdownOptions.Section] = Value<ShutdownOptions>,
    };

    /// <summary>Runs the service until it is told to stop.</summary>
    /// <param name="args">Command line.</param>
    /// <returns>Exit code.</returns>
    public static async Task<int> RunAsync(string[] args)
    {
        WebApplication? app = null;
        try
        {
            var builder = WebApplication.CreateBuilder(args);
            builder.AddRackCheck();
            app = builder.Build();
            Check(app);
            app.UseRackCheck();
            await app.StartAsync();
        }
#pragma warning disable CA1031 // Whatever it is, the service did not start.
        catch (Exception fault) when (fault is not HostAbortedException)
#pragma warning restore CA1031
        {
            await Console.Error.WriteLineAsync($"rack-check cannot start: {StartFault.Describe(fault)}");
            await (app?.DisposeAsync() ?? ValueTask.CompletedTask);
            return 1;
        }

        await app.WaitForShutdownAsync();
        await app.DisposeAsync();
        return 0;
    }

    private static void Check(WebApplication app)
    {
        var values = Sections.ToDictionary(s => s.Key, s => s.Value(app.Services), StringComparer.OrdinalIgnoreCase);
        if (SettingNames.Unknown(app.Configuration, values).FirstOrDefault() is { } unknown)
        {
            throw new InvalidDataException($"There is no setting {unknown}.");
        }

        // A wrong catalogue file ends the start.
        app.Services.GetRequiredService<IProductCatalogue>();
        var access = (AccessOptions)values[AccessOptions.Section];
        if (!app.Environment.IsDevelopment()
            && !access.HasCredentials
            && !access.Anonymous
            && Addresses.Of(app.Configuration).FirstOrDefault(a => !Addresses.IsLoopback(a)) is { } open)
        {
            throw new InvalidDataException(
                $"{open} can be reached from other machines, but there are no API keys (Access:Clients) and no issuer (Access:Jwt). "
                + "Set one of them, or Access:Anonymous to true.");
        }
    }

    private static T Value<T>(IServiceProvider services)
        where T : class =>
        services.GetRequiredService<IOptions<T>>().Value;
}
