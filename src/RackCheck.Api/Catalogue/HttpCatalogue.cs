using System.Net;
using System.Text.Json;
using Polly;
using Polly.CircuitBreaker;
using Polly.RateLimiting;
using Polly.Timeout;
using RackCheck.Api.Reading;
using RackCheck.Model;
using RackCheck.Model.Json;

namespace RackCheck.Api.Catalogue;

/// <summary>Catalogue from a product service over HTTP; its contract is <c>openapi/catalogue.v1.json</c>. Invalid answers are not used.</summary>
internal sealed partial class HttpCatalogue : IProductCatalogue, IDisposable
{
    private static readonly TimeSpan DefaultRetryAfter = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan LongestRetryAfter = TimeSpan.FromHours(1);

    private readonly CatalogueOptions options;
    private readonly TimeProvider time;
    private readonly CatalogueMetrics metrics;
    private readonly ILogger logger;
    private readonly HttpClient client;
    private readonly ResiliencePipeline<ProductTry> pipeline;
    private readonly Uri lookUp;
    private readonly Uri offered;

    /// <summary>Creates the client.</summary>
    /// <param name="options">Settings with an address.</param>
    /// <param name="time">The clock for all waits.</param>
    /// <param name="metrics">Metrics of the client.</param>
    /// <param name="logger">Log of failed calls.</param>
    public HttpCatalogue(CatalogueOptions options, TimeProvider time, CatalogueMetrics metrics, ILogger logger)
    {
        (this.options, this.time, this.metrics, this.logger) = (options, time, metrics, logger);
        var root = options.BaseUrl!.AbsoluteUri.TrimEnd('/');
        (lookUp, offered) = (new Uri(root + "/v1/products/look-up"), new Uri(root + "/v1/products/offered"));
        client = MakeClient(options);
        pipeline = ProductPipeline.Build(options, time, metrics, logger);
    }

    /// <inheritdoc/>
    public async ValueTask<IReadOnlyDictionary<string, Product>> FindAsync(IReadOnlyCollection<string> partNumbers, CancellationToken cancellation)
    {
        // All batches in parallel: in sequence the last could exceed the total time.
        var batches = partNumbers.Distinct(StringComparer.Ordinal).Chunk(options.BatchSize).Select(batch => AskAsync(batch, cancellation));
        var found = new Dictionary<string, Product>(partNumbers.Count, StringComparer.Ordinal);
        foreach (var products in await Task.WhenAll(batches))
        {
            foreach (var product in products)
            {
                found.Add(product.PartNumber, product);
            }
        }

        return found;
    }

    /// <inheritdoc/>
    public async ValueTask<IReadOnlyList<Product>> OfferedAsync(CancellationToken cancellation)
    {
        var products = await CallAsync(new Call(offered, null, null), cancellation);
        return [.. products.OrderBy(p => p.PartNumber, StringComparer.Ordinal)];
    }

    /// <inheritdoc/>
    public void Dispose() => client.Dispose();

    private static HttpClient MakeClient(CatalogueOptions options) => new(
        new SocketsHttpHandler
        {
            // The contract has no redirects. An attacker who causes one could choose where the service sends its requests.
            AllowAutoRedirect = false,
            UseCookies = false,
            AutomaticDecompression = DecompressionMethods.None,
            MaxConnectionsPerServer = options.MaxConcurrentCalls,

            // So that DNS changes take effect.
            PooledConnectionLifetime = TimeSpan.FromMinutes(2),
            MaxResponseHeadersLength = 16,
        },
        disposeHandler: true)
    {
        // The pipeline sets the timeouts.
        Timeout = Timeout.InfiniteTimeSpan,
    };

    private Task<IReadOnlyList<Product>> AskAsync(string[] batch, CancellationToken cancellation)
    {
        var body = JsonSerializer.SerializeToUtf8Bytes(new ProductLookUp { PartNumbers = batch }, ContractJson.Default.ProductLookUp);
        return CallAsync(new Call(lookUp, body, batch.ToHashSet(StringComparer.Ordinal)), cancellation);
    }

    private async Task<IReadOnlyList<Product>> CallAsync(Call call, CancellationToken cancellation)
    {
        var context = ResilienceContextPool.Shared.Get(cancellation);
        context.Properties.Set(ProductPipeline.Began, time.GetTimestamp());
        try
        {
            var last = await pipeline.ExecuteAsync(
                static async (context, state) => await state.Self.TryAsync(state.Call, context.CancellationToken), context, (Self: this, Call: call));
            return last.Products ?? throw Unavailable(last.Why ?? "The product service does not respond.", last.RetryAfter);
        }
        catch (TimeoutRejectedException fault)
        {
            throw Unavailable("The product service did not respond in time.", null, fault);
        }
        catch (BrokenCircuitException fault)
        {
            throw Unavailable("The product service has failed too often; calls are suspended for a time.", fault.RetryAfter, fault);
        }
        catch (RateLimiterRejectedException fault)
        {
            throw Unavailable("Too many calls to the product service are waiting.", TimeSpan.FromSeconds(1), fault);
        }
        finally
        {
            ResilienceContextPool.Shared.Return(context);
        }
    }

