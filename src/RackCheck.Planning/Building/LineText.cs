using RackCheck.Model;

namespace RackCheck.Planning.Building;

/// <summary>A sentence about a line of a basket with its key and data.</summary>
/// <param name="Wording">The wording.</param>
/// <param name="Data">The values by name.</param>
internal sealed record LineText(MessageWording Wording, params IReadOnlyList<(string Name, Scalar Value)> Data)
{
    /// <summary>The sentence.</summary>
    public string Text => Wording.Render(Data);

    /// <summary>The values by name.</summary>
    public IReadOnlyDictionary<string, Scalar> Values => Data.ToDictionary(d => d.Name, d => d.Value, StringComparer.Ordinal);

    /// <summary>A sentence with a choice between singular and plural.</summary>
    /// <param name="wordings">The wordings; the part <c>one</c> is singular.</param>
    /// <param name="isOne">Whether it is about one.</param>
    /// <param name="data">The values by name.</param>
    public static LineText Of(WordingChoice wordings, bool isOne, params IReadOnlyList<(string Name, Scalar Value)> data) =>
        new(wordings.With(isOne ? "one" : null), data);

    /// <summary>Ids in the order of a rack, each once.</summary>
    public static Scalar Ids(IEnumerable<string> names) => Scalar.Ids(names.Distinct().Order(Words.ById));

    /// <summary>
    /// Both sentences: of one wording, the ids of both; else one after the other, where the key joins both keys with a plus sign and the names of the second
    /// sentence's values end in 2, of a third in 3.
    /// </summary>
    /// <param name="later">The other.</param>
    public LineText With(LineText later)
    {
        if (later.Text == Text)
        {
            return this;
        }

        if (later.Wording.Key == Wording.Key && Data.Count == later.Data.Count)
        {
            return new LineText(Wording, [.. Data.Zip(later.Data, (d, l) => d.Value.List is { } own && l.Value.List is { } more
                ? (d.Name, Ids(own.Concat(more).Select(v => v.Text!)))
                : d)]);
        }

        var number = FormattableString.Invariant($"{2 + Wording.Key.Count(c => c == '+')}");
        var template = later.Data.Aggregate(later.Wording.Template, (t, d) => t.Replace("{" + d.Name, "{" + d.Name + number, StringComparison.Ordinal));
        return new LineText(
            new MessageWording($"{Wording.Key}+{later.Wording.Key}", $"{Wording.Template} {template}"),
            [.. Data, .. later.Data.Select(d => (d.Name + number, d.Value))]);
    }
}
