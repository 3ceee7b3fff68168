using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Survey.Catalogue;
using static System.FormattableString;

namespace RackCheck.Planning.Baskets;

/// <summary>
/// Turns the lines of a basket into a rack: chooses the cabinet, mounts and wires the items, checks the rack and determines missing and excess
/// lines. It completes the basket stage by stage until nothing is missing, so that the completed basket, planned again, has no missing line.
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

    /// <summary>Plans a basket.</summary>
    /// <param name="request">A valid request.</param>
    /// <param name="products">
    /// The products of its lines by part number. A line with another part number is unknown: it is left out of the rack and puts the order on hold.
    /// </param>
    /// <param name="offered">The products that may be added to the basket, in any order.</param>
    /// <param name="cancellation">Stops between two rules of a check or two rounds of completion.</param>
    /// <returns>The report, or the faults of the request: more than 200 items to mount, or no cabinet and none on offer.</returns>
    /// <exception cref="OperationCanceledException">The planning was cancelled.</exception>
    public BasketAnswer Plan(
        BasketRequest request, IReadOnlyDictionary<string, Product> products, IReadOnlyList<Product> offered, CancellationToken cancellation = default)
    {
        var basket = new Stock(request.Lines.Where(l => products.ContainsKey(l.PartNumber)).Select(l => (products[l.PartNumber], (long)l.Quantity)));
        var mounted = basket.All.Where(e => e.Product.Kind is ProductKind.Equipment or ProductKind.Shelf or ProductKind.FanTray).Sum(e => e.Left);
        if (mounted > RackAssembler.MostItems)
        {
            return FaultOf(TooManyItems,
                Invariant($"The basket has {mounted} items to mount; the maximum is {RackAssembler.MostItems}. Use one basket per rack."));
        }

        var context = new BasketContext(request, basket.All.Select(e => e.Product).Concat(offered), offered);
        var own = CabinetChoice.Own(context, basket, checker, cancellation);
        if ((own ?? CabinetChoice.Offered(context, basket, checker, cancellation)) is not { Product: var cabinet } chosen)
        {
            return FaultOf(NoCabinet, "The basket has no cabinet, and none is on offer.");
        }

        var stock = own is null ? basket.With([(cabinet, 1)]) : basket;
        var completed = BasketCompletion.Run(context, stock, cabinet, cancellation);
        var build = RackAssembler.Make(context, stock.With([]), cabinet);
        var rack = build.Describe();
        var report = checker.Check(rack, cancellation);
        var after = completed.Added.Count == 0 ? report : checker.Recheck(ResolvedRack.Plain(completed.RackBuild.Describe()), cancellation);
        var lines = new LineMap(request.Lines, products);
        var unknown = UnknownLines(request, products);
        var isWhole = unknown.Count == 0 && completed.RackBuild.Unmet.Count == 0;
        var missing = MissingParts.Of(completed, own is null ? chosen : null, report, after);
        var verdicts = AtLeast(report.Verdicts, !isWhole || own is null ? Verdict.Hold : missing.Count > 0 ? Verdict.Review : Verdict.Release);
        var completedVerdicts = AtLeast(after.Verdicts, isWhole ? Verdict.Release : Verdict.Hold);
        return new BasketAnswer
        {
            Report = new BasketReport
            {
                Reference = request.Reference,
                Verdict = verdicts.Gravest,
                Verdicts = verdicts,
                CompletedVerdict = completedVerdicts.Gravest,
                CompletedVerdicts = completedVerdicts,
                Rack = rack,
                Report = report,
                FindingLines =
                [
                    .. report.Findings.Select(f => new FindingLines
                    {
                        Rule = f.Rule,
                        Fingerprint = f.Fingerprint,
                        Lines = [.. f.Pointers.SelectMany(p => lines.LinesOf(build, p)).Distinct().Select(LineMap.PointerOf)],
                    }),
                ],
                MissingLines = missing,
                Unmet = completed.RackBuild.Unmet,
                ExcessLines = ExcessParts.Of(request, products, completed, cabinet),
                LineItems = LineItemsOf(request, lines, build),
                UnknownLines = unknown,
                Assumptions = build.Assumptions,
            },
        };
    }

    private static BasketAnswer FaultOf(string code, string detail) => new() { Faults = [new Fault { Pointer = "/lines", Code = code, Detail = detail }] };

    // What the order lacks counts for the product.
    private static Verdicts AtLeast(Verdicts verdicts, Verdict product) => product > verdicts.Product ? verdicts with { Product = product } : verdicts;

    private static List<string> UnknownLines(BasketRequest request, IReadOnlyDictionary<string, Product> products) =>
        [.. Enumerable.Range(0, request.Lines.Count).Where(i => !products.ContainsKey(request.Lines[i].PartNumber)).Select(LineMap.PointerOf)];

    private static List<LineItems> LineItemsOf(BasketRequest request, LineMap lines, RackBuild build)
    {
        var items = build.Items.ToLookup(i => lines.LineOf(i.Piece), i => i.Id);
        var units = build.Units.ToLookup(u => lines.LineOf(u.Piece), u => u.Unit.Id);
        return
        [
            .. Enumerable.Range(0, request.Lines.Count)
                .Select(i => new LineItems { Line = LineMap.PointerOf(i), Items = [.. items[i]], Pdus = [.. units[i]] }),
        ];
    }
}
