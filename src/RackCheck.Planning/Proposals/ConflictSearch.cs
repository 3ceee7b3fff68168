using RackCheck.Model;
using static System.FormattableString;

namespace RackCheck.Planning.Proposals;

/// <summary>A requirement of a request that can be left out.</summary>
/// <param name="Pointers">JSON pointers into the request.</param>
/// <param name="Message">The requirement.</param>
/// <param name="Relaxed">What leaving it out means, in words.</param>
/// <param name="Without">The request without it.</param>
internal sealed record Requirement(IReadOnlyList<string> Pointers, WordedText Message, WordedText Relaxed, Func<ProposalRequest, ProposalRequest> Without);

/// <summary>
/// The smallest set of requirements in conflict: each is left out once, and stays out if the rest still cannot be met. Without any one of those
/// that remain, the others can be met.
/// </summary>
/// <param name="request">The request.</param>
/// <param name="isMet">Whether a request can be met; null if there is no work left to find out.</param>
internal sealed class ConflictSearch(ProposalRequest request, Func<ProposalRequest, bool?> isMet)
{
    // A cool room. Without a temperature a warm one would be assumed.
    private const double CoolC = 20;

    /// <summary>Finds the set.</summary>
    /// <param name="causes">What was wrong with the racks tried.</param>
    public ProposalConflict Find(IReadOnlyList<ConflictingRequirement> causes)
    {
        Requirement[] all = [.. Requirements()];
        Requirement[] named = [.. all.Where(r => ProposalConflicts.IsNamed(r.Pointers, causes))];
        List<Requirement> core = named.Length > 0 && named.Length < all.Length && !IsMet(Without(all.Except(named))) ? [.. named] : [.. all];
        Shrink(all, core);
        var isMinimal = true;
        foreach (var requirement in core.ToArray())
        {
            var answer = core.Count > 1 ? Ask(Without(all.Except(core).Append(requirement))) : true;
            isMinimal &= answer is not null;
            if (answer == false)
            {
                core.Remove(requirement);
            }
        }

        return ProposalConflicts.Of(
            [.. core.Select(r => ProposalConflicts.Requirement(r.Pointers, r.Message))],
            isMinimal,
            core.FirstOrDefault(r => Ask(r.Without(request)) == true)?.Relaxed);
    }

    // Halves first: most requirements of a long list have no part in the conflict.
    private void Shrink(Requirement[] all, List<Requirement> core)
    {
        for (var size = core.Count / 2; size > 1; size /= 2)
        {
            foreach (var part in core.Chunk(size).ToArray())
            {
                if (core.Count > part.Length && !IsMet(Without(all.Except(core).Concat(part))))
                {
                    core.RemoveAll(part.Contains);
                }
            }
        }
    }

    private ProposalRequest Without(IEnumerable<Requirement> left) => left.Aggregate(request, (now, requirement) => requirement.Without(now));

    // What is not known counts as met, so that the requirement stays in the set.
    private bool IsMet(ProposalRequest changed) => Ask(changed) ?? true;

    // A request without items is met.
    private bool? Ask(ProposalRequest changed) => changed.Items.Count == 0 ? true : isMet(changed);

    // What is left out first comes first, so that items leave the set last.
    private IEnumerable<Requirement> Requirements()
    {
        if (request.GrowthPercent > 0)
        {
            yield return new Requirement(
                ["/growthPercent"],
                new WordedText(ProposalWordings.Growth, ("growthPercent", request.GrowthPercent.Value)),
                ProposalWordings.LessGrowth,
                r => r with { GrowthPercent = null });
        }

        foreach (var (index, id) in (request.Keep ?? []).Index())
        {
            var u = request.Items.First(i => i.Id == id).Position!.U;
            yield return new Requirement(
                [Invariant($"/keep/{index}")],
                new WordedText(ProposalWordings.Keep, ("item", id), ("u", u)),
                new WordedText(ProposalWordings.Move, ("item", id)),
                r => r with { Keep = [.. r.Keep!.Where(k => k != id)] });
        }

        foreach (var (index, group) in (request.Groups ?? []).Index())
        {
            yield return new Requirement(
                [Invariant($"/groups/{index}")],
                new WordedText(ProposalWordings.Group, ("group", group.Id)),
                new WordedText(ProposalWordings.Divide, ("group", group.Id)),
                r => r with { Groups = [.. r.Groups!.Where(g => g.Id != group.Id)] });
        }

        if (request.Site is { } site)
        {
            if (site.RequiredIp is { } ip)
            {
                yield return OfSite(
                    "requiredIp", new WordedText(ProposalWordings.RequiredIp, ("ipCode", ip)), ProposalWordings.LowerIp, s => s with { RequiredIp = null });
            }

            if (site.AmbientMaxC is { } ambient)
            {
                yield return OfSite(
                    "ambientMaxC",
                    new WordedText(ProposalWordings.Ambient, ("ambientC", ambient)),
                    ProposalWordings.CoolRoom,
                    s => s with { AmbientMaxC = Math.Min(ambient, CoolC) });
            }

            if (site.UpsMinutes is { } minutes)
            {
                yield return OfSite(
                    "upsMinutes",
                    new WordedText(ProposalWordings.UpsMinutes, ("minutes", minutes)),
                    ProposalWordings.ShorterRun,
                    s => s with { UpsMinutes = null });
            }

            foreach (var requirement in RequirementsOf(site.Delivery))
            {
                yield return requirement;
            }

            if (site.Floor is not null)
            {
                yield return OfSite("floor", ProposalWordings.Floor, ProposalWordings.StrongerFloor, s => s with { Floor = null });
            }
        }

        // What is there already names its supply.
        if (request is { Supplies: { } supplies, Pdus: null or { Count: 0 }, Cooling: null })
        {
            yield return new Requirement(["/supplies"], OnlyThese(supplies), ProposalWordings.OtherSupplies, r => r with { Supplies = null });
        }

        if (request.Cabinets is { } cabinets)
        {
            yield return new Requirement(
                ["/cabinets"],
                Counted(ProposalWordings.Cabinets, cabinets.Count),
                ProposalWordings.LargerCabinet,
                r => r with { Cabinets = null });
        }

        if ((request.MaxCabinets ?? RackDivision.DefaultMost) is var most and < 6)
        {
            yield return new Requirement(
                ["/maxCabinets"],
                Counted(ProposalWordings.MaxCabinets, most),
                ProposalWordings.MoreCabinets,
                r => r with { MaxCabinets = most + 1 });
        }

        foreach (var (index, item) in request.Items.Index())
        {
            yield return new Requirement(
                [Invariant($"/items/{index}")], Mounted(item), new WordedText(ProposalWordings.LeaveOut, ("item", item.Id)), r => WithoutItem(r, item.Id));
        }
    }

