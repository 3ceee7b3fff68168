using System.Numerics;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Remedies;

/// <summary>Blanking panels in remedies: they give way to equipment, and close the U positions that it leaves open.</summary>
public static class BlankingPanels
{
    /// <summary>Tallest common blanking panel, U.</summary>
    public const int LargestU = 6;

    /// <summary>Title of the work on panels that belongs to a remedy.</summary>
    public static readonly WordedText Refit = new("remedy.refit-panels", "Refit the blanking panels");

    /// <summary>Title of the same where no panel was in the way.</summary>
    public static readonly WordedText CloseOld = new("remedy.close-position", "Fit blanking panels in the U positions that it leaves");

    /// <summary>Whether a mounted item is a blanking panel.</summary>
    public static bool IsPanel(MountedItem item) => item.Category == ItemCategory.BlankingPanel;

    /// <summary>Number of panels that close a range of U positions.</summary>
    public static int CountFor(int units) => (units + LargestU - 1) / LargestU;

    /// <summary>The occupied U positions where panels give way.</summary>
    /// <param name="face">The face whose panels give way.</param>
    /// <returns>The occupied positions; those of the survey if there are no panels on this face.</returns>
    public static Occupancy GivingWay(RackSurvey survey, Face face) => Array.Exists(survey.Items, i => IsPanel(i) && i.Face == face)
        ? new Occupancy(survey.Cabinet, Array.FindAll(survey.Items, i => !IsPanel(i) || i.Face != face), survey.Units)
        : survey.Occupancy;

    /// <summary>Adds panels that close a range of front U positions.</summary>
    /// <param name="builder">The remedy.</param>
    /// <param name="bottom">Lowest U position, counted from the bottom.</param>
    /// <param name="top">Highest U position.</param>
    /// <returns>Their heights, U, from the bottom.</returns>
    public static IReadOnlyList<int> Close(RackSurvey survey, RemedyBuilder builder, int bottom, int top)
    {
        var heights = new List<int>();
        for (var unit = bottom; unit <= top; unit += LargestU)
        {
            var height = Math.Min(LargestU, top - unit + 1);
            builder.AddItem(new Item
            {
                Id = survey.FreeItemId(FormattableString.Invariant($"blanking-{survey.Cabinet.Renumber(unit)}")),
                Category = ItemCategory.BlankingPanel,
                HeightU = height,
                Position = new Position { U = survey.Cabinet.Renumber(unit), Face = Face.Front },
            });
            heights.Add(height);
        }

        return heights;
    }

    /// <summary>
    /// Takes the panels out of the way of items that a remedy mounts on one face. U positions that were closed and stay open are closed with these panels
    /// where their height suits, else with new ones. Where no panel is in the way, the rack stays as it is.
    /// </summary>
    /// <param name="builder">The remedy, which has mounted the items.</param>
    /// <param name="mounted">The items with their new lowest U positions, counted from the bottom, and heights in U; all on one face.</param>
    /// <returns>The changed rack.</returns>
    public static PanelFit Fit(RackSurvey survey, RemedyBuilder builder, params IReadOnlyList<(MountedItem Item, int Bottom, int HeightU)> mounted) =>
        Fit(survey, builder, mounted, closesAll: false);

    /// <summary>
    /// Takes the panels out of the way of one item; where equipment has airflow front to rear, the position that it leaves is closed in any case.
    /// </summary>
    /// <param name="builder">The remedy, which has mounted the item.</param>
    /// <param name="item">The item.</param>
    /// <param name="bottom">Its new lowest U position, counted from the bottom.</param>
    /// <returns>The changed rack.</returns>
    public static PanelFit FitAndClose(RackSurvey survey, RemedyBuilder builder, MountedItem item, int bottom) => Fit(
        survey, builder, [(item, bottom, item.HeightU)],
        closesAll: Array.Exists(survey.Items, i => i.Item!.Airflow?.Direction == AirflowDirection.FrontToRear));

    private static PanelFit Fit(
        RackSurvey survey, RemedyBuilder builder, IReadOnlyList<(MountedItem Item, int Bottom, int HeightU)> mounted, bool closesAll)
    {
        if (mounted.Count == 0)
        {
            return new(builder.After, [], false);
        }

        var face = mounted[0].Item.Face;
        var taken = mounted.Aggregate(0UL, static (bits, m) => bits | Occupancy.Mask(m.Bottom, m.Bottom + m.HeightU - 1 + m.Item.LoadHeightU));
        var here = Array.FindAll(survey.Occupancy.ByPlace, m => m.Face == face);
        var displaced = Array.FindAll(here, m => IsPanel(m) && (MaskOf(m) & taken) != 0 && !mounted.Any(i => ReferenceEquals(i.Item, m)));
        if (displaced.Length == 0 && !closesAll)
        {
            return new(builder.After, [], false);
        }

        var before = here.Aggregate(0UL, static (bits, m) => bits | MaskOf(m));
        var after = here.Where(m => !displaced.Contains(m) && !mounted.Any(i => ReferenceEquals(i.Item, m)))
            .Aggregate(taken, static (bits, m) => bits | MaskOf(m));
        var open = before & ~after & Occupancy.Mask(1, survey.Cabinet.HeightU);
        var spare = displaced.ToList();
        var isRefitted = open != 0 && face == Face.Front;
        while (isRefitted && open != 0)
        {
            var bottom = BitOperations.TrailingZeroCount(open) + 1;
            var top = bottom + BitOperations.TrailingZeroCount(~(open >> (bottom - 1))) - 1;
            open &= ~Occupancy.Mask(bottom, top);
            if (spare.Find(p => p.HeightU == top - bottom + 1) is { } panel)
            {
                spare.Remove(panel);
                builder.Place(panel, bottom);
            }
            else if (survey.HasRoomFor(CountFor(top - bottom + 1)))
            {
                Close(survey, builder, bottom, top);
            }
        }

        return new(spare.Count == 0 ? builder.After : builder.After.WithoutItems(spare.Select(p => p.Id)), displaced, isRefitted);
    }

    private static ulong MaskOf(MountedItem item) => Occupancy.Mask(item.Bottom!.Value, item.ClaimTop);
}

/// <summary>A rack whose panels have given way to what a remedy mounts.</summary>
/// <param name="After">The rack.</param>
/// <param name="Displaced">The panels that were in the way, from the bottom.</param>
/// <param name="IsRefitted">Whether panels close U positions that the remedy leaves open.</param>
public sealed record PanelFit(RackDescription After, IReadOnlyList<MountedItem> Displaced, bool IsRefitted)
{
    /// <summary>The remedy, whose title names the work on panels.</summary>
    /// <param name="title">Title of the change.</param>
    /// <param name="kind">Its kind; null for one of its own.</param>
    public RemedyCandidate Titled(WordedText title, string? kind = null) => new(
        !IsRefitted ? title : title.Then(Displaced.Count > 0 ? BlankingPanels.Refit : BlankingPanels.CloseOld), After, kind);
}
