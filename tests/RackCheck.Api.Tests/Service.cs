using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using RackCheck.Api.Endpoints;

namespace RackCheck.Api.Tests;

/// <summary>The service in this process.</summary>
public sealed class Service : WebApplicationFactory<Program>
{
    /// <summary>Waiting and computing may take any time, so that no test depends on how busy the machine is.</summary>
    public static readonly string[] Patience =
    [
        "Admission:Checks:WaitMs=600000", "Admission:Checks:WorkMs=600000", "Admission:Planning:WaitMs=600000", "Admission:Planning:WorkMs=600000",
        "Admission:Searches:WaitMs=600000", "Admission:Searches:WorkMs=600000", "Admission:Documents:WaitMs=600000", "Admission:Documents:WorkMs=600000",
    ];

    protected override void ConfigureWebHost(IWebHostBuilder builder) => BePatient(builder.UseEnvironment("Development"));

    // It answers before it is ready; tests begin when it is.
    protected override IHost CreateHost(IHostBuilder builder)
    {
        var host = base.CreateHost(builder);
        var readiness = host.Services.GetRequiredService<Readiness>();
        SpinWait.SpinUntil(() => readiness.Warm.IsCompleted, TimeSpan.FromMinutes(2));
        return host;
    }

    /// <summary>Sets <see cref="Patience"/>.</summary>
    public static IWebHostBuilder BePatient(IWebHostBuilder builder) =>
        Patience.Select(s => s.Split('=')).Aggregate(builder, static (own, setting) => own.UseSetting(setting[0], setting[1]));

    /// <summary>The service in Development with further settings.</summary>
    public static WebApplicationFactory<Program> With(params (string Name, string Value)[] settings) => new Service().WithWebHostBuilder(builder =>
    {
        foreach (var (name, value) in settings)
        {
            builder.UseSetting(name, value);
        }
    });

    public async Task<Answer> PostAsync(string body, string path = "/v1/checks") => await PostAsync(Encoding.UTF8.GetBytes(body), path);

    public async Task<Answer> PostAsync(byte[] body, string path = "/v1/checks", string? contentType = "application/json", string? accept = null)
    {
        using var client = CreateClient();
        using var request = new HttpRequestMessage(HttpMethod.Post, path) { Content = new ByteArrayContent(body) };
        request.Content.Headers.ContentType = contentType is null ? null : MediaTypeHeaderValue.Parse(contentType);
        if (accept is not null)
        {
            request.Headers.TryAddWithoutValidation("Accept", accept);
        }

        return await Answer.OfAsync(await client.SendAsync(request));
    }

    public async Task<Answer> GetAsync(string path, string? accept = null)
    {
        using var client = CreateClient(new WebApplicationFactoryClientOptions { AllowAutoRedirect = false });
        using var request = new HttpRequestMessage(HttpMethod.Get, path);
        if (accept is not null)
        {
            request.Headers.TryAddWithoutValidation("Accept", accept);
        }

        return await Answer.OfAsync(await client.SendAsync(request));
    }
}

/// <summary>A complete response.</summary>
public sealed record Answer(int Status, string? MediaType, string Text, HttpResponseHeaders Headers)
{
    public JsonNode Json => JsonNode.Parse(Text)!;

    public IEnumerable<(string Pointer, string Code)> Faults =>
        Json["errors"]?.AsArray().Select(e => (e!["pointer"]!.GetValue<string>(), e["code"]!.GetValue<string>())) ?? [];

    public static async Task<Answer> OfAsync(HttpResponseMessage response)
    {
        using (response)
        {
            var text = await response.Content.ReadAsStringAsync();
            return new Answer((int)response.StatusCode, response.Content.Headers.ContentType?.MediaType, text, response.Headers);
        }
    }

    /// <summary>Asserts that the response is a complete problem document with this status.</summary>
    public void IsProblem(int status)
    {
        Assert.Equal((status, "application/problem+json"), (Status, MediaType));
        Assert.Equal(status, Json["status"]!.GetValue<int>());
        Assert.StartsWith("/docs/problems/", Json["type"]!.GetValue<string>(), StringComparison.Ordinal);
        Assert.NotEmpty(Json["title"]!.GetValue<string>());
        Assert.DoesNotContain("System.", Text, StringComparison.Ordinal);
        Assert.DoesNotContain("RackCheck.", Text, StringComparison.Ordinal);
        JsonDocument.Parse(Text).Dispose();
    }
}
