using System.Globalization;

namespace RackCheck.Rules.Tests.Harness;

/// <summary>
/// Repeats the calculation of a finding like a reader with a pocket calculator. Semicolons, commas and colons separate clauses;
/// words and units are skipped, and angles are in degrees. It knows + - * (written x) / ^, parentheses, and the functions below.
/// </summary>
public static class Arithmetic
{
    private static readonly string[] Comparators = ["=", ">", "<", ">=", "<="];

    private static readonly Dictionary<string, Func<double, double>> Functions = new(StringComparer.Ordinal)
    {
        ["sqrt"] = Math.Sqrt,
        ["ln"] = Math.Log,
        ["sin"] = d => Math.Sin(d * Math.PI / 180),
        ["cos"] = d => Math.Cos(d * Math.PI / 180),
        ["atan"] = x => Math.Atan(x) * 180 / Math.PI,
        ["acos"] = x => Math.Acos(x) * 180 / Math.PI,
    };

    /// <summary>The clauses of a calculation, each with its sides and what stands between them.</summary>
    /// <exception cref="FormatException">A clause is no arithmetic, or compares nothing.</exception>
    public static IReadOnlyList<Clause> Read(string calculation) =>
        [.. calculation.Split("; ").SelectMany(p => p.Split(", ")).SelectMany(p => p.Split(": ")).Select(ClauseOf).OfType<Clause>()];

    /// <summary>What does not come out: an equation whose sides differ by more than the digits shown allow, or a comparison that is not so.</summary>
    public static IEnumerable<string> Faults(string calculation)
    {
        foreach (var clause in Read(calculation))
        {
            for (var i = 0; i < clause.Between.Count; i++)
            {
                var (left, right) = (clause.Sides[i], clause.Sides[i + 1]);
                var holds = clause.Between[i] switch
                {
                    "=" => Math.Abs(left.Value - right.Value) <= 1.001 * right.Step,
                    ">" => left.Value > right.Value,
                    "<" => left.Value < right.Value,
                    ">=" => left.Value >= right.Value,
                    _ => left.Value <= right.Value,
                };
                if (!holds)
                {
                    yield return FormattableString.Invariant($"{left.Text} {clause.Between[i]} {right.Text}: {left.Value} and {right.Value}");
                }
            }
        }
    }

    /// <summary>Whether some comparison has the one value on one of its sides and the other on its other.</summary>
    public static bool Compares(string calculation, double one, double other) => Read(calculation).Any(c => Enumerable.Range(1, c.Groups.Count - 1).Any(i =>
        (Shows(c.Groups[i - 1], one) && Shows(c.Groups[i], other)) || (Shows(c.Groups[i - 1], other) && Shows(c.Groups[i], one))));

    private static bool Shows(IEnumerable<Side> sides, double value) => sides.Any(s => Math.Abs(s.Value - value) <= 1.001 * s.Step);

    private static Clause? ClauseOf(string text)
    {
        var sides = new List<Side>();
        var between = new List<string>();
        var tokens = Tokens(text);
        var from = 0;
        for (var i = 0; i <= tokens.Count; i++)
        {
            if (i == tokens.Count || Comparators.Contains(tokens[i]))
            {
                var part = tokens.GetRange(from, i - from);
                if (part.Count == 0)
                {
                    // Words alone say something about the numbers of another clause.
                    return tokens.Count == 0 ? null : throw new FormatException($"'{text}' compares nothing.");
                }

                sides.Add(new Side(string.Join(' ', part), Value(part, text), part.Count == 1 ? StepOf(part[0]) : StepOf("")));
                from = i + 1;
                if (i < tokens.Count)
                {
                    between.Add(tokens[i]);
                }
            }
        }

        return between.Count > 0 ? new Clause(sides, between) : throw new FormatException($"'{text}' has numbers, but compares nothing.");
    }

