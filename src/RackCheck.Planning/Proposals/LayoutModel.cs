using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Planning.Building;
using RackCheck.Planning.Layouts;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Planning.Proposals;

/// <summary>Good practice in a layout, given up step by step where it does not fit.</summary>
internal enum LayoutPractice
{
    /// <summary>Patch panels, cable managers and switches together, and all that follows.</summary>
    PatchField,

    /// <summary>Each switch with its managers and panels, and all that follows.</summary>
    PatchGroups,

    /// <summary>UPSs and batteries at the bottom, consoles at working height, opposite airflows apart.</summary>
    All,

    /// <summary>Consoles at working height, opposite airflows apart.</summary>
    WorkingHeight,

    /// <summary>Only what fits and what runners need.</summary>
    None,
}

/// <summary>What the check found against positions.</summary>
internal sealed class LayoutBans
{
    /// <summary>Ids of items that may not be adjacent.</summary>
    public List<(string One, string Other)> Apart { get; } = [];

    /// <summary>Positions that may not occur together.</summary>
    public List<IReadOnlyList<(string Id, int U)>> Together { get; } = [];
}

/// <summary>Turns a rack into blocks to place.</summary>
internal static class LayoutModel
{
    /// <summary>The problem of placing the items of a rack.</summary>
    /// <param name="context">The rule limits and the positions to keep.</param>
    /// <param name="build">The rack with its shelves, rails and other parts.</param>
    /// <param name="practice">Good practice to follow.</param>
    /// <param name="bans">What the check found.</param>
    public static LayoutProblem Of(BasketContext context, RackBuild build, LayoutPractice practice, LayoutBans bans)
    {
        var survey = SurveyOf(build);
        var carriers = CarriersOf(build, survey);
        var bottomU = BottomU(carriers);
        var banned = bans.Apart.SelectMany(p => new[] { p.One, p.Other })
            .Concat(bans.Together.SelectMany(t => t.Select(p => p.Id)))
            .ToHashSet(StringComparer.Ordinal);
        var hasRear = carriers.Any(c => c.First.Face == Face.Rear);
        LayoutBlock[] blocks =
        [
            .. carriers.Select(c =>
            {
                var (item, mounted) = c;
                int[] starts = [.. StartsOf(context, survey.Cabinet, item, mounted, practice, bottomU)];
                var block = new LayoutBlock
                {
                    Id = item.Id,
                    HeightU = ClaimU(mounted),
                    MassG = (long)Math.Round(1000 * MassSurvey.LoadedKg(mounted)),
                    Face = item.Face,
                    Starts = starts,
                    Kind = "",
                };
                return block with
                {
                    Kind = item.Kept is not null || banned.Contains(item.Id) || hasRear
                        ? item.Id
                        : Invariant($"\n{block.HeightU} {block.MassG} {item.MayRun} {item.Creeps} {DirectionOf(mounted)} {string.Join(' ', starts)}"),
                };
            }),
        ];
        var index = blocks.Index().ToDictionary(b => b.Item.Id, b => b.Index, StringComparer.Ordinal);
        return new LayoutProblem
        {
            HeightU = survey.Cabinet.HeightU,
            Blocks = blocks,
            Apart =
            [
                .. ApartOf(carriers, practice),
                .. bans.Apart.SelectMany(p => new[] { new ApartGroup([index[p.One]], [index[p.Other]]), new ApartGroup([index[p.Other]], [index[p.One]]) }),
            ],
            Meeting = [.. MeetingOf(survey, carriers)],
            Stacks = [.. StacksOf(carriers, practice)],
            Forbidden = [.. bans.Together.Select(t => t.Select(p => (index[p.Id], p.U)).ToArray())],
        };
    }

    /// <summary>Whether a rack has a patch field.</summary>
    /// <param name="build">The rack.</param>
    public static bool HasPatchField(RackBuild build) => StacksOf(CarriersOf(build, SurveyOf(build)), LayoutPractice.PatchField).Any();

    /// <summary>The items of a rack that take a height, panels apart, each with what it takes: a shelf with the highest of what stands on it.</summary>
    /// <param name="build">The rack with its shelves.</param>
    public static Dictionary<string, long> ClaimsOf(RackBuild build) => CarriersOf(build, SurveyOf(build))
        .ToDictionary(c => c.First.Id, c => (long)ClaimU(c.Second), StringComparer.Ordinal);

    /// <summary>Whether an item is a panel that the service adds. Panels close what the layout leaves free.</summary>
    public static bool IsPanel(BuildItem item) => item.Item.Category == ItemCategory.BlankingPanel && OwnEquipment.IdOf(item.Piece.PartNumber) is null;

    private static RackSurvey SurveyOf(RackBuild build) => new(build.Describe() with { Pdus = null, Supplies = null, Connections = null });

