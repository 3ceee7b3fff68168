using System.Net;
using System.Net.Http.Headers;

namespace RackCheck.Api.Catalogue;

/// <summary>Adds the configured credentials to calls of the product service: none, a fixed header, or a bearer token of the token endpoint.</summary>
internal sealed class ProductCredentials : IDisposable
{
    private readonly CatalogueHeaderOptions header;
    private readonly TokenSource? tokens;

    /// <summary>Creates the credentials.</summary>
    /// <param name="options">Settings of header or client credentials.</param>
    /// <param name="client">Sends requests for tokens.</param>
    /// <param name="time">The clock.</param>
    /// <param name="metrics">Counts requests for tokens.</param>
    public ProductCredentials(CatalogueOptions options, HttpClient client, TimeProvider time, CatalogueMetrics metrics)
    {
        header = options.Header;
        tokens = options.OAuth.IsSet ? new TokenSource(options.OAuth, client, time, metrics) : null;
    }

    /// <summary>Adds the credentials to a request.</summary>
    /// <param name="request">The request.</param>
    /// <param name="cancellation">Ends the wait for a token.</param>
    /// <returns>Why there are no credentials, as the outcome of the attempt; null if they were added.</returns>
    public async ValueTask<ProductTry?> AddAsync(HttpRequestMessage request, CancellationToken cancellation)
    {
        if (tokens is not null)
        {
            var (token, failure) = await tokens.GetAsync(cancellation);
            request.Headers.Authorization = token is null ? null : new AuthenticationHeaderValue("Bearer", token);
            return failure;
        }

        if (!header.IsSet)
        {
            return null;
        }

        if (header.Secret.Read() is not { } value)
        {
            return new ProductTry(TryOutcome.Refused, Why: "The file with the credentials for the product service cannot be read.");
        }

        request.Headers.TryAddWithoutValidation(header.Name!, value);
        return null;
    }

    /// <summary>Whether a request is to be repeated with a new token: its token was accepted before, and is not any more.</summary>
    /// <param name="request">The request.</param>
    /// <param name="status">Its status.</param>
    public bool IsToBeRepeated(HttpRequestMessage request, HttpStatusCode status) =>
        tokens is not null && request.Headers.Authorization?.Parameter is { } token && tokens.Judge(token, status != HttpStatusCode.Unauthorized);

    /// <inheritdoc/>
    public void Dispose() => tokens?.Dispose();
}
