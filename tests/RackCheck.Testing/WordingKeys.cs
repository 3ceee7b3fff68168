using System.Collections.Concurrent;
using System.Text.Json;
using RackCheck.Model;
using RackCheck.Model.Json;
using Xunit;

namespace RackCheck.Testing;

/// <summary>Words texts from their keys and data as a client does that has the templates only.</summary>
public sealed class WordingKeys
{
    private readonly Dictionary<string, MessageWording> wordings = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, bool> reached = new(StringComparer.Ordinal);

    /// <summary>The templates.</summary>
    /// <param name="all">All wordings that are served; a key stands for one template.</param>
    public WordingKeys(IEnumerable<MessageWording> all)
    {
        foreach (var wording in all)
        {
            if (!wordings.TryAdd(wording.Key, wording))
            {
                Assert.Equal(wordings[wording.Key].Template, wording.Template);
            }
        }
    }

    /// <summary>Keys of which no text was checked.</summary>
    public IEnumerable<string> Unreached => wordings.Keys.Except(reached.Keys, StringComparer.Ordinal).Order(StringComparer.Ordinal);

    /// <summary>Checks that a text is made from its key and its data, and that no value is a phrase of the service's own.</summary>
    /// <param name="key">The key, or several joined by plus signs.</param>
    /// <param name="data">The values by name.</param>
    /// <param name="text">The text.</param>
    /// <param name="given">What callers and catalogue wrote, as JSON.</param>
    /// <param name="isTitle">Whether the keys are steps of a title.</param>
    public void Check(string key, IReadOnlyDictionary<string, Scalar> data, string text, string given, bool isTitle = false)
    {
        var keys = key.Split('+');
        foreach (var one in keys)
        {
            Assert.True(wordings.ContainsKey(one), $"{one} is not listed");
            reached[one] = true;
        }

        Assert.Equal(text, isTitle ? Steps(keys, 0, data) : Sentences(keys, 0, data));
        CheckValues(key, data, given);
    }

    /// <summary>
    /// Checks every text of an answer: one with a space has a key beside it, unless a caller or the catalogue wrote it; and a text that has a key is made
    /// from that and its values.
    /// </summary>
    /// <param name="answer">The answer, as JSON.</param>
    /// <param name="given">What callers and catalogue wrote, as JSON.</param>
    public void CheckAnswer(string answer, string given)
    {
        using var document = JsonDocument.Parse(answer);
        CheckTexts(document.RootElement, "", given);
    }

    /// <summary>Checks the value and the basis of an assumption.</summary>
    /// <param name="assumption">The assumption.</param>
    /// <param name="given">What callers and catalogue wrote, as JSON.</param>
    public void Check(Assumption assumption, string given)
    {
        Check(assumption.BasisKey, assumption.BasisData, assumption.Basis, given);
        Assert.Equal(assumption.ValueKey is null, assumption.ValueData is null);
        if (assumption.ValueKey is { } key)
        {
            Check(key, assumption.ValueData!, assumption.Value!.Value.Text!, given);
        }
        else if (assumption.Value is { } value)
        {
            CheckValues(assumption.BasisKey, new Dictionary<string, Scalar> { ["value"] = value }, given);
        }
    }

    /// <summary>Checks that no value contains a space unless a caller or the catalogue wrote it.</summary>
    /// <param name="key">The key, for the message of a failure.</param>
    /// <param name="data">The values by name.</param>
    /// <param name="given">What callers and catalogue wrote, as JSON.</param>
    public static void CheckValues(string key, IReadOnlyDictionary<string, Scalar> data, string given)
    {
        foreach (var value in data.Values.SelectMany(v => v.List ?? [v]).Select(v => v.Text).OfType<string>())
        {
            Assert.False(IsOwn(value, given), $"{key} has the composed value {value}");
        }
    }

    private void CheckTexts(JsonElement at, string path, string given)
    {
        switch (at.ValueKind)
        {
            case JsonValueKind.Array:
                foreach (var (index, element) in at.EnumerateArray().Index())
                {
                    CheckTexts(element, FormattableString.Invariant($"{path}/{index}"), given);
                }

                break;
            case JsonValueKind.Object:
                foreach (var member in at.EnumerateObject())
                {
                    CheckMember(at, member, path + "/" + member.Name, given);
                }

                break;
            default:
                Assert.False(at.ValueKind == JsonValueKind.String && IsOwn(at.GetString()!, given), $"{path} has no key: {at}");
                break;
        }
    }