    private static (BuildItem First, MountedItem Second)[] CarriersOf(RackBuild build, RackSurvey survey) =>
        [.. build.Items.Zip(survey.Items).Where(c => c.First.HeightU > 0 && !IsPanel(c.First))];

    private static int ClaimU(MountedItem mounted) => mounted.HeightU + mounted.LoadHeightU;

    private static bool IsBottom(MountedItem mounted) => mounted.Category is ItemCategory.Ups or ItemCategory.Battery;

    // Height in which all UPSs and batteries fit one on the other, with a free U between runners that need one.
    private static int BottomU((BuildItem First, MountedItem Second)[] carriers)
    {
        var heavy = carriers.Where(c => IsBottom(c.Second) && c.First.Kept is null).ToArray();
        var creeps = Array.Exists(heavy, c => c.First.Creeps);
        return heavy.Sum(c => ClaimU(c.Second)) + (creeps ? Math.Max(0, heavy.Count(c => c.First.MayRun) - 1) : 0);
    }

    private static IEnumerable<int> StartsOf(
        BasketContext context, CabinetFacts cabinet, BuildItem item, MountedItem mounted, LayoutPractice practice, int bottomU)
    {
        if (item.Kept is { } kept)
        {
            return [kept.U];
        }

        var starts = Enumerable.Range(1, Math.Max(0, cabinet.HeightU - ClaimU(mounted) + 1));
        if (practice <= LayoutPractice.All && IsBottom(mounted))
        {
            starts = starts.Where(u => u + ClaimU(mounted) - 1 <= bottomU);
        }

        if (practice == LayoutPractice.None || Places.ConsoleOf(mounted) is not { } console)
        {
            return starts;
        }

        // A low cabinet may have no suitable height for a display; then the highest that there is.
        var (least, greatest) = Places.WorkingHeight(context.Rules, console);
        int[] suitable =
        [
            .. starts.Where(u => cabinet.Heights.CentreMm(console, u) is not { } height
                || (!Comparison.IsOver(height, greatest) && !Comparison.IsOver(least, height))),
        ];
        return suitable.Length > 0 ? suitable : starts;
    }

    private static IEnumerable<ApartGroup> ApartOf((BuildItem First, MountedItem Second)[] carriers, LayoutPractice practice)
    {
        int[] runs = [.. carriers.Index().Where(c => c.Item.First.MayRun).Select(c => c.Index)];
        int[] creeps = [.. runs.Where(i => carriers[i].First.Creeps)];
        if (creeps.Length > 0 && runs.Length > 1)
        {
            yield return new ApartGroup(creeps, runs);
            yield return new ApartGroup(runs, creeps);
        }

        int[] forward = [.. With(AirflowDirection.FrontToRear)];
        int[] backward = [.. With(AirflowDirection.RearToFront)];
        if (practice != LayoutPractice.None && forward.Length > 0 && backward.Length > 0)
        {
            yield return new ApartGroup(forward, backward);
            yield return new ApartGroup(backward, forward);
        }

        IEnumerable<int> With(AirflowDirection direction) => carriers.Index().Where(c => DirectionOf(c.Item.Second) == direction).Select(c => c.Index);
    }

    // What is kept stays where it is, and runners may need a free U.
    private static IEnumerable<IReadOnlyList<int>> StacksOf((BuildItem First, MountedItem Second)[] carriers, LayoutPractice practice)
    {
        if (practice > LayoutPractice.PatchGroups)
        {
            return [];
        }

        int[] free =
        [
            .. carriers.Index().Where(c => c.Item.First is { Kept: null, MayRun: false, Face: Face.Front } && c.Item.Second.Load.Count == 0)
                .Select(c => c.Index),
        ];
        var groups = PatchField.GroupsOf([.. free.Select(i => carriers[i].Second.Item!)]).Select(g => g.Select(i => free[i]).ToArray()).ToArray();
        return (practice == LayoutPractice.PatchField ? [[.. groups.SelectMany(g => g)]] : groups).Where(s => s.Length > 1);
    }

    private static AirflowDirection? DirectionOf(MountedItem mounted) => mounted.Item!.Airflow?.Direction;

    private static IEnumerable<(int Front, int Rear)> MeetingOf(RackSurvey survey, (BuildItem First, MountedItem Second)[] carriers)
    {
        foreach (var (rear, r) in carriers.Index().Where(c => c.Item.First.Face == Face.Rear).Select(c => (c.Item.Second, c.Index)))
        {
            foreach (var (front, f) in carriers.Index().Where(c => c.Item.First.Face == Face.Front).Select(c => (c.Item.Second, c.Index)))
            {
                if (survey.Occupancy.Meet(front, rear) != Meeting.No)
                {
                    yield return (f, r);
                }
            }
        }
    }
}
