using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Remedies;

/// <summary>What the trade does so that a rack can be worked at: consoles in reach, ports for all, outlets that are switched from afar.</summary>
public static class ServiceRemedies
{
    private const int MostPlaces = 4;

    // Ports that KVM switches are sold with; common practice, no source.
    private static readonly int[] PortSizes = [4, 8, 16, 32];

    /// <summary>Mounts something at the nearest places that suit, where they are free or closed by blanking panels only.</summary>
    /// <param name="survey">The facts.</param>
    /// <param name="what">What is mounted, with what stands on it.</param>
    /// <param name="suits">Whether a lowest unit, counted from below, does.</param>
    /// <returns>Cures, best first.</returns>
    public static IEnumerable<RemedyCandidate> MountWhere(RackSurvey survey, MountedItem what, Func<int, bool> suits)
    {
        foreach (var bottom in Places(survey, what, what.Bottom ?? 1, suits))
        {
            var (after, panels) = Freed(survey, new RemedyBuilder(survey).Place(what, bottom).Titled("").After, what, bottom);
            yield return new RemedyCandidate(
                $"Mount {what.Id} at {survey.Cabinet.UnitsText(bottom, bottom + what.HeightU - 1)}, {CabinetFacts.FaceText(what.Face)}{panels}", after,
                nameof(MountWhere));
        }
    }

    /// <summary>Ports for all that want one: the switch with more, or one more switch.</summary>
    /// <param name="survey">The facts.</param>
    /// <param name="best">The switch with the most ports; null where there is none.</param>
    /// <param name="missing">How many ports are missing.</param>
    /// <returns>Cures, best first.</returns>
    public static IEnumerable<RemedyCandidate> MorePorts(RackSurvey survey, MountedItem? best, int missing)
    {
        if (best is not null)
        {
            var has = best.Item!.KvmPorts ?? 0;
            foreach (var size in PortSizes.Where(s => s >= has + missing).Take(1))
            {
                yield return new RemedyCandidate(
                    Invariant($"Take {best.Id} with {size} ports"), survey.Description.EditItem(best.Index, i => i with { KvmPorts = size }));
            }
        }

        foreach (var size in PortSizes.Where(s => s >= missing).Take(survey.HasRoomFor(1) ? 1 : 0))
        {
            foreach (var candidate in AddSwitch(survey, size))
            {
                yield return candidate;
            }
        }
    }

    /// <summary>Lets items do without a console port.</summary>
    /// <param name="survey">The facts.</param>
    /// <param name="items">The items.</param>
    /// <returns>The cure.</returns>
    public static RemedyCandidate WithoutConsole(RackSurvey survey, IReadOnlyList<MountedItem> items) => new(
        $"Run {Names(items)} without a console port",
        items.Aggregate(survey.Description, (d, item) => d.EditItem(item.Index, i => i with { Console = false })));

    /// <summary>Outlets that are switched from afar for cords.</summary>
    /// <param name="survey">The facts.</param>
    /// <param name="cords">Cords on outlets that are not.</param>
    /// <returns>Cures, best first.</returns>
    public static IEnumerable<RemedyCandidate> Switched(RackSurvey survey, IReadOnlyList<Cord> cords)
    {
        // Where the caller has not said where they go the service has looked for such outlets already.
        if (cords.Any(c => c.Connection is not null))
        {
            var id = cords[0].Item.Id;
            yield return new RemedyCandidate($"Plug {id} into outlets that are switched from afar", survey.Description.WithoutConnections(c => c.Item == id));
        }

        var units = cords.Select(c => c.Group!.Unit).DistinctBy(u => u.Index).ToArray();
        yield return new RemedyCandidate(
            $"Take {RackCheck.Survey.Names.List([.. units.Select(u => u.Id)])} with outlets that are switched from afar",
            units.Aggregate(survey.Description, (d, unit) => d.EditUnit(unit.Index, SwitchedUnit)));
    }

    /// <summary>A PDU with all its outlets switched from afar.</summary>
    /// <param name="unit">The unit.</param>
    /// <returns>It with such outlets.</returns>
    public static Pdu SwitchedUnit(Pdu unit) => unit with
    {
        RemoteSwitched = true,

        // What an outlet says of itself counts before the unit's word.
        Groups =
        [
            .. unit.Groups!.Select(g =>
                g.Outlets.Any(o => o.Switched == false)
                    ? g with { Outlets = [.. g.Outlets.Select(o => o with { Switched = o.Switched is null ? null : true })] }
                    : g),
        ],
    };

    /// <summary>Ids for reading.</summary>
    /// <param name="items">Items, one at least.</param>
    /// <returns>As "a and b", or the first and how many more.</returns>
    public static string Names(IReadOnlyList<MountedItem> items) => RackCheck.Survey.Names.List([.. items.Select(i => i.Id)]);

    private static IEnumerable<RemedyCandidate> AddSwitch(RackSurvey survey, int ports)
    {
        var id = survey.FreeItemId("kvm-switch");
        var item = new Item { Id = id, Category = ItemCategory.KvmSwitch, HeightU = 1, KvmPorts = ports, Support = new Support { Style = SupportStyle.Panel } };
        var what = new MountedItem
        {
            Index = survey.Items.Length, Id = id, Item = item, Category = ItemCategory.KvmSwitch, HeightU = 1,
            FrontProjectionMm = Allowances.FrontProjectionMm, RearProjectionMm = Allowances.RearProjectionBareMm,
        };
        var wanted = Array.Find(survey.Occupancy.ByPlace, m => m.Category == ItemCategory.KeyboardDrawer)?.Top + 1 ?? survey.Cabinet.HeightU / 2;
        foreach (var bottom in Places(survey, what, wanted, static _ => true).Take(2))
        {
            var (after, panels) = Freed(survey, new RemedyBuilder(survey).AddItem(item).Place(what, bottom).Titled("").After, what, bottom);
            yield return new RemedyCandidate(
                Invariant($"Add a KVM switch of {ports} ports at {survey.Cabinet.UnitsText(bottom, bottom)}{panels}"), after, nameof(AddSwitch));
        }
    }

    private static IEnumerable<int> Places(RackSurvey survey, MountedItem what, int wanted, Func<int, bool> suits)
    {
        var open = new Occupancy(survey.Cabinet, Array.FindAll(survey.Items, i => i.Category != ItemCategory.BlankingPanel), survey.Units);
        return Enumerable.Range(1, Math.Max(0, survey.Cabinet.HeightU - what.HeightU - what.LoadHeightU + 1))
            .Where(u => u != what.Bottom && suits(u) && open.CanGo(what, what.HeightU, u))
            .OrderBy(u => Math.Abs(u - wanted)).ThenBy(u => u).Take(MostPlaces);
    }

    // The panels that closed the place are left out.
    private static (RackDescription After, string Words) Freed(RackSurvey survey, RackDescription after, MountedItem what, int bottom)
    {
        var top = bottom + what.HeightU - 1 + what.LoadHeightU;
        var panels = Array.FindAll(
            survey.Occupancy.ByPlace, p => p.Category == ItemCategory.BlankingPanel && p.Face == what.Face && p.Bottom <= top && p.Top >= bottom);
        return panels.Length == 0 ? (after, "") : (after.WithoutItems(panels.Select(p => p.Id)), " in place of " + Names(panels));
    }
}
