using System.Runtime.InteropServices;
using RackCheck.Model;

namespace RackCheck.Survey.Bounds;

/// <summary>The plausible range of a value.</summary>
/// <param name="Low">Lowest plausible value.</param>
/// <param name="High">Highest plausible value.</param>
public readonly record struct Bound(double Low, double High);

/// <summary>A combination of the ends of all ranges.</summary>
public enum End
{
    /// <summary>Every missing value at the end that is worse for most rules.</summary>
    Adverse,

    /// <summary>Every missing value at the other end.</summary>
    Favourable,

    /// <summary>As adverse, but where rules pull apart at the other end, and heavy above mid-height.</summary>
    Crossed,

    /// <summary>As adverse, but heavy below mid-height.</summary>
    CrossedBack,

    /// <summary>Every missing value in the middle of its range.</summary>
    Middle,
}

/// <summary>How the ends of a range combine where one rule wants a value high and another wants it low.</summary>
public enum Pull
{
    /// <summary>One end is worse for every rule.</summary>
    OneWay,

    /// <summary>Rules pull apart.</summary>
    Apart,

    /// <summary>Rules pull apart by the height at which the value acts.</summary>
    ByHeight,
}

/// <summary>
/// A member of the description that can be missing: how it is asked for and, where it has one, its plausible range. The table of facts is the only home of
/// both.
/// </summary>
public abstract class Fact
{
    /// <summary>JSON Pointer with * for an index.</summary>
    public required string Key { get; init; }

    /// <summary>The question, with {each} for the ids concerned.</summary>
    public required string Ask { get; init; }

    /// <summary>Unit of measure; null for text, a list or a yes or no.</summary>
    public string? Unit { get; init; }

    /// <summary>The range in words; null where the value has no plausible range and is asked for.</summary>
    public string? Range { get; init; }

    /// <summary>Basis of the range.</summary>
    public string Basis { get; init; } = FactTable.Practice;

    /// <summary>Start of the keys of what is said of ranges.</summary>
    public const string RangeKey = "assumption.range.";

    /// <summary>What is said of every range.</summary>
    public const string RangeWords = "plausible range, over which the answers do not change: ";

    /// <summary>What is said of the range where a report assumes it.</summary>
    public WordedText Assumed => assumed ??=
        new(RangeKey + OwnId, $"{RangeWords}{Range}; {Basis}");

    private WordedText? assumed;

    /// <summary>Whether the low end is worse for most rules.</summary>
    public bool LowIsAdverse { get; init; }

    /// <summary>Whether rules pull apart.</summary>
    public Pull Pull { get; init; }

    /// <summary>Whether the value is a number of the contract, not the measure of a list.</summary>
    public bool IsNumber { get; init; } = true;

    /// <summary>Whether it is a fact of the cabinet or of an item, on which places, depths, masses and cables depend.</summary>
    internal bool IsOfCabinetOrItems => (Section & (Sections.Cabinet | Sections.Items)) != 0;

    /// <summary>The section of the description that it is a member of.</summary>
    internal Sections Section => section == Sections.None ? section = SectionTable.Holding(Key) : section;

    private Sections section;

    /// <summary>
    /// Keys of the facts with which cords find other outlets: they are assigned by the power of items, what a UPS carries and loses, breakers, and the share
    /// of these that the region allows.
    /// </summary>
    internal static readonly string[] OfCords =
    [
        "/items/*/power/ratedW", "/items/*/power/powerFactor", "/items/*/heatW", "/items/*/ups/ratedW", "/items/*/ups/ratedVa", "/items/*/ups/chargeW",
        "/supplies/*/breaker/ratedA", "/site/region",
    ];

    /// <summary>Whether cords find other outlets with another value.</summary>
    /// <param name="rack">The description.</param>
    /// <param name="owner">Index of the owner.</param>
    internal bool MovesCords(RackDescription rack, int owner) =>
        (isOfCords ??= Array.IndexOf(OfCords, Key) >= 0) && (Key != "/items/*/heatW" || rack.Items[owner].Ups?.Feeds is not null);

    private bool? isOfCords;

    /// <summary>Key of the fact whose question asks for this one too; null where it has a question of its own.</summary>
    public string? AskedWith { get; init; }

    /// <summary>Id of the question: the key without its first slash and its indices, joined by dots.</summary>
    public string Id => id ??= IdOf(AskedWith ?? Key);

