using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Bounds;

namespace RackCheck.Rules;

/// <summary>Merges the facts for which rules wait into one question a fact.</summary>
internal static class Questions
{
    private const string Each = "{each}";

    /// <summary>A question before its place in the report is known.</summary>
    /// <param name="Question">The question; what it makes possible is worked out by the judgement.</param>
    /// <param name="Open">The rules that wait for it.</param>
    public sealed record Draft(Question Question, IReadOnlyList<OpenRule> Open);

    /// <summary>The questions, the most decisive first: errors of safety rules, errors, the rest; then by the number of rules.</summary>
    /// <param name="rack">The description.</param>
    /// <param name="open">The rules that wait.</param>
    public static List<Draft> Of(RackDescription rack, IReadOnlyList<OpenRule> open)
    {
        var byKey = new Dictionary<string, (SortedSet<string> Pointers, List<OpenRule> Rules)>(StringComparer.Ordinal);
        foreach (var rule in open)
        {
            foreach (var pointer in rule.Pointers)
            {
                var key = FactTable.KeyOf(pointer).Key;
                if (!byKey.TryGetValue(key, out var entry))
                {
                    byKey[key] = entry = (new SortedSet<string>(PointerOrder.Instance), []);
                }

                entry.Pointers.Add(pointer);
                if (!entry.Rules.Contains(rule))
                {
                    entry.Rules.Add(rule);
                }
            }
        }

        return
        [
            .. byKey.Values.Select(e => Make(rack, [.. e.Pointers], e.Rules))
                .OrderBy(d => d.Question.Decides)
                .ThenBy(d => d.Open.Min(Rank))
                .ThenByDescending(d => d.Open.Count)
                .ThenBy(d => d.Question.Id, StringComparer.Ordinal),
        ];
    }

    private static int Rank(OpenRule rule) => (2 * (int)rule.Gravest) + (rule.Rule.Safety ? 0 : 1);

    private static Draft Make(RackDescription rack, string[] pointers, List<OpenRule> open)
    {
        var fact = FactTable.Find(pointers[0])?.Fact ?? FactTable.Unlisted(pointers[0]);
        var names = fact.Ask.Contains(Each, StringComparison.Ordinal)
            ? pointers.Select(p => NameOf(rack, p)).Distinct().Order(StringComparer.Ordinal).ToArray()
            : [];
        var each = names.Length == 0 ? "" : names.Length == 1 ? names[0] : $"each of {Names.List(names)}";
        return new Draft(
            new Question
            {
                Id = fact.Id,
                Pointers = pointers,
                Ask = fact.Ask.Replace(Each, each, StringComparison.Ordinal),
                MessageKey = "question." + fact.Id,
                MessageData = each.Length == 0
                    ? new Dictionary<string, Scalar>(0)
                    : new Dictionary<string, Scalar>(1, StringComparer.Ordinal) { ["each"] = each },
                Rules = [.. open.Select(o => o.Rule.Id).Order(StringComparer.Ordinal)],
                Decides = open.Exists(o => o.Rule.Concern == Concern.Product) ? Concern.Product : Concern.Site,
                IfAnsweredWell = new Verdicts { Product = Verdict.Release, Site = Verdict.Release },
            },
            open);
    }

    private static string NameOf(RackDescription rack, string pointer)
    {
        var (key, owner) = FactTable.KeyOf(pointer);
        return key.StartsWith("/items/*", StringComparison.Ordinal) ? rack.Items[owner].Id
            : key.StartsWith("/supplies/*", StringComparison.Ordinal) ? $"supply {rack.Supplies![owner].Id}"
            : key.StartsWith("/pdus/*", StringComparison.Ordinal) ? $"PDU {rack.Pdus![owner].Id}"
            : pointer;
    }
}
