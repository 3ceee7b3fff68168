using RackCheck.Documents.Parts;
using RackCheck.Model;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Documents.Drawings.Elevations;

/// <summary>The column beside the views: figures, depth stack, feeds, key, plan, and what has no place in the views.</summary>
internal sealed class Notes(Scene scene, IReadOnlyList<ElevationView> views, Canvas canvas, double left, double top)
{
    /// <summary>Width of the column.</summary>
    public const double Width = 760;

    private const double KeySample = 90;

    private double y = top;

    /// <summary>Draws the column.</summary>
    /// <returns>Its lower edge.</returns>
    public double Draw()
    {
        DrawFigures();
        if (new DepthStack(scene) is { Deepest: { } deepest } stack && views.Contains(ElevationView.Side))
        {
            Head($"Depth stack of {TextFit.Isolate(deepest.Id)}, mm");
            foreach (var (what, depth) in stack.Lines(deepest))
            {
                Pair(depth < 0 ? what + ": too deep by" : what, Invariant($"{Math.Abs(depth):0.#}"));
            }

            Pair("Overall depth of the cabinet", Invariant($"{scene.Cabinet.Depth.DepthMm:0.#}"));
        }

        DrawFeeds();
        DrawCooler();
        DrawUnplaced();
        DrawPlan();
        DrawKey();
        return y;
    }

    private void Head(string words)
    {
        y += 26 + TypeSize.Bold.Leading;
        canvas.Text(left, y, words, TypeSize.Bold, within: Width);
        y += 8;
        canvas.Line(left, y, left + Width, y, Stroke.Thin);
    }

    private void Pair(string name, string value)
    {
        y += TypeSize.Small.Leading;
        var used = canvas.Text(left + Width, y, value, TypeSize.Small, Anchor.End, within: Width / 2);
        canvas.Text(left, y, name, TypeSize.Small, within: Width - used - 16);
    }

    private void DrawFigures()
    {
        var (figures, cabinet) = (scene.Rack.Report.Figures, scene.Cabinet);
        Head("Figures");
        if (figures.Space is { } space)
        {
            Pair("Mounting space", Invariant($"{space.UnitsTotal}U"));
            Pair("Used", Invariant($"{space.UnitsUsed}U"));
            Pair("Free", Invariant($"{space.UnitsFree}U"));
            Pair("Largest gap", Invariant($"{space.LargestGapU}U"));
        }

        Pair("Width x depth x height, mm", Invariant($"{cabinet.WidthMm:0.#} x {cabinet.Depth.DepthMm:0.#} x {cabinet.Heights.OverallMm:0.#}"));
        if (figures.Mass is { EquipmentKg: { } equipment } mass)
        {
            Pair("Mass of the equipment", Invariant($"{equipment:0.##} kg"));
            if (mass.TotalKg is { } total)
            {
                Pair("Mass with the cabinet", Invariant($"{total:0.##} kg"));
            }
        }

        if (figures.Power is { RatedW: { } rated })
        {
            Pair("Rated power", Invariant($"{rated:0.#} W"));
        }

        if (figures.Cooling is { HeatW: { } heat })
        {
            Pair("Heat", Invariant($"{heat:0.#} W"));
        }

        Pair("Uprights", Uprights(cabinet));
    }

    private static string Uprights(CabinetFacts cabinet)
    {
        var hole = cabinet.Source.Uprights?.Hole switch
        {
            UprightHole.Square => "square holes",
            UprightHole.Round => "round holes",
            UprightHole.Threaded => "threaded holes",
            _ => "hole type not given",
        };
        var spacing = cabinet.SpacingMm is { } mm ? Invariant($", spacing {mm:0.#} mm") : ", spacing not given";
        return hole + spacing;
    }

