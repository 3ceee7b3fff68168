using RackCheck.Documents.Drawings;
using RackCheck.Model;
using RackCheck.Model.Converters;
using static RackCheck.Documents.Sheets.SheetContext;
using static System.FormattableString;

namespace RackCheck.Documents.Sheets;

/// <summary>Findings, questions, rules that were not assessed, acceptances, sign-offs and assumptions.</summary>
internal static class FindingBlocks
{
    /// <summary>Adds the sections.</summary>
    public static void Add(CheckReport report, RackDescription posted, List<Block> blocks)
    {
        blocks.Add(new Heading("Findings, questions and what was agreed"));
        blocks.AddRange(Findings(report));
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

    private static IEnumerable<Block> Findings(CheckReport report)
    {
        var table = Table(
            "Findings, by their number in the drawing",
            [new("No.", 5, true), new("Grade", 15), new("Finding, with its arithmetic and rule", 80)],
            report.Findings.Take(CommonBlocks.MostListed).Select((f, i) => (IReadOnlyList<string>)
            [
                Invariant($"{i + 1}"), GradeOf(f), TextOf(f),
            ]));
        yield return table ?? (Block)new Paragraph("No findings.");
        var omitted = Math.Max(0, report.Findings.Count - CommonBlocks.MostListed) + (report.FindingsOmitted ?? []).Sum(o => o.Count);
        if (omitted > 0)
        {
            yield return new Paragraph(Invariant($"{omitted} more findings are not listed here. They count for the verdict."));
        }
    }

    private static string GradeOf(Finding finding) =>
        NamedEnumConverter<Severity>.Name(finding.Severity) + (finding.Safety ? ", safety" : "")
        + (finding.Accepted is not null ? ", accepted" : finding.SignedOff is not null ? ", signed off" : ", open");

    private static string TextOf(Finding finding)
    {
        var calculation = finding.Calculation is { Length: > 0 } sum ? $" Arithmetic: {TextFit.Clean(sum)}." : "";
        var lapsed = finding.LapsedAcceptance is { } old ? " " + TextFit.Clean(old.Message) : "";
        return $"{CommonBlocks.TitleOf(finding.Rule)}. {TextFit.Clean(finding.Message)}{calculation}{lapsed} ({finding.Rule})";
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
        [new("Rule", 40), new("Reason", 60)],
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
        "Assumptions",
        [new("Of", 36), new("Assumed", 14), new("Basis", 50)],
        report.Assumptions.Take(CommonBlocks.MostListed).Select(a => (IReadOnlyList<string>)
        [
            PointerText.Of(a.Pointers, posted), Value(a), TextFit.Clean(a.Basis),
        ]));

    private static string Value(Assumption assumption)
    {
        var unit = assumption.Unit is { } known ? " " + known : "";
        return assumption is { From: { } from, To: { } to } ? Invariant($"{Number(from)} to {Number(to)}{unit}")
            : assumption.Value is { } value ? TextFit.Clean(value.ToString()!) + unit : "";
    }
}
