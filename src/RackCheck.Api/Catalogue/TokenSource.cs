using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;

namespace RackCheck.Api.Catalogue;

/// <summary>
/// Access tokens by OAuth 2 client credentials, RFC 6749 section 4.4. A token is kept until shortly before it expires; one request at a time asks for the
/// next. It is asked for inside an attempt of a call, so that time limits, retries and circuit breaker include it.
/// </summary>
/// <param name="options">Token endpoint and client credentials.</param>
/// <param name="client">Sends the requests.</param>
/// <param name="time">The clock.</param>
/// <param name="metrics">Counts the requests.</param>
internal sealed class TokenSource(CatalogueOAuthOptions options, HttpClient client, TimeProvider time, CatalogueMetrics metrics) : IDisposable
{
    private const int MostBytes = 64 * 1024;
    private const double LongestSeconds = 86_400;

    // Of a token whose lifetime the issuer does not tell.
    private const double DefaultSeconds = 60;

    // Before its end a token is not used any more: at most so long, and at most this share of its lifetime.
    private const double MarginSeconds = 30;
    private const double MarginShare = 0.25;

    private readonly SemaphoreSlim oneAtATime = new(1, 1);
    private volatile Token? held;

    /// <summary>The current token, from the token endpoint if there is none.</summary>
    /// <param name="cancellation">Ends the wait.</param>
    /// <returns>The token, or the failure as the outcome of the attempt.</returns>
    public async ValueTask<(string? Token, ProductTry? Failure)> GetAsync(CancellationToken cancellation)
    {
        if (Current is { } current)
        {
            return (current, null);
        }

        await oneAtATime.WaitAsync(cancellation);
        try
        {
            if (Current is { } next)
            {
                return (next, null);
            }

            var outcome = TryOutcome.TimedOut;
            try
            {
                var (token, failure) = await FetchAsync(cancellation);
                outcome = failure?.Outcome ?? TryOutcome.Answered;
                held = token;
                return (token?.Value, failure);
            }
            catch (Exception fault) when (fault is HttpRequestException or IOException)
            {
                outcome = TryOutcome.NoConnection;
                return (null, new ProductTry(outcome, Why: "The connection to the token endpoint failed."));
            }
            finally
            {
                metrics.Token(outcome);
            }
        }
        finally
        {
            oneAtATime.Release();
        }
    }

    /// <summary>Learns whether the product service accepts a token. One that it refuses is not used again.</summary>
    /// <param name="token">The token.</param>
    /// <param name="isAccepted">Whether it was accepted.</param>
    /// <returns>Whether another token is likely to help: this one was accepted before.</returns>
    public bool Judge(string token, bool isAccepted)
    {
        if (held is not { } own || own.Value != token)
        {
            // Another request has a new one already.
            return !isAccepted && held is { WasAccepted: true };
        }

        if (isAccepted)
        {
            own.WasAccepted = true;
            return false;
        }

        held = null;
        return own.WasAccepted;
    }

    /// <inheritdoc/>
    public void Dispose() => oneAtATime.Dispose();

    private string? Current => held is { } token && time.GetElapsedTime(token.Since).TotalSeconds < token.Seconds ? token.Value : null;

    private async ValueTask<(Token? Token, ProductTry? Failure)> FetchAsync(CancellationToken cancellation)
    {
        if (options.Secret.Read() is not { } secret)
        {
            return (null, new ProductTry(TryOutcome.Refused, Why: "The file with the client secret cannot be read."));
        }

        var since = time.GetTimestamp();
        using var request = new HttpRequestMessage(HttpMethod.Post, options.TokenEndpoint);
        request.Headers.Accept.Add(new("application/json"));

        // RFC 6749 section 2.3.1: both are form-encoded first.
        var pair = $"{Uri.EscapeDataString(options.ClientId!)}:{Uri.EscapeDataString(secret)}";
        request.Headers.Authorization = new AuthenticationHeaderValue("Basic", Convert.ToBase64String(Encoding.ASCII.GetBytes(pair)));
        Dictionary<string, string> form = new(StringComparer.Ordinal) { ["grant_type"] = "client_credentials" };
        if (options.Scope is { Length: > 0 } scope)
        {
            form["scope"] = scope;
        }

        request.Content = new FormUrlEncodedContent(form);
        using var response = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, cancellation);
        var (status, outcome) = ((int)response.StatusCode, ProductTry.OutcomeOf((int)response.StatusCode));
        if (outcome != TryOutcome.Answered)
        {
            return (null, new ProductTry(outcome, Why: FormattableString.Invariant($"The token endpoint responded with status {status}.")));
        }

        await response.Content.LoadIntoBufferAsync(MostBytes, cancellation);
        return Read(await response.Content.ReadAsByteArrayAsync(cancellation), since) is { } token
            ? (token, null)
            : (null, ProductTry.Wrong("The response of the token endpoint has no bearer token."));
    }

    // Members that RFC 6749 does not define are ignored, as it says.
    private static Token? Read(byte[] body, long since)
    {
        try
        {
            using var document = JsonDocument.Parse(body);
            var root = document.RootElement;
            if (root.ValueKind != JsonValueKind.Object
                || TextOf(root, "access_token") is not { Length: > 0 } value
                || value.AsSpan().ContainsAnyExceptInRange('!', '~')
                || !string.Equals(TextOf(root, "token_type"), "Bearer", StringComparison.OrdinalIgnoreCase))
            {
                return null;
            }

            var lifetime = root.TryGetProperty("expires_in", out var given) && given.ValueKind == JsonValueKind.Number ? given.GetDouble() : DefaultSeconds;
            var seconds = Math.Clamp(lifetime, 0, LongestSeconds);
            return new Token(value, since, seconds - Math.Min(MarginSeconds, seconds * MarginShare));
        }
        catch (Exception fault) when (fault is JsonException or InvalidOperationException or FormatException)
        {
            return null;
        }
    }

    private static string? TextOf(JsonElement root, string name) =>
        root.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;

    private sealed class Token(string value, long since, double seconds)
    {
        public string Value => value;

        public long Since => since;

        public double Seconds => seconds;

        public volatile bool WasAccepted;
    }
}
