using RackCheck.Model;
using RackCheck.Planning.Building;
using static System.FormattableString;

namespace RackCheck.Planning.Proposals;

/// <summary>Requirements that no rack meets together, in words.</summary>
internal static class ProposalConflicts
{
    // As the contract bounds the height of a cabinet, U.
    private const int HighestU = 60;

    /// <summary>Conflicts that need no rack: parts without data, no cabinet, more height than the highest cabinet has.</summary>
    /// <returns>The conflict; null if racks are to be tried.</returns>
    public static ProposalConflict? BeforeTrial(ProposalTask task, CabinetOffer[] offers)
    {
        ConflictingRequirement[] unknown =
        [
            .. task.Items.Index().Where(i => i.Item.HeightU is null).Select(i => Requirement(
                [Invariant($"/items/{i.Index}/partNumber")],
                new WordedText(ProposalWordings.NoHeight, ("item", i.Item.Id), ("partNumber", i.Item.PartNumber ?? "")))),
        ];
        if (unknown.Length > 0)
        {
            return Of(unknown, true, ProposalWordings.StateHeight);
        }

        if (offers.Length == 0)
        {
            return Of([Requirement(["/cabinets"], ProposalWordings.NoCabinet)], true, ProposalWordings.StateCabinet);
        }

        return ItemTooHigh(task, offers) ?? TooHigh(task, offers);
    }

    // No number of cabinets helps.
    private static ProposalConflict? ItemTooHigh(ProposalTask task, CabinetOffer[] offers)
    {
        var highestU = offers.Max(c => c.HeightU);
        var (index, item) = task.Items.Index().OrderByDescending(i => i.Item.HeightU ?? 0).FirstOrDefault();
        if (item?.HeightU is not { } heightU || heightU <= highestU)
        {
            return null;
        }

        List<string> pointers = [Invariant($"/items/{index}")];
        pointers.AddRange(task.Request.Cabinets is null ? [] : ["/cabinets"]);
        return Of(
            [
                Requirement(
                    pointers, new WordedText(ProposalWordings.ItemTooHigh, ("item", item.Id), ("heightU", heightU), ("highestU", highestU))),
            ],
            true,
            new WordedText(ProposalWordings.HigherForItem, ("neededU", heightU), ("item", item.Id)));
    }

    /// <summary>
    /// What was wrong with each rack that was tried, the one with the fewest errors first; without any, what stands against the cabinet nearest to taking the
    /// equipment. Where one cabinet is too low for it, what was wrong with a rack of a row.
    /// </summary>
    /// <param name="task">The request.</param>
    /// <param name="search">The search for one rack.</param>
    /// <param name="division">The division over several; null without one.</param>
    public static IReadOnlyList<IReadOnlyList<ConflictingRequirement>> CausesOf(ProposalTask task, CabinetSearch search, RackDivision? division) =>
        division?.SupplyFinding is { } supplies ? [[OfFinding(["/supplies"], supplies)]]
        : CausesOf(task, search) is { Count: > 0 } causes ? causes
        : division?.Failed is var (part, failed) ? [.. CausesOf(part, failed).Select(c => c.Select(r => InWhole(task, part, r)).ToArray())]
        : [];

    /// <summary>Whether a requirement is named by what was wrong with a rack, or has a part that is.</summary>
    /// <param name="pointers">JSON pointers of the requirement.</param>
    /// <param name="causes">What was wrong.</param>
    public static bool IsNamed(IReadOnlyList<string> pointers, IEnumerable<ConflictingRequirement> causes) =>
        causes.SelectMany(c => c.Pointers).Any(named => pointers.Any(p => named == p || named.StartsWith(p + "/", StringComparison.Ordinal)));

    private static IReadOnlyList<IReadOnlyList<ConflictingRequirement>> CausesOf(ProposalTask task, CabinetSearch search) => search.Failed.Count > 0
        ? [.. search.Failed.OrderBy(t => t.Faults).Select(t => ErrorsOf(task, t))]
        : [
            .. search.Against.OrderBy(a => (a.Findings.Count, a.Findings.Max(f => f.UtilisationPercent ?? 0)))
                .Select(a => a.Findings.Where(f => f.Severity == Severity.Error).Select(f => OfFinding(task, a.Offer, f)).ToArray()),
        ];

    private static List<ConflictingRequirement> ErrorsOf(ProposalTask task, Trial trial)
    {
        List<ConflictingRequirement> all = [];
        if (trial.NotPlaced.ToArray() is { Length: > 0 } homeless)
        {
            all.Add(Requirement(
                [.. homeless.Select(i => PointerOf(task, i.Id)).Distinct()],
                new WordedText(ProposalWordings.NoPosition, ("items", Scalar.Ids(homeless.Select(i => i.Id))))));
        }

        all.AddRange(trial.Errors.Select(e => OfFinding(task, trial.Offer, e)));

        // Why no PDU on offer has them: the plug, the voltage, or the supplies.
        all.AddRange(trial.Unmet.Where(u => u.What.Key == LineWordings.OutletNeed.Key).Select(u => Requirement(
            [.. (u.Reason.Values.TryGetValue("items", out var items) ? items.List ?? [] : []).Select(id => PointerOf(task, id.Text!)).Distinct()], u.Reason)));
        if (!task.HasRoomToGrow(trial))
        {
            all.Add(NoGrowth(task, trial, ["/growthPercent"]));
        }

        return all;
    }

