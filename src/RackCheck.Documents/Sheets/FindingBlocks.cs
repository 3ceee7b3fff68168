using System.Globalization;
using System.Text.RegularExpressions;
using RackCheck.Documents.Drawings;
using RackCheck.Model;
using RackCheck.Model.Converters;
using RackCheck.Survey.Assumed;
using RackCheck.Survey.Bounds;
using static RackCheck.Documents.Sheets.SheetContext;
using static System.FormattableString;

namespace RackCheck.Documents.Sheets;

/// <summary>Findings, questions, rules that were not assessed, acceptances, sign-offs and assumptions.</summary>
internal static class FindingBlocks
{
    /// <summary>Caption of the table of assumptions.</summary>
    public const string AssumptionsCaption = "Assumptions; within a range the answers are the same";

    /// <summary>Adds the sections.</summary>
    public static void Add(CheckReport report, RackDescription posted, List<Block> blocks)
    {
        blocks.Add(new Heading("Findings, questions and what was agreed"));
        blocks.AddRange(Findings(report, posted));
        Append(Questions(report));
        Append(NotAssessed(report));
        Append(Agreed(report));
        Append(Assumptions(report, posted));

        void Append(Block? block)
        {
            if (block is not null)
            {
                blocks.Add(block);
            }
        }
    }

    private static IEnumerable<Block> Findings(CheckReport report, RackDescription posted)
    {
        var table = Table(
            "Findings, by their number in the drawing",
            [new("No.", 7, true), new("Grade", 15), new("Finding, with its arithmetic and rule", 78)],
            Alike(report.Findings.Take(CommonBlocks.MostListed), posted).Select(g => (IReadOnlyList<string>)
            [
                g.Count == 1 ? Invariant($"{g.Number}") : Invariant($"{g.Number}-{g.Number + g.Count - 1}"), GradeOf(g.First), TextOf(g.First, g.Others),
            ]));
        yield return table ?? (Block)new Paragraph("No findings.");
        var omitted = Math.Max(0, report.Findings.Count - CommonBlocks.MostListed) + (report.FindingsOmitted ?? []).Sum(o => o.Count);
        if (omitted > 0)
        {
            yield return new Paragraph(Invariant($"{omitted} more findings are not listed here. They count for the verdict."));
        }
    }

    // Findings that differ in nothing but what they are about stand next to each other, and in one row.
    private static IEnumerable<(int Number, int Count, Finding First, IReadOnlyList<string> Others)> Alike(
        IEnumerable<Finding> findings, RackDescription posted)
    {
        (int Number, Finding First, string Text)? open = null;
        List<string> others = [];
        var number = 0;
        foreach (var finding in findings)
        {
            number++;
            var owner = OwnerOf(finding, posted);
            var text = owner is null ? ""
                : Invariant($"{finding.Rule} {GradeOf(finding)} {finding.Calculation} {Regex.Replace(finding.Message, WholeWord(owner), "\n")}");
            if (text.Length > 0 && text == open?.Text && finding is { Accepted: null, SignedOff: null, LapsedAcceptance: null })
            {
                others.Add(owner!);
                continue;
            }

            if (open is { } done)
            {
                yield return (done.Number, others.Count + 1, done.First, others);
            }

            (open, others) = ((number, finding, text), []);
        }

        if (open is { } last)
        {
            yield return (last.Number, others.Count + 1, last.First, others);
        }
    }

    private static string WholeWord(string id) => $@"(?<![\w-]){Regex.Escape(id)}(?![\w-])";

    // The item, supply or PDU that a finding is about first.
    private static string? OwnerOf(Finding finding, RackDescription posted) =>
        finding.Pointers is [var pointer, ..] && pointer.Split('/') is ["", var list, var index, ..]
            && int.TryParse(index, NumberStyles.None, CultureInfo.InvariantCulture, out var at)
            ? list switch
            {
                "items" => posted.Items.ElementAtOrDefault(at)?.Id,
                "supplies" => posted.Supplies?.ElementAtOrDefault(at)?.Id,
                "pdus" => posted.Pdus?.ElementAtOrDefault(at)?.Id,
                _ => null,
            }
            : null;

    private static string GradeOf(Finding finding) =>
        NamedEnumConverter<Severity>.Name(finding.Severity) + (finding.Safety ? ", safety" : "")
        + (finding.Accepted is not null ? ", accepted" : finding.SignedOff is not null ? ", signed off" : ", open");