    private string OwnId => AskedWith is null ? Id : IdOf(Key);

    private static string IdOf(string key) => key[1..].Replace("/*", "", StringComparison.Ordinal).Replace('/', '.');

    private string? id;

    /// <summary>The question about one owner, or about the rack.</summary>
    public MessageWording One => one ??= new("question." + Id, Ask.Replace(Each, Words.One, StringComparison.Ordinal));

    private MessageWording? one;

    /// <summary>The question about several owners.</summary>
    public MessageWording Many => many ??= new($"question.{Id}.each", Ask.Replace(Each, Words.Many, StringComparison.Ordinal));

    private MessageWording? many;

    /// <summary>The question where part of what it asks for is given, with {each} for the ids concerned; null where it has no parts.</summary>
    public string? AskRest { get; init; }

    /// <summary>The wordings of the question where part is given: about one owner and about several; none where it has no parts.</summary>
    public IReadOnlyList<MessageWording> Rest => rest ??= AskRest is null
        ? []
        :
        [
            new($"question.{Id}.rest", AskRest.Replace(Each, Words.One, StringComparison.Ordinal)),
            new($"question.{Id}.rest.each", AskRest.Replace(Each, Words.Many, StringComparison.Ordinal)),
        ];

    private IReadOnlyList<MessageWording>? rest;

    /// <summary>Whether part of what the question asks for is given.</summary>
    /// <param name="rack">The description.</param>
    /// <param name="owner">Index of the owner.</param>
    public virtual bool IsPartGiven(RackDescription rack, int owner) => false;

    /// <summary>Name of the owners in the data of the question; null where it is about the rack.</summary>
    public string? OwnersName => Ask.Contains(Each, StringComparison.Ordinal) ? Words.Name : null;

    private const string Each = "{each}";

    private (string Name, string One, string Many) Words => Key.Split('/')[1] switch
    {
        "items" => ("items", "{items}", "each of {items:all}"),
        "supplies" => ("supplies", "supply {supplies}", "each of the supplies {supplies:all}"),
        "pdus" => ("pdus", "PDU {pdus}", "each of the PDUs {pdus:all}"),
        _ => ("sets", "set {sets}", "each of the sets {sets:all}"),
    };

    /// <summary>The pointer of one owner.</summary>
    /// <param name="owner">Index of the item, supply or PDU.</param>
    /// <returns>The pointer.</returns>
    public string PointerOf(int owner)
    {
        var star = Key.IndexOf('*', StringComparison.Ordinal);
        return star < 0 ? Key : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Key.AsSpan(0, star)}{owner}{Key.AsSpan(star + 1)}");
    }

    /// <summary>The value as given.</summary>
    /// <param name="rack">The description.</param>
    /// <param name="owner">Index of the owner.</param>
    /// <returns>The value, or the measure of a list; null if absent.</returns>
    public abstract double? ValueOf(RackDescription rack, int owner);

    /// <summary>The range that a value would have if it were absent.</summary>
    /// <param name="rack">The description.</param>
    /// <param name="owner">Index of the owner.</param>
    /// <returns>The range; null if the owner has no such value, or none that can be bounded.</returns>
    public abstract Bound? BoundOf(RackDescription rack, int owner);

    /// <summary>Whether the value as given lies in a range.</summary>
    /// <param name="rack">The description.</param>
    /// <param name="owner">Index of the owner.</param>
    /// <param name="bound">The range.</param>
    /// <returns>Whether it is given and inside.</returns>
    public virtual bool IsInside(RackDescription rack, int owner, Bound bound) =>
        ValueOf(rack, owner) is { } value && value >= bound.Low && value <= bound.High;

    internal abstract void Find(RackDescription rack, List<Gap> gaps);

    internal abstract void Fill(RackDraft draft, int owner, double value);
}

/// <summary>A missing value and its range.</summary>
/// <param name="Fact">What is missing.</param>
/// <param name="Number">Place of the fact in the table.</param>
/// <param name="Owner">Index of the item, supply or PDU; 0 for the rack.</param>
/// <param name="Bound">The range.</param>
internal readonly record struct Gap(Fact Fact, int Number, int Owner, Bound Bound);

