using RackCheck.Documents.Drawings;

namespace RackCheck.Documents.Sheets;

/// <summary>A page: what is drawn on it, and a figure that may stand on it.</summary>
/// <param name="Canvas">The marks, ten of its units to a millimetre.</param>
internal sealed record SheetPage(Canvas Canvas)
{
    /// <summary>The figures with their places.</summary>
    public List<(Drawing Drawing, double X, double Y, double Scale)> Figures { get; } = [];
}

/// <summary>Sets a document on pages of A4.</summary>
internal sealed class SheetPages
{
    /// <summary>Width of a page.</summary>
    public const double Width = 2100;

    /// <summary>Height of a page.</summary>
    public const double Height = 2970;

    /// <summary>Margin on the left and on the right.</summary>
    public const double Side = 150;

    /// <summary>Width between the margins.</summary>
    public const double Inner = Width - (2 * Side);

    private const double Top = 170;
    private const double Bottom = Height - 150;
    private const double Pad = 12;
    private const double SignHeight = 70;
    private const double LeastFigureScale = 0.8;

    private static readonly TypeSize Body = new(28);
    private static readonly TypeSize Strong = new(28, true);
    private static readonly TypeSize Cell = new(24.8);
    private static readonly TypeSize CellHead = new(24.8, true);
    private static readonly TypeSize Note = new(24);
    private static readonly TypeSize HeadSize = new(38, true);
    private static readonly TypeSize TitleSize = new(62, true);

    private readonly List<SheetPage> pages = [];
    private readonly Queue<Figure> waiting = [];
    private Canvas canvas = new();
    private double y = Top;

    /// <summary>Sets a document.</summary>
    /// <param name="sheet">The document.</param>
    /// <returns>Its pages, at least one.</returns>
    public static IReadOnlyList<SheetPage> Of(Sheet sheet)
    {
        var setter = new SheetPages();
        setter.NewPage();
        setter.SetTitle(sheet);
        for (var i = 0; i < sheet.Blocks.Count; i++)
        {
            setter.Set(sheet.Blocks[i], i + 1 < sheet.Blocks.Count ? sheet.Blocks[i + 1] : null);
        }

        while (setter.waiting.Count > 0)
        {
            setter.NewPage();
        }

        for (var i = 0; i < setter.pages.Count; i++)
        {
            SetEdges(setter.pages[i].Canvas, sheet, i + 1, setter.pages.Count);
        }

        return setter.pages;
    }

    private void NewPage()
    {
        canvas = new Canvas();
        pages.Add(new SheetPage(canvas));
        y = Top;
        while (waiting.TryPeek(out var figure) && TryPlace(figure, 0))
        {
            waiting.Dequeue();
        }
    }

    // Header and footer.
    private static void SetEdges(Canvas canvas, Sheet sheet, int page, int pages)
    {
        const double Above = 118;
        const double Below = Height - 98;
        var used = canvas.Text(Side, Above, sheet.Title, CellHead, within: Inner / 2);
        canvas.Text(Width - Side, Above, sheet.Reference ?? "", Cell, Anchor.End, within: Inner - used - 40);
        canvas.Line(Side, Above + 18, Width - Side, Above + 18, Stroke.Normal);
        canvas.Line(Side, Below - 34, Width - Side, Below - 34, Stroke.Thin);
        var place = FormattableString.Invariant($"Ruleset {sheet.Ruleset} \u00b7 page {page} of {pages}");
        used = canvas.Text(Width - Side, Below, place, Note, Anchor.End);
        canvas.Text(Side, Below, sheet.Digest, Note, tone: Tone.Light, within: Inner - used - 40);
    }

    private void SetTitle(Sheet sheet)
    {
        var start = y;
        y += 26 + TitleSize.Size;
        canvas.Text(Side + 30, y, sheet.Title, TitleSize, within: Inner - 60);
        y += 30;
        SetPairs(sheet.Head, Side + 30, Inner - 60);
        y += 16;
        canvas.Box(new Area(Side, start, Inner, y - start), Stroke.Thick);
        y += 36;
    }

