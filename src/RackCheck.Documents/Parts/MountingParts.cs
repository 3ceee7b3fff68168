using RackCheck.Model;
using RackCheck.Planning.Building;
using RackCheck.Remedies;
using RackCheck.Rules.Depth;
using RackCheck.Rules.Layout;
using RackCheck.Rules.Loads;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Documents.Parts;

/// <summary>Parts that hold equipment or close gaps: fixings, blanking panels, rails, shelves and cable arms.</summary>
internal static class MountingParts
{
    // Thread of cage nuts for square holes of 9.5 mm, IEC 60297-3-100; clip nuts of the same thread are common practice.
    private const string NutThread = "M6";

    /// <summary>Adds the lines.</summary>
    public static void List(PartsContext context)
    {
        Fasten(context);
        Close(context);
        Rails(context, SupportStyle.Slides);
        Rails(context, SupportStyle.Runners);
        Shelves(context);
        Arms(context);
    }

    /// <summary>Sets of nut and screw for the items of one type of fixing and the horizontal PDUs.</summary>
    private static void Fasten(PartsContext context)
    {
        var survey = context.Survey;
        var usual = FixingNeeds.For(survey.Cabinet.Source.Uprights?.Hole);
        var units = (context.Rack.Pdus ?? []).Where(u => u.Mounting == PduMounting.Horizontal).Select(u => u.Id).Order(IdOrder.Instance).ToArray();
        var mounted = survey.Items.Where(i => i.HeightU > 0).ToLookup(i => i.Item!.Fixing ?? usual);
        foreach (var fixing in Enum.GetValues<Fixing>())
        {
            MountedItem[] items = [.. mounted[fixing]];
            string[] pdus = fixing == usual ? units : [];
            var pairs = items.Count(i => HasSeparateRails(context, i));
            var panels = items.Length + pdus.Length;
            if (panels == 0)
            {
                continue;
            }

            var sets = (panels * FixingNeeds.SetsAPanel) + (pairs * FixingNeeds.SetsAPair);
            context.Add(
                new PartLine
                {
                    Kind = PartKind.Fixing,
                    Description = NameOf(fixing),
                    Quantity = sets,
                    Unit = PartUnit.Set,
                    Why = Invariant($"{FixingNeeds.SetsAPanel} sets for each front panel and {FixingNeeds.SetsAPair} for each pair of slides or runners")
                        + " that does not come with its equipment; common practice" + (fixing == Fixing.Screw ? ". The thread is that of the uprights." : "."),
                    Rule = PartsContext.Rule<HoleType>(),
                    Calculation = Invariant($"{panels} x {FixingNeeds.SetsAPanel} + {pairs} x {FixingNeeds.SetsAPair} = {sets}"),
                    Items = PartsContext.Ids(items),
                    Pdus = pdus.Length == 0 ? null : pdus,
                    Included = false,
                    Data = new PartData { Fixing = fixing, Thread = fixing == Fixing.Screw ? null : NutThread },
                },
                context.Offered(ProductKind.Fixings).Where(p => p.Fixing == fixing));
        }

        MountedItem[] loose = [.. survey.Items.Where(i => i.HeightU == 0)];
        if (loose.Length > 0)
        {
            context.Add(new PartLine
            {
                Kind = PartKind.Fixing,
                Description = "No fixings",
                Quantity = 0,
                Unit = PartUnit.Set,
                Why = "These items have no front panel and stand on a shelf, whose fixings are counted.",
                Items = PartsContext.Ids(loose),
                Included = false,
                Data = new PartData(),
            });
        }
    }

    /// <summary>Panels for the gaps that let hot air through; panels of the description; the gaps that stay open.</summary>
    private static void Close(PartsContext context)
    {
        var survey = context.Survey;
        foreach (var alike in survey.Items.Where(i => i.Category == ItemCategory.BlankingPanel).GroupBy(i => i.HeightU).OrderBy(g => g.Key))
        {
            var line = Panel(alike.Key, "The rack as described has them.") with { Data = new PartData { HeightU = alike.Key } };
            context.AddGiven(line, alike);
        }

        var offered = context.Offered(ProductKind.BlankingPanel).Where(p => p.Item?.HeightU > 0).ToLookup(p => p.Item!.HeightU!.Value);
        int[] heights = offered.Count > 0 ? [.. offered.Select(o => o.Key).OrderDescending()] : [.. Enumerable.Range(1, BlankingPanels.LargestU).Reverse()];
        var harmful = PanelNeeds.Harmful(survey, context.Report.Findings.Where(f => f.Accepted is null));
        var wanted = harmful.SelectMany(r => PanelNeeds.Sizes(r.HeightU, heights).Select(h => (Run: r, HeightU: h))).GroupBy(w => w.HeightU);
        foreach (var alike in wanted.OrderBy(w => w.Key))
        {
            var places = alike.Select(w => w.Run).Distinct().Select(r => Place(survey, r)).ToArray();
            var sums = alike.Select(w => w.Run).Distinct()
                .Select(r => Invariant($"{r.HeightU} U = {string.Join(" + ", PanelNeeds.Sizes(r.HeightU, heights))}"));
            context.Add(
                Panel(alike.Key, $"Open at {Names.And(places)} beside equipment with airflow front to rear: hot air recirculates. Largest panels first.") with
                {
                    Quantity = alike.Count(),
                    Rule = PanelNeeds.Rule,
                    Calculation = string.Join("; ", sums),
                },
                offered[alike.Key]);
        }

        var open = PanelNeeds.Runs(survey).Except(harmful).ToArray();
        if (open.Length > 0)
        {
            context.Notes.Add(
                $"No blanking panels for {Names.And([.. open.Select(r => Place(survey, r))])}: no finding says that the airflow needs them there.");
        }

        var shortU = harmful.Sum(r => r.HeightU - PanelNeeds.Sizes(r.HeightU, heights).Sum());
        if (shortU > 0)
        {
            context.Notes.Add(Invariant($"{shortU} U beside equipment with airflow front to rear stay open: no panel on offer is low enough."));
        }
    }