    // A number is shown to a thousandth with the zeros at its end dropped, or to more digits.
    private static double StepOf(string number)
    {
        var point = number.IndexOf('.', StringComparison.Ordinal);
        return Math.Pow(10, -Math.Max(3, point < 0 ? 0 : number.Length - point - 1));
    }

    private static List<string> Tokens(string text)
    {
        var tokens = new List<string>();
        for (var at = 0; at < text.Length;)
        {
            var start = at;
            if (char.IsAsciiDigit(text[at]))
            {
                while (at < text.Length && (char.IsAsciiDigit(text[at]) || text[at] == '.'))
                {
                    at++;
                }

                tokens.Add(text[start..at]);
            }
            else if (char.IsAsciiLetter(text[at]))
            {
                while (at < text.Length && (char.IsAsciiLetterOrDigit(text[at])
                    || (text[at] == '/' && at + 1 < text.Length && char.IsAsciiLetter(text[at + 1]))))
                {
                    at++;
                }

                var word = text[start..at];
                if (word == "x" || Functions.ContainsKey(word))
                {
                    tokens.Add(word);
                }
            }
            else if ((text[at] is '>' or '<') && at + 1 < text.Length && text[at + 1] == '=')
            {
                tokens.Add(text[at..(at += 2)]);
            }
            else if ("+-/^()=<>".Contains(text[at], StringComparison.Ordinal))
            {
                tokens.Add(text[at..++at]);
            }
            else
            {
                at += text[at] == ' ' ? 1 : throw new FormatException($"'{text}' has a '{text[at]}'.");
            }
        }

        return tokens;
    }

    private static double Value(List<string> tokens, string text)
    {
        var at = 0;
        var value = Sum();
        return at == tokens.Count ? value : throw new FormatException($"'{text}' goes on after '{string.Join(' ', tokens.Take(at))}'.");

        double Sum()
        {
            var sum = Product();
            while (Next("+", "-") is { } sign)
            {
                sum += sign == "+" ? Product() : -Product();
            }

            return sum;
        }

        double Product()
        {
            var product = Power();
            while (Next("x", "/") is { } sign)
            {
                product = sign == "x" ? product * Power() : product / Power();
            }

            return product;
        }

        double Power()
        {
            if (Next("-") is not null)
            {
                return -Power();
            }

            var root = Atom();
            return Next("^") is null ? root : Math.Pow(root, Power());
        }

        double Atom()
        {
            var token = at < tokens.Count ? tokens[at++] : throw new FormatException($"'{text}' breaks off.");
            if (token == "(")
            {
                var inner = Sum();
                return Next(")") is null ? throw new FormatException($"'{text}' leaves a parenthesis open.") : inner;
            }

            return Functions.TryGetValue(token, out var function) ? function(Atom())
                : double.TryParse(token, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) ? number
                : throw new FormatException($"'{text}' has a '{token}' where a number belongs.");
        }

        string? Next(params string[] signs) => at < tokens.Count && signs.Contains(tokens[at]) ? tokens[at++] : null;
    }

    /// <summary>A side of a comparison, its value, and what its last digit is worth.</summary>
    public sealed record Side(string Text, double Value, double Step);

    /// <summary>Sides with what stands between them, as "a + b = c > d".</summary>
    public sealed record Clause(IReadOnlyList<Side> Sides, IReadOnlyList<string> Between)
    {
        /// <summary>The sides parted where they are compared: what is said to be equal stands together.</summary>
        public IReadOnlyList<IReadOnlyList<Side>> Groups { get; } = Grouped(Sides, Between);

        private static List<List<Side>> Grouped(IReadOnlyList<Side> sides, IReadOnlyList<string> between)
        {
            var groups = new List<List<Side>> { new() { sides[0] } };
            for (var i = 0; i < between.Count; i++)
            {
                if (between[i] != "=")
                {
                    groups.Add([]);
                }

                groups[^1].Add(sides[i + 1]);
            }

            return groups;
        }
    }
}
