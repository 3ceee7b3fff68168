using System.Text;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Time.Testing;
using RackCheck.Api.Catalogue;
using RackCheck.ProductService;
using static RackCheck.Api.Tests.Catalogue.CatalogueRig;

namespace RackCheck.Api.Tests.Catalogue;

/// <summary>Credentials for the product service, against local servers: a fixed header, and OAuth 2 client credentials.</summary>
public sealed class CredentialTests
{
    private const string Value = "key-7c1e52";
    private const string Secret = "s/cret: 7%";

    private static CatalogueOptions Header(Uri url, string? value = Value, string? file = null) =>
        Patient(url, header: new CatalogueHeaderOptions { Name = "X-API-Key", Value = value, ValueFile = file });

    private static CatalogueOptions OAuth(Uri url, TokenEndpoint issuer) => Patient(url, oauth: new CatalogueOAuthOptions
    {
        TokenEndpoint = issuer.Address, ClientId = "rack check", ClientSecret = Secret, Scope = "products.read",
    });

    private static CatalogueOptions Patient(Uri url, CatalogueHeaderOptions? header = null, CatalogueOAuthOptions? oauth = null) => new()
    {
        BaseUrl = url, TotalTimeoutMs = 60_000, TryTimeoutMs = 60_000, RetryDelayMs = 1, Header = header ?? new(), OAuth = oauth ?? new(),
    };