    private void Set(Block block, Block? next)
    {
        switch (block)
        {
            case Heading heading:
                NeedRoom(next is Figure ? HeadSize.Leading : HeadSize.Leading + 220);
                y += y > Top ? 20 : 0;
                y += HeadSize.Size;
                canvas.Text(Side, y, heading.Words, HeadSize, within: Inner);
                y += 12;
                canvas.Line(Side, y, Width - Side, y, Stroke.Normal);
                y += 16;
                break;
            case Paragraph paragraph:
                SetLines(TextFit.Wrap(TextFit.Clean(paragraph.Words), Inner, Body.Size), Side, Body);
                y += 14;
                break;
            case Notice notice:
                SetNotice(notice);
                break;
            case Bullets bullets:
                SetBullets(bullets);
                break;
            case Pairs pairs:
                SetPairs(pairs.Entries, Side, Inner);
                y += 20;
                break;
            case Grid grid:
                SetGrid(grid);
                break;
            case Figure figure:
                if (waiting.Count > 0 || !TryPlace(figure, LeastFigureScale))
                {
                    waiting.Enqueue(figure);
                }

                break;
            case Signatures signatures:
                NeedRoom((signatures.Roles.Count * SignHeight) + 95);
                SetGrid(
                    new Grid(
                        "Signatures", [.. SheetHtml.SignatureHeads.Select(h => new Column(h, 1))],
                        [.. signatures.Roles.Select(r => (IReadOnlyList<string>)[r, "", "", ""])]),
                    SignHeight);
                break;
        }
    }

    private void NeedRoom(double height)
    {
        // A figure that waited may fill the new page.
        while (y + height > Bottom && y > Top)
        {
            NewPage();
        }
    }

    // A figure keeps its scale where it can. One that does not fit below the text waits for the next page.
    private bool TryPlace(Figure figure, double leastShare)
    {
        var drawing = figure.Drawing;
        var caption = TextFit.Wrap(TextFit.Clean(figure.Caption), Inner, Note.Size);
        var captionHeight = (caption.Count * Note.Leading) + 40;
        var whole = Math.Min(1, Math.Min(Inner / drawing.Width, (Bottom - Top - captionHeight) / drawing.Height));
        var scale = Math.Min(whole, (Bottom - y - captionHeight) / drawing.Height);
        if (scale <= 0 || (scale < leastShare * whole && y > Top))
        {
            return false;
        }

        pages[^1].Figures.Add((drawing, Side + ((Inner - (scale * drawing.Width)) / 2), y, scale));
        y += scale * drawing.Height;
        SetLines(caption, Side, Note, Tone.Light);
        y += 30;
        return true;
    }

    private void SetLines(IReadOnlyList<string> lines, double x, TypeSize type, Tone tone = Tone.Ink)
    {
        foreach (var line in lines)
        {
            NeedRoom(type.Leading);
            y += type.Leading;
            canvas.Text(x, y - (0.28 * type.Size), line, type, tone: tone);
        }
    }

    private void SetNotice(Notice notice)
    {
        const double Edge = 26;
        var lines = notice.Lines.SelectMany(l => TextFit.Wrap(TextFit.Clean(l), Inner - (2 * Edge), Body.Size).Append("")).SkipLast(1).ToArray();
        var height = lines.Sum(l => l.Length == 0 ? 10 : Body.Leading) + Strong.Leading + (2 * Edge) + 6;
        NeedRoom(height < (Bottom - Top) / 3 ? height : 0);
        for (var done = 0; done < lines.Length || done == 0;)
        {
            NeedRoom((4 * Body.Leading) + (2 * Edge));
            var start = y;
            y += Edge;
            if (done == 0)
            {
                SetLines([notice.Head.ToUpperInvariant()], Side + Edge, Strong);
                y += 6;
            }

            while (done < lines.Length && y + Body.Leading + Edge <= Bottom)
            {
                y += lines[done].Length == 0 ? 10 : Body.Leading;
                canvas.Text(Side + Edge, y - (0.28 * Body.Size), lines[done++], Body);
            }

            y += Edge;
            canvas.Box(new Area(Side, start, Inner, y - start), Stroke.Thick);
            y += 30;
            done = lines.Length == 0 ? 1 : done;
        }
    }

    private void SetBullets(Bullets bullets)
    {
        const double Indent = 52;
        for (var i = 0; i < bullets.Lines.Count; i++)
        {
            var lines = TextFit.Wrap(TextFit.Clean(bullets.Lines[i]), Inner - Indent, Body.Size);
            NeedRoom(Math.Min(lines.Count, 3) * Body.Leading);
            var mark = y + Body.Leading - (0.28 * Body.Size);
            if (bullets.Mark == BulletMark.Box)
            {
                SetTick(Side + 2, mark);
            }
            else
            {
                var sign = bullets.Mark == BulletMark.Number ? FormattableString.Invariant($"{i + 1}.") : "\u2022";
                canvas.Text(Side + Indent - 14, mark, sign, Body, Anchor.End);
            }

            SetLines(lines, Side + Indent, Body);
            y += 6;
        }

        y += 14;
    }

    private void SetTick(double x, double baseline) => canvas.Box(new Area(x, baseline - 24, 24, 24), Stroke.Normal);