    private void CheckMember(JsonElement of, JsonProperty member, string path, string given)
    {
        // A calculation is arithmetic, sources are keys, a unit of measure is a symbol such as N m, and a patch has new ids made of the caller's. The
        // reference of a rack of several is the caller's with a number. The values of a text are checked with that text.
        if (member.Name is "calculation" or "sources" or "unit" or "patch" or "reference" || member.Name.EndsWith("Data", StringComparison.Ordinal))
        {
            return;
        }

        var (name, isNamed) = NameOfKey(of, member.Name);
        if (member.Value.ValueKind == JsonValueKind.String && name is not null && (isNamed || IsOwn(member.Value.GetString()!, given)))
        {
            Check(of.GetProperty(name + "Key").GetString()!, DataOf(of, name), member.Value.GetString()!, given, isTitle: member.Name == "title");
        }
        else if (member.Value.ValueKind == JsonValueKind.Array && ListOfKeys(of, member.Name) is { } listed)
        {
            Assert.Equal(member.Value.GetArrayLength(), listed.GetArrayLength());
            foreach (var (text, key) in member.Value.EnumerateArray().Zip(listed.EnumerateArray()))
            {
                Check(key.GetProperty("messageKey").GetString()!, DataOf(key, "message"), text.GetString()!, given);
            }
        }
        else
        {
            CheckTexts(member.Value, path, given);
        }
    }

    // The main text of an object, such as reason or ask, has messageKey.
    private static (string? Name, bool IsNamed) NameOfKey(JsonElement of, string name) =>
        of.TryGetProperty(name + "Key", out _) ? (name, true) : of.TryGetProperty("messageKey", out _) ? ("message", false) : (null, false);

    // cautions has cautionKeys, gained has gainedKeys.
    private static JsonElement? ListOfKeys(JsonElement of, string name) =>
        of.TryGetProperty(name.TrimEnd('s') + "Keys", out var keys) ? keys : null;

    private static Dictionary<string, Scalar> DataOf(JsonElement of, string name) =>
        of.GetProperty(name + "Data").EnumerateObject().ToDictionary(d => d.Name, d => d.Value.Deserialize(ContractJson.Default.Scalar));

    private static bool IsOwn(string text, string given) =>
        text.Contains(' ', StringComparison.Ordinal)
            && !given.Contains(JsonSerializer.Serialize(text, ContractJson.Default.String), StringComparison.Ordinal);

    private string Sentences(string[] keys, int at, IReadOnlyDictionary<string, Scalar> data)
    {
        var template = wordings[keys[at]].Template;
        return template.Contains("{need}", StringComparison.Ordinal) ? Followed(One(keys, at, data, ("need", One(keys, at + 1, data))), at + 2)
            : template.Contains("{message}", StringComparison.Ordinal) ? One(keys, at, data, ("message", Sentences(keys, at + 1, data)))
            : template.Contains("{title}", StringComparison.Ordinal) ? One(keys, at, data, ("title", Steps(keys, at + 1, data)))
            : Followed(One(keys, at, data), at + 1);

        string Followed(string sentence, int next) => next < keys.Length ? sentence + " " + Sentences(keys, next, data) : sentence;
    }

    private string Steps(string[] keys, int at, IReadOnlyDictionary<string, Scalar> data)
    {
        var step = One(keys, at, data);
        return at + 1 == keys.Length ? step : step + ", and " + LowerFirst(Steps(keys, at + 1, data));
    }

    private static string LowerFirst(string text) => char.ToLowerInvariant(text[0]) + text[1..];

    // The names of the second text's values end in 2, of the third one's in 3.
    private string One(string[] keys, int at, IReadOnlyDictionary<string, Scalar> data, params (string Name, Scalar Value)[] quoted)
    {
        var end = at == 0 ? "" : FormattableString.Invariant($"{at + 1}");
        var wording = wordings[keys[at]];
        var own = data.Where(d => d.Key.EndsWith(end, StringComparison.Ordinal)).Select(d => (Name: d.Key[..^end.Length], d.Value))
            .Where(d => keys.Length == 1 || wording.Template.Contains("{" + d.Name, StringComparison.Ordinal));
        return wording.Render([.. own, .. quoted]);
    }
}
