using System.Collections.Frozen;
using System.Collections.Immutable;
using RackCheck.Model;

namespace RackCheck.Survey.Bounds;

/// <summary>The table of facts: what can be missing, how it is asked for, and within which range it plausibly lies.</summary>
public static class FactTable
{
    internal const string Practice = "common practice, no source";

    /// <summary>All facts, by theme.</summary>
    public static ImmutableArray<Fact> All { get; } =
    [
        .. ItemBounds.All, .. ItemPowerBounds.All, .. CabinetBounds.All, .. FeedBounds.All, .. SiteBounds.All, .. FanBounds.All,
    ];

    private const int MostStackChars = 256;

    private static readonly FrozenDictionary<string, int> Numbers = Number();

    private static readonly FrozenDictionary<string, int>.AlternateLookup<ReadOnlySpan<char>> NumbersBySpan =
        Numbers.GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>The facts with a range.</summary>
    public static ImmutableArray<Fact> Bounded { get; } = [.. All.Where(f => f.Range is not null)];

    /// <summary>The bounded facts of each <see cref="Pull"/>, by its number.</summary>
    public static ImmutableArray<FactSet> Pulls { get; } = [.. Enum.GetValues<Pull>().Select(OfPull)];

    /// <summary>Place among the bounded facts of the one that decides which rules apply: every end of the others is tried with both of its values.</summary>
    public static int DecidingRules { get; } = Bounded.IndexOf(Bounded.Single(f => f.Key == "/site/region"));

    private static FactSet OfPull(Pull pull)
    {
        var set = default(FactSet);
        for (var i = 0; i < Bounded.Length; i++)
        {
            set = Bounded[i].Pull == pull ? set.With(i) : set;
        }

        return set;
    }

    /// <summary>The fact of a pointer.</summary>
    /// <param name="pointer">A pointer into a description.</param>
    /// <returns>The fact and the index of its owner; null for a member that the table does not have.</returns>
    public static (Fact Fact, int Owner)? Find(string pointer)
    {
        Span<char> key = pointer.Length <= MostStackChars ? stackalloc char[pointer.Length] : new char[pointer.Length];
        var (length, owner) = WriteKey(pointer, key);
        return NumbersBySpan.TryGetValue(key[..length], out var number) ? (All[number], owner) : null;
    }

    /// <summary>The fact whose question asks for a pointer.</summary>
    /// <param name="pointer">A pointer into a description.</param>
    /// <returns>The fact: itself, the one that it is asked with, or one whose question names the member.</returns>
    public static Fact AskedBy(string pointer) =>
        Find(pointer)?.Fact is not { } fact ? Unlisted(pointer) : fact.AskedWith is { } other ? All[Numbers[other]] : fact;

    /// <summary>The question for a member that the table does not have.</summary>
    public static MessageWording Other { get; } = new("question.other", "What is the value of {member}?");

    /// <summary>Wordings of all questions.</summary>
    public static IReadOnlyList<MessageWording> Wordings { get; } =
    [
        .. All.Where(f => f.AskedWith is null).SelectMany(f => f.OwnersName is null ? (MessageWording[])[f.One] : [f.One, f.Many, .. f.Rest]),
        Other,
    ];

    /// <summary>A fact for a member that the table does not have.</summary>
    /// <param name="pointer">Its pointer.</param>
    /// <returns>The fact, whose question names the member.</returns>
    public static Fact Unlisted(string pointer)
    {
        var (key, _) = KeyOf(pointer);
        return Asked(key, Other.Template);
    }

    /// <summary>Which of the bounded facts a rule reads.</summary>
    /// <param name="needs">The members that the rule names, with * for an index; a record stands for its members.</param>
    /// <returns>One bit for each bounded fact, by its place in <see cref="Bounded"/>.</returns>
    public static FactSet ReadBy(IReadOnlyList<string> needs)
    {
        var set = default(FactSet);
        for (var i = 0; i < Bounded.Length; i++)
        {
            var key = Bounded[i].Key;
            if (needs.Any(n => Covers(n, key)) || Derived.Any(d => d.From.Contains(key) && needs.Any(n => Covers(d.Member, n))))
            {
                set = set.With(i);
            }
        }

        return set;
    }

    // Uprights whose place is not given are assumed where doors and items allow, cords are assigned to outlets by their loads, a flow of
    // air follows from heat, openings and density, and the range of a leakage current from the power: a rule that reads one of these reads what it
    // is made from.
    private static readonly (string Member, string[] From)[] Derived =
    [
        ("/cabinet/uprights",
        [
            "/cabinet/frontDoor/depthMm", "/cabinet/rearDoor/depthMm", "/items/*/frontProjectionMm", "/items/*/rearProjectionMm", "/items/*/body/depthMm",
        ]),
        ("/connections", Fact.OfCords),
        ("/items/*/airflow/flowM3h",
        [
            "/site/ambientMaxC", "/site/altitudeM", "/site/humidityMaxPercent", "/cabinet/frontDoor/perforatedAreaM2", "/cabinet/rearDoor/perforatedAreaM2",
            "/cabinet/frontDoor/openAreaPercent", "/cabinet/rearDoor/openAreaPercent", "/cabinet/roof/openAreaCm2", "/items/*/heatW",
            "/items/*/power/ratedW",
        ]),
        ("/items/*/power/leakageMa", ["/items/*/power/ratedW"]),
    ];

