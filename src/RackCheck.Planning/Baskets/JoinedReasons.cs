using RackCheck.Model;
using RackCheck.Planning.Building;

namespace RackCheck.Planning.Baskets;

/// <summary>Why a part is missing, over all racks: what several racks need it for in the same way is one sentence.</summary>
internal static class JoinedReasons
{
    private const string Items = "items";
    private const string Length = "lengthM";

    // By the wording of one item or of several: that of several.
    private static readonly Dictionary<MessageWording, MessageWording> Plurals = new[]
    {
        LineWordings.Shelf, LineWordings.Rails, LineWordings.Outlets, LineWordings.SecondSupply, LineWordings.EarthLeads, LineWordings.Cords,
        LineWordings.CableArms, LineWordings.KvmLeads,
    }.SelectMany(c => (MessageWording[][])[[c.With("one"), c.With()], [c.With(), c.With()]])
        .Concat(
        [
            [LineWordings.Cords.With("one", "route"), LineWordings.Cords.With("route")],
            [LineWordings.Cords.With("route"), LineWordings.Cords.With("route")],
        ])
        .ToDictionary(p => p[0], p => p[1]);

    /// <summary>The reasons as one text.</summary>
    /// <param name="reasons">The reasons, one or more, in the order of the racks.</param>
    public static WordedText Of(IEnumerable<WordedText> reasons)
    {
        List<List<WordedText>> alike = [];
        foreach (var reason in reasons.DistinctBy(r => r.Text))
        {
            if (alike.Find(a => AreAlike(a[0], reason)) is { } group)
            {
                group.Add(reason);
            }
            else
            {
                alike.Add([reason]);
            }
        }

        return alike.Select(Joined).Aggregate((one, other) => one.With(other));
    }

    // The same sentence about other items; the length differs from rack to rack.
    private static bool AreAlike(WordedText one, WordedText other) =>
        !one.Key.Contains('+', StringComparison.Ordinal) && !other.Key.Contains('+', StringComparison.Ordinal)
        && Plurals.TryGetValue(one.Wording, out var plural) && Plurals.TryGetValue(other.Wording, out var otherPlural) && ReferenceEquals(plural, otherPlural)
        && one.Values.Where(v => v.Key is not Items and not Length).All(v => other.Values[v.Key].ToString() == v.Value.ToString());

    private static WordedText Joined(List<WordedText> alike) => alike is [var only] ? only : new WordedText(
        Plurals[alike[0].Wording],
        [
            .. alike[0].Values.Select(v => (v.Key, v.Key switch
            {
                Items => LineWordings.Ids(alike.SelectMany(a => a.Values[Items].List!).Select(i => i.Text!)),
                Length => alike.Max(a => a.Values[Length].Number!.Value),
                _ => v.Value,
            })),
        ]);
}
