using System.Text.Json;
using RackCheck.Model;
using RackCheck.Planning.Baskets;
using RackCheck.Rules;
using RackCheck.Survey.Catalogue;
using static System.FormattableString;

namespace RackCheck.Planning.Proposals;

/// <summary>A rack made in one cabinet and checked.</summary>
internal sealed record Trial
{
    /// <summary>Its cabinet.</summary>
    public required CabinetOffer Offer { get; init; }

    /// <summary>The rack with its products.</summary>
    public required ResolvedRack Resolved { get; init; }

    /// <summary>The rack, ready to post.</summary>
    public RackDescription Rack => Resolved.Posted;

    /// <summary>The report on it; remedies of warnings may be absent.</summary>
    public required CheckReport Report { get; init; }

    /// <summary>Its space.</summary>
    public required ProposalSpace Space { get; init; }

    /// <summary>Parts added.</summary>
    public required IReadOnlyList<AddedLine> Lines { get; init; }

    /// <summary>Parts needed that are not on offer.</summary>
    public required IReadOnlyList<UnmetNeed> Unmet { get; init; }

    /// <summary>Assumptions made in choosing parts.</summary>
    public required IReadOnlyList<Assumption> Assumptions { get; init; }

    /// <summary>Free height, U.</summary>
    public int FreeU => Offer.HeightU - Space.UsedU;

    /// <summary>Open errors of the rack.</summary>
    public IEnumerable<Finding> Errors => Report.Findings.Where(IsOpenError);

    /// <summary>Items without a position.</summary>
    public IEnumerable<Item> NotPlaced => Rack.Items.Where(i => i is { Position: null, OnShelf: null });

    /// <summary>Builds and checks the rack.</summary>
    /// <param name="task">What is to be built.</param>
    /// <param name="offer">The cabinet.</param>
    /// <param name="checker">Checks the rack.</param>
    /// <param name="cancellation">Stops between two steps.</param>
    public static Trial Make(ProposalTask task, CabinetOffer offer, RackChecker checker, CancellationToken cancellation)
    {
        var completed = BasketCompletion.Run(task.Context, task.Stock.With([(offer.Product, 1)]), offer.Product, cancellation);
        var rack = ResolvedRack.Of(Describe(task, offer, completed.RackBuild), task.Products);

        // A rack without an error needs no remedies yet; those of its warnings are searched only if it is proposed.
        var quick = checker.Recheck(rack, cancellation);
        var run = quick.Findings.Any(IsOpenError)
            ? new RemedyLoop(checker).Run(rack, cancellation: cancellation)
            : new RemedyRun { Rack = rack, Report = quick, Steps = [] };
        return new Trial
        {
            Offer = offer,
            Resolved = run.Rack,
            Report = run.Report,
            Space = new ProposalSpace(run.Rack.Description),
            Lines = [.. LinesOf(task, offer, completed, run)],
            Unmet = completed.RackBuild.Unmet,
            Assumptions = completed.RackBuild.Assumptions,
        };
    }

    private static bool IsOpenError(Finding finding) => finding is { Severity: Severity.Error, Accepted: null };

    // The items of the request first, in its order, with their own data and what was decided on them.
    private static RackDescription Describe(ProposalTask task, CabinetOffer offer, RackBuild build)
    {
        var made = build.Items.ToDictionary(i => i.Id, i => i.Item, StringComparer.Ordinal);
        var own = task.Request.Items.Select(i => i with
        {
            Position = made[i.Id].Position,
            OnShelf = made[i.Id].OnShelf,
            Support = made[i.Id].Support,
            EarthLead = i.EarthLead ?? made[i.Id].EarthLead,
            Ups = made[i.Id].Ups,
        });
        var added = build.Items.Where(i => OwnEquipment.IdOf(i.Piece.PartNumber) is null).Select(i => i.Item);
        var partNumber = offer.Index is { } index ? task.Request.Cabinets![index].PartNumber : offer.Product.PartNumber;
        return build.Describe() with { Cabinet = build.Cabinet with { PartNumber = partNumber }, Items = [.. own, .. added] };
    }

    private static IEnumerable<AddedLine> LinesOf(ProposalTask task, CabinetOffer offer, Completed completed, RemedyRun run)
    {
        var lines = completed.Added.Select(p => Line(p.Product.PartNumber, p.OrderUnits, p.Reason));
        var parts = run.Steps.SelectMany(s => s.Remedy.Patch
            .Where(o => o.Value is not null)
            .SelectMany(o => PartNumbers(o.Value!.Value))
            .Where(task.Products.ContainsKey)
            .Select(p => Line(p, 1, s.Remedy.Title)));
        var cabinet = offer.Index is null
            ? [Line(offer.Product.PartNumber, 1, "The cabinet of this rack.")]
            : Array.Empty<AddedLine>();
        return cabinet.Concat(lines).Concat(parts)
            .GroupBy(l => l.PartNumber)
            .Select(g => g.First() with { Quantity = g.Sum(l => l.Quantity), Why = string.Join(' ', g.Select(l => l.Why).Distinct()) })
            .OrderBy(l => l.PartNumber, StringComparer.Ordinal);
    }

    private static AddedLine Line(string partNumber, long units, string why) =>
        new() { PartNumber = partNumber, Quantity = (int)Math.Min(units, int.MaxValue), Why = why };

    private static IEnumerable<string> PartNumbers(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Object => value.EnumerateObject().SelectMany(p =>
            p.NameEquals("partNumber") && p.Value.ValueKind == JsonValueKind.String ? [p.Value.GetString()!] : PartNumbers(p.Value)),
        JsonValueKind.Array => value.EnumerateArray().SelectMany(PartNumbers),
        _ => [],
    };
}