/// <summary>A description while its missing values are filled in.</summary>
/// <param name="rack">The description as given.</param>
internal sealed class RackDraft(RackDescription rack)
{
    private Item[]? items;
    private Supply[]? supplies;
    private Pdu[]? pdus;
    private FanSet[]? roofFans;
    private FanSet[]? fanTrays;

    public RackDescription Rack { get; set; } = rack;

    public Item[] Items => items ??= [.. Rack.Items];

    public Supply[] Supplies => supplies ??= [.. Rack.Supplies!];

    public Pdu[] Pdus => pdus ??= [.. Rack.Pdus!];

    public FanSet[] RoofFans => roofFans ??= [.. Rack.Cooling!.RoofFans!];

    public FanSet[] FanTrays => fanTrays ??= [.. Rack.Cooling!.FanTrays!];

    public RackDescription Finish() => Rack with
    {
        Items = items ?? Rack.Items, Supplies = supplies ?? Rack.Supplies, Pdus = pdus ?? Rack.Pdus,
        Cooling = roofFans is null && fanTrays is null
            ? Rack.Cooling
            : Rack.Cooling! with { RoofFans = roofFans ?? Rack.Cooling.RoofFans, FanTrays = fanTrays ?? Rack.Cooling.FanTrays },
    };
}

/// <summary>A fact of each element of a list, or of the rack itself.</summary>
/// <typeparam name="T">The record that has the member, directly or in a record of its own.</typeparam>
internal sealed class Fact<T> : Fact
    where T : class
{
    /// <summary>The owners.</summary>
    public required Func<RackDescription, IReadOnlyList<T>> Owners { get; init; }

    /// <summary>The same in a draft; null for the rack itself.</summary>
    public Func<RackDraft, T[]>? Drafts { get; init; }

    /// <summary>Reads the value.</summary>
    public required Func<T, double?> Get { get; init; }

    /// <summary>Writes the value.</summary>
    public Func<T, double, T>? Set { get; init; }

    /// <summary>The range where the value is absent.</summary>
    public Func<T, RackDescription, Bound?>? Limits { get; init; }

    /// <inheritdoc/>
    public override double? ValueOf(RackDescription rack, int owner) => Get(Owners(rack)[owner]);

    /// <inheritdoc/>
    public override Bound? BoundOf(RackDescription rack, int owner) => Limits?.Invoke(Owners(rack)[owner], rack);

    /// <summary>The lowest and the highest measure of a value that has several; null where the value is one number.</summary>
    public Func<T, Bound?>? Extent { get; init; }

    /// <inheritdoc/>
    public override bool IsInside(RackDescription rack, int owner, Bound bound) => Extent is null
        ? base.IsInside(rack, owner, bound)
        : Extent(Owners(rack)[owner]) is { } extent && extent.Low >= bound.Low && extent.High <= bound.High;

    /// <summary>Whether part of what the question asks for is given; null where it has no parts.</summary>
    public Func<T, bool>? HasPart { get; init; }

    /// <inheritdoc/>
    public override bool IsPartGiven(RackDescription rack, int owner) => HasPart?.Invoke(Owners(rack)[owner]) == true;

    internal int Number { get; set; }

    internal override void Find(RackDescription rack, List<Gap> gaps)
    {
        if (Limits is null)
        {
            return;
        }

        // Hundreds of values a check: the rack itself needs no list of one, and a list no call through its interface for each element.
        if (Drafts is null)
        {
            Find((T)(object)rack, 0, rack, gaps);
            return;
        }

        var owners = Owners(rack);
        ReadOnlySpan<T> all = owners is T[] array ? array : owners is List<T> list ? CollectionsMarshal.AsSpan(list) : owners.ToArray();
        for (var i = 0; i < all.Length; i++)
        {
            Find(all[i], i, rack, gaps);
        }
    }

    private void Find(T owner, int index, RackDescription rack, List<Gap> gaps)
    {
        if (Get(owner) is null && Limits!(owner, rack) is { } bound)
        {
            gaps.Add(new Gap(this, Number, index, bound));
        }
    }

    internal override void Fill(RackDraft draft, int owner, double value)
    {
        if (Drafts is null)
        {
            draft.Rack = (RackDescription)(object)Set!((T)(object)draft.Rack, value);
        }
        else
        {
            var owners = Drafts(draft);
            owners[owner] = Set!(owners[owner], value);
        }
    }
}