    // A list within a record, such as a door leaf within a door, is covered by the record.
    private static bool Covers(string need, string key) =>
        key == need || key.StartsWith(need + "/", StringComparison.Ordinal) || need.StartsWith(key + "/", StringComparison.Ordinal);

    /// <summary>The key of a pointer, with * for its first index.</summary>
    /// <param name="pointer">A pointer into a description.</param>
    /// <returns>Key and index; 0 without an index.</returns>
    public static (string Key, int Owner) KeyOf(string pointer)
    {
        var key = new char[pointer.Length];
        var (length, owner) = WriteKey(pointer, key);
        return (new string(key, 0, length), owner);
    }

    // The first token of a pointer is empty. A rule that waits names the same value of every item, so that this is done hundreds of times a check.
    private static (int Length, int Owner) WriteKey(ReadOnlySpan<char> pointer, Span<char> key)
    {
        var (length, owner, isFirst) = (0, 0, true);
        while (!pointer.IsEmpty)
        {
            var end = pointer[1..].IndexOf('/') + 1;
            var token = end > 0 ? pointer[..end] : pointer;
            if (token.Length > 1 && token[0] == '/' && int.TryParse(token[1..], System.Globalization.NumberStyles.None, null, out var index))
            {
                (key[length], key[length + 1], owner, isFirst) = ('/', '*', isFirst ? index : owner, false);
                length += 2;
            }
            else
            {
                token.CopyTo(key[length..]);
                length += token.Length;
            }

            pointer = pointer[token.Length..];
        }

        return (length, owner);
    }

    private static FrozenDictionary<string, int> Number()
    {
        var bounded = 0;
        foreach (var fact in All.Where(f => f.Range is not null))
        {
            Action<int> set = fact switch
            {
                Fact<Item> f => n => f.Number = n,
                Fact<Supply> f => n => f.Number = n,
                Fact<Pdu> f => n => f.Number = n,
                Fact<FanSet> f => n => f.Number = n,
                Fact<RackDescription> f => n => f.Number = n,
                _ => throw new InvalidOperationException(fact.Key),
            };
            set(bounded++);
        }

        return Enumerable.Range(0, All.Length).ToFrozenDictionary(i => All[i].Key, i => i, StringComparer.Ordinal);
    }

    internal static Fact<Item> OfItem(
        string member, string ask, Func<Item, double?> get, Func<Item, double, Item> set, Func<Item, RackDescription, Bound?> limits, string range,
        string? unit, bool lowIsAdverse = false, Pull pull = Pull.OneWay, string basis = Practice, bool isNumber = true) => new()
        {
            Key = "/items/*/" + member, Ask = ask, Owners = static r => r.Items, Drafts = static d => d.Items, Get = get, Set = set, Limits = limits,
            Range = range, Unit = unit, LowIsAdverse = lowIsAdverse, Pull = pull, Basis = basis, IsNumber = isNumber,
        };

    internal static Fact<RackDescription> OfRack(
        string pointer, string ask, Func<RackDescription, double?> get, Func<RackDescription, double, RackDescription> set,
        Func<RackDescription, Bound?> limits, string range, string? unit, bool lowIsAdverse = false, Pull pull = Pull.OneWay, string basis = Practice,
        bool isNumber = true) => new()
        {
            Key = pointer, Ask = ask, Owners = static r => [r], Get = get, Set = set, Limits = (r, _) => limits(r), Range = range, Unit = unit,
            LowIsAdverse = lowIsAdverse, Pull = pull, Basis = basis, IsNumber = isNumber,
        };

    internal static Fact<RackDescription> Asked(string key, string ask, string? with = null) =>
        new() { Key = key, Ask = ask, AskedWith = with, Owners = static r => [r], Get = static _ => null };
}

/// <summary>A set of bounded facts.</summary>
/// <param name="Low">Bits of the first 64.</param>
/// <param name="High">Bits of the rest.</param>
public readonly record struct FactSet(ulong Low, ulong High)
{
    /// <summary>Whether it has none.</summary>
    public bool IsEmpty => (Low | High) == 0;

    /// <summary>Whether it has a fact.</summary>
    /// <param name="number">Its place among the bounded facts.</param>
    public bool Has(int number) => ((number < 64 ? Low : High) & (1UL << (number & 63))) != 0;

    /// <summary>The set with one more fact.</summary>
    /// <param name="number">Its place among the bounded facts.</param>
    public FactSet With(int number) => number < 64 ? this with { Low = Low | (1UL << number) } : this with { High = High | (1UL << (number & 63)) };

    /// <summary>The set without a fact.</summary>
    /// <param name="number">Its place among the bounded facts.</param>
    public FactSet Without(int number) => number < 64 ? this with { Low = Low & ~(1UL << number) } : this with { High = High & ~(1UL << (number & 63)) };

    /// <summary>The facts that either set has.</summary>
    /// <param name="other">The other set.</param>
    public FactSet Or(FactSet other) => new(Low | other.Low, High | other.High);

    /// <summary>The facts that both sets have.</summary>
    /// <param name="other">The other set.</param>
    public FactSet And(FactSet other) => new(Low & other.Low, High & other.High);
}
