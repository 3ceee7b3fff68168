using System.Buffers;
using System.Collections.Concurrent;
using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using RackCheck.Api.Admission;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Http;

/// <summary>
/// Allocations and writes fail at random points while eight callers post different racks over real connections. Every response is the caller's own
/// complete report, a problem document, or a closed connection.
/// </summary>
/// <remarks>
/// The pool fails as the framework's pool does when memory runs out, also after it has taken a buffer. A buffer returned twice would receive the bodies
/// of two requests.
/// </remarks>
public sealed class FailureInjectionTests
{
    private const int Callers = 8;

    [Fact]
    [Trait("Kind", "property")]
    public async Task Caller_gets_no_data_of_another_caller()
    {
        var each = Samples.Of(200_000 / Callers, least: 1_000);
        var answers = each * Callers;
        await using var host = new FailingService();
        host.UseKestrel(0);
        host.StartServer();
        var address = host.ClientOptions.BaseAddress;
        var (wrong, statuses) = (new ConcurrentQueue<string>(), new ConcurrentDictionary<int, int>());
        await Task.WhenAll(Enumerable.Range(0, Callers).Select(caller => Task.Run(async () =>
        {
            using var client = new HttpClient { BaseAddress = address };
            for (var i = 0; i < each && wrong.IsEmpty; i++)
            {
                var (status, fault) = await PostAsync(client, caller, i);
                statuses.AddOrUpdate(status, 1, static (_, count) => count + 1);
                if (fault is not null)
                {
                    wrong.Enqueue(fault);
                }
            }
        })));

        Assert.Empty(wrong);
        Assert.Equal(answers, statuses.Values.Sum());
        Assert.Subset(new HashSet<int> { 0, 200, 500 }, statuses.Keys.ToHashSet());

        // What failed returned its room too.
        Assert.Equal(0, host.Services.GetRequiredService<MemoryBudget>().Used);

        // Most requests succeed, and each kind of failure occurs often enough.
        Assert.InRange(statuses[200], answers / 2, answers);
        Assert.InRange(statuses[500], answers / 200, answers);
        Assert.InRange(statuses[0], answers / 200, answers);
        Assert.InRange(host.Pool.FailuresAfterTaking, answers / 1000, answers);
    }

    private static async Task<(int Status, string? Fault)> PostAsync(HttpClient client, int caller, int number)
    {
        var reference = $"caller-{caller}-{number}";

        // Without a Content-Length header the service starts with a small buffer and must grow it.
        using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/checks")
        {
            Content = new StreamContent(new MemoryStream(Body(reference, caller, number))),
        };
        request.Content.Headers.ContentType = new MediaTypeHeaderValue("application/json");
        request.Headers.TransferEncodingChunked = number % 2 == 0;
        try
        {
            using var response = await client.SendAsync(request);
            var text = await response.Content.ReadAsStringAsync();
            var json = JsonNode.Parse(text)!;
            var isRight = response.StatusCode == HttpStatusCode.OK
                ? json["reference"]!.GetValue<string>() == reference && OwnItems(json, caller)
                : response.Content.Headers.ContentType?.MediaType == "application/problem+json" && json["status"]!.GetValue<int>() == (int)response.StatusCode;
            return ((int)response.StatusCode, isRight ? null : $"{reference}: {(int)response.StatusCode} {text[..Math.Min(text.Length, 300)]}");
        }
        catch (Exception fault) when (fault is HttpRequestException or IOException)
        {
            return (0, null);
        }
        catch (JsonException fault)
        {
            return (-1, $"{reference}: not JSON: {fault.Message}");
        }
    }

    // Every item has the number of its caller and a position outside the rack, so that the report names it.
    private static bool OwnItems(JsonNode report, int caller)
    {
        var outside = report["findings"]!.AsArray().Where(f => f!["rule"]!.GetValue<string>() == "layout.outside-rack").ToArray();
        return outside.Length > 0 && outside.All(f => f!["messageData"]!["item"]!.GetValue<string>().StartsWith($"c{caller}-", StringComparison.Ordinal));
    }