    private static IEnumerable<Requirement> RequirementsOf(Delivery? route)
    {
        Requirement Of(string place, WordedText message, Func<Delivery, Delivery> without) =>
            OfSite("delivery/" + place, message, ProposalWordings.OtherRoute, s => s with { Delivery = without(s.Delivery!) });
        foreach (var (index, opening) in (route?.Openings ?? []).Index())
        {
            yield return Of(
                Invariant($"openings/{index}"),
                new WordedText(ProposalWordings.Opening, ("widthMm", opening.WidthMm), ("heightMm", opening.HeightMm)),
                d => d with { Openings = [.. d.Openings!.Where(o => !ReferenceEquals(o, opening))] });
        }

        foreach (var (index, corner) in (route?.Corridors ?? []).Index())
        {
            yield return Of(
                Invariant($"corridors/{index}"),
                new WordedText(ProposalWordings.Corridor, ("widthMm", corner.WidthMm), ("intoMm", corner.TurnIntoMm)),
                d => d with { Corridors = [.. d.Corridors!.Where(c => !ReferenceEquals(c, corner))] });
        }

        foreach (var (index, ramp) in (route?.Ramps ?? []).Index())
        {
            yield return Of(
                Invariant($"ramps/{index}"),
                new WordedText(ProposalWordings.Ramp, ("slopePercent", ramp.SlopePercent)),
                d => d with { Ramps = [.. d.Ramps!.Where(r => !ReferenceEquals(r, ramp))] });
        }

        if (route?.Lift is not null)
        {
            yield return Of("lift", ProposalWordings.Lift, d => d with { Lift = null });
        }
    }

    private static Requirement OfSite(string name, WordedText message, WordedText relaxed, Func<Site, Site> without) =>
        new([$"/site/{name}"], message, relaxed, r => r with { Site = without(r.Site!) });

    private static WordedText OnlyThese(IReadOnlyList<Supply> supplies)
    {
        var ids = Scalar.Ids(supplies.Select(s => s.Id));
        return supplies is [var one]
            ? new WordedText(ProposalWordings.Supplies.With("one"), ("supplies", ids), ("ratedA", one.RatedA), ("voltageV", one.VoltageV))
            : new WordedText(ProposalWordings.Supplies.With(), ("supplies", ids));
    }

    private static WordedText Counted(WordingChoice wordings, int cabinets) =>
        cabinets == 1 ? new WordedText(wordings.With("one")) : new WordedText(wordings.With(), ("cabinets", cabinets));

    // A part without a height of its own has a part number: other conflicts come first.
    private static WordedText Mounted(Item item) => item.HeightU is { } height
        ? new WordedText(ProposalWordings.Mounted.With("height"), ("item", item.Id), ("heightU", height))
        : new WordedText(ProposalWordings.Mounted.With(), ("item", item.Id), ("partNumber", item.PartNumber!));

    private static ProposalRequest WithoutItem(ProposalRequest request, string id) => request with
    {
        Items = [.. request.Items.Where(i => i.Id != id)],
        Keep = request.Keep is { } keep ? [.. keep.Where(k => k != id)] : null,
        Groups = request.Groups is { } groups
            ? [.. groups.Select(g => g with { Items = [.. g.Items.Where(i => i != id)] }).Where(g => g.Items.Count > 0)]
            : null,
        Connections = request.Connections is { } connections ? [.. connections.Where(c => c.Item != id)] : null,
    };
}
