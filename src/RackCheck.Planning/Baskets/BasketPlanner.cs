using RackCheck.Model;
using RackCheck.Planning.Building;
using RackCheck.Planning.Proposals;
using RackCheck.Remedies.Verification;
using RackCheck.Rules;
using static System.FormattableString;

namespace RackCheck.Planning.Baskets;

/// <summary>
/// Turns the lines of a basket into a rack as a good sales engineer would: finds the best completed rack with the planner of the proposals, and says which
/// lines to add, to exchange and to leave out. The completed basket, planned again, lacks nothing.
/// </summary>
/// <param name="checker">Checks the racks.</param>
/// <remarks>
/// Pure: the same request and products give the same answer. The order of lines only decides which of several lines with the same part number is named.
/// </remarks>
public sealed class BasketPlanner(RackChecker checker)
{
    /// <summary>Fault code: the basket has more items than a rack may have.</summary>
    public const string TooManyItems = "too-many-items";

    /// <summary>Fault code: the basket has no cabinet and none is on offer.</summary>
    public const string NoCabinet = "no-cabinet";

    // Work of the remedies in all reports of an answer together. A shop changes lines; remedies of the rack are for whoever goes on with it.
    private const double RemedyWork = 400;

    // Positions within a quarter of a bound are low enough for an order: the proof of the lowest took a third of the time.
    private const double LowEnough = 1.25;

    // The gravest speak for the rest, which the report of the completed rack has.
    private const int MostErrors = 3;

    /// <summary>The part numbers that a line names, those within its own equipment included.</summary>
    public static IEnumerable<string> PartNumbers(BasketLine line)
    {
        string?[] all = [line.PartNumber, line.Item?.PartNumber];
        return all.OfType<string>();
    }

    /// <summary>Plans a basket.</summary>
    /// <param name="request">A valid request.</param>
    /// <param name="products">
    /// The products of its lines by part number. A line with another part number is unknown: it is left out of the rack and puts the order on hold.
    /// </param>
    /// <param name="offered">The products that may be added to the basket, in any order.</param>
    /// <param name="cancellation">Stops between two rules of a check or two racks.</param>
    /// <returns>The report, or the faults of the request: more than 200 items to mount, or no cabinet and none on offer.</returns>
    /// <exception cref="OperationCanceledException">The planning was cancelled.</exception>
    public BasketAnswer Plan(
        BasketRequest request, IReadOnlyDictionary<string, Product> products, IReadOnlyList<Product> offered, CancellationToken cancellation = default)
    {
        var lines = new BasketLines(request, products);
        if (lines.Mounted > RackAssembler.MostItems)
        {
            return FaultOf(TooManyItems,
                Invariant($"The basket has {lines.Mounted} items to mount; the maximum is {RackAssembler.MostItems}. Use one basket per rack."));
        }

        if (!lines.MakesRack)
        {
            return new BasketAnswer { Report = OfParts(lines, offered) };
        }

        // What can be delivered from stock, if that makes as good an order. What is in stock comes first anyhow, so that few orders are searched twice.
        var layouts = new SolvedLayouts { Enough = LowEnough };
        var order = BasketCompleter.Run(request, products, offered, null, checker, layouts, cancellation);
        if (order is not null && order.Cabinets.Concat(order.Added.Select(p => p.Product)).Any(p => p.InStock == false))
        {
            Product[] stocked = [.. offered.Where(p => p.InStock != false)];
            var (errors, unmet, warnings) = order.Final.Faults;
            var most = (errors, unmet, errors + unmet == 0 ? int.MaxValue : warnings);
            order = BasketCompleter.Run(request, products, stocked, most, checker, layouts, cancellation) is { Final.Against.Count: 0 } fromStock
                && fromStock.Final.Faults.CompareTo(most) <= 0 ? fromStock : order;
        }

        return order is null ? Absent(request, products)
            : order.Mounted > RackAssembler.MostItems
            ? FaultOf(
                TooManyItems,
                Invariant($"With the shelves and other parts that it needs the basket has {order.Mounted} items to mount; the maximum is ")
                + Invariant($"{RackAssembler.MostItems}. Use one basket per rack."))
            : new BasketAnswer { Report = Describe(order, offered, cancellation) };
    }