    private static void Rails(PartsContext context, SupportStyle style)
    {
        var kind = style == SupportStyle.Slides ? PartKind.Slides : PartKind.Runners;
        var alike = context.Survey.Items.Where(i => i.SupportStyle == style).GroupBy(i => (
            Data: DataOf(i.Item!.Support!), Included: !HasSeparateRails(context, i)));
        foreach (var group in alike.OrderBy(g => g.Key.Data.RatedKg).ThenBy(g => g.Key.Data.MinSpacingMm).ThenBy(g => g.Key.Data.MaxSpacingMm)
            .ThenBy(g => g.Key.Included))
        {
            var (data, included) = group.Key;
            context.Add(
                new PartLine
                {
                    Kind = kind,
                    Description = style == SupportStyle.Slides ? "Pair of slides" : "Pair of runners",
                    Quantity = group.Count(),
                    Unit = PartUnit.Pair,
                    Why = included ? "They come with the equipment."
                        : data.RatedKg is null ? "They carry the equipment. Without their load rating no product can be named." : "They carry the equipment.",
                    Rule = PartsContext.Rule<SupportRating>(),
                    Items = PartsContext.Ids(group),
                    Included = included,
                    Data = data,
                },
                context.Offered(ProductKind.Support).Where(p => p.Support is { RatedKg: not null } support
                    && support.Style == style && DataOf(support) == data));
        }
    }

    private static void Shelves(PartsContext context)
    {
        var survey = context.Survey;
        foreach (var alike in survey.Items.Where(i => i.Category == ItemCategory.Shelf).GroupBy(i => new PartData
        {
            HeightU = i.HeightU, DepthMm = i.BodyDepthMm, RatedKg = i.Item!.Support?.RatedKg,
        }).OrderBy(g => g.Key.HeightU).ThenBy(g => g.Key.DepthMm).ThenBy(g => g.Key.RatedKg))
        {
            context.AddGiven(
                new PartLine
                {
                    Kind = PartKind.Shelf, Description = "Shelf", Quantity = 0, Unit = PartUnit.Piece, Why = "The rack as described has them.",
                    Included = false, Data = alike.Key,
                },
                alike);
        }

        MountedItem[] own = [.. survey.Items.Where(i => i.SupportStyle == SupportStyle.Shelf && i.Category != ItemCategory.Shelf)];
        if (own.Length > 0)
        {
            context.Add(new PartLine
            {
                Kind = PartKind.Shelf, Description = "Shelf under an item", Quantity = own.Length, Unit = PartUnit.Piece,
                Why = "These items stand on a shelf of their own, which the description does not specify further.", Items = PartsContext.Ids(own),
                Included = false, Data = new PartData(),
            });
        }
    }

    private static void Arms(PartsContext context)
    {
        MountedItem[] items = [.. context.Survey.Items.Where(i => i.Item!.Support is { CableArm: true } or { UsedExtended: true })];
        if (items.Length > 0)
        {
            context.Add(
                new PartLine
                {
                    Kind = PartKind.CableArm, Description = "Cable-management arm", Quantity = items.Length, Unit = PartUnit.Piece,
                    Why = "These items are pulled out in use, or the description gives them an arm; without it the cables pull out of their connectors.",
                    Rule = PartsContext.Rule<CableArm>(), Items = PartsContext.Ids(items), Included = false, Data = new PartData(),
                },
                context.Offered(ProductKind.CableArm));
        }
    }

    /// <summary>Whether an item has slides or runners that are not in its box.</summary>
    private static bool HasSeparateRails(PartsContext context, MountedItem item) => FixingNeeds.FastensPair(item.SupportStyle, context.ProductOf(item));

    private static PartData DataOf(Support support) =>
        new() { RatedKg = support.RatedKg, MinSpacingMm = support.MinSpacingMm, MaxSpacingMm = support.MaxSpacingMm };

    private static PartLine Panel(int heightU, string why) => new()
    {
        Kind = PartKind.BlankingPanel, Description = Invariant($"Blanking panel, {heightU} U"), Quantity = 0, Unit = PartUnit.Piece, Why = why,
        Included = false, Data = new PartData { HeightU = heightU },
    };

    private static string Place(RackSurvey survey, OpenRun run) => survey.Cabinet.UnitsText(run.Bottom, run.Bottom + run.HeightU - 1);

    private static string NameOf(Fixing fixing) => fixing switch
    {
        Fixing.CageNut => "Cage nuts M6 with screws",
        Fixing.ClipNut => "Clip nuts M6 with screws",
        _ => "Screws for threaded holes",
    };
}
