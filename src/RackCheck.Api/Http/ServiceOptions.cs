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

    /// <summary>Maximum time in which a request body must arrive, s.</summary>
    [Range(1, 600)]
    public int BodySeconds { get; init; } = 30;

    /// <summary>Additional port for HTTP/2 without TLS, for callers that know that the service speaks it; 0 is none.</summary>
    [Range(0, 65_535)]
    public int Http2Port { get; init; }
}
