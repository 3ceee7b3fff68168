using RackCheck.Documents.Parts;
using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Model.Converters;
using RackCheck.Planning.Building;
using RackCheck.Rules;
using RackCheck.Rules.Earthing;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Power;
using static RackCheck.Documents.Sheets.SheetContext;
using static System.FormattableString;

namespace RackCheck.Documents.Sheets;

/// <summary>The installation sheet: order of work from the bottom up, earthing, cords outlet by outlet, checks before switching on.</summary>
internal static class InstallationSheet
{
    private const string Torque = "Torques of screws, terminals and earth studs: by the instructions of the makers.";

    /// <summary>Adds the content.</summary>
    public static void Fill(SheetContext context)
    {
        context.Blocks.AddRange(CommonBlocks.CautionsOf(context.Report, Cautions.Electricity.Text, Cautions.Handling.Text, Torque));
        context.Section("Cabinet", new Bullets([.. Cabinet(context)], BulletMark.Box));
        context.Section(CoolerBlocks.Title, CoolerBlocks.Installation(context));
        context.Section("Equipment, from the bottom up", Equipment(context), CommonBlocks.Elevation(context.Rack));
        context.Section("Earthing, before any mains cord", Earthing(context));
        context.Section("PDUs", Pdus(context));
        context.Section("Cords, outlet by outlet", Cords(context), WithoutOutlet(context));
        context.Section("Console leads", Console(context));
        context.Section(
            "Checks before switching on", new Bullets([.. Checks(context)], BulletMark.Box), PowerBlocks.Supplies(context));
        context.Blocks.Add(new Signatures(["Mounted and earthed", "Cords checked", "Tested by a qualified person", "Handed over"]));
    }

    private static IEnumerable<string> Cabinet(SheetContext context)
    {
        var (cabinet, survey) = (context.Cabinet, context.Survey);
        var uprights = cabinet.Source.Uprights;
        yield return OnBase(cabinet.Source.Base?.Style);
        if (cabinet.Source.Base?.StabiliserMm is > 0 and var reach)
        {
            yield return Invariant($"Extend the stabiliser, {Number(reach)} mm in front of the cabinet, and keep it extended.");
        }

        var setback = uprights?.FrontSetbackMm is { } given ? Invariant($"{Number(given)} mm behind the outer front face")
            : survey.Depth.SetbackMm is { } assumed ? Invariant($"{Number(Quantities.Round(assumed))} mm behind the outer front face (assumed, check it)")
            : "where all items fit (setback not known)";
        yield return $"Set the front uprights {setback}, the rear uprights {Number(uprights?.SpacingMm, "mm")} behind them.";
        var fixing = FixingNeeds.For(uprights?.Hole);
        yield return Invariant($"Mark the U positions. U1 is at the {(cabinet.TopDown ? "top" : "bottom")}. Holes: ")
            + (uprights?.Hole is { } hole ? NamedEnumConverter<UprightHole>.Name(hole) : "not given") + $"; fixing: {FixingName(fixing)}.";
    }

    private static string OnBase(BaseStyle? style)
    {
        if (style == BaseStyle.Wall)
        {
            return "Fix the cabinet to the wall, level, with anchors for its whole load and the structure of the wall, before anything is mounted.";
        }

        var work = style switch
        {
            BaseStyle.Castors => " on a level floor and lock its castors",
            BaseStyle.Feet => ", level it by its feet and lock them",
            BaseStyle.Plinth => ", level it with shims under its plinth",
            BaseStyle.Bolted => ", level it and bolt it to the floor",
            _ => ", level it and make its base safe against moving (the base is not described)",
        };
        var tipping = style == BaseStyle.Bolted ? "Check that all bolts are tight" : "Secure it against tipping";
        return $"Place the cabinet{work}. {tipping} before anything is mounted.";
    }

    private static Grid? Equipment(SheetContext context) => Table(
        "Support first, then the item; each nut with its screw; heavy items with the people or the aid named",
        [
            new("Step", 6, true), new("U", 14), new("Face", 7), new("Item", 22), new("Support", 15), new("Fixings", 14), new("Mass kg", 9, true),
            new("Lifting", 25), new("", 4),
        ],
        context.FromBottom.Select((i, n) => (IReadOnlyList<string>)
        [
            Invariant($"{n + 1}"), context.PlaceOf(i), CabinetFacts.FaceText(i.Face), Name(i.Id), SpecificationSheet.SupportOf(i), FixingsOf(i, context),
            i.Item?.MassKg is { } mass ? Number(mass) : i.Item is null ? "" : Unknown, LiftingOf(i, context), Grid.Box,
        ]));