    private static byte[] Body(string reference, int caller, int number)
    {
        var items = string.Join(
            ",",
            Enumerable.Range(0, 1 + (number % 3)).Select(i => $$"""{ "id": "c{{caller}}-{{i}}", "heightU": 1, "position": { "u": {{45 + i}} } }"""));
        var padding = new string(' ', number % 5 == 0 ? 40_000 : 0);
        return Encoding.UTF8.GetBytes(
            $$"""{ "reference": "{{reference}}", "cabinet": { "heightU": 42, "widthMm": 600, "depthMm": 800 },{{padding}} "items": [ {{items}} ] }""");
    }

    private sealed class FailingService : WebApplicationFactory<Program>
    {
        public FailingPool Pool { get; } = new();

        protected override void ConfigureWebHost(IWebHostBuilder builder) =>
            Service.BePatient(builder).UseEnvironment("Development").ConfigureServices(services =>
        {
            services.Replace(ServiceDescriptor.Singleton<ArrayPool<byte>>(Pool));
            services.AddSingleton<IStartupFilter, FailingWrites>();
        }).UseSetting("Serilog:MinimumLevel:Default", "Fatal").UseSetting("Serilog:MinimumLevel:Override:Microsoft.AspNetCore", "Fatal");
    }

    /// <summary>A pool that fails on rent, or on return before or after it has stored the buffer.</summary>
    private sealed class FailingPool : ArrayPool<byte>
    {
        private readonly ConcurrentBag<byte[]> buffers = [];
        private int failuresAfterTaking;

        public int FailuresAfterTaking => failuresAfterTaking;

        public override byte[] Rent(int minimumLength)
        {
            FailSometimes();
            return buffers.TryTake(out var buffer) && buffer.Length >= minimumLength ? buffer : new byte[Math.Max(minimumLength, 512)];
        }

        public override void Return(byte[] array, bool clearArray = false)
        {
            FailSometimes();
            buffers.Add(array);
            if (Random.Shared.Next(50) == 0)
            {
                Interlocked.Increment(ref failuresAfterTaking);
                throw new InsufficientExecutionStackException("The pool failed after it took a buffer.");
            }
        }

        private static void FailSometimes()
        {
            if (Random.Shared.Next(100) == 0)
            {
                throw new InsufficientExecutionStackException("The pool failed.");
            }
        }
    }

    /// <summary>Makes writes of responses fail, before the first byte or later.</summary>
    private sealed class FailingWrites : IStartupFilter
    {
        public Action<IApplicationBuilder> Configure(Action<IApplicationBuilder> next) => app =>
        {
            app.Use(static (context, following) =>
            {
                if (Random.Shared.Next(20) == 0)
                {
                    var feature = context.Features.GetRequiredFeature<IHttpResponseBodyFeature>();
                    var failing = new FailingStream(feature.Stream, Random.Shared.Next(2) * 100);
                    context.Features.Set<IHttpResponseBodyFeature>(new StreamResponseBodyFeature(failing, feature));
                }

                return following(context);
            });
            next(app);
        };
    }

    private sealed class FailingStream(Stream inner, int bytesLeft) : Stream
    {
        public override bool CanRead => false;

        public override bool CanSeek => false;

        public override bool CanWrite => true;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

        public override async ValueTask WriteAsync(ReadOnlyMemory<byte> buffer, CancellationToken cancellationToken = default)
        {
            await inner.WriteAsync(buffer[..Math.Min(bytesLeft, buffer.Length)], cancellationToken);
            await inner.FlushAsync(cancellationToken);
            throw new IOException("The write failed.");
        }

        public override Task WriteAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken) =>
            WriteAsync(buffer.AsMemory(offset, count), cancellationToken).AsTask();

        public override void Write(byte[] buffer, int offset, int count) => throw new IOException("The write failed.");

        public override void Flush() => inner.Flush();

        public override Task FlushAsync(CancellationToken cancellationToken) => inner.FlushAsync(cancellationToken);

        public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();
    }
}
