using System.Collections.Concurrent;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace RackCheck.Api.Tests.Catalogue;

/// <summary>A token endpoint on a loopback port.</summary>
internal sealed class TokenEndpoint : IAsyncDisposable
{
    private readonly WebApplication app;
    private int issued;

    private TokenEndpoint(WebApplication app) => this.app = app;

    public Uri Address => new(app.Urls.First() + "/token");

    /// <summary>The requests: authorization header and body.</summary>
    public ConcurrentQueue<(string Authorization, string Body)> Requests { get; } = [];

    /// <summary>Answers a request with its number, from 1.</summary>
    public Func<int, IResult> Answer { get; set; } = n => Token(n);

    /// <summary>The n-th token.</summary>
    public static string Name(int n) => FormattableString.Invariant($"token-{n}");

    public static IResult Token(int n, int? seconds = 300, string type = "Bearer") =>
        Results.Json(new { access_token = Name(n), token_type = type, expires_in = seconds, session_state = "x" });

    public static async Task<TokenEndpoint> StartAsync()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        var endpoint = new TokenEndpoint(builder.Build());
        endpoint.app.MapPost("/token", async (HttpRequest request) =>
        {
            using var reader = new StreamReader(request.Body);
            endpoint.Requests.Enqueue((request.Headers.Authorization.ToString(), await reader.ReadToEndAsync()));
            return endpoint.Answer(Interlocked.Increment(ref endpoint.issued));
        });
        await endpoint.app.StartAsync();
        return endpoint;
    }

    public async ValueTask DisposeAsync() => await app.DisposeAsync();
}
