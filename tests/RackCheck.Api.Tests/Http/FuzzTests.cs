using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using RackCheck.Api.Tests.Hosting;
using RackCheck.Testing;
using Xunit.Abstractions;

namespace RackCheck.Api.Tests.Http;

/// <summary>Bodies of the examples, damaged at random: each gets a report or a problem document, never status 500.</summary>
public sealed partial class FuzzTests(Service service, ITestOutputHelper output) : IClassFixture<Service>
{
    private static readonly byte[][] Examples = Load(isProposal: false);

    // A proposal takes a thousand times as long as a check.
    private static readonly byte[][] Proposals = Load(isProposal: true);

    private static readonly byte[][] Tokens =
    [
        .. new[]
        {
            "null", "true", "{", "}", "[", "]", ",", ":", "\"", "\\", "\\u0000", "\\ud800", "{}", "[[]]", "-", "1e999", "-0", "\"id\":\"a\",", "/*",
            "\u00e9", "\0",
        }.Select(Encoding.UTF8.GetBytes),
        [0xff], [0xc0, 0xaf], [0xed, 0xa0, 0x80],
    ];

    private static readonly string[] Numbers =
        ["0", "-1", "1", "0.5", "60", "200", "1e-320", "1e308", "1e999", "9007199254740993", "-0.0", "01", "\"7\"", "null", "[]"];

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
        var (status, fault) = await PostAsync(client, Damaged(new Random(seed)), CancellationToken.None);
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
                var body = Damaged(new Random(seed));
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

    private static byte[][] Load(bool isProposal) =>
    [
        .. Directory.EnumerateFiles(Repository.PathOf("openapi", "examples"), "*.json")
            .Where(f => Path.GetFileName(f).StartsWith("proposal-", StringComparison.Ordinal) == isProposal)
            .Order(StringComparer.Ordinal)
            .Select(File.ReadAllBytes),
    ];

    private static byte[] Damaged(Random random)
    {
        var examples = random.Next(100) == 0 ? Proposals : Examples;
        var body = examples[random.Next(examples.Length)];
        for (var i = random.Next(1, 4); i > 0; i--)
        {
            body = Damage(body, random);
        }

        return body;
    }

    private static byte[] Damage(byte[] body, Random random)
    {
        var (from, to) = (random.Next(body.Length + 1), random.Next(body.Length + 1));
        (from, to) = (Math.Min(from, to), Math.Max(from, to));
        var near = Math.Min(to, from + 12);
        switch (random.Next(8))
        {
            case 0: // a bit turned over
                byte[] turned = [.. body];
                if (turned.Length > 0)
                {
                    turned[random.Next(turned.Length)] ^= (byte)(1 << random.Next(8));
                }

                return turned;
            case 1: // a few bytes left out
                return [.. body[..from], .. body[near..]];
            case 2: // a few bytes doubled
                return [.. body[..near], .. body[from..]];
            case 3:
                return [.. body[..from], .. Tokens[random.Next(Tokens.Length)], .. body[from..]];
            case 4: // a part of another example put in
                var other = Examples[random.Next(Examples.Length)];
                var at = random.Next(other.Length);
                return [.. body[..from], .. other[at..Math.Min(other.Length, at + random.Next(200))], .. body[from..]];
            default: // a number changed, most often, as only that leaves the text sound
                var text = Encoding.UTF8.GetString(body);
                var numbers = Number().Matches(text);
                if (numbers.Count == 0)
                {
                    return body[..from];
                }

                var number = numbers[random.Next(numbers.Count)];
                var value = random.Next(2) == 0
                    ? Numbers[random.Next(Numbers.Length)]
                    : Math.Round(random.NextDouble() * Math.Pow(10, random.Next(5)), random.Next(4)).ToString(CultureInfo.InvariantCulture);
                return Encoding.UTF8.GetBytes(text[..number.Index] + value + text[(number.Index + number.Length)..]);
        }
    }

    [GeneratedRegex(@"(?<=[:\[,]\s*)-?[0-9.]+")]
    private static partial Regex Number();
}
