using System.Globalization;
using System.Net;
using System.Text.Json;
using Polly;
using Polly.CircuitBreaker;
using Polly.RateLimiting;
using Polly.Timeout;
using RackCheck.Api.Http;
using RackCheck.Api.Reading;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Api.Catalogue;

/// <summary>
/// Catalogue from a product service over HTTP; its contract is <c>openapi/catalogue.v1.json</c>. Invalid answers are not used, invalid products left out.
/// </summary>
internal sealed partial class HttpCatalogue : IProductCatalogue, IDisposable
{
    private static readonly TimeSpan DefaultRetryAfter = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan LongestRetryAfter = TimeSpan.FromHours(1);

    // In the log of one answer.
    private const int MostNamed = 20;

    private readonly CatalogueOptions options;
    private readonly TimeProvider time;
    private readonly CatalogueMetrics metrics;
    private readonly CatalogueState state;
    private readonly ILogger logger;
    private readonly HttpClient client;
    private readonly ProductCredentials credentials;
    private readonly ResiliencePipeline<ProductTry> pipeline;
    private readonly Uri lookUp;
    private readonly Uri offered;

    /// <summary>Creates the client.</summary>
    /// <param name="options">Settings with an address.</param>
    /// <param name="time">The clock for all waits.</param>
    /// <param name="metrics">Metrics of the client.</param>
    /// <param name="state">Learns whether calls are answered.</param>
    /// <param name="logger">Log of failed calls and wrong products.</param>
    public HttpCatalogue(CatalogueOptions options, TimeProvider time, CatalogueMetrics metrics, CatalogueState state, ILogger logger)
    {
        (this.options, this.time, this.metrics, this.state, this.logger) = (options, time, metrics, state, logger);
        var root = options.BaseUrl!.AbsoluteUri.TrimEnd('/');
        (lookUp, offered) = (new Uri(root + "/v1/products/look-up"), new Uri(root + "/v1/products/offered"));
        client = MakeClient(options);
        credentials = new ProductCredentials(options, client, time, metrics);
        pipeline = ProductPipeline.Build(options, time, metrics, logger);
    }

    /// <inheritdoc/>
    public async ValueTask<ProductDictionary> FindAsync(IReadOnlyCollection<string> partNumbers, CancellationToken cancellation)
    {
        // All batches in parallel: in sequence the last could exceed the total time.
        var batches = partNumbers.Distinct(StringComparer.Ordinal).Chunk(options.BatchSize).Select(batch => AskAsync(batch, cancellation));
        var found = new Dictionary<string, Product>(partNumbers.Count, StringComparer.Ordinal);
        var faults = new Dictionary<string, Fault>(StringComparer.Ordinal);
        foreach (var (batch, products, wrong) in await Task.WhenAll(batches))
        {
            foreach (var product in products.Where(p => batch.Contains(p.PartNumber)))
            {
                found.Add(product.PartNumber, product);
            }

            foreach (var product in wrong.Where(w => w.PartNumber is { } number && batch.Contains(number)))
            {
                faults.TryAdd(product.PartNumber!, product.Fault);
            }

            // A product without a readable part number may be any of those that the answer does not have.
            if (wrong.FirstOrDefault(w => w.PartNumber is null) is { } nameless)
            {
                foreach (var partNumber in batch.Where(p => !found.ContainsKey(p)))
                {
                    faults.TryAdd(partNumber, nameless.Fault);
                }
            }
        }

        return new ProductDictionary(found, faults);
    }

    /// <inheritdoc/>
    public async ValueTask<IReadOnlyList<Product>> OfferedAsync(CancellationToken cancellation)
    {
        var answer = await CallAsync(new Call(offered, null, null), cancellation);
        return [.. answer.Products!.OrderBy(p => p.PartNumber, StringComparer.Ordinal)];
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        credentials.Dispose();
        client.Dispose();
    }

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

    private async Task<(HashSet<string> Batch, IReadOnlyList<Product> Products, IReadOnlyList<WrongProduct> Wrong)> AskAsync(
        string[] batch, CancellationToken cancellation)
    {
        var body = JsonSerializer.SerializeToUtf8Bytes(new ProductLookUp { PartNumbers = batch }, ContractJson.Default.ProductLookUp);
        var wanted = batch.ToHashSet(StringComparer.Ordinal);
        var answer = await CallAsync(new Call(lookUp, body, wanted), cancellation);
        return (wanted, answer.Products!, answer.LeftOut!);
    }

