using System.Globalization;
using System.Text;
using RackCheck.Model;
using RackCheck.Rules.Remedies;

namespace RackCheck.Rules;

/// <summary>What a rule says of one defect; the pipeline makes the <see cref="Finding"/> of it.</summary>
public sealed class FindingDraft
{
    /// <summary>One sentence with the names of values in braces, as "{item} needs {needed} mm."</summary>
    public required string Message { get; init; }

    /// <summary>The values of the message by name. Every value that the message shows is here, so that it can be worded anew.</summary>
    public required IReadOnlyList<(string Name, Scalar Value)> Data { get; init; }

    /// <summary>Readable place.</summary>
    public required string Subject { get; init; }

    /// <summary>Ids concerned, in an order that does not hang on the order of items: with the rule they make the fingerprint.</summary>
    public required IReadOnlyList<string> Identity { get; init; }

    /// <summary>What it is known by when two reports are compared, where that is not its rule and ids: rules that name the worst of several, or one fact from two sides, give what those share.</summary>
    public string? Root { get; init; }

    /// <summary>Places in the request; the first is the culprit.</summary>
    public required IReadOnlyList<string> Pointers { get; init; }

    /// <summary>Severity, where the rule grades; else the descriptor's.</summary>
    public Severity? Severity { get; init; }

    /// <summary>What the rack has.</summary>
    public Quantity? Actual { get; init; }

    /// <summary>What it may have at most, or needs at least.</summary>
    public Quantity? Limit { get; init; }

    /// <summary>Actual to limit, percent.</summary>
    public double? UtilisationPercent { get; init; }

    /// <summary>The arithmetic with the numbers put in.</summary>
    public string? Calculation { get; init; }

    /// <summary>What cures it, best first, where the rule itself is sure of it: for rules about the report, which no trial comes after.</summary>
    public IReadOnlyList<Remedy> Remedies { get; init; } = [];

    /// <summary>What might cure it, best first: the pipeline tries each when all findings stand, and offers what holds. Read late, and not at all while a cure is tried.</summary>
    public IEnumerable<Cure>? Cures { get; init; }

    internal string RenderMessage()
    {
        // In one pass: an id may itself look like the name of a value in braces.
        var text = new StringBuilder();
        var at = 0;
        for (var open = Message.IndexOf('{'); open >= 0; open = Message.IndexOf('{', at))
        {
            var close = Message.IndexOf('}', open);
            var name = Message[(open + 1)..close];
            text.Append(Message, at, open - at).Append(Quantities.InSentence(Data.First(d => d.Name == name).Value, Data));
            at = close + 1;
        }

        return text.Append(Message, at, Message.Length - at).ToString();
    }
}

/// <summary>
/// Short forms for numbers with units, and how they are rounded. What a program reads or a person redoes, <c>actual</c>, <c>limit</c>,
/// <c>messageData</c> and the results in <c>calculation</c>, is rounded to a thousandth; a number that a calculation goes on with has up to six decimals,
/// so that the result comes out. A sentence shows two decimals, from 100 on one, and more only where two of its values would read alike.
/// </summary>
public static class Quantities
{
    /// <summary>A length, rounded to a thousandth so that sums of decimals come out as a person would write them.</summary>
    /// <param name="value">Length, mm.</param>
    /// <returns>The quantity.</returns>
    public static Quantity Millimetres(double value) => Of(value, "mm");

    /// <summary>A number of rack units.</summary>
    /// <param name="value">Units.</param>
    /// <returns>The quantity.</returns>
    public static Quantity Units(double value) => Of(value, "U");

    /// <summary>A number with a unit, rounded to a thousandth.</summary>
    /// <param name="value">The number.</param>
    /// <param name="unit">Its unit.</param>
    /// <returns>The quantity.</returns>
    public static Quantity Of(double value, string unit) => new() { Value = Round(value), Unit = unit };

    /// <summary>Rounds to a thousandth: the last binary digits of a sum are nobody's business, and may differ between machines.</summary>
    /// <param name="value">The number.</param>
    /// <returns>The rounded number.</returns>
    public static double Round(double value) => Math.Round(value, 3, MidpointRounding.AwayFromZero);

    /// <summary>A value as a sentence shows it.</summary>
    /// <param name="value">The value.</param>
    /// <param name="all">All values of the sentence.</param>
    /// <returns>The text: a number with at most two decimals, from 100 on one; more where a different value would read alike.</returns>
    internal static string InSentence(Scalar value, IReadOnlyList<(string Name, Scalar Value)> all)
    {
        if (value.Number is not { } exact)
        {
            return value.ToString();
        }

        var number = Round(exact);
        var decimals = Math.Abs(number) < 100 ? 2 : 1;
        foreach (var (_, other) in all)
        {
            while (decimals < 3 && other.Number is { } near && Round(near) != number && Shown(near, decimals) == Shown(number, decimals))
            {
                decimals++;
            }
        }

        return Shown(number, decimals).ToString("0.###", CultureInfo.InvariantCulture);
    }

    private static double Shown(double value, int decimals) => Math.Round(value, decimals, MidpointRounding.AwayFromZero);
}
