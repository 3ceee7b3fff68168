using RackCheck.Model;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Planning.Proposals;

/// <summary>Requirements that no rack meets together, in words.</summary>
internal static class ProposalConflicts
{
    /// <summary>Conflicts that need no rack: parts without data, no cabinet, more height than the highest cabinet has.</summary>
    /// <returns>The conflict; null if racks are to be tried.</returns>
    public static ProposalConflict? BeforeTrial(ProposalTask task, CabinetOffer[] offers)
    {
        ConflictingRequirement[] unknown =
        [
            .. task.Items.Index().Where(i => i.Item.HeightU is null).Select(i => new ConflictingRequirement
            {
                Pointers = [Invariant($"/items/{i.Index}/partNumber")],
                Message = $"{i.Item.Id} has no height, and the catalogue has no height for {i.Item.PartNumber}.",
            }),
        ];
        if (unknown.Length > 0)
        {
            return new ProposalConflict
            {
                Requirements = unknown,
                Proven = true,
                Relax = "State heightU of these items, or use part numbers of the catalogue.",
            };
        }

        if (offers.Length == 0)
        {
            return new ProposalConflict
            {
                Requirements = [new ConflictingRequirement { Pointers = ["/cabinets"], Message = "No cabinet with height, width and depth is allowed." }],
                Proven = true,
                Relax = "State a cabinet with heightU, widthMm and depthMm.",
            };
        }

        return TooHigh(task, offers);
    }

    /// <summary>What was wrong with the rack that had the fewest errors; without any rack, what stands against the best cabinet.</summary>
    public static IReadOnlyList<ConflictingRequirement> ErrorsOf(ProposalTask task, CabinetSearch search, Finding? supplies)
    {
        if (supplies is not null)
        {
            return [new ConflictingRequirement { Pointers = ["/supplies"], Message = supplies.Message }];
        }

        if (search.Failed.MinBy(t => t.Faults) is not { } best)
        {
            return search.Against.Count == 0 ? [] :
            [
                .. search.Against.MinBy(a => a.Findings.Count) is var (offer, findings)
                    ? findings.Where(f => f.Severity == Severity.Error).Select(f => OfFinding(task, offer, f))
                    : [],
            ];
        }

        List<ConflictingRequirement> all = [];
        if (best.NotPlaced.ToArray() is { Length: > 0 } homeless)
        {
            all.Add(new ConflictingRequirement
            {
                Pointers = [.. homeless.Select(i => PointerOf(task, i.Id)).Distinct()],
                Message = $"There is no position for {Names.List([.. homeless.Select(i => i.Id)])}.",
            });
        }

        all.AddRange(best.Errors.Select(e => OfFinding(task, best.Offer, e)));
        if (task.WithGrowth(best.UsedU) > best.Offer.HeightU)
        {
            all.Add(new ConflictingRequirement
            {
                Pointers = ["/growthPercent"],
                Message = Invariant($"The equipment with its shelves takes {best.UsedU} U; with room for growth it needs ")
                    + Invariant($"{task.WithGrowth(best.UsedU)} U of {best.Offer.HeightU} U."),
            });
        }

        return all;
    }

    private static ConflictingRequirement OfFinding(ProposalTask task, CabinetOffer offer, Finding finding) =>
        new() { Pointers = [.. finding.Pointers.Select(p => Translate(task, offer, p)).Distinct()], Message = finding.Message };

    /// <summary>The highest items that together are too high: without any one of them, the rest would not be.</summary>
    /// <param name="task">The request.</param>
    /// <param name="offers">The allowed cabinets.</param>
    /// <param name="addedU">Height of the parts that the equipment needs, U.</param>
    /// <returns>The conflict; null if the height suffices.</returns>
    public static ProposalConflict? TooHigh(ProposalTask task, CabinetOffer[] offers, int addedU = 0)
    {
        var most = task.Request.MaxCabinets ?? RackDivision.DefaultMost;
        var highest = most * offers.Max(c => c.HeightU);
        if (task.WithGrowth(task.ItemsU + addedU) <= highest)
        {
            return null;
        }

        List<(int Index, Item Item)> core = [];
        foreach (var entry in task.Items.Index()
            .Where(i => i.Item.HeightU > 0 && !task.Context.AtRear!.Contains(i.Item.Id))
            .OrderByDescending(i => i.Item.HeightU))
        {
            core.Add(entry);
            if (task.WithGrowth(core.Sum(c => c.Item.HeightU!.Value) + addedU) > highest)
            {
                break;
            }
        }

        var taken = core.Sum(c => c.Item.HeightU!.Value);
        List<string> pointers = [.. core.OrderBy(c => c.Index).Select(c => Invariant($"/items/{c.Index}"))];
        pointers.AddRange(task.Request.Cabinets is null ? [] : ["/cabinets"]);
        pointers.AddRange(task.Request.GrowthPercent > 0 ? ["/growthPercent"] : []);
        pointers.AddRange(task.Request.MaxCabinets is null ? [] : ["/maxCabinets"]);
        return new ProposalConflict
        {
            Requirements =
            [
                new ConflictingRequirement
                {
                    Pointers = pointers,
                    Message = Invariant($"{Names.List([.. core.OrderBy(c => c.Index).Select(c => c.Item.Id)])} together take {taken} U")
                        + (addedU > 0 ? Invariant($" and the parts that they need {addedU} U") : "")
                        + (task.Request.GrowthPercent > 0 ? Invariant($", {task.WithGrowth(taken + addedU)} U with room for growth") : "")
                        + (most == 1
                            ? Invariant($"; the highest cabinet allowed has {highest} U.")
                            : Invariant($"; {most} of the highest cabinets allowed have {highest} U.")),
                },
            ],
            Proven = addedU == 0,
            Relax = Invariant($"Allow a cabinet of at least {task.WithGrowth(task.ItemsU + addedU)} U, or more cabinets."),
        };
    }

    private static string PointerOf(ProposalTask task, string id)
    {
        var index = task.Request.Items.Index().FirstOrDefault(i => i.Item.Id == id, (-1, null!)).Index;
        return index < 0 ? "/items" : Invariant($"/items/{index}");
    }

    // The items of the request come first in the rack. All else is a choice of the service.
    private static string Translate(ProposalTask task, CabinetOffer offer, string pointer)
    {
        var steps = pointer.Split('/');
        return steps switch
        {
            [_, "cabinet", ..] => offer.Pointer,
            [_, "items", var index, ..] when int.TryParse(index, out var i) => i < task.Request.Items.Count ? pointer : "/items",
            [_, "pdus" or "connections" or "cooling", ..] => "",
            [_, "supplies", ..] when task.Request.Supplies is null => "",
            _ => pointer,
        };
    }
}
