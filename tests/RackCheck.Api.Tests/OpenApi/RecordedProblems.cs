using System.Buffers;
using System.Globalization;
using System.Net.Http.Headers;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Text;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using RackCheck.Api.Admission;
using RackCheck.Api.Tests.Hosting;

namespace RackCheck.Api.Tests.OpenApi;

/// <summary>Makes a real service refuse a request in every way that it can.</summary>
internal static class RecordedProblems
{
    private const string Checks = "/v1/checks";
    private const string Rack = """{ "cabinet": { "heightU": 42, "widthMm": 600, "depthMm": 800 }, "items": [] }""";
    private const string Key = "key of the order entry";

    // Several faults, each of another kind.
    private const string InvalidRack = """
        {
          "cabinet": { "heightU": 420, "widthMm": 600 },
          "items": [ { "id": "a", "heightU": 2, "colour": "grey" }, { "id": "a", "category": "Server", "heightU": 1 } ],
          "acceptances": [ { "rule": "layout.none", "item": "a", "reason": "agreed", "acceptedBy": "order entry" } ]
        }
        """;

    private static readonly string[] WithKey =
    [
        "Access:Clients:0:Name=order-entry",
        "Access:Clients:0:KeyHashes:0=" + Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(Key))),
        "Access:Clients:0:Scopes:0=plan",
    ];

    /// <summary>The answer with a problem of a kind.</summary>
    public static async Task<Answer> ProvokeAsync(string kind)
    {
        await using var service = await KestrelService.StartAsync(
            services =>
            {
                if (kind == "internal")
                {
                    services.Replace(ServiceDescriptor.Singleton<ArrayPool<byte>>(new BrokenPool()));
                }
            },
            kind switch
            {
                "unauthenticated" or "forbidden" => WithKey,
                "too-many-requests" => ["RateLimit:PerMinute=1", "RateLimit:Burst=1"],
                "unavailable" => [FormattableString.Invariant($"Catalogue:BaseUrl=http://127.0.0.1:{KestrelService.FreePort()}")],
                "request-timeout" => ["Service:BodySeconds=1"],
                _ => [],
            });
        switch (kind)
        {
            case "not-json":
                return await service.PostAsync(Checks, """{ "cabinet": { "heightU": 42, } }""");
            case "invalid-query":
                return await service.PostAsync(Checks + "?apply=all", Rack);
            case "unauthenticated":
                return await service.PostAsync(Checks, Rack);
            case "forbidden":
                return await service.PostAsync(Checks, Rack, ("X-API-Key", Key));
            case "not-found":
                return await service.GetAsync("/v1/rules/layout.none");
            case "method-not-allowed":
                return await service.GetAsync(Checks);
            case "not-acceptable":
                return await service.PostAsync(Checks, Rack, ("Accept", "text/plain"));
            case "request-timeout":
                return await SendPartAsync(service);
            case "too-large":
                return await service.PostAsync(Checks, new string(' ', 1_100_000));
            case "unsupported-media-type":
                using (var xml = new StringContent("<rack/>", MediaTypeHeaderValue.Parse("application/xml")))
                {
                    return await service.SendAsync(HttpMethod.Post, Checks, xml);
                }

            case "invalid-description":
                return await service.PostAsync(Checks, InvalidRack);
            case "too-many-requests":
                Assert.Equal(200, (await service.PostAsync(Checks, Rack)).Status);
                return await service.PostAsync(Checks, Rack);
            case "internal":
                return await service.PostAsync(Checks, Rack);
            case "unavailable":
                return await service.PostAsync(Checks, """{ "cabinet": { "partNumber": "QWL-CAB-42-8-10" }, "items": [] }""");
            case "overloaded":
                service.App.Services.GetRequiredService<MemoryBudget>().Take(32 * 1024 * 1024);
                return await service.PostAsync(Checks, Rack);
            default:
                throw new ArgumentOutOfRangeException(nameof(kind), kind, "No request is known that ends so.");
        }
    }

    // A client library gives up with the body, before it reads the answer.
    private static async Task<Answer> SendPartAsync(KestrelService service)
    {
        using var client = new TcpClient();
        var address = service.Client.BaseAddress!;
        await client.ConnectAsync(address.Host, address.Port);
        var connection = client.GetStream();
        await connection.WriteAsync(Encoding.ASCII.GetBytes(
            $"POST {Checks} HTTP/1.1\r\nHost: {address.Authority}\r\nContent-Type: application/json\r\nContent-Length: 100\r\n\r\n{{"));
        using var reader = new StreamReader(connection, Encoding.UTF8);
        var text = await reader.ReadToEndAsync();
        var (head, body) = (text.Split("\r\n\r\n")[0].Split("\r\n"), text.Split("\r\n\r\n")[1]);
        var status = int.Parse(head[0].Split(' ')[1], CultureInfo.InvariantCulture);
        var mediaType = head.Single(h => h.StartsWith("Content-Type: ", StringComparison.Ordinal))["Content-Type: ".Length..];
        using var response = new HttpResponseMessage();
        return new Answer(status, mediaType, body, response.Headers);
    }

    private sealed class BrokenPool : ArrayPool<byte>
    {
        public override byte[] Rent(int minimumLength) => throw new InvalidOperationException("The pool is broken.");

        public override void Return(byte[] array, bool clearArray = false)
        {
        }
    }
}
