using RackCheck.Model;

namespace RackCheck.Planning.Baskets;

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

    /// <summary>The sentence for the ids of both, if they differ in nothing else; else this one.</summary>
    public LineText With(LineText later)
    {
        if (later.Wording.Key != Wording.Key)
        {
            return this;
        }

        return Data.Count == later.Data.Count
            ? new LineText(Wording, [.. Data.Zip(later.Data, (d, l) => d.Value.List is { } own && l.Value.List is { } more
                ? (d.Name, Ids(own.Concat(more).Select(v => v.Text!)))
                : d)])
            : this;
    }
}