    private static string TextOf(Finding finding, IReadOnlyList<string> others)
    {
        var calculation = finding.Calculation is { Length: > 0 } sum ? $" Arithmetic: {TextFit.Clean(sum)}." : "";
        var lapsed = finding.LapsedAcceptance is { } old ? " " + TextFit.Clean(old.Message) : "";
        var alike = others.Count == 0 ? "" : $" The same holds for {Lists.All([.. others.Select(Name)])}.";
        return $"{CommonBlocks.TitleOf(finding.Rule)}. {TextFit.Clean(finding.Message)}{calculation}{lapsed}{alike} ({finding.Rule})";
    }

    private static Grid? Questions(CheckReport report) => Table(
        "Open questions",
        [new("No.", 6), new("Question", 80), new("Decides", 14)],
        report.Questions.Take(CommonBlocks.MostListed).Select((q, i) => (IReadOnlyList<string>)
        [
            Invariant($"Q{i + 1}"), TextFit.Clean(q.Ask), NamedEnumConverter<Concern>.Name(q.Decides),
        ]));

    private static Grid? NotAssessed(CheckReport report) => Table(
        "Not assessed",
        [new("Rule", 44), new("Reason", 56)],
        report.NotAssessed.Select(n => (IReadOnlyList<string>)
        [
            Invariant($"{CommonBlocks.TitleOf(n.Rule)} ({n.Rule}){(n.Safety ? ", safety" : "")}{(n.SignedOff is null ? "" : ", signed off")}"),
            TextFit.Clean(n.Message),
        ]));

    private static Grid? Agreed(CheckReport report)
    {
        var accepted = report.Findings.Select((f, i) => (Finding: f, Number: i + 1)).Take(CommonBlocks.MostListed);
        var rows = accepted.SelectMany(f => RowsOf(f.Finding, Invariant($"finding {f.Number}")))
            .Concat(report.NotAssessed.Where(n => n.SignedOff is not null).Select(n => RowOf(n.SignedOff!, n.Rule)));
        return Table("Acceptances and sign-offs", [new("For", 16), new("Kind", 14), new("By", 24), new("When", 18), new("Reason", 40)], rows);
    }

    private static IEnumerable<IReadOnlyList<string>> RowsOf(Finding finding, string what)
    {
        if (finding.Accepted is { } mark)
        {
            string?[] when =
            [
                mark.AcceptedAt, mark.ExpiresAt is { } end ? "until " + end : null,
                mark.UpTo is { } most ? Invariant($"up to {Number(most.Value)} {TextFit.Clean(most.Unit)}") : null,
            ];
            yield return [what, "accepted", Name(mark.AcceptedBy), string.Join(", ", when.OfType<string>()), Name(mark.Reason)];
        }

        if (finding.SignedOff is { } signed)
        {
            yield return RowOf(signed, what);
        }
    }

    private static IReadOnlyList<string> RowOf(SignOffMark mark, string what) =>
        [what, "signed off", $"{Name(mark.By)}, {Name(mark.Role)}", mark.At, Name(mark.Reason)];

    private static Grid? Assumptions(CheckReport report, RackDescription posted) => Table(
        AssumptionsCaption,
        [new("Of", 33), new("Assumed", 12), new("Basis", 55)],
        report.Assumptions.Where(a => !IsFromCatalogue(a)).Take(CommonBlocks.MostListed).Select(a => (IReadOnlyList<string>)
        [
            PointerText.Of(a.Pointers, posted), Value(a), BasisOf(a),
        ]).Concat(FromCatalogue(report)));

    // What all ranges have in common stands above them.
    private static string BasisOf(Assumption assumption) => TextFit.Clean(
        assumption.BasisKey.StartsWith(Fact.RangeKey, StringComparison.Ordinal) ? assumption.Basis.Replace(Fact.RangeWords, "", StringComparison.Ordinal)
        : assumption.Basis);

    private static bool IsFromCatalogue(Assumption assumption) => assumption.BasisKey == Bases.FromCatalogue([]).Key;

    // One row for all parts: the members are those that the description leaves out.
    private static IEnumerable<IReadOnlyList<string>> FromCatalogue(CheckReport report)
    {
        var numbers = report.Assumptions.Where(IsFromCatalogue).Select(a => TextFit.Clean(a.Value.ToString()!));
        string[] parts = [.. numbers.Distinct().Order(StringComparer.Ordinal)];
        if (parts.Length > 0)
        {
            yield return ["what the description leaves out of parts", "catalogue", Lists.All(parts)];
        }
    }

    private static string Value(Assumption assumption)
    {
        var unit = assumption.Unit is { } known ? " " + known : "";
        return assumption is { From: { } from, To: { } to } ? Invariant($"{Number(from)} to {Number(to)}{unit}")
            : assumption.Value is { } value ? TextFit.Clean(value.ToString()!) + unit : "";
    }
}
