using System.Globalization;
using RackCheck.Documents.Drawings;
using RackCheck.Documents.Drawings.Elevations;
using RackCheck.Documents.Parts;
using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Limits;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Documents.Sheets;

/// <summary>A checked rack from which documents are made, and the words that all of them share.</summary>
internal sealed class SheetContext
{
    /// <summary>What stands for a value that is not known.</summary>
    public const string Unknown = "not known";

    private readonly RulePolicyReader policy;
    private OutletPlan? outlets;

    /// <param name="rack">The rack.</param>
    /// <param name="survey">Its facts.</param>
    /// <param name="parts">Its small parts.</param>
    /// <param name="offered">The products on offer, the preferred first.</param>
    public SheetContext(DrawnRack rack, RackSurvey survey, PartsList parts, IEnumerable<Product> offered)
    {
        (Rack, Survey, Parts) = (rack, survey, parts);
        policy = new RulePolicyReader(survey.Description.Policy);
        CordsOf = OutletPlan.InOrder(survey.Power.Cords).ToLookup(c => c.Item);
        CoolerPart = Cooler is { } cooler ? CoolerParts.ProductOf(cooler, offered)?.PartNumber : null;
    }

    public DrawnRack Rack { get; }

    public RackSurvey Survey { get; }

    public PartsList Parts { get; }

    public CheckReport Report => Rack.Report;

    public CabinetFacts Cabinet => Survey.Cabinet;

    /// <summary>The air conditioner; null without one.</summary>
    public AirConditioner? Cooler => Survey.Description.Cooling?.AirConditioner;

    /// <summary>Part number of the air conditioner; null if no product on offer is the one described.</summary>
    public string? CoolerPart { get; }

    /// <summary>The cords in their outlets.</summary>
    public OutletPlan Outlets => outlets ??= new OutletPlan(Survey.Power);

    /// <summary>The cords of each item.</summary>
    public ILookup<MountedItem, Cord> CordsOf { get; }

    /// <summary>Content so far.</summary>
    public List<Block> Blocks { get; } = [];

    /// <summary>Items and horizontal PDUs from the bottom up, each shelf before its load; those that are not placed last.</summary>
    public IEnumerable<MountedItem> FromBottom => Survey.Items.Where(i => i.Shelf is null).Concat(Survey.Units)
        .OrderBy(i => i.Bottom ?? int.MaxValue).ThenBy(i => i.Face).ThenBy(i => i.Id, IdOrder.Instance)
        .SelectMany(i => i.Load.OrderBy(l => l.Id, IdOrder.Instance).Prepend(i));

    /// <summary>A limit of a rule: the policy's, else the default.</summary>
    public double Limit<TRule>(RuleLimit limit)
        where TRule : RuleBase => policy.ValueOf(PartsContext.Rule<TRule>(), limit);

    /// <summary>Adds a section.</summary>
    /// <param name="heading">Its heading.</param>
    /// <param name="blocks">Its content; nothing is added without any.</param>
    public void Section(string heading, params IEnumerable<Block?> blocks)
    {
        Block[] given = [.. blocks.OfType<Block>()];
        if (given.Length > 0)
        {
            Blocks.AddRange([new Heading(heading), .. given]);
        }
    }

    /// <summary>A table; null without rows.</summary>
    public static Grid? Table(string caption, IReadOnlyList<Column> columns, IEnumerable<IReadOnlyList<string>> rows) =>
        rows.ToArray() is { Length: > 0 } all ? WithoutEmptyColumns(new Grid(caption, columns, all)) : null;

    // Phases that a single-phase supply does not have, and the like.
    private static Grid WithoutEmptyColumns(Grid grid)
    {
        int[] used = [.. Enumerable.Range(0, grid.Columns.Count).Where(i => !grid.Columns[i].IsNumber || grid.Rows.Any(r => r[i].Length > 0))];
        return used.Length == grid.Columns.Count ? grid : grid with
        {
            Columns = [.. used.Select(i => grid.Columns[i])], Rows = [.. grid.Rows.Select(r => (IReadOnlyList<string>)[.. used.Select(i => r[i])])],
        };
    }

    /// <summary>U positions of an item, as "U4-U6", "on shelf-1" or "not placed".</summary>
    public string PlaceOf(MountedItem item) => item.Shelf is { } shelf ? $"on {Name(shelf.Id)}"
        : item.IsPlaced ? Cabinet.UnitsText(item.Bottom!.Value, item.Top)
        : "not placed";

    /// <summary>Description and part number of an item.</summary>
    public static string WhatIs(MountedItem item)
    {
        var source = item.Item;
        string[] words = source is null ? ["horizontal PDU"]
            : [.. new[] { source.Description, source.PartNumber }.OfType<string>().Where(w => w.Length > 0).Select(Name)];
        return words.Length > 0 ? string.Join(", ", words) : Word(item.Category);
    }

    /// <summary>A name or text of the caller, fit to be printed.</summary>
    public static string Name(string name) => TextFit.Isolate(name);

    /// <summary>A number as the report has it.</summary>
    public static string Number(double? value) => value is { } known ? known.ToString("0.###", CultureInfo.InvariantCulture) : Unknown;

    /// <summary>A number with its unit.</summary>
    public static string Number(double? value, string unit) => value is null ? Unknown : $"{Number(value)} {unit}";

    /// <summary>A count with its word.</summary>
    public static string Count(int count, string word) => Invariant($"{count} {word}{(count == 1 ? "" : "s")}");

    /// <summary>A category in words, as "blanking panel".</summary>
    public static string Word(ItemCategory category) => category switch
    {
        ItemCategory.Ups => "UPS",
        ItemCategory.KvmSwitch => "KVM switch",
        _ => Model.Converters.NamedEnumConverter<ItemCategory>.Name(category).Replace('-', ' '),
    };
}
