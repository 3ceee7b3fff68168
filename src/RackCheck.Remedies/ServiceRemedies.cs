using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Remedies;

/// <summary>Remedies for operation and service: consoles within reach, KVM ports for all hosts, remotely switched outlets.</summary>
public static class ServiceRemedies
{
    private const int MostPlaces = 4;

    // Usual port numbers of KVM switches; common practice, no source.
    private static readonly int[] PortSizes = [4, 8, 16, 32];

    /// <summary>Mounts an item at the nearest suitable positions that are free or closed only by blanking panels.</summary>
    /// <param name="what">The item, with the items on it.</param>
    /// <param name="suits">Whether a lowest U position, counted from the bottom, is suitable.</param>
    /// <returns>Candidates, best first.</returns>
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

    /// <summary>KVM ports for all hosts that need one: a switch with more ports, or one more switch.</summary>
    /// <param name="best">The switch with the highest number of ports; null if there is none.</param>
    /// <param name="missing">Number of missing ports.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> MorePorts(RackSurvey survey, MountedItem? best, int missing)
    {
        if (best is not null)
        {
            var has = best.Item!.KvmPorts ?? 0;
            foreach (var size in PortSizes.Where(s => s >= has + missing).Take(1))
            {
                yield return new RemedyCandidate(
                    Invariant($"Use {best.Id} with {size} ports"), survey.Description.EditItem(best.Index, i => i with { KvmPorts = size }));
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

    /// <summary>Remotely switched outlets, or a KVM switch that can be used from another site.</summary>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> RemoteAccess(RackSurvey survey)
    {
        if (survey.Description.Pdus is { Count: > 0 } units)
        {
            yield return new RemedyCandidate(
                "Use PDUs with remotely switched outlets", survey.Description with { Pdus = [.. units.Select(SwitchedUnit)] });
        }

        if (Array.Find(survey.Items, i => i.Category == ItemCategory.KvmSwitch) is { } local)
        {
            yield return new RemedyCandidate(
                $"Use a KVM switch with remote access for {local.Id}", survey.Description.EditItem(local.Index, i => i with { RemoteAccess = true }));
        }
        else if (survey.HasRoomFor(1))
        {
            foreach (var candidate in AddSwitch(survey, PortSizes[0], isRemote: true))
            {
                yield return candidate;
            }
        }
    }

    /// <summary>Operates items without a KVM port.</summary>
    public static RemedyCandidate WithoutConsole(RackSurvey survey, IReadOnlyList<MountedItem> items) => new(
        $"Operate {Names(items)} without a KVM port",
        items.Aggregate(survey.Description, (d, item) => d.EditItem(item.Index, i => i with { Console = false })));

    /// <summary>Remotely switched outlets for cords.</summary>
    /// <param name="cords">Cords on outlets that are not remotely switched.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> Switched(RackSurvey survey, IReadOnlyList<Cord> cords)
    {
        // Without a given connection the service has already looked for such outlets.
        if (cords.Any(c => c.Connection is not null))
        {
            var id = cords[0].Item.Id;
            yield return new RemedyCandidate($"Plug {id} into remotely switched outlets", survey.Description.WithoutConnections(c => c.Item == id));
        }

        var units = cords.Select(c => c.Group!.Unit).DistinctBy(u => u.Index).ToArray();
        yield return new RemedyCandidate(
            $"Use {RackCheck.Survey.Names.List([.. units.Select(u => u.Id)])} with remotely switched outlets",
            units.Aggregate(survey.Description, (d, unit) => d.EditUnit(unit.Index, SwitchedUnit)));
    }

    /// <summary>A PDU with all its outlets remotely switched.</summary>
    /// <returns>The PDU with such outlets.</returns>
    public static Pdu SwitchedUnit(Pdu unit) => unit with
    {
        RemoteSwitched = true,

        // The value of an outlet has priority over that of the PDU.
        Groups = unit.Groups is null ? null :
        [
            .. unit.Groups.Select(g =>
                g.Outlets.Any(o => o.Switched == false)
                    ? g with { Outlets = [.. g.Outlets.Select(o => o with { Switched = o.Switched is null ? null : true })] }
                    : g),
        ],
    };

    /// <summary>Ids, as text.</summary>
    /// <param name="items">Items, at least one.</param>
    /// <returns>Text such as "a and b", or the first id and the number of others.</returns>
    public static string Names(IReadOnlyList<MountedItem> items) => RackCheck.Survey.Names.List([.. items.Select(i => i.Id)]);

    private static IEnumerable<RemedyCandidate> AddSwitch(RackSurvey survey, int ports, bool isRemote = false)
    {
        var id = survey.FreeItemId("kvm-switch");
        var item = new Item
        {
            Id = id, Category = ItemCategory.KvmSwitch, HeightU = 1, KvmPorts = ports, RemoteAccess = isRemote ? true : null,
            Support = new Support { Style = SupportStyle.Panel },
        };
        var what = new MountedItem
        {
            Index = survey.Items.Length, Id = id, Item = item, Category = ItemCategory.KvmSwitch, HeightU = 1,
            FrontProjectionMm = Allowances.FrontProjectionMm, RearProjectionMm = Allowances.RearProjectionBareMm,
        };
        var wanted = Array.Find(survey.Occupancy.ByPlace, m => m.Category == ItemCategory.KeyboardDrawer)?.Top + 1 ?? survey.Cabinet.HeightU / 2;
        foreach (var bottom in Places(survey, what, wanted, static _ => true).Take(2))
        {
            var (after, panels) = Freed(survey, new RemedyBuilder(survey).AddItem(item).Place(what, bottom).Titled("").After, what, bottom);
            var kind = isRemote ? "KVM switch with remote access" : "KVM switch";
            yield return new RemedyCandidate(
                Invariant($"Add a {ports}-port {kind} at {survey.Cabinet.UnitsText(bottom, bottom)}{panels}"), after, nameof(AddSwitch));
        }
    }

    private static IEnumerable<int> Places(RackSurvey survey, MountedItem what, int wanted, Func<int, bool> suits)
    {
        var open = new Occupancy(survey.Cabinet, Array.FindAll(survey.Items, i => i.Category != ItemCategory.BlankingPanel), survey.Units);
        return Enumerable.Range(1, Math.Max(0, survey.Cabinet.HeightU - what.HeightU - what.LoadHeightU + 1))
            .Where(u => u != what.Bottom && suits(u) && open.CanGo(what, what.HeightU, u))
            .OrderBy(u => Math.Abs(u - wanted)).ThenBy(u => u).Take(MostPlaces);
    }

    // Blanking panels at the position are removed.
    private static (RackDescription After, string Words) Freed(RackSurvey survey, RackDescription after, MountedItem what, int bottom)
    {
        var top = bottom + what.HeightU - 1 + what.LoadHeightU;
        var panels = Array.FindAll(
            survey.Occupancy.ByPlace, p => p.Category == ItemCategory.BlankingPanel && p.Face == what.Face && p.Bottom <= top && p.Top >= bottom);
        return panels.Length == 0 ? (after, "") : (after.WithoutItems(panels.Select(p => p.Id)), " in place of " + Names(panels));
    }
}
