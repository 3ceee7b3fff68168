using System.Globalization;
using RackCheck.Documents.Drawings.Elevations;
using RackCheck.Model;
using RackCheck.Rules;
using static System.FormattableString;

namespace RackCheck.Documents.Sheets;

/// <summary>What all documents have in common: title block, verdict, cautions, fields to sign.</summary>
internal static class CommonBlocks
{
    /// <summary>Maximum number of entries of a list that grows with the findings.</summary>
    public const int MostListed = ElevationDrawing.MostMarked;

    // Reasons of a verdict that are named; the rest is counted.
    private const int MostReasons = 8;

    /// <summary>Title of a document.</summary>
    public static string TitleOf(SheetKind kind) => kind switch
    {
        SheetKind.PackingList => "Packing list and delivery note",
        SheetKind.Installation => "Installation sheet",
        SheetKind.Service => "Service sheet",
        _ => "Specification",
    };

    /// <summary>The date of a request; null without one, or where it is none of the calendar.</summary>
    public static DateTime? DateOf(RackDescription rack) =>
        DateTimeOffset.TryParse(rack.AsOf, CultureInfo.InvariantCulture, DateTimeStyles.None, out var at) ? at.UtcDateTime : null;

    /// <summary>The title block.</summary>
    public static IReadOnlyList<(string Name, string Value)> Head(DrawnRack rack)
    {
        var cabinet = rack.Survey?.Cabinet.Source ?? rack.Posted.Cabinet;
        var part = cabinet?.PartNumber is { } number ? $", {SheetContext.Name(number)}" : "";
        var size = cabinet is { HeightU: { } units, WidthMm: { } width, DepthMm: { } depth }
            ? Invariant($"{units}U, {width:0.###} x {depth:0.###} mm{(cabinet.HeightMm is { } high ? Invariant($" x {high:0.###} mm high") : "")}")
            : "size not known";
        return
        [
            ("Reference", rack.Posted.Reference is { Length: > 0 } reference ? SheetContext.Name(reference) : "none"),
            ("Cabinet", size + part),
            ("Verdict on the product", Word(rack.Report.Verdicts.Product)),
            ("Verdict on the site", Word(rack.Report.Verdicts.Site)),
            ("Date", rack.Posted.AsOf ?? "not given"),
            ("Ruleset", rack.Report.Ruleset.Version),
            ("Digest of the description", rack.Report.DescriptionDigest),
        ];
    }

    /// <summary>The blocks that every document opens with: what the verdict means for its reader.</summary>
    public static IEnumerable<Block> Opening(DrawnRack rack, SheetKind kind)
    {
        var report = rack.Report;
        if (report.Verdict == Verdict.Release)
        {
            yield break;
        }

        var use = kind switch
        {
            SheetKind.PackingList => "Do not dispatch by this list",
            SheetKind.Installation => "Do not build or switch on by this sheet",
            SheetKind.Service => "Do not work by this sheet",
            _ => "Do not order or build by this specification",
        };
        var state = report.Verdict == Verdict.Hold ? "On hold" : "Under review";
        yield return new Notice(
            state, [$"{use} until a qualified person has released the rack.", .. ReasonsOf(report, Concern.Product), .. ReasonsOf(report, Concern.Site)]);
    }

    /// <summary>What keeps a verdict from release, in a sentence.</summary>
    public static IEnumerable<string> ReasonsOf(CheckReport report, Concern concern)
    {
        var verdict = concern == Concern.Product ? report.Verdicts.Product : report.Verdicts.Site;
        var reasons = report.VerdictReasons.Where(r => r.Concern == concern).ToArray();
        if (reasons.Length == 0)
        {
            yield break;
        }

        var numbers = NumbersOf(report);
        var alike = reasons.Where(r => r.Question is null).GroupBy(r => (r.Makes, r.Rule, IsFinding: r.Fingerprint is not null))
            .OrderByDescending(g => g.Key.Makes).ToList();
        var named = alike.Take(MostReasons).Select(g => TitleOf(g.Key.Rule!) + (g.Key.IsFinding ? NumbersOf(g, numbers) : ": not assessed")).ToList();
        if (alike.Count > MostReasons)
        {
            named.Add(Invariant($"{alike.Count - MostReasons} more kinds of findings"));
        }

        int[] open = [.. reasons.Select(r => r.Question).OfType<string>().Select(q => numbers.GetValueOrDefault(q)).Order()];
        if (open.Length > 0)
        {
            named.Add($"open {(open.Length == 1 ? "question" : "questions")} {Lists.Short([.. open.Select(q => Invariant($"Q{q}"))])}");
        }

        yield return $"{(concern == Concern.Product ? "Product" : "Site")}: {Word(verdict)}. Reasons: {string.Join("; ", named)}.";
    }

    /// <summary>The cautions of the report and those of the work that the document is for.</summary>
    public static IEnumerable<Block> CautionsOf(CheckReport report, params IEnumerable<string> more) =>
        [new Notice("Cautions", [.. report.Cautions.Concat(more).Distinct()])];

    /// <summary>Front and rear of the rack.</summary>
    public static Figure? Elevation(DrawnRack rack)
    {
        if (ElevationDrawing.Figure(rack) is not { } drawing)
        {
            return null;
        }

        var marks = rack.Report.Findings.Count > 0 ? "; numbers are those of the findings in the specification" : "";
        var cooler = rack.Survey?.Description.Cooling?.AirConditioner is null ? "" : "; the air conditioner is in dashes and not to scale";
        return new Figure(drawing, $"Elevation of front and rear, drawn 1:10 where the page allows; dimensions in mm{cooler}{marks}");
    }

    /// <summary>The name of a verdict in capitals.</summary>
    public static string Word(Verdict verdict) => verdict.ToString().ToUpperInvariant();

    /// <summary>Title of a rule.</summary>
    public static string TitleOf(string rule) => RuleSet.Default.Find(rule)?.Title ?? rule;

    private static Dictionary<string, int> NumbersOf(CheckReport report)
    {
        var numbers = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var i = 0; i < report.Findings.Count; i++)
        {
            numbers.TryAdd(report.Findings[i].Fingerprint, i + 1);
        }

        for (var i = 0; i < report.Questions.Count; i++)
        {
            numbers.TryAdd(report.Questions[i].Id, i + 1);
        }

        return numbers;
    }

    private static string NumbersOf(IEnumerable<VerdictReason> reasons, Dictionary<string, int> numbers)
    {
        string[] listed = [.. reasons.Select(r => numbers.GetValueOrDefault(r.Fingerprint!)).Where(n => n > 0).Order().Select(n => Invariant($"{n}"))];
        return listed.Length == 0 ? " (not listed)" : $" ({(listed.Length == 1 ? "finding" : "findings")} {Lists.Short(listed)})";
    }
}
