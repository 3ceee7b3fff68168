using System.ComponentModel.DataAnnotations;

namespace RackCheck.Api.Hosting;

/// <summary>Settings of the management port, section <c>Management</c>.</summary>
public sealed class ManagementOptions
{
    /// <summary>Name of the section.</summary>
    public const string Section = "Management";

    /// <summary>Port for probes and metrics, which are then nowhere else; 0 leaves them on the main port.</summary>
    [Range(0, 65_535)]
    public int Port { get; init; }
}
