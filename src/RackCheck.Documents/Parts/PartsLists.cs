using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Survey;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Documents.Parts;

/// <summary>Makes parts lists.</summary>
public static class PartsLists
{
    /// <summary>Checks a rack and lists its small parts.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="checker">Checks it.</param>
    /// <param name="offered">The products on offer; null if they cannot be had.</param>
    /// <param name="cancellation">Stops the check.</param>
    /// <returns>The list and the report of the check.</returns>
    public static (PartsList List, CheckReport Report) Of(
        ResolvedRack rack, RackChecker checker, IReadOnlyList<Product>? offered, CancellationToken cancellation = default)
    {
        var report = checker.Recheck(rack, cancellation);
        var survey = rack.IsLookedUp && rack.Missing().Count > 0 ? null : RackSurvey.Lazily(rack);
        return (Of(rack, report, survey, offered), report);
    }

    /// <summary>Lists the small parts of a rack that was checked.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="report">Its report.</param>
    /// <param name="survey">Its facts; null if essential data is missing.</param>
    /// <param name="offered">The products on offer; null if they cannot be had.</param>
    /// <returns>The list.</returns>
    public static PartsList Of(ResolvedRack rack, CheckReport report, RackSurvey? survey, IReadOnlyList<Product>? offered)
    {
        List<PartLine> lines = [];
        List<string> notes = [];
        if (survey is null)
        {
            notes.Add($"No parts are listed, since essential data is missing: {Names.And(rack.Missing())}.");
        }
        else
        {
            var context = new PartsContext(rack, survey, report, offered ?? []);
            MountingParts.List(context);
            WiringParts.List(context);
            UpkeepParts.List(context);
            LabelLines.List(context);
            CoolerParts.Note(context);
            (lines, notes) = (context.Lines, context.Notes);
        }

        if (report.Verdict == Verdict.Hold)
        {
            notes.Add("The rack is on hold. The parts are those of the rack as described, not of the remedies of its findings.");
        }

        if (offered is null)
        {
            notes.Add("The products on offer could not be had. Lines have the part numbers of the description only.");
        }

        return new PartsList
        {
            Reference = rack.Posted.Reference,
            Verdict = report.Verdict,
            Ruleset = report.Ruleset,
            DescriptionDigest = report.DescriptionDigest,
            Lines = [.. lines.OrderBy(l => l.Kind)],
            Notes = notes,
        };
    }
}