    private static BasketAnswer FaultOf(string code, string detail, string pointer = "/lines") =>
        new() { Faults = [new Fault { Pointer = pointer, Code = code, Detail = detail }] };

    private static BasketAnswer Absent(BasketRequest request, IReadOnlyDictionary<string, Product> products) =>
        request.Options?.Cabinet?.Existing?.PartNumber is { } number && !products.ContainsKey(number)
            ? FaultOf(NoCabinet, $"The catalogue has no part {number}.", "/options/cabinet/existing/partNumber")
            : FaultOf(NoCabinet, "The basket has no cabinet, and none is on offer.");

    // What the order lacks counts for the product.
    private static Verdicts AtLeast(Verdicts verdicts, Verdict product) => product > verdicts.Product ? verdicts with { Product = product } : verdicts;

    // An order of parts alone: nothing is built, so nothing is checked.
    private static BasketReport OfParts(BasketLines lines, IReadOnlyList<Product> offered)
    {
        var verdict = lines.Unknown.Any() ? Verdict.Hold : Verdict.Release;
        var verdicts = new Verdicts { Product = verdict, Site = Verdict.Release };
        return new BasketReport
        {
            Reference = lines.Request.Reference,
            Verdict = verdict,
            Verdicts = verdicts,
            VerdictReasons = [.. lines.Unknown.Select((_, i) => ReasonOf("unknownLines", i, Verdict.Hold))],
            CompletedVerdict = verdict,
            CompletedVerdicts = verdicts,
            Racks = [],
            FindingLines = [],
            MissingLines = [],
            ReplaceLines = [],
            Unmet = [],
            ExcessLines = [],
            LineItems = [.. lines.Request.Lines.Select((_, i) => new LineItems { Line = BasketLines.PointerOf(i), Items = [], Pdus = [] })],
            LineStatus = LineStates.OfParts(lines, offered),
            UnknownLines = [.. lines.Unknown.Select(BasketLines.PointerOf)],
            CompletedBasket = lines.Request,
            Assumptions = [],
            Cautions = [],
            CautionKeys = [],
        };
    }

    private BasketReport Describe(CompletedOrder order, IReadOnlyList<Product> offered, CancellationToken cancellation)
    {
        var lines = order.Lines;
        var budget = new TrialBudget(RemedyWork);
        CheckReport[] completed = [.. order.Final.Racks.Select(r => checker.CheckWithin(r.Trial.Resolved, budget, cancellation: cancellation))];
        var steps = ReferenceEquals(order.Final, order.Plan) || order.IsUnchanged ? null : new CompletionSteps(order, cancellation);
        var ordered = steps?.Ordered ?? [.. order.Final.Racks.Select(r => r.Trial)];
        CheckReport[] reports = steps is null ? completed : [.. ordered.Select(t => checker.CheckWithin(t.Resolved, budget, cancellation: cancellation))];
        var missing = MissingParts.Of(order, offered, reports, completed);
        var map = new LineMap(lines);
        FindingLines[] findings =
        [
            .. ordered.Zip(reports).SelectMany(r => r.Second.Findings.Select(f =>
            {
                string[] own = [.. map.LinesOf(r.First, f).Select(BasketLines.PointerOf)];
                var clearedBy = steps?.ClearedBy(f, completed, missing, own);
                return new FindingLines
                {
                    Rule = f.Rule,
                    Fingerprint = f.Fingerprint,
                    Lines = own,
                    ClearedBy = clearedBy,
                    Stays = clearedBy is null ? true : null,
                };
            })),
        ];
        string[] unknown = [.. lines.Unknown.Select(BasketLines.PointerOf)];
        WordedText[] cautions = [.. CautionsOf(order)];
        var unmet = UnmetOf(order, offered);
        var isWhole = unknown.Length == 0 && unmet.Count == 0;
        BasketReason[] ofLines = [.. ReasonsOfLines(order, missing, unknown.Length, unmet.Count)];
        var verdicts = AtLeast(Over(reports), ofLines.Select(r => r.Makes).DefaultIfEmpty(Verdict.Release).Max());
        var completedVerdicts = AtLeast(Over(completed), isWhole ? Verdict.Release : Verdict.Hold);
        return new BasketReport
        {
            Reference = lines.Request.Reference,
            Verdict = verdicts.Gravest,
            Verdicts = verdicts,
            VerdictReasons = [.. ofLines, .. reports.Index().SelectMany(r => ReasonsOf(r.Item, r.Index))],
            CompletedVerdict = completedVerdicts.Gravest,
            CompletedVerdicts = completedVerdicts,
            Racks = [.. ordered.Zip(reports, (t, report) => new CheckedRack { Rack = t.Rack, Report = report })],
            Rack = ordered[0].Rack,
            Report = reports[0],
            FindingLines = findings,
            MissingLines = missing,
            ReplaceLines = [.. order.Replaced.Select(r => r.Written())],
            Unmet = unmet,
            ExcessLines = [.. order.Excess.Select(e => e.Written())],
            LineItems = LineItemsOf(lines, map, ordered),
            LineStatus = LineStates.Of(
                order,
                offered,
                order.Final.Racks.Zip(completed).SelectMany(r => r.Second.Findings.Select(f => (f, map.LinesOf(r.First.Trial, f)))),
                SpareParts.Of(order, map, checker)),
            UnknownLines = unknown,
            CompletedBasket = order.Basket,
            CompletedRack = order.Final.Racks[0].Trial.Rack,
            CompletedReport = completed[0],
            Assumptions = [.. ordered[0].Completed.RackBuild.Assumptions, .. lines.Assumptions(ordered[0].Rack)],
            Cautions = [.. cautions.Select(c => c.Text)],
            CautionKeys = [.. cautions.Select(c => c.Keyed)],
        };
    }

