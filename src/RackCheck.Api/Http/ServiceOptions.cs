using System.ComponentModel.DataAnnotations;

namespace RackCheck.Api.Http;

/// <summary>Settings of the service, section <c>Service</c>.</summary>
public sealed class ServiceOptions
{
    /// <summary>Name of the section.</summary>
    public const string Section = "Service";

    /// <summary>Maximum length of a request body, bytes; default 1 MiB. A full description of 200 items takes about 120 KB.</summary>
    [Range(1024, 64 * 1024 * 1024)]
    public int MaxBodyBytes { get; init; } = 1024 * 1024;
}
