using System.Globalization;
using System.Reflection;
using System.Text;

namespace RackCheck.Model;

/// <summary>
/// One sentence of a report in English: its key and its template. A template has the names of values in braces: {name} is a number, a text, or a list of
/// which the first are named; {name:exact} is a number with up to three decimals, or every value of a list with commas; {name:all} names every value of a
/// list; {name:words} is a code in words, front-door as "front door"; {name:units} is a range of U positions, "U4" or "U10-U13"; {name:u} is a list of
/// heights, "6 U and 2 U".
/// </summary>
public class MessageWording
{
    private readonly (string Text, string? Format)[] parts;

    /// <summary>A wording.</summary>
    /// <param name="key">Key, stable: rule and variant.</param>
    /// <param name="template">Template.</param>
    public MessageWording(string key, string template)
    {
        (Key, Template) = (key, template);
        var cut = new List<(string, string?)>();
        var at = 0;
        for (var open = template.IndexOf('{'); open >= 0; open = template.IndexOf('{', at))
        {
            var close = template.IndexOf('}', open);
            var name = template[(open + 1)..close].Split(':');
            cut.Add((template[at..open], null));
            cut.Add((name[0], name.Length > 1 ? name[1] : ""));
            at = close + 1;
        }

        cut.Add((template[at..], null));
        parts = [.. cut];
        Quotes = Array.Find([Message, Title, Need], name => cut.Contains((name, "")));
    }

    /// <summary>Name under which a template quotes sentences.</summary>
    internal const string Message = "message";

    /// <summary>Name under which a template quotes the title of a remedy.</summary>
    internal const string Title = "title";

    /// <summary>Name under which a template quotes what is needed.</summary>
    internal const string Need = "need";

    /// <summary>Whether the template quotes another text: the name of that, or null.</summary>
    internal string? Quotes { get; }

    /// <summary>Key.</summary>
    public string Key { get; }

    /// <summary>Template.</summary>
    public string Template { get; }

    /// <summary>The sentence.</summary>
    /// <param name="data">The values by name.</param>
    /// <returns>The template with the values filled in.</returns>
    public string Render(IReadOnlyList<(string Name, Scalar Value)> data)
    {
        if (parts.Length == 1)
        {
            return Template;
        }

        var text = new StringBuilder();
        foreach (var (part, format) in parts)
        {
            text.Append(format is null ? part : Shown(ValueOf(part, data), format, data));
        }

        return text.ToString();
    }

    /// <summary>The wordings that a class declares in static fields or properties.</summary>
    /// <param name="type">The class.</param>
    public static IEnumerable<MessageWording> DeclaredIn(Type type) => type
        .GetFields(BindingFlags.Static | BindingFlags.NonPublic | BindingFlags.Public | BindingFlags.DeclaredOnly)
        .Select(f => f.GetValue(null))
        .SelectMany(v => v switch
        {
            MessageWording one => [one],
            WordedText text => [text.Wording],
            WordingChoice choice => choice.All,
            _ => (IReadOnlyList<MessageWording>)[],
        });

    private static Scalar ValueOf(string name, IReadOnlyList<(string Name, Scalar Value)> data)
    {
        foreach (var (own, value) in data)
        {
            if (own == name)
            {
                return value;
            }
        }

        throw new ArgumentException($"No value is named {name}.", nameof(data));
    }

    private static string Shown(Scalar value, string format, IReadOnlyList<(string Name, Scalar Value)> data)
    {
        if (value.List is not { } list)
        {
            return format switch
            {
                "words" => InWords(value),
                "exact" => ((Scalar)Quantities.Round(value.Number!.Value)).ToString(),
                _ => Quantities.InSentence(value, data),
            };
        }

        if (format == "units")
        {
            var (from, to) = ((int)list[0].Number!.Value, (int)list[1].Number!.Value);
            return from == to
                ? string.Create(CultureInfo.InvariantCulture, $"U{from}")
                : string.Create(CultureInfo.InvariantCulture, $"U{from}{(from < 0 ? " to " : "-")}U{to}");
        }

        if (format == "exact")
        {
            return value.ToString();
        }

        string[] names = [.. list.Select(v => format switch { "words" => InWords(v), "u" => $"{v} U", _ => v.ToString() })];
        return format is "" or "u" ? Lists.Short(names) : Lists.All(names);
    }

