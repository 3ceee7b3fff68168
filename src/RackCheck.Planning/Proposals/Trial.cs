using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Planning.Building;
using RackCheck.Planning.Layouts;
using RackCheck.Rules;
using RackCheck.Rules.Cabling;
using RackCheck.Survey;
using RackCheck.Survey.Catalogue;
using RackCheck.Survey.Layout;

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

    /// <summary>Whether its cabinet is there already, so that it is no line to order.</summary>
    public required bool IsCabinetThere { get; init; }

    /// <summary>What its check found.</summary>
    public required RackFindings Found { get; init; }

    /// <summary>The rack and its parts.</summary>
    public required Completed Completed { get; init; }

    /// <summary>What its UPSs were to feed, by item; null where the check assigned all cords.</summary>
    public IReadOnlyDictionary<string, bool>? OnUps { get; init; }

    /// <summary>The problem that its layout solves, or that has no solution; null for a rack like another.</summary>
    public LayoutProblem? Problem { get; init; }

    /// <summary>The solution of the problem, with its bound.</summary>
    public Layout? Layout { get; init; }

    /// <summary>Whether no rack in this cabinet can hold the equipment.</summary>
    public bool IsRefuted { get; init; }

    /// <summary>Parts needed that are not on offer.</summary>
    public IReadOnlyList<OpenNeed> Unmet => Completed.RackBuild.Unmet;

    /// <summary>Height that the equipment takes on the front, with what stands on shelves, placed or not, U. Panels count as free.</summary>
    public int UsedU => Problem?.Blocks.Where(b => b.Face == Face.Front).Sum(b => b.HeightU) ?? 0;

    /// <summary>Free height as its report has it, U: without items and PDUs on either face.</summary>
    public int FreeU => RackSurvey.Lazily(Resolved).Occupancy.Figures.UnitsFree;

    /// <summary>The lowest U positions of its items, counted from the bottom, by id.</summary>
    public IReadOnlyDictionary<string, int> BottomsU => Rack.Items.Where(i => i.Position is not null).ToDictionary(
        i => i.Id, i => UnitNumbers.FromBottom(i.Position!.U, Offer.HeightU, Rack.UnitNumbering), StringComparer.Ordinal);

    /// <summary>Open errors of the rack.</summary>
    public IEnumerable<Finding> Errors => Found.Findings.Where(IsOpenError);

    /// <summary>Whether a PDU that was added carries no cord.</summary>
    public bool HasIdleUnit
    {
        get
        {
            var used = (Found.Assignment ?? []).Select(c => c.Pdu).ToHashSet(StringComparer.Ordinal);
            return Completed.RackBuild.Units.Exists(u => OwnEquipment.IdOf(u.Piece.PartNumber) is null && !used.Contains(u.Unit.Id));
        }
    }

    /// <summary>Items without a position.</summary>
    public IEnumerable<Item> NotPlaced => Rack.Items.Where(i => i is { Position: null, OnShelf: null });

    /// <summary>Number of horizontal PDUs without a position.</summary>
    public int UnitsNotPlaced => Completed.RackBuild.UnitsToPlace.Count();

    /// <summary>Ids of the items with a cord behind a UPS.</summary>
    public IReadOnlySet<string> FedByUps
    {
        get
        {
            var behindUps = Rack.Items.SelectMany(i => i.Ups?.Feeds ?? []).ToHashSet(StringComparer.Ordinal);
            return (Found.Assignment ?? Rack.Connections ?? []).Where(c => behindUps.Contains(c.Pdu)).Select(c => c.Item).ToHashSet(StringComparer.Ordinal);
        }
    }

    /// <summary>Errors, items and PDUs without a position, and warnings: the smaller the better.</summary>
    public (int Errors, int Warnings) Faults
    {
        get
        {
            var (errors, warnings) = RuleChecks.FaultsOf(Found);
            return (errors + NotPlaced.Count() + UnitsNotPlaced, warnings);
        }
    }

    /// <summary>Open errors of safety rules, then all errors: of racks that all have some, the one with less is the lesser evil.</summary>
    public (int OfSafety, int All) Unsoundness => (Errors.Count(e => e.Safety), Faults.Errors);

    /// <summary>Open warnings of the product, as <see cref="WarningsIn"/> counts them.</summary>
    public int ProductWarnings => WarningsIn(Found.Findings);

    /// <summary>
    /// Number of open warnings of the product. Side channels with more cables than they have room for count twice: a wider cabinet may be overfilled too.
    /// </summary>
    public static int WarningsIn(IReadOnlyList<Finding> findings) => findings.Count(IsProductWarning) + findings.Count(IsOverflow);

    /// <summary>Whether a finding is an open warning of the product.</summary>
    public static bool IsProductWarning(Finding finding) =>
        finding is { Severity: Severity.Warning, Accepted: null, SignedOff: null } && RuleSet.Default.Find(finding.Rule)!.Concern == Concern.Product;

    private static bool IsOverflow(Finding finding) =>
        IsProductWarning(finding) && finding.Rule == RuleChecks.IdOf<SideSpace>() && !(finding.UtilisationPercent <= 100 * 100 / CableFill.MostPercent);

    /// <summary>Whether a theme has an open error or warning.</summary>
    public bool Has(string theme) =>
        Found.Findings.Any(f => f is { Accepted: null, SignedOff: null, Severity: not Severity.Advice } && f.Rule.StartsWith(theme, StringComparison.Ordinal));

    private static bool IsOpenError(Finding finding) => finding is { Severity: Severity.Error, Accepted: null };
}