    // Two columns of names with their values.
    private void SetPairs(IReadOnlyList<(string Name, string Value)> entries, double left, double width)
    {
        const double Gutter = 50;
        var each = (width - Gutter) / 2;
        for (var i = 0; i < entries.Count; i += 2)
        {
            // The last of an odd number has the whole width.
            var isLast = i + 1 == entries.Count;
            var (one, other) = (Pair(entries[i], isLast ? width : each), isLast ? null : Pair(entries[i + 1], each));
            var height = Math.Max(one.Height, other?.Height ?? 0) + 6;
            NeedRoom(height);
            Draw(one, left, isLast ? width : each);
            if (other is not null)
            {
                Draw(other, left + each + Gutter, each);
            }

            y += height;
        }

        void Draw(PairLines pair, double x, double across)
        {
            var line = y;
            foreach (var name in pair.Names)
            {
                line += Cell.Leading;
                canvas.Text(x, line - (0.28 * Cell.Size), name, Cell, tone: Tone.Light);
            }

            line = y;
            foreach (var value in pair.Values)
            {
                line += Cell.Leading;
                canvas.Text(x + across, line - (0.28 * Cell.Size), value, Cell, Anchor.End);
            }

            canvas.Line(x, y + pair.Height + 3, x + across, y + pair.Height + 3, Stroke.Light);
        }
    }

    private static PairLines Pair((string Name, string Value) entry, double width)
    {
        var (name, value) = (TextFit.Clean(entry.Name), TextFit.Clean(entry.Value));
        var own = Math.Min(DrawingFont.Width(name, Cell.Size), width / 2);
        return new PairLines(TextFit.Wrap(name, own + 1, Cell.Size), TextFit.Wrap(value, width - own - 24, Cell.Size));
    }

    private void SetGrid(Grid grid, double leastRow = 0)
    {
        var total = grid.Columns.Sum(c => c.Share);
        double[] widths = [.. grid.Columns.Select(c => c.Share / total * Inner)];
        List<string>[] heads = [.. grid.Columns.Select((c, i) => Lines(c.Head, widths[i], CellHead))];
        var headHeight = (heads.Max(h => h.Count) * Cell.Leading) + 14;
        NeedRoom(headHeight + Strong.Leading + (2 * Cell.Leading) + leastRow);
        SetLines([TextFit.Clean(grid.Caption)], Side, Strong);
        y += 4;
        SetRow(grid, heads, widths, CellHead, 0, int.MaxValue);
        canvas.Line(Side, y, Width - Side, y, Stroke.Normal);
        foreach (var row in grid.Rows)
        {
            List<string>[] cells = [.. row.Select((c, i) => Lines(c, widths[i], Cell))];
            var lines = cells.Max(c => c.Count);
            for (var done = 0; done < lines;)
            {
                // A row stays together unless it is higher than half a page.
                var room = (int)((Bottom - y - 14) / Cell.Leading);
                var left = lines - done;
                if (left > room && (left * Cell.Leading < (Bottom - Top) / 2 || room < 3) || y + leastRow > Bottom)
                {
                    NewPage();
                    NeedRoom(headHeight + (3 * Cell.Leading) + leastRow);
                    SetRow(grid, heads, widths, CellHead, 0, int.MaxValue);
                    canvas.Line(Side, y, Width - Side, y, Stroke.Normal);
                    room = (int)((Bottom - y - 14) / Cell.Leading);
                }

                var now = Math.Max(1, Math.Min(left, room));
                var start = y;
                SetRow(grid, cells, widths, Cell, done, now);
                y = Math.Max(y, start + leastRow);
                done += now;
            }

            canvas.Line(Side, y, Width - Side, y, Stroke.Light);
        }

        y += 22;
    }

    private void SetRow(Grid grid, List<string>[] cells, double[] widths, TypeSize type, int from, int most)
    {
        var x = Side;
        var height = 0.0;
        for (var i = 0; i < cells.Length; i++)
        {
            var line = y + 3;
            foreach (var words in cells[i].Skip(from).Take(most))
            {
                line += type.Leading;
                if (words == Grid.Box)
                {
                    SetTick(x + Pad, line - (0.2 * type.Size));
                }
                else
                {
                    var isEnd = grid.Columns[i].IsNumber;
                    canvas.Text(isEnd ? x + widths[i] - Pad : x + Pad, line - (0.28 * type.Size), words, type, isEnd ? Anchor.End : Anchor.Start);
                }
            }

            height = Math.Max(height, line - y);
            x += widths[i];
        }

        y += height + 5;
    }

    private static List<string> Lines(string words, double width, TypeSize type) =>
        TextFit.Wrap(TextFit.Clean(words), width - (2 * Pad), type.Size, type.IsBold);

    private sealed record PairLines(List<string> Names, List<string> Values)
    {
        public double Height => Math.Max(Names.Count, Values.Count) * Cell.Leading;
    }
}