    private async ValueTask<ProductTry> TryAsync(Call call, CancellationToken cancellation)
    {
        var began = time.GetTimestamp();
        var outcome = TryOutcome.TimedOut;
        metrics.TryStarted();
        try
        {
            using var request = call.Request();
            using var response = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, cancellation);
            var end = await EndOfAsync(response, call, cancellation);
            outcome = end.Outcome;
            return end;
        }
        catch (HttpRequestException fault) when (fault.HttpRequestError is HttpRequestError.ConfigurationLimitExceeded or HttpRequestError.InvalidResponse)
        {
            outcome = TryOutcome.WrongContent;
            return ProductTry.Wrong("The response of the product service is too large or not HTTP.");
        }
        catch (Exception fault) when (fault is HttpRequestException or IOException)
        {
            outcome = TryOutcome.NoConnection;
            return new ProductTry(outcome, Why: "The connection to the product service failed.");
        }
        finally
        {
            metrics.TryEnded(time.GetElapsedTime(began), outcome);
        }
    }

    private async ValueTask<ProductTry> EndOfAsync(HttpResponseMessage response, Call call, CancellationToken cancellation)
    {
        var status = (int)response.StatusCode;
        var outcome = status switch
        {
            200 => TryOutcome.Answered,
            408 => TryOutcome.TimedOut,
            429 => TryOutcome.Busy,
            >= 500 => TryOutcome.Failed,
            _ => TryOutcome.Refused,
        };
        if (outcome != TryOutcome.Answered)
        {
            var why = FormattableString.Invariant($"The product service responded with status {status}.");
            return new ProductTry(outcome, Why: why, RetryAfter: RetryAfter(response));
        }

        if (response.Content.Headers.ContentType is not { MediaType: { } media } type
            || !media.Equals("application/json", StringComparison.OrdinalIgnoreCase)
            || type.CharSet?.Trim('"') is { } charset && !charset.Equals("utf-8", StringComparison.OrdinalIgnoreCase))
        {
            return ProductTry.Wrong("The response of the product service is not application/json.");
        }

        // Stops reading at the limit, whatever the Content-Length header says.
        await response.Content.LoadIntoBufferAsync(options.MaxAnswerBytes, cancellation);
        return Read(await response.Content.ReadAsByteArrayAsync(cancellation), call.Wanted);
    }

    private static ProductTry Read(byte[] body, HashSet<string>? wanted)
    {
        var (list, faults) = ProductText.Read(body);
        if (faults is [var first, ..])
        {
            // Pointer and code only. The rest, and the name of a member that is not in the contract, is text of the other party.
            var place = first.Code switch
            {
                FaultCodes.TooDeep => "",
                FaultCodes.UnknownMember or FaultCodes.DuplicateMember => first.Pointer[..first.Pointer.LastIndexOf('/')],
                _ => first.Pointer,
            };
            return ProductTry.Wrong($"The response of the product service violates the contract: {(place.Length > 0 ? place + ", " : "")}{first.Code}.");
        }

        return wanted is not null && list!.Products.Any(p => !wanted.Contains(p.PartNumber))
            ? ProductTry.Wrong("The response of the product service contains products that were not requested.")
            : new ProductTry(TryOutcome.Answered, list!.Products);
    }

    private TimeSpan? RetryAfter(HttpResponseMessage response)
    {
        var wait = response.Headers.RetryAfter is { } header ? header.Delta ?? (header.Date - time.GetUtcNow()) : null;
        return wait < TimeSpan.Zero ? TimeSpan.Zero : wait;
    }

    private CatalogueUnavailableException Unavailable(string why, TimeSpan? retryAfter, Exception? inner = null)
    {
        LogUnavailable(logger, why);
        var wait = retryAfter ?? DefaultRetryAfter;
        return new CatalogueUnavailableException(why, wait < LongestRetryAfter ? wait : LongestRetryAfter, inner);
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "The catalogue is unavailable: {Why}")]
    private static partial void LogUnavailable(ILogger logger, string why);

    // Content of the request, made once for all attempts.
    private sealed record Call(Uri Address, byte[]? Body, HashSet<string>? Wanted)
    {
        public HttpRequestMessage Request()
        {
            var request = new HttpRequestMessage(Body is null ? HttpMethod.Get : HttpMethod.Post, Address);
            request.Headers.Accept.Add(new("application/json"));
            if (Body is not null)
            {
                request.Content = new ByteArrayContent(Body);
                request.Content.Headers.ContentType = new("application/json");
            }

            return request;
        }
    }
}
