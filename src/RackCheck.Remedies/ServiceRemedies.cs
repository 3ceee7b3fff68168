using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Power;

namespace RackCheck.Remedies;

/// <summary>Remedies for operation and service: consoles within reach, KVM ports for all hosts, remotely switched outlets.</summary>
public static class ServiceRemedies
{
    private static readonly MessageWording Ports = new("remedy.kvm-ports", "Use {item} with {ports} ports");
    private static readonly WordedText SwitchedPdus = new("remedy.switched-pdus", "Use PDUs with remotely switched outlets");
    private static readonly MessageWording RemoteKvm = new("remedy.remote-kvm", "Use a KVM switch with remote access for {item}");
    private static readonly MessageWording NoKvm = new("remedy.no-kvm", "Operate {items} without a KVM port");
    private static readonly MessageWording IntoSwitched = new("remedy.into-switched", "Plug {item} into remotely switched outlets");
    private static readonly MessageWording SwitchedOutlets = new("remedy.switched-outlets", "Use {pdus} with remotely switched outlets");
    private static readonly WordingChoice AddedSwitch = new(
        "remedy.kvm-add", "Add a {ports}-port KVM switch[remote: with remote access] at {units:units}[panels: in place of {panels}]");

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
            var fit = BlankingPanels.Fit(survey, new RemedyBuilder(survey).Place(what, bottom), (what, bottom, what.HeightU));
            yield return fit.Titled(RemedyTitles.Mount(survey.Cabinet, what, bottom, what.HeightU, fit.Displaced), nameof(MountWhere));
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
                    new(Ports, ("item", best.Id), ("ports", size)), survey.Description.EditItem(best.Index, i => i with { KvmPorts = size }));
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
                SwitchedPdus, survey.Description with { Pdus = [.. units.Select(SwitchedUnit)] });
        }

        if (Array.Find(survey.Items, i => i.Category == ItemCategory.KvmSwitch) is { } local)
        {
            yield return new RemedyCandidate(
                new(RemoteKvm, ("item", local.Id)), survey.Description.EditItem(local.Index, i => i with { RemoteAccess = true }));
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
        new(NoKvm, ("items", RackCheck.Survey.Names.Ids(items.Select(i => i.Id)))),
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
            yield return new RemedyCandidate(new(IntoSwitched, ("item", id)), survey.Description.WithoutConnections(c => c.Item == id));
        }

        var units = cords.Select(c => c.Group!.Unit).DistinctBy(u => u.Index).ToArray();
        yield return new RemedyCandidate(
            new(SwitchedOutlets, ("pdus", RackCheck.Survey.Names.Ids(units.Select(u => u.Id)))),
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
            var fit = BlankingPanels.Fit(survey, new RemedyBuilder(survey).AddItem(item).Place(what, bottom), (what, bottom, what.HeightU));
            var title = new WordedText(
                AddedSwitch.With(isRemote ? "remote" : null, fit.Displaced.Count > 0 ? "panels" : null),
                [
                    ("ports", ports), ("units", survey.Cabinet.Units(bottom, bottom)),
                    .. fit.Displaced.Count > 0 ? [("panels", RackCheck.Survey.Names.Ids(fit.Displaced.Select(p => p.Id)))] : ((string, Scalar)[])[],
                ]);
            yield return fit.Titled(title, nameof(AddSwitch));
        }
    }

    private static IEnumerable<int> Places(RackSurvey survey, MountedItem what, int wanted, Func<int, bool> suits)
    {
        var open = BlankingPanels.GivingWay(survey, what.Face);
        return Enumerable.Range(1, Math.Max(0, survey.Cabinet.HeightU - what.HeightU - what.LoadHeightU + 1))
            .Where(u => u != what.Bottom && suits(u) && open.CanGo(what, what.HeightU, u))
            .OrderBy(u => Math.Abs(u - wanted)).ThenBy(u => u).Take(MostPlaces);
    }
}
