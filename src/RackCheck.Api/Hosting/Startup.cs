using Microsoft.Extensions.Options;
using RackCheck.Api.Access;
using RackCheck.Api.Admission;
using RackCheck.Api.Catalogue;
using RackCheck.Api.Http;
using RackCheck.Documents;
using RackCheck.Rules;

namespace RackCheck.Api.Hosting;

/// <summary>Starts the service. What prevents a start is one line on standard error and exit code 1.</summary>
internal static class Startup
{
    private static readonly Dictionary<string, Type> Sections = new(StringComparer.OrdinalIgnoreCase)
    {
        [ServiceOptions.Section] = typeof(ServiceOptions),
        [CatalogueOptions.Section] = typeof(CatalogueOptions),
        [AdmissionOptions.Section] = typeof(AdmissionOptions),
        [AccessOptions.Section] = typeof(AccessOptions),
        [RateLimitOptions.Section] = typeof(RateLimitOptions),
        [CorsOptions.Section] = typeof(CorsOptions),
        [ManagementOptions.Section] = typeof(ManagementOptions),
        [ShutdownOptions.Section] = typeof(ShutdownOptions),
    };

    /// <summary>Runs the service until it is told to stop.</summary>
    /// <param name="args">Command line.</param>
    /// <returns>Exit code.</returns>
    public static async Task<int> RunAsync(string[] args)
    {
        WebApplication? app = null;
        try
        {
            // Rules, tables and catalogue take a third of the start: they are made beside the rest, where there is another processor.
            _ = Task.Run(static () => (RuleSet.Default, ReferencePages.All));
            var builder = WebApplication.CreateBuilder(args);
            builder.AddRackCheck();
            app = builder.Build();

            // Beside each other; the settings speak first. A wrong catalogue file ends the start.
            var pipeline = Task.Run(app.UseRackCheck);
            var catalogue = Task.Run(app.Services.GetRequiredService<IProductCatalogue>);
            Check(app);
            await pipeline;
            await catalogue;
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

    /// <summary>Checks the settings and the access from outside.</summary>
    /// <exception cref="OptionsValidationException">A value is outside its range.</exception>
    /// <exception cref="InvalidOperationException">A value has the wrong type.</exception>
    /// <exception cref="InvalidDataException">A setting is unknown, or the service would be open to everybody.</exception>
    internal static void Check(WebApplication app)
    {
        if (SettingNames.Unknown(app.Configuration, Sections).FirstOrDefault() is { } unknown)
        {
            throw new InvalidDataException($"There is no setting {unknown}.");
        }

        // Validates the values of all sections.
        app.Services.GetRequiredService<IStartupValidator>().Validate();

        var access = app.Services.GetRequiredService<IOptions<AccessOptions>>().Value;
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
}
