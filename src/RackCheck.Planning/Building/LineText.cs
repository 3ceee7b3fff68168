using RackCheck.Model;

namespace RackCheck.Planning.Building;

/// <summary>What is said of a line of a basket: one sentence, or one for each reason, with their keys and data.</summary>
internal sealed class LineText
{
    private readonly IReadOnlyList<(MessageWording Wording, IReadOnlyList<(string Name, Scalar Value)> Data)> sentences;

    /// <summary>One sentence.</summary>
    /// <param name="wording">The wording.</param>
    /// <param name="data">The values by name.</param>
    public LineText(MessageWording wording, params IReadOnlyList<(string Name, Scalar Value)> data)
        : this([(wording, data)])
    {
    }

    private LineText(IReadOnlyList<(MessageWording Wording, IReadOnlyList<(string Name, Scalar Value)> Data)> sentences) => this.sentences = sentences;

    /// <summary>The sentences.</summary>
    public string Text => string.Join(' ', sentences.Select(s => s.Wording.Render(s.Data)));

    /// <summary>Their keys, joined by plus signs.</summary>
    public string Key => string.Join('+', sentences.Select(s => s.Wording.Key));

    /// <summary>The values by name; those of the second sentence end in 2, of the third in 3.</summary>
    public IReadOnlyDictionary<string, Scalar> Values => sentences.Index()
        .SelectMany(s => s.Item.Data.Select(d => (Name: d.Name + (s.Index == 0 ? "" : FormattableString.Invariant($"{s.Index + 1}")), d.Value)))
        .ToDictionary(d => d.Name, d => d.Value, StringComparer.Ordinal);

    /// <summary>A sentence with a choice between singular and plural.</summary>
    /// <param name="wordings">The wordings; the part <c>one</c> is singular.</param>
    /// <param name="isOne">Whether it is about one.</param>
    /// <param name="data">The values by name.</param>
    public static LineText Of(WordingChoice wordings, bool isOne, params IReadOnlyList<(string Name, Scalar Value)> data) =>
        new(wordings.With(isOne ? "one" : null), data);

    /// <summary>Ids in the order of a rack, each once.</summary>
    public static Scalar Ids(IEnumerable<string> names) => Scalar.Ids(names.Distinct().Order(Words.ById));

    /// <summary>These sentences and those of another reason, each once.</summary>
    /// <param name="later">The other.</param>
    public LineText With(LineText later)
    {
        var said = sentences.Select(s => s.Wording.Render(s.Data)).ToHashSet(StringComparer.Ordinal);
        return new LineText([.. sentences, .. later.sentences.Where(s => said.Add(s.Wording.Render(s.Data)))]);
    }
}