    private async Task<ProductTry> CallAsync(Call call, CancellationToken cancellation)
    {
        var context = ResilienceContextPool.Shared.Get(cancellation);
        context.Properties.Set(ProductPipeline.Began, time.GetTimestamp());
        try
        {
            var last = await pipeline.ExecuteAsync(
                static async (context, state) => await state.Self.TryAsync(state.Call, context.CancellationToken), context, (Self: this, Call: call));
            if (last.Products is null)
            {
                throw Unavailable(last.Why ?? "The product service does not respond.", last.RetryAfter);
            }

            state.Set(true);
            Tell(last.LeftOut!);
            return last;
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
            // Nothing is known of the product service.
            const string Why = "Too many calls to the product service are waiting.";
            LogUnavailable(logger, Why);
            throw new CatalogueUnavailableException(Why, TimeSpan.FromSeconds(1), fault);
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
            var end = await SendAsync(call, cancellation);
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

    private async ValueTask<ProductTry> SendAsync(Call call, CancellationToken cancellation)
    {
        while (true)
        {
            using var request = call.Request();
            if (await credentials.AddAsync(request, cancellation) is { } failure)
            {
                return failure;
            }

            using var response = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, cancellation);
            if (!credentials.IsToBeRepeated(request, response.StatusCode))
            {
                return await EndOfAsync(response, call, cancellation);
            }
        }
    }

    private async ValueTask<ProductTry> EndOfAsync(HttpResponseMessage response, Call call, CancellationToken cancellation)
    {
        var status = (int)response.StatusCode;
        var outcome = ProductTry.OutcomeOf(status);
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

    private ProductTry Read(byte[] body, HashSet<string>? wanted)
    {
        var (products, wrong, fault) = ProductText.ReadEach(body, options.UnknownInAnswers);
        if (fault is not null)
        {
            // Pointer and code only: the rest can be text of the other party.
            return ProductTry.Wrong(
                $"The response of the product service violates the contract: {(fault.Pointer.Length > 0 ? fault.Pointer + ", " : "")}{fault.Code}.");
        }

        if (wanted is not null && products.Any(p => !wanted.Contains(p.PartNumber)))
        {
            var notRequested = new Fault { Pointer = "", Code = FaultCodes.NotHere, Detail = "The product was not requested." };
            wrong = [.. wrong, .. products.Where(p => !wanted.Contains(p.PartNumber)).Select(p => new WrongProduct(0, p.PartNumber, notRequested))];
        }

        return new ProductTry(TryOutcome.Answered, products, LeftOut: wrong);
    }

    private void Tell(IReadOnlyList<WrongProduct> wrong)
    {
        for (var i = 0; i < wrong.Count; i++)
        {
            var (index, partNumber, fault) = wrong[i];
            var name = partNumber is null ? string.Create(CultureInfo.InvariantCulture, $"product {index + 1} without part number") : ShownText.Of(partNumber);
            metrics.Wrong(partNumber is null ? "unreadable" : name, fault.Code);
            if (i < MostNamed)
            {
                LogWrong(logger, name, fault.Pointer, fault.Code);
            }
        }

        if (wrong.Count > MostNamed)
        {
            LogMoreWrong(logger, wrong.Count - MostNamed);
        }
    }

    private TimeSpan? RetryAfter(HttpResponseMessage response)
    {
        var wait = response.Headers.RetryAfter is { } header ? header.Delta ?? (header.Date - time.GetUtcNow()) : null;
        return wait < TimeSpan.Zero ? TimeSpan.Zero : wait;
    }

    private CatalogueUnavailableException Unavailable(string why, TimeSpan? retryAfter, Exception? inner = null)
    {
        state.Set(false);
        LogUnavailable(logger, why);
        var wait = retryAfter ?? DefaultRetryAfter;
        return new CatalogueUnavailableException(why, wait < LongestRetryAfter ? wait : LongestRetryAfter, inner);
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "The catalogue is unavailable: {Why}")]
    private static partial void LogUnavailable(ILogger logger, string why);

    [LoggerMessage(Level = LogLevel.Warning, Message = "Left out of the answer of the product service: {PartNumber} ({Pointer} {Code})")]
    private static partial void LogWrong(ILogger logger, string partNumber, string pointer, string code);

    [LoggerMessage(Level = LogLevel.Warning, Message = "Left out of the answer of the product service: {Count} more products")]
    private static partial void LogMoreWrong(ILogger logger, int count);

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
