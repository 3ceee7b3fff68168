using System.Net;
using System.Net.Sockets;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using RackCheck.Api.Endpoints;
using RackCheck.Api.Hosting;

namespace RackCheck.Api.Tests.Hosting;

/// <summary>The service on a loopback port, with its own server and settings.</summary>
internal sealed class KestrelService : IAsyncDisposable
{
    private KestrelService(WebApplication app)
    {
        App = app;
        Client = new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false }) { BaseAddress = new Uri(app.Urls.First()) };
    }

    public WebApplication App { get; }

    public HttpClient Client { get; }

    /// <summary>Starts the service as in production, with settings as <c>Section:Name=value</c>.</summary>
    public static Task<KestrelService> StartAsync(params string[] settings) => StartAsync(static _ => { }, settings);

    public static async Task<KestrelService> StartAsync(Action<IServiceCollection> configure, params string[] settings)
    {
        var app = Build(configure, ["urls=http://127.0.0.1:0", "Serilog:MinimumLevel:Default=Fatal", .. Service.Patience, .. settings]);
        Startup.Check(app);
        app.UseRackCheck();
        await app.StartAsync();
        await app.Services.GetRequiredService<Readiness>().Warm;
        return new KestrelService(app);
    }

    public static WebApplication Build(Action<IServiceCollection> configure, params string[] settings)
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            ApplicationName = typeof(Program).Assembly.GetName().Name,
            EnvironmentName = "Production",
            ContentRootPath = AppContext.BaseDirectory,
            Args = [.. settings.Select(s => "--" + s)],
        });
        builder.AddRackCheck();
        configure(builder.Services);
        return builder.Build();
    }

    /// <summary>A port that nothing uses.</summary>
    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    public async Task<Answer> GetAsync(string path, params (string Name, string Value)[] headers) => await SendAsync(HttpMethod.Get, path, null, headers);

    public async Task<Answer> PostAsync(string path, string body, params (string Name, string Value)[] headers) =>
        await SendAsync(HttpMethod.Post, path, new StringContent(body, null, "application/json"), headers);

    public async Task<Answer> SendAsync(HttpMethod method, string path, HttpContent? content, params (string Name, string Value)[] headers)
    {
        using var request = new HttpRequestMessage(method, path) { Content = content };
        foreach (var (name, value) in headers)
        {
            request.Headers.TryAddWithoutValidation(name, value);
        }

        return await Answer.OfAsync(await Client.SendAsync(request));
    }

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        await App.DisposeAsync();
    }
}
