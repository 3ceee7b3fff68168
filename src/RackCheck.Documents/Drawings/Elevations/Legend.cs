using RackCheck.Model;

namespace RackCheck.Documents.Drawings.Elevations;

/// <summary>Lists the findings with their marks.</summary>
internal static class Legend
{
    private const double LeastColumn = 1000;
    private const double Gutter = 60;
    private const double Indent = 62;
    private const double EntryGap = 18;

    /// <summary>Draws the list.</summary>
    /// <param name="canvas">Takes the marks.</param>
    /// <param name="findings">The findings of a rack to list, in the order of their numbers.</param>
    /// <param name="report">The report.</param>
    /// <param name="left">Left edge.</param>
    /// <param name="top">Upper edge.</param>
    /// <param name="width">Width.</param>
    /// <returns>Lower edge.</returns>
    public static double Draw(Canvas canvas, IReadOnlyList<(int Number, Finding Finding)> findings, CheckReport report, double left, double top, double width)
    {
        var y = top + TypeSize.Head.Leading;
        canvas.Text(left, y, findings.Count == 0 ? "No findings" : "Findings", TypeSize.Head, within: width);
        y += 10;
        canvas.Line(left, y, left + width, y, Stroke.Normal);
        y += 22;
        var columns = Math.Max(1, (int)((width + Gutter) / (LeastColumn + Gutter)));
        var each = ((width + Gutter) / columns) - Gutter;
        var entries = findings.Select(f => new Entry(f.Number, f.Finding, TextFit.Wrap(Words(f.Finding), each - Indent, TypeSize.Small.Size))).ToList();
        var target = entries.Sum(e => e.Height) / columns;
        var (column, height, lowest) = (0, 0.0, y);
        foreach (var entry in entries)
        {
            if (column + 1 < columns && height > 0 && height + (entry.Height / 2) > target)
            {
                (column, height) = (column + 1, 0);
            }

            DrawEntry(canvas, entry, left + (column * (each + Gutter)), y + height, each);
            height += entry.Height;
            lowest = Math.Max(lowest, y + height);
        }

        return DrawRest(canvas, report, report.Findings.Count - findings.Count, left, lowest, width);
    }

    private static double DrawRest(Canvas canvas, CheckReport report, int unlisted, double left, double y, double width)
    {
        var lines = new List<string>();
        if (unlisted > 0)
        {
            lines.Add(FormattableString.Invariant($"Further findings: {unlisted}; the report of the check lists them. They count for the verdict."));
        }

        if (report.FindingsOmitted is { Count: > 0 } omitted)
        {
            lines.Add("Not listed: " + Lists.All([.. omitted.Select(o => FormattableString.Invariant($"{o.Count} more of {o.Rule}"))]) + ".");
        }

        if (report.Questions.Count > 0)
        {
            lines.Add(FormattableString.Invariant($"Open questions: {report.Questions.Count}; the report of the check lists them."));
        }

        if (report.NotAssessed.Count > 0)
        {
            lines.Add("Not assessed: " + Lists.All([.. report.NotAssessed.Select(n => n.Rule).Distinct()]) + ".");
        }

        foreach (var line in lines.SelectMany(l => TextFit.Wrap(l, width, TypeSize.Small.Size)))
        {
            y += TypeSize.Small.Leading;
            canvas.Text(left, y, line, TypeSize.Small, tone: Tone.Light, within: width);
        }

        return y;
    }

    private static void DrawEntry(Canvas canvas, Entry entry, double x, double y, double width)
    {
        var finding = entry.Finding;
        canvas.Group(null, [("data-fingerprint", finding.Fingerprint), ("data-finding", finding.Rule)], g =>
        {
            Balloons.Draw(g, x + 22, y + 22, finding.Severity, entry.Number);
            var line = y + TypeSize.Small.Size;
            var word = Balloons.Word(finding.Severity);
            var used = g.Text(x + Indent, line, word, TypeSize.SmallBold);
            var state = finding.Accepted is not null ? "accepted" : finding.SignedOff is not null ? "signed off" : null;
            var heading = $"{finding.Rule} \u00b7 {TextFit.Isolate(finding.Subject)}" + (state is null ? "" : $" \u00b7 {state}");
            g.Text(x + Indent + used + 14, line, heading, TypeSize.SmallBold, within: width - Indent - used - 14);
            foreach (var words in entry.Lines)
            {
                line += TypeSize.Small.Leading;
                g.Text(x + Indent, line, words, TypeSize.Small, within: width - Indent);
            }
        });
    }

    private static string Words(Finding finding) => TextFit.Clean(finding.Message);

    private sealed record Entry(int Number, Finding Finding, IReadOnlyList<string> Lines)
    {
        public double Height => Math.Max(46, TypeSize.Small.Size + (Lines.Count * TypeSize.Small.Leading)) + EntryGap;
    }
}
