using System.ComponentModel.DataAnnotations;

namespace RackCheck.Api.Hosting;

/// <summary>Settings of the shutdown, section <c>Shutdown</c>.</summary>
public sealed class ShutdownOptions
{
    /// <summary>Name of the section.</summary>
    public const string Section = "Shutdown";

    /// <summary>Time after SIGTERM during which requests are still accepted, so that load balancers notice that the service is not ready, s.</summary>
    [Range(0, 300)]
    public int DelaySeconds { get; init; }

    /// <summary>Further time for running requests to finish, s.</summary>
    [Range(1, 600)]
    public int DrainSeconds { get; init; } = 30;
}
