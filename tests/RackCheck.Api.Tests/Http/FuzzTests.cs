using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using RackCheck.Api.Tests.Hosting;
using RackCheck.Testing;
using Xunit.Abstractions;

namespace RackCheck.Api.Tests.Http;

/// <summary>Bodies of the examples, damaged at random: each gets a report or a problem document, never status 500.</summary>
public sealed class FuzzTests(Service service, ITestOutputHelper output) : IClassFixture<Service>
{
    [Fact]
    [Trait("Kind", "property")]
    public async Task Damaged_body_gets_a_report_or_a_problem()
    {
        using var client = service.CreateClient();
        await SendAsync(client, Samples.Of(100_000, least: 1_000));
    }

    [Fact]
    [Trait("Kind", "property")]
    public async Task Damaged_body_over_a_socket_gets_a_report_or_a_problem()
    {
        await using var listening = await KestrelService.StartAsync("RateLimit:PerMinute=0");
        await SendAsync(listening.Client, Samples.Of(20_000, least: 500));
    }

    /// <summary>The bodies that took longest among 1,680,000 on a busy machine.</summary>
    [Theory]
    [InlineData(353106688)]
    [InlineData(841756141)]
    [InlineData(164816393)]
    public async Task Kept_seed_gets_a_report_or_a_problem(int seed)
    {
        using var client = service.CreateClient();
        var started = Stopwatch.GetTimestamp();
        var (status, fault) = await PostAsync(client, DamagedBodies.One(new Random(seed)), CancellationToken.None);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"status {status}, {Stopwatch.GetElapsedTime(started).TotalMilliseconds} ms"));
        Assert.Null(fault);
    }

    private async Task SendAsync(HttpClient client, int count)
    {
        var (wrong, statuses) = (new ConcurrentQueue<string>(), new ConcurrentDictionary<int, int>());
        var slowest = new ConcurrentBag<(double Ms, int Seed)>();
        var first = Random.Shared.Next(1_000_000_000);
        await Parallel.ForEachAsync(Enumerable.Range(first, count), async (seed, cancellation) =>
        {
            if (wrong.IsEmpty)
            {
                var body = DamagedBodies.One(new Random(seed));
                var started = Stopwatch.GetTimestamp();
                var (status, fault) = await PostAsync(client, body, cancellation);
                slowest.Add((Stopwatch.GetElapsedTime(started).TotalMilliseconds, seed));
                statuses.AddOrUpdate(status, 1, static (_, count) => count + 1);
                if (fault is not null)
                {
                    wrong.Enqueue($"seed {seed}: {fault} of {Encoding.UTF8.GetString(body)}");
                }
            }
        });

        Assert.Empty(wrong);

        // How long an answer takes depends on the machine and on what else it does: a figure to read, not to assert.
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{count} bodies, {string.Join(", ", statuses)}; slowest {slowest.Max()}"));

        // The damage reaches every stage: text, description, rules.
        Assert.Subset(new HashSet<int> { 200, 400, 422 }, statuses.Keys.ToHashSet());
        Assert.True(statuses.Count == 3 && statuses.Values.All(n => n > statuses.Values.Sum() / 200), string.Join(", ", statuses));
    }

    private static async Task<(int Status, string? Fault)> PostAsync(HttpClient client, byte[] body, CancellationToken cancellation)
    {
        var path = body.AsSpan().IndexOf("\"before\""u8) >= 0 ? "/v1/comparisons"
            : body.AsSpan().IndexOf("\"lines\""u8) >= 0 ? "/v1/baskets/checks"
            : body.AsSpan().IndexOf("\"cabinet\""u8) >= 0 ? "/v1/checks"
            : "/v1/proposals";
        using var content = new ByteArrayContent(body);
        content.Headers.ContentType = new MediaTypeHeaderValue("application/json");
        try
        {
            var answer = await Answer.OfAsync(await client.PostAsync(new Uri(path, UriKind.Relative), content, cancellation));
            if (answer.Status == 200)
            {
                JsonDocument.Parse(answer.Text).Dispose();
                return (200, answer.Text.Contains("failed inside the service", StringComparison.Ordinal) ? "a rule failed" : null);
            }

            answer.IsProblem(answer.Status);
            return (answer.Status, answer.Status is 400 or 422 ? null : $"status {answer.Status} {answer.Json["detail"]}");
        }
        catch (Exception fault) when (fault is HttpRequestException or IOException or TimeoutException or JsonException or Xunit.Sdk.XunitException
            || fault is TaskCanceledException { InnerException: TimeoutException })
        {
            return (0, fault.Message);
        }
    }
}