    private static string InWords(Scalar value) => value.ToString().Replace('-', ' ');
}

/// <summary>The wording of missing data: what is missing and what was not checked.</summary>
/// <param name="key">Key, stable: rule and variant.</param>
/// <param name="template">Template.</param>
public sealed class MissingData(string key, string template) : MessageWording(key, template);

/// <summary>
/// Wordings that differ in parts: "The rack[ pallet: on its pallet] needs [width:width|height]" with the names of parts in brackets. A part without a name is
/// used where none of its group is chosen. Every combination is a wording of its own with its own key.
/// </summary>
public sealed class WordingChoice
{
    private readonly List<(int Size, int Stride, Dictionary<string, int> Names)> groups = [];
    private readonly MessageWording[] all;

    /// <summary>The wordings of a pattern.</summary>
    /// <param name="key">Key of the wording of which no part is chosen.</param>
    /// <param name="pattern">Pattern.</param>
    public WordingChoice(string key, string pattern)
    {
        List<(string Key, string Text, string?[] Names)> made = [(key, "", [])];
        var at = 0;
        for (var open = pattern.IndexOf('['); open >= 0; open = pattern.IndexOf('[', at))
        {
            var close = pattern.IndexOf(']', open);
            var parts = pattern[(open + 1)..close].Split('|').Select(Part).ToList();
            if (parts.TrueForAll(p => p.Name is not null))
            {
                parts.Add((null, ""));
            }

            var (fixedText, stride) = (pattern[at..open], made.Count);
            groups.Add((parts.Count, stride, Enumerable.Range(0, parts.Count).Where(i => parts[i].Name is not null).ToDictionary(i => parts[i].Name!, i => i)));
            made = [.. parts.SelectMany(p => made.Select(m =>
                (p.Name is null ? m.Key : $"{m.Key}.{p.Name}", m.Text + fixedText + p.Text, (string?[])[.. m.Names, p.Name])))];
            at = close + 1;
        }

        all = [.. made.Select(m => new MessageWording(m.Key, m.Text + pattern[at..]))];

        // A part is chosen in every group that has its name: "{items} [one:is|are] here and [one:needs|need] this".
        All = [.. all.Where((wording, i) => ReferenceEquals(With(made[i].Names), wording))];
    }

    /// <summary>All wordings that can be chosen.</summary>
    public IReadOnlyList<MessageWording> All { get; }

    /// <summary>The wording with these parts.</summary>
    /// <param name="names">Names of the parts; null and "" choose nothing.</param>
    /// <returns>The wording.</returns>
    public MessageWording With(params ReadOnlySpan<string?> names)
    {
        var index = 0;
        foreach (var (size, stride, own) in groups)
        {
            var chosen = size - 1;
            foreach (var name in names)
            {
                if (!string.IsNullOrEmpty(name) && own.TryGetValue(name, out var number))
                {
                    chosen = number;
                    break;
                }
            }

            index += chosen * stride;
        }

        return all[index];
    }

    private static (string? Name, string Text) Part(string text)
    {
        var colon = text.IndexOf(':');
        var brace = text.IndexOf('{');
        return colon < 0 || (brace >= 0 && brace < colon) || !IsName(text.AsSpan(0, colon)) ? (null, text) : (text[..colon], text[(colon + 1)..]);
    }

    private static bool IsName(ReadOnlySpan<char> text)
    {
        foreach (var letter in text)
        {
            if (!char.IsAsciiLetterLower(letter) && letter != '-')
            {
                return false;
            }
        }

        return text.Length > 0;
    }
}