    [Fact]
    public async Task Header_is_sent_with_each_call()
    {
        await using var rig = await StartAsync(url => Header(url));
        rig.Host.Faults.LetsIn = headers => headers["X-API-Key"] == Value;
        Assert.Single(await rig.FindAsync(Pack(1)));
        Assert.Equal(10, (await rig.Cached.OfferedAsync(CancellationToken.None)).Count);
        rig.Host.Faults.LetsIn = _ => false;
        var fault = await rig.FailsAsync(Pack(2));
        Assert.Contains("status 401", fault.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(Value, fault + string.Join('\n', rig.Log.Lines), StringComparison.Ordinal);
    }

    [Fact]
    public async Task File_with_header_value_is_read_for_each_call()
    {
        var file = Path.GetTempFileName();
        try
        {
            await File.WriteAllTextAsync(file, Value + "\n");
            await using var rig = await StartAsync(url => Header(url, null, file));
            rig.Host.Faults.LetsIn = headers => headers["X-API-Key"] == Value;
            Assert.Single(await rig.FindAsync(Pack(1)));
            await File.WriteAllTextAsync(file, "next");
            rig.Host.Faults.LetsIn = headers => headers["X-API-Key"] == "next";
            Assert.Single(await rig.FindAsync(Pack(2)));
            File.Delete(file);
            Assert.Equal("The file with the credentials for the product service cannot be read.", (await rig.FailsAsync(Pack(3))).Message);
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Fact]
    public async Task Token_is_got_by_client_credentials_and_shared()
    {
        await using var issuer = await TokenEndpoint.StartAsync();
        await using var rig = await StartAsync(url => OAuth(url, issuer));
        rig.Host.Faults.LetsIn = headers => headers.Authorization == "Bearer " + TokenEndpoint.Name(1);
        var found = await Task.WhenAll(Enumerable.Range(0, 10).Select(i => Task.Run(() => rig.FindAsync(Pack(i)))));
        Assert.All(found, f => Assert.Single(f));
        var (authorization, body) = Assert.Single(issuer.Requests);
        Assert.Equal("Basic " + Convert.ToBase64String(Encoding.ASCII.GetBytes("rack%20check:s%2Fcret%3A%207%25")), authorization);
        Assert.Equal("grant_type=client_credentials&scope=products.read", body);
        Assert.Equal(1, rig.Reading("tokens:answered"));
    }

    [Theory]
    [InlineData(300, 269, 271)]
    [InlineData(40, 29, 31)]
    public async Task Token_is_kept_until_shortly_before_it_expires(int lifetime, int kept, int replaced)
    {
        var time = new FakeTimeProvider();
        await using var issuer = await TokenEndpoint.StartAsync();
        issuer.Answer = n => TokenEndpoint.Token(n, lifetime);
        await using var rig = await StartAsync(url => OAuth(url, issuer), time);
        await rig.FindAsync(Pack(1));
        time.Advance(TimeSpan.FromSeconds(kept));
        await rig.FindAsync(Pack(2));
        Assert.Single(issuer.Requests);
        time.Advance(TimeSpan.FromSeconds(replaced - kept));
        rig.Host.Faults.LetsIn = headers => headers.Authorization == "Bearer " + TokenEndpoint.Name(2);
        Assert.Single(await rig.FindAsync(Pack(3)));
        Assert.Equal(2, issuer.Requests.Count);
    }

    [Fact]
    public async Task Transient_fault_of_the_token_endpoint_is_retried()
    {
        await using var issuer = await TokenEndpoint.StartAsync();
        issuer.Answer = n => n == 1 ? Results.StatusCode(503) : TokenEndpoint.Token(n);
        await using var rig = await StartAsync(url => OAuth(url, issuer));
        Assert.Single(await rig.FindAsync(Pack(1)));
        Assert.Equal((2, 1d, 1), (issuer.Requests.Count, rig.Reading("retries"), rig.Host.Faults.Calls));
    }

    [Fact]
    public async Task Refused_client_is_not_retried_and_its_secret_not_shown()
    {
        await using var issuer = await TokenEndpoint.StartAsync();
        issuer.Answer = _ => Results.Json(new { error = "invalid_client" }, statusCode: 401);
        await using var rig = await StartAsync(url => OAuth(url, issuer));
        var fault = await rig.FailsAsync(Pack(1));
        Assert.Equal("The token endpoint responded with status 401.", fault.Message);
        Assert.Equal((1, 0), (issuer.Requests.Count, rig.Host.Faults.Calls));
        var told = fault + string.Join('\n', rig.Log.Lines);
        Assert.DoesNotContain(Secret, told, StringComparison.Ordinal);
        Assert.DoesNotContain("invalid_client", told, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Token_endpoint_that_is_not_there_makes_the_catalogue_unavailable()
    {
        var issuer = await TokenEndpoint.StartAsync();
        await using var rig = await StartAsync(url => OAuth(url, issuer));
        await issuer.DisposeAsync();
        Assert.Equal("The connection to the token endpoint failed.", (await rig.FailsAsync(Pack(1))).Message);
        Assert.Equal((3, 2d), (rig.Reading("tokens:no-connection"), rig.Reading("retries")));
    }

    [Theory]
    [InlineData("""{ "access_token": "t", "token_type": "mac" }""")]
    [InlineData("""{ "access_token": "t" }""")]
    [InlineData("""{ "access_token": "a b", "token_type": "bearer" }""")]
    [InlineData("""{ "token_type": "bearer" }""")]
    [InlineData("[]")]
    [InlineData("<html>")]
    public async Task Answer_without_bearer_token_makes_the_catalogue_unavailable(string answer)
    {
        await using var issuer = await TokenEndpoint.StartAsync();
        issuer.Answer = _ => Results.Text(answer, "application/json");
        await using var rig = await StartAsync(url => OAuth(url, issuer));
        Assert.Equal("The response of the token endpoint has no bearer token.", (await rig.FailsAsync(Pack(1))).Message);
        Assert.Equal(0, rig.Host.Faults.Calls);
    }

    [Fact]
    public async Task Token_withdrawn_before_its_end_is_replaced_at_once()
    {
        await using var issuer = await TokenEndpoint.StartAsync();
        await using var rig = await StartAsync(url => OAuth(url, issuer));
        await rig.FindAsync(Pack(1));
        rig.Host.Faults.LetsIn = headers => headers.Authorization == "Bearer " + TokenEndpoint.Name(2);
        Assert.Single(await rig.FindAsync(Pack(2)));
        Assert.Equal((2, 0d), (issuer.Requests.Count, rig.Reading("retries")));

        // A new token that is refused too is not asked for again in the same call.
        rig.Host.Faults.LetsIn = _ => false;
        await rig.FailsAsync(Pack(3));
        Assert.Equal(3, issuer.Requests.Count);
        await rig.FailsAsync(Pack(3));
        Assert.Equal(4, issuer.Requests.Count);
    }
}