    private static string FixingsOf(MountedItem item, SheetContext context)
    {
        if (item.HeightU == 0)
        {
            return "none";
        }

        var fixing = item.Item?.Fixing ?? FixingNeeds.For(context.Cabinet.Source.Uprights?.Hole);
        var isInBox = context.Parts.Lines.Any(
            l => l is { Kind: PartKind.Slides or PartKind.Runners, Included: true } && l.Items?.Contains(item.Id, StringComparer.Ordinal) == true);
        return Invariant($"{FixingNeeds.Sets(isInBox ? null : item.SupportStyle, null)} x {FixingName(fixing)}")
            + (isInBox ? $"; {(item.SupportStyle == SupportStyle.Slides ? "slides" : "runners")} with those in their box" : "");
    }

    private static string FixingName(Fixing fixing) => fixing switch
    {
        Fixing.CageNut => "cage nut",
        Fixing.ClipNut => "clip nut",
        _ => "screw",
    };

    // By the guideline masses of the rule on lifting; it applies them with the caller's limits.
    private static string LiftingOf(MountedItem item, SheetContext context)
    {
        if (item.Item?.MassKg is not { } mass)
        {
            return item.Item is null ? "" : "weigh it first";
        }

        var handling = context.Survey.Description.Site?.Handling;
        var finding = context.Report.Findings.Any(f => f.Rule == PartsContext.Rule<Rules.Loads.HeavyHigh>()
            && f.Pointers.Contains(item.Pointer, StringComparer.Ordinal));
        return finding ? "lifting aid: too heavy for the people stated"
            : context.Survey.Mass.Stand.LowerEdgeMm(item) is not { } edge ? "lifting height not known"
            : !Comparison.IsOver(mass, OnePersonKg(context, edge)) ? "one person"
            : handling?.LiftAid == true ? "lifting aid"
            : Invariant($"{Math.Max(2, handling?.Persons ?? Rules.Loads.HeavyHigh.DefaultPersons)} people");
    }

    private static double OnePersonKg(SheetContext context, double edgeMm) => context.Limit<Rules.Loads.HeavyHigh>(
        ManualHandling.MountingZoneAt(edgeMm) switch
        {
            0 => Rules.Loads.HeavyHigh.LowKg,
            1 => Rules.Loads.HeavyHigh.MiddleKg,
            _ => Rules.Loads.HeavyHigh.HighKg,
        });

    private static Block?[] Earthing(SheetContext context)
    {
        var earth = context.Survey.Earth;
        if (!earth.IsElectrical)
        {
            return [];
        }

        var leads = EarthLeadNeeds.Of(context.Survey, context.Survey.Description.Policy).ToDictionary(n => n.Item);
        var bar = earth.Bar is null ? "main earth terminal" : "earth bar";
        List<IReadOnlyList<string>> rows = [["1", "building's protective earth", bar, Number(WiringParts.MainMm2(context.Survey), "mm2"), "", Grid.Box]];
        foreach (var part in earth.Parts)
        {
            rows.Add([Invariant($"{rows.Count + 1}"), part.Name, bar, part.IsBonded == true ? "as fitted" : "fit a conductor", "", Grid.Box]);
        }

        foreach (var stud in earth.Studs)
        {
            var lead = WiringParts.LeadOf(leads[stud]);
            double? length = lead.LengthM > 0 ? lead.LengthM : null;
            rows.Add(
            [
                Invariant($"{rows.Count + 1}"), $"stud of {Name(stud.Id)}, {context.PlaceOf(stud)}", bar,
                (lead.IsSectionGiven ? "" : "at least ") + Number(lead.SectionMm2, "mm2"),
                (lead.IsLengthGiven || length is null ? "" : "at least ") + Number(length, "m"), Grid.Box,
            ]);
        }

        return
        [
            Table(
                Invariant($"Protective conductors, {earth.TerminalsNeeded} terminals"),
                [new("Step", 6, true), new("From", 36), new("To", 20), new("Area", 18), new("Length", 16), new("", 4)], rows),
        ];
    }

