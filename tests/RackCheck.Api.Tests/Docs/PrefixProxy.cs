using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace RackCheck.Api.Tests.Docs;

/// <summary>A reverse proxy as small as can be: it serves a service below a path and takes the path away, so that the service does not know of it.</summary>
internal sealed class PrefixProxy : IAsyncDisposable
{
    private const string Prefix = "/some/prefix";

    private readonly WebApplication app;
    private readonly HttpClient client;

    private PrefixProxy(WebApplication app, HttpClient client) => (this.app, this.client) = (app, client);

    /// <summary>Address of the service behind the proxy.</summary>
    public Uri Root => new(new Uri(app.Urls.Single()), Prefix + "/");

    /// <summary>Starts a proxy.</summary>
    /// <param name="target">Address of the service.</param>
    public static async Task<PrefixProxy> StartAsync(Uri target)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        var app = builder.Build();
        var client = new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false }) { BaseAddress = target };
        app.Map(Prefix, own => own.Run(context => ForwardAsync(client, context)));
        await app.StartAsync();
        return new PrefixProxy(app, client);
    }

    public async ValueTask DisposeAsync()
    {
        await app.DisposeAsync();
        client.Dispose();
    }

    private static async Task ForwardAsync(HttpClient client, HttpContext context)
    {
        using var request = new HttpRequestMessage(new HttpMethod(context.Request.Method), context.Request.Path + context.Request.QueryString);
        if (HttpMethods.IsPost(context.Request.Method))
        {
            request.Content = new StreamContent(context.Request.Body);
        }

        foreach (var (name, values) in context.Request.Headers.Where(h => h.Key is "Accept" or "Accept-Encoding" or "Content-Type"))
        {
            _ = request.Headers.TryAddWithoutValidation(name, values.AsEnumerable())
                || request.Content?.Headers.TryAddWithoutValidation(name, values.AsEnumerable()) == true;
        }

        using var answer = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, context.RequestAborted);
        context.Response.StatusCode = (int)answer.StatusCode;
        foreach (var (name, values) in answer.Headers.Concat(answer.Content.Headers).Where(h => h.Key != "Transfer-Encoding"))
        {
            context.Response.Headers[name] = values.ToArray();
        }

        await answer.Content.CopyToAsync(context.Response.Body, context.RequestAborted);
    }
}
