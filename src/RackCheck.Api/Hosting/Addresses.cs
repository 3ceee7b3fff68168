using System.Net;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.Options;
using RackCheck.Api.Http;

namespace RackCheck.Api.Hosting;

/// <summary>Where the service listens.</summary>
internal static class Addresses
{
    private const string KestrelEndpoints = "Kestrel:Endpoints";
    private const string Default = "http://localhost:5000";

    /// <summary>The addresses from the settings of the framework, in the framework's order of precedence.</summary>
    public static IReadOnlyList<string> Of(IConfiguration configuration)
    {
        string[] endpoints = [.. configuration.GetSection(KestrelEndpoints).GetChildren().Select(e => e["Url"]).OfType<string>()];
        if (endpoints.Length > 0)
        {
            return endpoints;
        }

        var urls = Split(configuration["urls"]);
        if (urls.Length == 0)
        {
            urls = [.. Split(configuration["http_ports"]).Select(p => $"http://*:{p}"), .. Split(configuration["https_ports"]).Select(p => $"https://*:{p}")];
        }

        return urls.Length == 0 ? [Default] : urls;
    }

    /// <summary>Whether only programs on the same machine reach an address.</summary>
    public static bool IsLoopback(string address)
    {
        var parsed = BindingAddress.Parse(address);
        return parsed.IsUnixPipe
            || parsed.IsNamedPipe
            || parsed.Host.Equals("localhost", StringComparison.OrdinalIgnoreCase)
            || (IPAddress.TryParse(parsed.Host, out var ip) && IPAddress.IsLoopback(ip));
    }

    /// <summary>Sets the protocol of the HTTP/2 port.</summary>
    public static void UseHttp2Port(this KestrelServerOptions kestrel, int port)
    {
        if (port > 0)
        {
            kestrel.ConfigureEndpointDefaults(listen => listen.Protocols = listen.IPEndPoint?.Port == port ? HttpProtocols.Http2 : listen.Protocols);
        }
    }

    /// <summary>Adds the ports for HTTP/2 and management to the others. They are as reachable as those.</summary>
    /// <exception cref="InvalidDataException">The endpoints are set in a way that cannot be added to.</exception>
    public static void AddFurtherPorts(this WebApplication app)
    {
        var http2 = app.Services.GetRequiredService<IOptions<ServiceOptions>>().Value.Http2Port;
        var management = app.Services.GetRequiredService<IOptions<ManagementOptions>>().Value.Port;
        int[] ports = [.. new[] { http2, management }.Where(p => p > 0)];
        if (ports.Length == 0)
        {
            return;
        }

        if (app.Configuration.GetSection(KestrelEndpoints).Exists())
        {
            throw new InvalidDataException($"{KestrelEndpoints} cannot be combined with Service:Http2Port and Management:Port.");
        }

        var own = Of(app.Configuration);
        var host = own.All(IsLoopback) ? "127.0.0.1" : "*";
        foreach (var url in own.Concat(ports.Select(p => $"http://{host}:{p}")))
        {
            app.Urls.Add(url);
        }
    }

    private static string[] Split(string? value) => value?.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries) ?? [];
}