    private static Grid? Pdus(SheetContext context) => Table(
        "PDUs, not yet connected to their supplies",
        [new("PDU", 24), new("Mounting", 28), new("Fed from", 22), new("Plug", 14), new("Rating", 12), new("", 4)],
        context.Survey.Power.Units.Select(u => (IReadOnlyList<string>)
        [
            Name(u.Id), PowerBlocks.MountingOf(u, context), PowerBlocks.FeedOf(u), u.Source.Plug is { } plug ? PlugFit.Of(plug).Code : "not given",
            Number(u.Source.RatedA, "A"), Grid.Box,
        ]));

    private static Grid? Cords(SheetContext context) => Table(
        "Cords in their outlets; each end has a label with the same text",
        [new("PDU", 22), new("Group", 12), new("Outlet", 9, true), new("Socket", 12), new("Phase", 9), new("Item", 28), new("Cord", 8, true), new("", 4)],
        context.Outlets.Sets.SelectMany(s => s.Cords.Select((c, i) => (IReadOnlyList<string>)
        [
            Name(s.Group.Unit.Id), Name(s.Group.Id), Invariant($"{s.First + i}"), PlugFit.Of(s.Set.Socket).Code + (c.Switched ? ", switched" : ""),
            PowerBlocks.PhaseOf(s.Group), Name(c.Item.Id), Invariant($"{c.Plug + 1}"), Grid.Box,
        ])));

    private static Grid? WithoutOutlet(SheetContext context) => Table(
        "Cords without an outlet of their own: do not connect them before this is settled",
        [new("Item", 30), new("Cord", 8, true), new("Plug", 16), new("Connected to", 42), new("", 4)],
        OutletPlan.InOrder(context.Survey.Power.Cords).Where(c => context.Outlets.OutletOf(c) is null).Select(c => (IReadOnlyList<string>)
        [
            Name(c.Item.Id), Invariant($"{c.Plug + 1}"), PlugFit.Of(c.Code).Code,
            c.Group is { } group ? $"{Name(group.Unit.Id)}, group {Name(group.Id)}" : "nothing", Grid.Box,
        ]));

    private static Grid? Console(SheetContext context) => Table(
        "Console leads",
        [new("From", 40), new("To", 40), new("Length of the route", 16), new("", 4)],
        KvmLeadNeeds.Of(context.Survey).Select(n => (IReadOnlyList<string>)
            [Name(n.Host.Id), Name(n.Switch.Id), n.LengthM > 0 ? Number(n.LengthM, "m") : Unknown, Grid.Box]));

    private static IEnumerable<string> Checks(SheetContext context)
    {
        var (survey, report) = (context.Survey, context.Report);
        yield return "Supplies are off, locked and proven dead; the cabinet is secured against tipping.";
        yield return "All fixings, supports and slides are complete and tight by the makers' instructions; slides latch in both positions.";
        if (survey.Earth.IsElectrical)
        {
            yield return Invariant($"Earth continuity from every stud, door, panel and the frame to the earth terminal: at most ")
                + Invariant($"{Number(context.Limit<Resistance>(Resistance.PathOhm))} ohm. Measured: ______ ohm.");
            yield return "Inspection and tests of the electrical installation by a qualified person, to the local wiring rules: polarity, insulation, "
                + "disconnection, residual current devices.";
        }

        yield return "Every cord is in the outlet of this sheet, latched and without tension, also with slides extended; labels are on both ends.";
        yield return "Doors and panels close without touching equipment, connectors or cables; locks work.";
        yield return "Openings between equipment are closed with blanking panels as listed; filter mats are fitted; fans turn freely.";
        if (context.Cooler is not null)
        {
            yield return "The air conditioner is sealed, earthed and fed, its drain runs, its setpoint is set.";
        }

        if (report.Findings.Any(f => f.Accepted is null && f.SignedOff is null && f.Severity != Severity.Advice))
        {
            yield return "Open findings of the specification are cleared, or a qualified person has released the rack.";
        }

        if (survey.Power.Supplies.Length > 0)
        {
            yield return "Switch on one supply after the other, one PDU after the other. Compare the current of each line with the table.";
        }

        if (survey.Power.Supplies.Length > 1)
        {
            yield return "With everything running, switch off one supply at a time: dual-corded equipment stays on, and no breaker trips.";
        }
    }
}
