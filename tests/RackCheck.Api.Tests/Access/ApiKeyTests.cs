using System.Security.Cryptography;
using System.Text;
using RackCheck.Api.Tests.Hosting;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Access;

/// <summary>API keys, scopes, rates and public documentation.</summary>
public sealed class ApiKeyTests
{
    private const string Rack = """{ "cabinet": { "heightU": 42, "widthMm": 600, "depthMm": 800 }, "items": [] }""";
    private const string OldKey = "old key of the order entry";
    private const string NewKey = "new key of the order entry";
    private const string ShopKey = "key of the shop";

    private static readonly string[] Clients =
    [
        "Access:Clients:0:Name=order-entry",
        "Access:Clients:0:KeyHashes:0=" + Hash(OldKey),
        "Access:Clients:0:KeyHashes:1=" + Hash(NewKey),
        "Access:Clients:1:Name=shop",
        "Access:Clients:1:KeyHashes:0=" + Hash(ShopKey).ToLowerInvariant(),
        "Access:Clients:1:Scopes:0=plan",
    ];

    [Fact]
    public async Task Both_keys_of_a_client_are_valid()
    {
        await using var service = await KestrelService.StartAsync(Clients);
        Assert.Equal(200, (await CheckAsync(service, OldKey)).Status);
        Assert.Equal(200, (await CheckAsync(service, NewKey)).Status);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("key of the  shop")]
    [InlineData("Key of the shop")]
    public async Task Other_key_is_refused(string? key)
    {
        await using var service = await KestrelService.StartAsync(Clients);
        var answer = await CheckAsync(service, key);
        answer.IsProblem(401);
        Assert.Equal("ApiKey", Assert.Single(answer.Headers.WwwAuthenticate).Scheme);
        (await CheckAsync(service, Hash(ShopKey))).IsProblem(401);
        (await CheckAsync(service, new string('k', 5000))).IsProblem(401);
        (await service.PostAsync("/v1/checks", Rack, ("X-API-Key", NewKey), ("X-API-Key", NewKey))).IsProblem(401);
        (await service.PostAsync("/v1/checks", Rack, ("Authorization", "Bearer " + NewKey))).IsProblem(401);
    }

    [Fact]
    public async Task Client_may_do_what_its_scopes_say()
    {
        await using var service = await KestrelService.StartAsync(Clients);
        (await CheckAsync(service, ShopKey)).IsProblem(403);
        (await service.PostAsync("/v1/parts-lists", Rack, ("X-API-Key", ShopKey))).IsProblem(403);
        (await service.PostAsync("/v1/parts-lists", Rack)).IsProblem(401);
        Assert.Equal(200, (await service.PostAsync("/v1/parts-lists", Rack, ("X-API-Key", NewKey))).Status);
        var basket = Repository.Read("openapi", "examples", "basket-complete.json");
        Assert.Equal(200, (await service.PostAsync("/v1/baskets/checks", basket, ("X-API-Key", ShopKey))).Status);
        (await service.PostAsync("/v1/specifications", Rack, ("X-API-Key", ShopKey))).IsProblem(403);
        (await service.PostAsync("/v1/specifications", Rack)).IsProblem(401);
        Assert.Equal(200, (await service.PostAsync("/v1/specifications", Rack, ("X-API-Key", NewKey))).Status);
        (await service.PostAsync("/v1/elevations", Rack, ("X-API-Key", ShopKey))).IsProblem(403);
        (await service.PostAsync("/v1/elevations", Rack)).IsProblem(401);
        Assert.Equal(200, (await service.PostAsync("/v1/elevations", Rack, ("X-API-Key", NewKey))).Status);
    }

    [Fact]
    public async Task Anonymous_callers_are_answered_if_told_and_wrong_keys_still_refused()
    {
        await using var service = await KestrelService.StartAsync([.. Clients, "Access:Anonymous=true"]);
        Assert.Equal(200, (await CheckAsync(service, null)).Status);
        (await CheckAsync(service, "wrong")).IsProblem(401);
        (await CheckAsync(service, ShopKey)).IsProblem(403);
    }

    [Theory]
    [InlineData("/v1/rules")]
    [InlineData("/v1/rules/layout.overlap")]
    [InlineData("/v1/reference/rack-geometry")]
    [InlineData("/openapi/v1.json")]
    [InlineData("/docs")]
    [InlineData("/docs/explorer/index.html")]
    [InlineData("/docs/rules")]
    [InlineData("/version")]
    public async Task Documentation_is_public_unless_told(string path)
    {
        await using var open = await KestrelService.StartAsync(Clients);
        Assert.Equal(200, (await open.GetAsync(path)).Status);
        await using var closed = await KestrelService.StartAsync([.. Clients, "Access:PublicDocs=false"]);
        (await closed.GetAsync(path)).IsProblem(401);
        Assert.Equal(200, (await closed.GetAsync(path, ("X-API-Key", ShopKey))).Status);
        Assert.Equal(200, (await closed.GetAsync("/health/ready")).Status);
    }

    [Fact]
    public async Task Rate_is_limited_by_client_and_said_in_headers()
    {
        await using var service = await KestrelService.StartAsync([.. Clients, "RateLimit:PerMinute=1", "RateLimit:Burst=2", "Access:Clients:1:PerMinute=0"]);
        var first = await CheckAsync(service, OldKey);
        Assert.Equal((200, "\"default\";q=2;w=120"), (first.Status, Header(first, "RateLimit-Policy")));
        Assert.Equal("\"default\";r=1;t=60", Header(first, "RateLimit"));
        Assert.Equal(200, (await CheckAsync(service, NewKey)).Status);
        var refused = await CheckAsync(service, NewKey);
        refused.IsProblem(429);
        Assert.Equal("\"default\";r=0;t=120", Header(refused, "RateLimit"));
        Assert.InRange(refused.Headers.RetryAfter!.Delta!.Value.TotalSeconds, 1, 120);

        // Other callers, and what is not computed, are not concerned.
        for (var i = 0; i < 5; i++)
        {
            (await CheckAsync(service, ShopKey)).IsProblem(403);
            Assert.Equal(200, (await service.GetAsync("/v1/rules", ("X-API-Key", NewKey))).Status);
            Assert.Equal(200, (await service.GetAsync("/health/live")).Status);
        }
    }

    [Fact]
    public async Task Anonymous_callers_are_limited_by_address_except_on_a_developers_machine()
    {
        await using var service = await KestrelService.StartAsync("RateLimit:PerMinute=1", "RateLimit:Burst=1");
        Assert.Equal(200, (await CheckAsync(service, null)).Status);
        (await CheckAsync(service, null)).IsProblem(429);

        using var development = Service.With(("RateLimit:PerMinute", "1"), ("RateLimit:Burst", "1"));
        using var client = development.CreateClient();
        for (var i = 0; i < 3; i++)
        {
            using var content = new StringContent(Rack, null, "application/json");
            var answer = await Answer.OfAsync(await client.PostAsync("/v1/checks", content));
            Assert.Equal((200, false), (answer.Status, answer.Headers.Contains("RateLimit")));
        }
    }

    private static Task<Answer> CheckAsync(KestrelService service, string? key) => key is null
        ? service.PostAsync("/v1/checks", Rack)
        : service.PostAsync("/v1/checks", Rack, ("X-API-Key", key));

    private static string Header(Answer answer, string name) => answer.Headers.GetValues(name).Single();

    private static string Hash(string key) => Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(key)));
}
