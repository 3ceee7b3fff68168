using Microsoft.Extensions.Options;

namespace RackCheck.Api.Hosting;

/// <summary>
/// Keeps the port open for a while after SIGTERM. The service is not ready then and closes connections, but answers. After that the server finishes
/// running requests.
/// </summary>
/// <param name="options">Settings.</param>
/// <param name="time">Measures the delay.</param>
internal sealed class ShutdownDelay(IOptions<ShutdownOptions> options, TimeProvider time) : IHostedLifecycleService
{
    /// <summary>Registers the delay, and the time that the host gives it and the running requests.</summary>
    public static void Add(IServiceCollection services)
    {
        services.AddOptions<ShutdownOptions>().BindConfiguration(ShutdownOptions.Section).ValidateDataAnnotations().ValidateOnStart();
        services.AddOptions<HostOptions>().Configure<IOptions<ShutdownOptions>>(static (host, shutdown) =>
            host.ShutdownTimeout = TimeSpan.FromSeconds(shutdown.Value.DelaySeconds + shutdown.Value.DrainSeconds));
        services.AddHostedService<ShutdownDelay>();
    }

    /// <inheritdoc/>
    public async Task StoppingAsync(CancellationToken cancellationToken)
    {
        if (options.Value.DelaySeconds > 0)
        {
            using var timer = new PeriodicTimer(TimeSpan.FromSeconds(options.Value.DelaySeconds), time);
            await timer.WaitForNextTickAsync(cancellationToken);
        }
    }

    /// <inheritdoc/>
    public Task StartingAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public Task StartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public Task StartedAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public Task StoppedAsync(CancellationToken cancellationToken) => Task.CompletedTask;
}