    private void DrawFeeds()
    {
        var supplies = scene.Survey.Power.Supplies;
        if (supplies.Length == 0 || !views.Contains(ElevationView.Rear))
        {
            return;
        }

        Head("Feeds and their cords");
        foreach (var supply in supplies)
        {
            y += TypeSize.Small.Leading;
            canvas.Line(left, y - 8, left + KeySample - 16, y - 8, Scene.CordOf(supply));
            var count = scene.Survey.Power.Cords.Count(c => c.Group?.Unit is { FedBy: null } unit && ReferenceEquals(unit.Supply, supply));
            var letter = scene.Letters[supply.Index];
            var id = supply.Id == letter ? "" : TextFit.Isolate(supply.Id) + ", ";
            var words = Invariant($"{letter}: {id}{SupplyWords.VoltageOf(supply)}, {supply.RatedA:0.#} A, ") + Count(count, "cord");
            canvas.Text(left + KeySample, y, words, TypeSize.Small, within: Width - KeySample);
        }

        foreach (var ups in scene.Survey.Power.Ups.Where(u => u.Units.Count > 0))
        {
            y += TypeSize.Small.Leading;
            canvas.Line(left, y - 8, left + KeySample - 16, y - 8, Stroke.CordUps);
            var count = scene.Survey.Power.Cords.Count(c => ReferenceEquals(c.Group?.Unit.FedBy, ups));
            var words = $"{scene.LetterOf(ups)}: {TextFit.Isolate(ups.Item.Id)}, {Count(count, "cord")}";
            canvas.Text(left + KeySample, y, words, TypeSize.Small, within: Width - KeySample);
        }

        var cords = scene.Survey.Power.Cords;
        if (cords.Count(c => c.Group is null) is > 0 and var open)
        {
            Pair("Without an outlet", Count(open, "cord"));
        }

        if (cords.Count(c => c.Group is not null) - scene.DrawnCords is > 0 and var hidden)
        {
            Pair("Not drawn: the item or the PDU is not in the view", Count(hidden, "cord"));
        }
    }

