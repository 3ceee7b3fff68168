using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Http;

/// <summary>Bodies of the examples, damaged at random.</summary>
internal static partial class DamagedBodies
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

    /// <summary>An example, damaged one to three times.</summary>
    /// <param name="random">What decides.</param>
    /// <returns>The body.</returns>
    public static byte[] One(Random random)
    {
        var examples = random.Next(100) == 0 ? Proposals : Examples;
        var body = examples[random.Next(examples.Length)];
        for (var i = random.Next(1, 4); i > 0; i--)
        {
            body = Damage(body, random);
        }

        return body;
    }

    private static byte[][] Load(bool isProposal) =>
    [
        .. Directory.EnumerateFiles(Repository.PathOf("openapi", "examples"), "*.json")
            .Where(f => Path.GetFileName(f).StartsWith("proposal-", StringComparison.Ordinal) == isProposal)
            .Order(StringComparer.Ordinal)
            .Select(File.ReadAllBytes),
    ];

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