    /// <summary>The room for growth that a rack without an error lacks: all else is met.</summary>
    /// <param name="task">The request.</param>
    /// <param name="search">The racks that were tried.</param>
    /// <param name="isCut">Whether racks were left untried.</param>
    /// <returns>The conflict; null if the racks lack something else.</returns>
    public static ProposalConflict? TooLittleGrowth(ProposalTask task, CabinetSearch search, bool isCut)
    {
        if (search.Failed.MinBy(t => t.Faults) is not { Faults.Errors: 0 } best || task.HasRoomToGrow(best))
        {
            return null;
        }

        List<string> pointers = ["/growthPercent"];
        pointers.AddRange(task.Request.Cabinets is null ? [] : ["/cabinets"]);
        pointers.AddRange(task.Request.MaxCabinets is null ? [] : ["/maxCabinets"]);
        return Of([NoGrowth(task, best, pointers)], !isCut, ProposalWordings.LessGrowth);
    }

    /// <summary>A conflict.</summary>
    /// <param name="requirements">The requirements.</param>
    /// <param name="proven">Whether each of them is proven to be part of it.</param>
    /// <param name="relax">A change that would help; null if none is known.</param>
    public static ProposalConflict Of(IReadOnlyList<ConflictingRequirement> requirements, bool proven, WordedText? relax) => new()
    {
        Requirements = requirements, Proven = proven, Relax = relax?.Text, RelaxKey = relax?.Key, RelaxData = relax?.Values,
    };

    /// <summary>A requirement in conflict.</summary>
    /// <param name="pointers">JSON pointers into the request.</param>
    /// <param name="message">The requirement.</param>
    public static ConflictingRequirement Requirement(IReadOnlyList<string> pointers, WordedText message) => new()
    {
        Pointers = pointers, Message = message.Text, MessageKey = message.Key, MessageData = message.Values,
    };

    private static ConflictingRequirement OfFinding(ProposalTask task, CabinetOffer offer, Finding finding) =>
        OfFinding([.. finding.Pointers.Select(p => Translate(task, offer, p)).Distinct()], finding);

    private static ConflictingRequirement OfFinding(IReadOnlyList<string> pointers, Finding finding) => new()
    {
        Pointers = pointers, Message = finding.Message, MessageKey = finding.MessageKey, MessageData = finding.MessageData,
    };

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
        var (isAdded, grows, isOne) = (addedU > 0, task.Request.GrowthPercent > 0, most == 1);
        var wordings = isOne ? ProposalWordings.TooHighForOne : ProposalWordings.TooHigh;
        List<(string, Scalar)> data =
        [
            ("items", Scalar.Ids(core.OrderBy(c => c.Index).Select(c => c.Item.Id))), ("takenU", taken), ("highestU", highest),
            .. isAdded ? [("addedU", addedU)] : Array.Empty<(string, Scalar)>(),
            .. grows ? [("growthU", task.WithGrowth(taken + addedU))] : Array.Empty<(string, Scalar)>(),
            .. isOne ? Array.Empty<(string, Scalar)>() : [("cabinets", most)],
        ];
        return Of(
            [Requirement(pointers, new WordedText(wordings.With(isAdded ? "added" : null, grows ? "growth" : null), [.. data]))],
            addedU == 0,
            HigherOf((task.WithGrowth(task.ItemsU + addedU) + most - 1) / most, most));
    }

    // The height that each of the cabinets needs on average, where a cabinet may have it.
    private static WordedText HigherOf(int eachU, int most) =>
        eachU > HighestU ? ProposalWordings.FewerItems
        : most == 1 ? new WordedText(ProposalWordings.Higher, ("neededU", eachU))
        : new WordedText(ProposalWordings.HigherEach, ("cabinets", most), ("neededU", eachU));

    private static string PointerOf(ProposalTask task, string id)
    {
        var index = task.Request.Items.Index().FirstOrDefault(i => i.Item.Id == id, (-1, null!)).Index;
        return index < 0 ? "/items" : Invariant($"/items/{index}");
    }

    private static ConflictingRequirement NoGrowth(ProposalTask task, Trial trial, IReadOnlyList<string> pointers)
    {
        var usedU = Math.Max(trial.UsedU, trial.Offer.HeightU - trial.FreeU);
        return Requirement(pointers, new WordedText(
            ProposalWordings.NoGrowth,
            ("usedU", usedU), ("neededU", usedU + task.WithGrowth(trial.UsedU) - trial.UsedU), ("heightU", trial.Offer.HeightU)));
    }

    // A rack of a row has some of the items.
    private static ConflictingRequirement InWhole(ProposalTask task, ProposalTask part, ConflictingRequirement requirement) => requirement with
    {
        Pointers =
        [
            .. requirement.Pointers.Select(p => p.Split('/') is [_, "items", var index, .. var rest] && int.TryParse(index, out var i)
                ? string.Join('/', [PointerOf(task, part.Request.Items[i].Id), .. rest])
                : p),
        ],
    };

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
