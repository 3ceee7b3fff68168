using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Bounds;

namespace RackCheck.Rules;

/// <summary>Merges the facts for which rules wait into one question a fact.</summary>
internal static class Questions
{
    /// <summary>A question before its place in the report is known.</summary>
    /// <param name="Question">The question; what it makes possible is worked out by the judgement.</param>
    /// <param name="Open">The rules that wait for it.</param>
    public sealed record Draft(Question Question, IReadOnlyList<OpenRule> Open);

    /// <summary>The questions, the most decisive first: errors of safety rules, errors, the rest; then by the number of rules.</summary>
    /// <param name="rack">The description.</param>
    /// <param name="open">The rules that wait.</param>
    public static List<Draft> Of(RackDescription rack, IReadOnlyList<OpenRule> open)
    {
        var byKey = new Dictionary<string, (HashSet<string> Pointers, List<OpenRule> Rules)>(StringComparer.Ordinal);
        foreach (var rule in open)
        {
            foreach (var pointer in rule.Pointers)
            {
                var key = FactTable.AskedBy(pointer).Id;
                if (!byKey.TryGetValue(key, out var entry))
                {
                    byKey[key] = entry = (new HashSet<string>(StringComparer.Ordinal), []);
                }

                // The pointers of a rule come together, so that it is the last one.
                entry.Pointers.Add(pointer);
                if (entry.Rules.Count == 0 || !ReferenceEquals(entry.Rules[^1], rule))
                {
                    entry.Rules.Add(rule);
                }
            }
        }

        return
        [
            .. byKey.Values.Select(e => Make(rack, [.. e.Pointers.Order(PointerOrder.Instance)], e.Rules))
                .OrderBy(d => d.Question.Decides)
                .ThenBy(d => d.Open.Min(Rank))
                .ThenByDescending(d => d.Open.Count)
                .ThenBy(d => d.Question.Id, StringComparer.Ordinal),
        ];
    }

    private static int Rank(OpenRule rule) => (2 * (int)rule.Gravest) + (rule.Rule.Safety ? 0 : 1);

    private static Draft Make(RackDescription rack, string[] pointers, List<OpenRule> open)
    {
        var fact = FactTable.AskedBy(pointers[0]);
        IReadOnlyList<(string Name, Scalar Value)> data = fact.OwnersName is { } owners ? [(owners, OwnersOf(rack, pointers))]
            : fact.Ask == FactTable.Other.Template ? [("member", fact.Key[1..])]
            : [];
        var isRest = fact.Rest.Count > 0 && Array.TrueForAll(pointers, p => fact.IsPartGiven(rack, FactTable.KeyOf(p).Owner));
        var isMany = data is [(_, { List.Count: > 1 })];
        var wording = data is [("member", _)] ? FactTable.Other : isRest ? fact.Rest[isMany ? 1 : 0] : isMany ? fact.Many : fact.One;
        return new Draft(
            new Question
            {
                Id = fact.Id,
                Pointers = pointers,
                Ask = wording.Render(data),
                MessageKey = wording.Key,
                MessageData = data.ToDictionary(d => d.Name, d => d.Value, StringComparer.Ordinal),
                Unit = fact.IsNumber ? fact.Unit : null,
                Rules = [.. open.Select(o => o.Rule.Id).Order(StringComparer.Ordinal)],
                Decides = open.Exists(o => o.Rule.Concern == Concern.Product) ? Concern.Product : Concern.Site,
                IfAnsweredWell = new Verdicts { Product = Verdict.Release, Site = Verdict.Release },
            },
            open);
    }

    // Ids in their order; fans have none, and are numbered as they are listed.
    private static Scalar OwnersOf(RackDescription rack, string[] pointers)
    {
        var owners = pointers.Select(FactTable.KeyOf).Distinct().ToArray();
        return owners[0].Key.Split('/')[1] switch
        {
            "items" => Ids(rack.Items, i => i.Id),
            "supplies" => Ids(rack.Supplies!, s => s.Id),
            "pdus" => Ids(rack.Pdus!, p => p.Id),
            _ => Scalar.Of([.. owners.Select(o => o.Owner + 1).Distinct().Order().Select(n => (Scalar)n)]),
        };

        Scalar Ids<T>(IReadOnlyList<T> list, Func<T, string> id) =>
            Names.Ids(owners.Select(o => id(list[o.Owner])).Distinct());
    }
}
