using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Threading.RateLimiting;
using Microsoft.Extensions.Options;
using RackCheck.Api.Http;

namespace RackCheck.Api.Access;

/// <summary>Limits the rate of each caller and says so in the headers of the IETF draft on RateLimit header fields.</summary>
/// <param name="rates">Common rate.</param>
/// <param name="access">Callers with a rate of their own.</param>
/// <param name="environment">In Development the developer's own machine is not limited.</param>
internal sealed class ClientRates(IOptions<RateLimitOptions> rates, IOptions<AccessOptions> access, IHostEnvironment environment) : IDisposable
{
    /// <summary>Claim with the name of a caller with an API key.</summary>
    public const string ClientClaim = "client_id";

    private const string PolicyName = "\"default\"";
    private static readonly string[] NameClaims = [ClientClaim, "azp", "appid", "sub"];

    private PartitionedRateLimiter<HttpContext>? limiter;

    /// <summary>The limiter, one partition a caller.</summary>
    public PartitionedRateLimiter<HttpContext> Limiter => limiter ??= PartitionedRateLimiter.Create<HttpContext, string>(Partition);

    /// <summary>Adds the headers to an answer.</summary>
    public void Describe(HttpContext context)
    {
        if (RateOf(context) is not { PerMinute: > 0 } rate || Limiter.GetStatistics(context) is not { } statistics)
        {
            return;
        }

        var left = (int)statistics.CurrentAvailablePermits;
        var (window, reset) = (Seconds(rate.Burst, rate.PerMinute), Seconds(rate.Burst - left, rate.PerMinute));
        context.Response.Headers["RateLimit-Policy"] = string.Create(CultureInfo.InvariantCulture, $"{PolicyName};q={rate.Burst};w={window}");
        context.Response.Headers["RateLimit"] = string.Create(CultureInfo.InvariantCulture, $"{PolicyName};r={left};t={reset}");
    }

    /// <summary>Refuses a request over the rate.</summary>
    /// <returns>Completes when the problem document is written.</returns>
    public Task RefuseAsync(HttpContext context, RateLimitLease lease)
    {
        Describe(context);
        Problems.SetRetryAfter(context, lease.TryGetMetadata(MetadataName.RetryAfter, out var wait) ? wait : TimeSpan.FromSeconds(1));
        return Problems.WriteAsync(context, ProblemKind.TooMany, "The rate limit of this caller is exceeded. Send the request again later.");
    }

    /// <inheritdoc/>
    public void Dispose() => limiter?.Dispose();

    private static long Seconds(int requests, int perMinute) => (long)Math.Ceiling(60d * requests / perMinute);

    private RateLimitPartition<string> Partition(HttpContext context) => RateOf(context) is { PerMinute: > 0 } rate
        ? RateLimitPartition.GetTokenBucketLimiter(rate.Caller, _ => new TokenBucketRateLimiterOptions
        {
            TokenLimit = rate.Burst,
            TokensPerPeriod = 1,
            ReplenishmentPeriod = TimeSpan.FromMinutes(1) / rate.PerMinute,
            QueueLimit = 0,
        })
        : RateLimitPartition.GetNoLimiter("");

    // The rate of an operation with a scope; null for probes, rules and documentation.
    private Rate? RateOf(HttpContext context)
    {
        if (context.GetEndpoint()?.Metadata.GetMetadata<ScopeRequirement>() is null)
        {
            return null;
        }

        var common = rates.Value;
        if (NameOf(context) is { } name)
        {
            var own = Array.Find(access.Value.Clients, c => c.Name == name)?.PerMinute;
            return new Rate($"client {name}", own ?? common.PerMinute, common.Burst);
        }

        var address = context.Connection.RemoteIpAddress;
        return environment.IsDevelopment() && (address is null || IPAddress.IsLoopback(address))
            ? null
            : new Rate($"address {Network(address)}", common.PerMinute, common.Burst);
    }

    private static string? NameOf(HttpContext context) => context.User.Identity?.IsAuthenticated != true
        ? null
        : NameClaims.Select(c => context.User.FindFirst(c)?.Value).FirstOrDefault(v => v is not null) ?? "unnamed";

    // A subscriber has a whole IPv6 network of 64 bits.
    private static string Network(IPAddress? address)
    {
        if (address is not { AddressFamily: AddressFamily.InterNetworkV6, IsIPv4MappedToIPv6: false })
        {
            return address?.MapToIPv4().ToString() ?? "unknown";
        }

        var bytes = address.GetAddressBytes();
        Array.Clear(bytes, 8, 8);
        return new IPAddress(bytes).ToString();
    }

    private sealed record Rate(string Caller, int PerMinute, int Burst);
}
