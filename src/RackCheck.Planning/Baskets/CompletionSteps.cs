using RackCheck.Model;
using RackCheck.Planning.Building;
using RackCheck.Planning.Proposals;

namespace RackCheck.Planning.Baskets;

/// <summary>
/// The rack as ordered, and the racks on the way to the completed one, so that each finding is put down to the lines that clear it: first the exchanged or
/// added cabinet, then one kind of part after the other.
/// </summary>
internal sealed class CompletionSteps
{
    private readonly CompletedOrder order;
    private readonly List<(Stage? Stage, HashSet<string> Fingerprints, HashSet<string> InOwn)> steps = [];

    /// <summary>Makes the racks.</summary>
    /// <param name="order">The completed order.</param>
    /// <param name="cancellation">Stops between two racks.</param>
    public CompletionSteps(CompletedOrder order, CancellationToken cancellation)
    {
        this.order = order;
        var racks = order.Plan.Racks;
        Ordered = order.Replaced.Count > 0 && racks.Count == 1 && order.Plan.InOwn is { } own
            ? [racks[0].Maker.MakeLike(own, [])]
            : [.. racks.Select(r => r.Maker.MakeLike(r.Trial, []))];
        if (order.Replaced.Count > 0)
        {
            Add(null, racks.Select(r => r.Maker.MakeLike(r.Trial, [])));
        }

        // Until everything is gone that the completed racks do not have.
        var stay = order.Final.Racks.SelectMany(r => r.Trial.Found.Findings).Select(f => f.Fingerprint).ToHashSet(StringComparer.Ordinal);
        bool IsGone(HashSet<string> now) => !Ordered.SelectMany(t => t.Found.Findings).Any(f => !stay.Contains(f.Fingerprint) && now.Contains(f.Fingerprint));
        foreach (var stage in order.Added.Select(p => p.Stage).Distinct().Order())
        {
            cancellation.ThrowIfCancellationRequested();
            if (steps.Count > 0 && IsGone(steps[^1].Fingerprints))
            {
                break;
            }

            Add(stage, racks.Select(r => r.Maker.MakeLike(r.Trial, UpTo(r.Trial))), UpTo);

            IEnumerable<MissingPiece> UpTo(Trial trial) => trial.Completed.Added.Where(p => p.Stage <= stage);
        }
    }

    /// <summary>The racks of the basket as ordered.</summary>
    public IReadOnlyList<Trial> Ordered { get; }

    /// <summary>The lines that clear a finding of the rack as ordered.</summary>
    /// <param name="finding">The finding.</param>
    /// <param name="completed">The reports on the completed basket.</param>
    /// <param name="missing">The missing lines.</param>
    /// <param name="own">The lines that the finding is about.</param>
    /// <returns>Pointers into the answer; null if the finding stays.</returns>
    public IReadOnlyList<string>? ClearedBy(Finding finding, CheckReport[] completed, IReadOnlyList<MissingLine> missing, IReadOnlyList<string> own)
    {
        if (Array.Exists(completed, r => r.Findings.Any(f => f.Fingerprint == finding.Fingerprint)))
        {
            return null;
        }

        // The step from which on it is gone.
        var last = steps.FindLastIndex(s => s.Fingerprints.Contains(finding.Fingerprint));
        string[] lines = last + 1 < steps.Count
            ? [.. steps[last + 1].InOwn.Contains(finding.Fingerprint) ? LinesOf(null, missing, own) : [], .. LinesOf(steps[last + 1].Stage, missing, own)]
            : [];
        return lines.Length > 0
            ? lines
            : [.. order.Replaced.Index().Select(r => FormattableString.Invariant($"/replaceLines/{r.Index}")), .. missing.Index().Select(m => Pointer(m.Index)),
                .. order.Excess.Index().Select(e => FormattableString.Invariant($"/excessLines/{e.Index}"))];
    }

    private static string Pointer(int missing) => FormattableString.Invariant($"/missingLines/{missing}");

    // Of the parts of a stage those for the equipment that the finding is about.
    private IEnumerable<string> LinesOf(Stage? stage, IReadOnlyList<MissingLine> missing, IReadOnlyList<string> own)
    {
        if (stage is null)
        {
            return order.Replaced.Index().Select(r => FormattableString.Invariant($"/replaceLines/{r.Index}"));
        }

        (int Index, MissingLine Line)[] all =
        [
            .. missing.Index().Where(m => order.Added.Any(p => p.Stage == stage && p.Product.PartNumber == m.Item.PartNumber)),
        ];
        (int Index, MissingLine Line)[] theirs = [.. all.Where(m => m.Line.ForLines.Count == 0 || m.Line.ForLines.Intersect(own).Any())];
        return (theirs.Length > 0 ? theirs : all).Select(m => Pointer(m.Index));
    }

    // In the ordered cabinet, if it is exchanged, parts may not clear what they clear in the new one.
    private void Add(Stage? stage, IEnumerable<Trial> racks, Func<Trial, IEnumerable<MissingPiece>>? parts = null)
    {
        var isOwn = parts is not null && order.Replaced.Count > 0 && order.Plan is { InOwn: not null, Racks.Count: 1 };
        steps.Add((stage, Of(racks), isOwn ? Of([order.Plan.Racks[0].Maker.MakeLike(order.Plan.InOwn!, parts!(order.Plan.Racks[0].Trial))]) : []));

        static HashSet<string> Of(IEnumerable<Trial> trials) =>
            trials.SelectMany(r => r.Found.Findings).Select(f => f.Fingerprint).ToHashSet(StringComparer.Ordinal);
    }
}
