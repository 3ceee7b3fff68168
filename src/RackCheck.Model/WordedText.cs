using System.Collections.Frozen;

namespace RackCheck.Model;

/// <summary>
/// A text of a report that is written out only where it is read: a wording with its values, or several of them joined. The keys of several are joined by
/// plus signs; the names of the second one's values end in 2, of the third one's in 3. Several are sentences one after another, or the steps of one title,
/// "Do this, and do that". Where a template has {message} or {title}, the sentences or the title that follow take its place; {need} is the next text alone.
/// </summary>
public sealed class WordedText
{
    private readonly (MessageWording Wording, (string Name, Scalar Value)[] Data)[] parts;
    private readonly bool isTitle;

    /// <summary>A text without values.</summary>
    /// <param name="key">Key, stable.</param>
    /// <param name="text">The text.</param>
    public WordedText(string key, string text)
        : this(new MessageWording(key, text))
    {
    }

    /// <summary>A wording with its values.</summary>
    /// <param name="wording">The wording.</param>
    /// <param name="data">The values by name.</param>
    public WordedText(MessageWording wording, params (string Name, Scalar Value)[] data)
        : this([(wording, data)], isTitle: false)
    {
    }

    private WordedText((MessageWording Wording, (string Name, Scalar Value)[] Data)[] parts, bool isTitle) => (this.parts, this.isTitle) = (parts, isTitle);

    /// <summary>The text written out.</summary>
    public string Text => isTitle ? StepsFrom(0) : SentencesFrom(0);

    /// <summary>Its key, or the keys joined by plus signs.</summary>
    public string Key => parts.Length == 1 ? Wording.Key : string.Join('+', parts.Select(p => p.Wording.Key));

    /// <summary>The values by name, rounded as everywhere in a report.</summary>
    public IReadOnlyDictionary<string, Scalar> Values
    {
        get
        {
            var values = new Dictionary<string, Scalar>(StringComparer.Ordinal);
            for (var i = 0; i < parts.Length; i++)
            {
                foreach (var (name, value) in parts[i].Data)
                {
                    values.Add(i == 0 ? name : FormattableString.Invariant($"{name}{i + 1}"), value.Number is { } number ? Quantities.Round(number) : value);
                }
            }

            return values.Count == 0 ? FrozenDictionary<string, Scalar>.Empty : values;
        }
    }

    /// <summary>Key and values, for an entry of a list of texts.</summary>
    public TextKey Keyed => new() { MessageKey = Key, MessageData = Values };

    /// <summary>The first wording.</summary>
    public MessageWording Wording => parts[0].Wording;

    /// <summary>These sentences and those of another text, each once.</summary>
    /// <param name="later">The other.</param>
    public WordedText With(WordedText later)
    {
        var said = parts.Where(p => p.Wording.Quotes is null).Select(p => p.Wording.Render(p.Data)).ToHashSet(StringComparer.Ordinal);
        return new WordedText([.. parts, .. later.parts.Where(p => p.Wording.Quotes is not null || said.Add(p.Wording.Render(p.Data)))], isTitle: false);
    }

    /// <summary>A title of this change and then another: "Do this, and do that".</summary>
    /// <param name="later">The other.</param>
    public WordedText Then(WordedText later) => new([.. parts, .. later.parts], isTitle: true);

    /// <summary>A sentence that quotes this text.</summary>
    /// <param name="wording">The sentence, with {message} for sentences, {title} for a title or {need} for this text without those that are added.</param>
    /// <param name="data">Its other values by name.</param>
    public WordedText QuotedIn(MessageWording wording, params (string Name, Scalar Value)[] data) => new([(wording, data), .. parts], isTitle: false);

    /// <summary>Whether another text reads the same.</summary>
    /// <param name="other">The other.</param>
    public bool IsSame(WordedText other) => ReferenceEquals(this, other) || (ReferenceEquals(Wording, other.Wording) && Text == other.Text);

    private string SentenceAt(int part) => parts[part].Wording.Render(parts[part].Data);

    private string SentencesFrom(int first)
    {
        var (wording, data) = parts[first];
        var next = first + 1;
        return wording.Quotes switch
        {
            null => Followed(SentenceAt(first), next),
            MessageWording.Need => Followed(wording.Render([.. data, (MessageWording.Need, SentenceAt(next))]), next + 1),
            var name => wording.Render([.. data, (name, name == MessageWording.Title ? StepsFrom(next) : SentencesFrom(next))]),
        };
    }

    private string Followed(string sentence, int next) => next < parts.Length ? $"{sentence} {SentencesFrom(next)}" : sentence;

    private string StepsFrom(int first)
    {
        var text = SentenceAt(first);
        for (var i = first + 1; i < parts.Length; i++)
        {
            var step = SentenceAt(i);
            text = $"{text}, and {char.ToLowerInvariant(step[0])}{step[1..]}";
        }

        return text;
    }
}
