using RackCheck.Api.Tests.Hosting;

namespace RackCheck.Api.Tests.Access;

/// <summary>Bearer tokens of a local OpenID Connect issuer.</summary>
public sealed class BearerTests : IAsyncLifetime
{
    private const string Rack = """{ "cabinet": { "heightU": 42, "widthMm": 600, "depthMm": 800 }, "items": [] }""";

    private Issuer issuer = null!;
    private KestrelService service = null!;

    public async Task InitializeAsync()
    {
        issuer = await Issuer.StartAsync();
        service = await KestrelService.StartAsync(
            $"Access:Jwt:Authority={issuer.Authority}", "Access:Jwt:Audience=rack-check", "Access:Jwt:RequireHttps=false");
    }

    public async Task DisposeAsync()
    {
        await service.DisposeAsync();
        await issuer.DisposeAsync();
    }

    [Fact]
    public async Task Token_with_the_scope_is_accepted()
    {
        Assert.Equal(200, (await CheckAsync(issuer.Token("openid check plan"))).Status);
        Assert.Equal(200, (await CheckAsync(issuer.Token(new[] { "documents", "check" }))).Status);
    }

    [Fact]
    public async Task Token_without_the_scope_is_forbidden()
    {
        (await CheckAsync(issuer.Token("plan documents checks"))).IsProblem(403);
        (await CheckAsync(issuer.Token(null))).IsProblem(403);
    }

    [Fact]
    public async Task Token_of_somebody_else_or_expired_or_changed_is_refused()
    {
        await using var other = await Issuer.StartAsync();
        var token = issuer.Token("check");
        var signature = token.LastIndexOf('.') + 1;
        foreach (var wrong in new[]
        {
            other.Token("check"),
            other.Token("check", issuer: issuer.Authority),
            issuer.Token("check", audience: "shop"),
            issuer.Token("check", lifetime: TimeSpan.FromHours(-1)),
            token[..signature] + (token[signature] == 'A' ? 'B' : 'A') + token[(signature + 1)..],
            token[..signature],
            "nonsense",
        })
        {
            var answer = await CheckAsync(wrong);
            answer.IsProblem(401);
            Assert.StartsWith("Bearer", Assert.Single(answer.Headers.WwwAuthenticate).Scheme, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task No_token_is_refused_and_the_documentation_is_public()
    {
        var answer = await service.PostAsync("/v1/checks", Rack);
        answer.IsProblem(401);
        Assert.Equal(["ApiKey", "Bearer"], answer.Headers.WwwAuthenticate.Select(a => a.Scheme).Order(StringComparer.Ordinal));
        Assert.Equal(200, (await service.GetAsync("/v1/rules")).Status);
    }

    // The keys are read behind the requests: on a busy machine many are refused before the new key is known.
    private const int MostTries = 20_000;

    // A new key is published and used at once, and the old one withdrawn. The service reads the keys again when it meets a key that it does not know.
    [Fact]
    public async Task Keys_roll_over()
    {
        Assert.Equal(200, (await CheckAsync(issuer.Token("check"))).Status);
        var old = issuer.Token("check");
        issuer.NewKey();
        issuer.WithdrawOldKeys();
        var token = issuer.Token("check");
        var status = 401;
        for (var tries = 0; status != 200 && tries < MostTries; tries++)
        {
            status = (await CheckAsync(token)).Status;
        }

        Assert.Equal(200, status);
        (await CheckAsync(old)).IsProblem(401);
    }

    private Task<Answer> CheckAsync(string token) => service.PostAsync("/v1/checks", Rack, ("Authorization", "Bearer " + token));
}