    private static IEnumerable<WordedText> CautionsOf(CompletedOrder order)
    {
        if (order.IsCut)
        {
            yield return StatusWordings.CutShort;
        }

        if (order.Lines.HasFurtherCabinets)
        {
            yield return new(StatusWordings.FurtherCabinets, ("racks", order.Final.Racks.Count), ("cabinets", order.Lines.CabinetCount));
        }

        var hosts = order.Lines.Items.Where(Consoles.IsHost).Select(i => i.Id).ToHashSet(StringComparer.Ordinal);
        string[] apart =
        [
            .. order.Final.Racks.SelectMany(r => r.Trial.Rack.Items).Where(i => i.Console == false && hosts.Contains(i.Id)).Select(i => i.Id),
        ];
        if (apart.Length > 0)
        {
            yield return new(StatusWordings.NoConsole.With(apart.Length == 1 ? "one" : null), ("items", Scalar.Ids(apart)));
        }

        if (UpsShortfall.Beside(order.Lines, order.Final) is { Length: > 0 } left)
        {
            yield return UpsFeeds.NotFed(StatusWordings.NotOnUps, left, order.Lines.Request.Site);
        }
    }

    private static IEnumerable<BasketReason> ReasonsOfLines(CompletedOrder order, IReadOnlyList<MissingLine> missing, int unknown, int unmet)
    {
        var cabinets = order.Cabinets.Select(c => c.PartNumber).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. Enumerable.Range(0, unknown).Select(i => ReasonOf("unknownLines", i, Verdict.Hold)),
            .. missing.Index().Select(m => ReasonOf("missingLines", m.Index, cabinets.Contains(m.Item.PartNumber) ? Verdict.Hold : Verdict.Review)),
            .. order.Replaced.Index().Select(r => ReasonOf("replaceLines", r.Index, Verdict.Hold)),
            .. order.Excess.Index().Where(e => IsBig(order.Lines, e.Item)).Select(e => ReasonOf("excessLines", e.Index, Verdict.Review)),
            .. Enumerable.Range(0, unmet).Select(i => ReasonOf("unmet", i, Verdict.Hold)),
        ];
    }

    private static BasketReason ReasonOf(string list, int index, Verdict makes) =>
        new() { Concern = Concern.Product, Pointer = Invariant($"/{list}/{index}"), Makes = makes };

    private static IEnumerable<BasketReason> ReasonsOf(CheckReport report, int rack) => report.VerdictReasons.Select((r, i) =>
        new BasketReason { Concern = r.Concern, Pointer = Invariant($"/racks/{rack}/report/verdictReasons/{i}"), Makes = r.Makes });

    // The graver of each decision over all racks.
    private static Verdicts Over(CheckReport[] reports) =>
        new() { Product = reports.Max(r => r.Verdicts.Product), Site = reports.Max(r => r.Verdicts.Site) };

    private static bool IsBig(BasketLines lines, Surplus excess) =>
        lines.Products[excess.PartNumber].Kind is ProductKind.Cabinet or ProductKind.AirConditioner or ProductKind.Door;

    private static List<UnmetNeed> UnmetOf(CompletedOrder order, IReadOnlyList<Product> offered)
    {
        List<UnmetNeed> unmet =
        [
            .. order.Final.Unmet.Select(u => (u.Proven ? u : u with { Reason = u.Reason.With(LineWordings.NothingElse) }).Written()),
        ];
        if (TooHigh(order, offered) is { } tooHigh)
        {
            // No division helps, nor does another cabinet: what else has no room is left unsaid.
            unmet.RemoveAll(u => u.WhatKey == LineWordings.RoomNeed.Key);
            unmet.Add(tooHigh.Written());
        }

        if (order.Final.Against.FirstOrDefault(f => f.Severity == Severity.Error) is { } against)
        {
            var offer = order.Final.Racks[0].Trial.Offer;
            var text = RuleSet.Default.TextOf(against);
            unmet.Add(new OpenNeed(
                LineWordings.AnyCabinet,
                offer.Index is null ? text.QuotedIn(LineWordings.NoCabinet, ("cabinet", offer.Product.Name)) : text.QuotedIn(LineWordings.NotInOwnCabinet),
                Proven: true).Written());
        }

        if (unmet.Count == 0)
        {
            // What a shop shows where nothing more can be sold: the errors of what was added are on no line of the basket. Those of the site are
            // another verdict's.
            var errors = order.Final.Racks.SelectMany(r => r.Trial.Errors)
                .Where(e => RuleSet.Default.Find(e.Rule)!.Concern == Concern.Product).DistinctBy(e => e.Rule);
            unmet.AddRange(errors.OrderByDescending(e => e.Safety).Take(MostErrors).Select(
                e => new OpenNeed(
                    LineWordings.SoundRack, RuleSet.Default.TextOf(e).QuotedIn(LineWordings.StillWrong).With(LineWordings.NothingElse)).Written()));
        }

        if (UpsShortfall.Of(order.Lines, order.Final) is { Length: > 0 } left)
        {
            unmet.Add(new OpenNeed(new(LineWordings.UpsNeed, ("items", LineWordings.Ids(left))), UpsShortfall.Why(order.Lines, offered)).Written());
        }

        return unmet;
    }

    // Equipment that is higher than every cabinet that there is for the order.
    private static OpenNeed? TooHigh(CompletedOrder order, IReadOnlyList<Product> offered)
    {
        var mayChoose = order.Lines.Request.Options?.Cabinet?.Existing is null;
        var highestU = order.Final.Racks.Select(r => r.Trial.Offer.HeightU)
            .Concat(mayChoose ? offered.Select(p => p.Cabinet?.HeightU ?? 0) : []).Max();
        return order.Lines.Items.MaxBy(i => i.HeightU ?? 0) is { HeightU: { } heightU } item && heightU > highestU
            ? new OpenNeed(
                new(LineWordings.RoomNeed, ("items", LineWordings.Ids([item.Id]))),
                new(LineWordings.TooHigh.With(mayChoose ? null : "own"), ("heightU", heightU), ("highestU", highestU)),
                Proven: true)
            : null;
    }

    private static List<LineItems> LineItemsOf(BasketLines lines, LineMap map, IReadOnlyList<Trial> trials)
    {
        var items = trials.SelectMany(t => t.Completed.RackBuild.Items).ToLookup(i => map.LineOf(i.Piece), i => i.Id);
        var units = trials.SelectMany(t => t.Completed.RackBuild.Units).ToLookup(u => map.LineOf(u.Piece), u => u.Unit.Id);
        return
        [
            .. lines.Request.Lines.Select((_, i) => new LineItems
            {
                Line = BasketLines.PointerOf(i),
                Items = [.. items[i].Order(IdOrder.Instance)],
                Pdus = [.. units[i]],
            }),
        ];
    }
}