    private void DrawCooler()
    {
        if (scene.Survey.Description.Cooling?.AirConditioner is not { } cooler)
        {
            return;
        }

        Head("Air conditioner");
        var heat = scene.Survey.Heat;
        Pair("Style and rated capacity", $"{CoolerParts.TextOf(cooler)}{Invariant($" at {heat.RatedAmbientC:0.#} C")}");
        Pair("Setpoint", Invariant($"{heat.SetpointC:0.#} C"));
        Pair("Mains feed", cooler.Supply is { } supply ? $"supply {TextFit.Isolate(supply)}" : "of its own, to be provided");
        y += TypeSize.Small.Leading;
        canvas.Text(left, y, CoolerOutline.PlaceWords, TypeSize.Small, within: Width);
    }

    private static string Count(int count, string word) => Invariant($"{count} {word}{(count == 1 ? "" : "s")}");

    // Everything that is not to be seen in the views: without a place, outside the rack, behind something else.
    private void DrawUnplaced()
    {
        var survey = scene.Survey;
        var loose = survey.Items.Where(i => i.Shelf is null && !i.IsPlaced || i.Shelf is { IsPlaced: false }).ToList();
        List("No place given", loose.Select(i => (Entry(i, null), (MountedItem?)i)));
        List(
            "Outside the rack",
            survey.Items.Concat(survey.Units).Where(i => (i.Shelf ?? i) is { IsPlaced: true } carrier && !scene.IsInside(carrier))
                .Select(i => (Entry(i, PlaceOf(i, withFace: false)), (MountedItem?)i)));
        List(
            "Behind other equipment",
            survey.Items.Concat(survey.Units)
                .Where(i => !scene.Named.Contains(i) && (scene.IsInside(i) || i.Shelf is { } shelf && scene.IsInside(shelf)))
                .Select(i => (Entry(i, PlaceOf(i, withFace: true)), (MountedItem?)null)));
        List(
            "PDUs not drawn",
            survey.Power.Units.Where(u => views.Contains(ElevationView.Rear) && !scene.DrawnPdus.Contains(u))
                .Where(u => !Array.Exists(survey.Units, m => m.Index == u.Index))
                .Select(u => (TextFit.Isolate(u.Id) + (u.Source.Mounting is null ? ": mounting not given" : ": no place given"), (MountedItem?)null)));
    }

    private string PlaceOf(MountedItem item, bool withFace) => item.Shelf is { } shelf ? $"on {TextFit.Isolate(shelf.Id)}"
        : scene.Cabinet.UnitsText(item.Bottom!.Value, item.Top) + (withFace ? $", {CabinetFacts.FaceText(item.Face)}" : "");

    private static string Entry(MountedItem item, string? place)
    {
        var mass = item.Item?.MassKg is { } kilograms ? Invariant($", {kilograms:0.##} kg") : "";
        return TextFit.Isolate(item.Id) + (place is null ? "" : $", {place}") + $", {Scene.HeightText(item)}{mass}";
    }

    private void List(string head, IEnumerable<(string Words, MountedItem? Item)> entries)
    {
        var all = entries.ToList();
        if (all.Count == 0)
        {
            return;
        }

        Head(head);
        foreach (var (words, item) in all)
        {
            y += TypeSize.Small.Leading;
            if (item is null)
            {
                canvas.Text(left, y, words, TypeSize.Small, within: Width);
            }
            else
            {
                var line = y;
                canvas.Group(
                    scene.Tell(item), scene.DataWithPlace(item, "list"), g => g.Text(left, line, words, TypeSize.Small, within: Width));
            }
        }
    }

    private void DrawPlan()
    {
        if (!views.Contains(ElevationView.Side))
        {
            return;
        }

        Head("Plan of the doors, scale 1:25");
        y = PlanView.Draw(canvas, scene, left, y + 16, Width);
    }

    private void DrawKey()
    {
        Head("Key");
        Sample("into the sheet, out of it: airflow through equipment", (g, x, at) =>
        {
            ItemSigns.DrawAir(g, AirflowDirection.FrontToRear, Face.Front, x + 18, at);
            ItemSigns.DrawAir(g, AirflowDirection.FrontToRear, Face.Rear, x + 52, at);
        });
        Sample("blanking panel", (g, x, at) => Sign(g, ItemCategory.BlankingPanel, x, at));
        Sample("cable manager", (g, x, at) => Sign(g, ItemCategory.CableManager, x, at));
        Sample("shelf", (g, x, at) => Sign(g, ItemCategory.Shelf, x, at));
        Sample("hidden edge; in the side view projection, cables and bend radius", (g, x, at) => g.Line(x, at, x + KeySample - 16, at, Stroke.Hidden));
        Sample("runners; slides: two lines", (g, x, at) =>
        {
            g.Line(x, at, x + 34, at, Stroke.Thick);
            g.Line(x + 40, at - 2, x + 74, at - 2, Stroke.Normal);
            g.Line(x + 40, at + 3, x + 74, at + 3, Stroke.Normal);
        });
        if (scene.Rack.Changes.Count > 0)
        {
            DrawChangeKey();
        }
    }

    private void DrawChangeKey()
    {
        foreach (var (kind, words) in ((ChangeKind, string)[])
            [(ChangeKind.Came, "new"), (ChangeKind.Went, "goes"), (ChangeKind.Moved, "moved"), (ChangeKind.Changed, "other data")])
        {
            Sample(words, (g, x, at) => ItemSigns.DrawChange(g, kind, new Area(x + 20, at - 11, 30, 22)));
        }
    }

    private static void Sign(Canvas group, ItemCategory category, double x, double at) => ItemSigns.DrawFace(
        group, new MountedItem { Index = -1, Id = "", HeightU = 1, Category = category }, new Area(x, at - 11, KeySample - 16, 22));

    private void Sample(string words, Action<Canvas, double, double> draw)
    {
        y += TypeSize.Small.Leading + 4;
        draw(canvas, left, y - 8);
        canvas.Text(left + KeySample, y, words, TypeSize.Small, within: Width - KeySample);
    }
}
