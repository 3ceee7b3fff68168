using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Remedies;

/// <summary>
/// Remedies for heat, in the usual order: perforated doors, roof fans, more trays, an air conditioner, and last removal of equipment.
/// </summary>
public static class CoolingRemedies
{
    private static readonly MessageWording DoorsForCooler = new(
        "remedy.doors-for-cooler", "Use perforated doors, {openPercent:exact} % open, instead of the air conditioner");
    private static readonly MessageWording FansForCooler = new(
        "remedy.fans-for-cooler", "Use a perforated front door and {count} fans of {flowM3h:exact} m3/h in the roof instead of the air conditioner");
    private static readonly WordingChoice AddedFans = new(
        "remedy.more-fans", "Fit {count} additional [one:fan|fans] of {flowM3h:exact} m3/h [roof:in the roof|in the fan trays]");
    private static readonly WordingChoice OpenShare = new(
        "remedy.open-share", "Use a {door:words} {openPercent:exact} % open, the [usual:usual|maximum] share");
    private static readonly WordingChoice WholeFace = new(
        "remedy.whole-face", "Use a {door:words} perforated over its whole face[share:, {openPercent:exact} % open]");
    private static readonly MessageWording LargerCooler = new("remedy.cooler-capacity", "Use an air conditioner of {capacityW:exact} W");
    private static readonly WordingChoice OnePiece = new(
        "remedy.cooler-one-piece", "Use a one-piece air conditioner for the cabinet's [wall:wall or door|roof]");
    private static readonly WordedText FanFilters = new("remedy.filters", "Fit filters to the fans and the intake");
    private static readonly WordedText CoveredSides = new("remedy.cover-sides", "Fit perforated doors and side panels to the open sides");
    private static readonly MessageWording RatedCabinet = new("remedy.cabinet-ip", "Use a cabinet rated {requiredIp}");
    private static readonly MessageWording ClosedCabinet = new("remedy.closed-cabinet-ip", "Use a closed cabinet rated {requiredIp}");
    private static readonly MessageWording OtherPlace = new("remedy.place-ip", "Install the rack at a place that requires at most {ipCode}");
    private static readonly MessageWording RoofFansFit = new(
        "remedy.roof-fans", "Fit {count} fans of {flowM3h:exact} m3/h in the roof, a perforated front door and a closed rear door");
    private static readonly MessageWording AddedTrays = new(
        "remedy.fan-trays", "Add fan trays with {count} fans of {flowM3h:exact} m3/h and fit perforated doors");
    private static readonly MessageWording ClosedWithFilters = new(
        "remedy.filtered-fans",
        "Use a closed cabinet with {count} fans of {flowM3h:exact} m3/h in the roof and an intake of {areaCm2:exact} cm2, both with filters");
    private static readonly MessageWording ClosedWithCooler = new(
        "remedy.closed-cooler", "Use a closed cabinet with a {capacityW:exact} W air conditioner set to {setpointC:exact} C");

    // Degrees of protection of a usual opening, and of fans and intakes with filters.
    private const string UsualOpening = "IP20";
    private const string Filtered = "IP54";

    /// <summary>Whether a usual opening has the required degree of protection.</summary>
    /// <returns>Whether perforated doors and fans without filters are permitted.</returns>
    public static bool AllowsOpenings(RackSurvey survey) => Allows(survey, UsualOpening);

    /// <summary>More airflow or cooling for the heat of the whole rack.</summary>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> Improve(RackSurvey survey)
    {
        foreach (var candidate in OtherWays(survey))
        {
            yield return candidate;
        }

        foreach (var candidate in TakeOutHeat(survey))
        {
            yield return candidate;
        }
    }

    /// <summary>Another airflow path for equipment behind a closed door.</summary>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> ClearDoors(RackSurvey survey, IReadOnlyList<MountedItem> ventilated)
    {
        foreach (var candidate in OtherWays(survey))
        {
            yield return candidate;
        }

        if (PlaceRemedies.TakeOut(survey, ventilated) is { } takeOut)
        {
            yield return takeOut;
        }
    }

    /// <summary>Roof fans with a perforated front door and a closed rear door, so that all air passes the equipment.</summary>
    /// <param name="description">The rack that gets the fans.</param>
    /// <returns>
    /// Their number, their airflow, and the rack with them; null if no number is sufficient, or if both doors let air through: roof fans would draw it past
    /// the equipment.
    /// </returns>
    public static (int Count, double FlowM3h, RackDescription After)? RoofFans(RackSurvey survey, RackDescription description) =>
        AirPath.LetsAirThrough(description.Cabinet!.FrontDoor) == true && AirPath.LetsAirThrough(description.Cabinet.RearDoor) == true
            ? null
            : description.WithFrontIntake().WithRoofFans(survey.Heat.RoofNeedM3h, survey.Heat.DensityKgM3);

    /// <summary>Whether the equipment's own fans are enough behind perforated doors: at the permitted rise, or each item at its own.</summary>
    /// <returns>Whether they are; items without a stated airflow are assumed to have fans that suit their heat.</returns>
    public static bool DoorsSuffice(RackSurvey survey)
    {
        var heat = survey.Heat;
        return heat.OwnFlowM3h > 0 && (survey.Description.Cooling?.RiseK is { } rise
            ? heat.DoorsFlowM3h(rise) >= heat.NeedAt(rise)
            : !Array.Exists(survey.Items, i => heat.ItemRiseK(i) is { } own && Comparison.IsOver(own, HeatSurvey.UsualItemRiseK)));
    }

    /// <summary>Doors or fans instead of the air conditioner.</summary>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> WithoutCooler(RackSurvey survey)
    {
        if (!AllowsOpenings(survey))
        {
            yield break;
        }

        var without = survey.Description with { Cooling = survey.Description.Cooling! with { AirConditioner = null } };
        if (DoorsSuffice(survey))
        {
            yield return new RemedyCandidate(
                new(DoorsForCooler, ("openPercent", CoolingEdits.UsualOpenPercent)), without.WithOpenDoors());
        }

        if (RoofFans(survey, without) is { } fans)
        {
            yield return new RemedyCandidate(
                new(FansForCooler, ("count", fans.Count), ("flowM3h", CoolingEdits.FanFreeM3h)), fans.After);
        }
    }

    /// <summary>One more fan of an existing kind, or one more tray.</summary>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> MoreFans(RackSurvey survey)
    {
        var description = survey.Description;
        for (var more = 1; more <= 4; more *= 2)
        {
            foreach (var (name, isRoof) in new[] { ("in the roof", true), ("in the fan trays", false) })
            {
                var sets = isRoof ? description.Cooling?.RoofFans : description.Cooling?.FanTrays;
                var largest = sets?.Where(f => f.Count > 0).OrderByDescending(f => f.FreeFlowM3h).FirstOrDefault();
                if (largest is not null && largest.Count + more <= 100)
                {
                    FanSet[] grown = [.. sets!.Select(f => ReferenceEquals(f, largest) ? f with { Count = f.Count + more } : f)];
                    yield return new RemedyCandidate(
                        new(AddedFans.With(more == 1 ? "one" : null, isRoof ? "roof" : null), ("count", more), ("flowM3h", largest.FreeFlowM3h)),
                        description.EditCooling(c => isRoof ? c with { RoofFans = grown } : c with { FanTrays = grown }),
                        "more fans " + name);
                }
            }
        }
    }

    /// <summary>A door with a larger open share.</summary>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> OpenWider(RackSurvey survey, AiredDoor door)
    {
        var whole = AirPath.PerforatedAreaM2(survey.Cabinet.Source);
        double? area = door.Door.PerforatedAreaM2 is { } given && given < whole ? Quantities.Round(whole) : door.Door.PerforatedAreaM2;
        foreach (var (share, isUsual) in new[] { (CoolingEdits.UsualOpenPercent, true), (CoolingEdits.MostOpenPercent, false) })
        {
            if (share > door.Door.OpenAreaPercent)
            {
                yield return new RemedyCandidate(
                    new(OpenShare.With(isUsual ? "usual" : null), ("door", Scalar.CodeOf(door.Name)), ("openPercent", share)),
                    With(d => d with { OpenAreaPercent = share }), "open share");
            }
        }

        if (area != door.Door.PerforatedAreaM2)
        {
            yield return new RemedyCandidate(
                new(WholeFace.With(), ("door", Scalar.CodeOf(door.Name))), With(d => d with { PerforatedAreaM2 = area }));
            yield return new RemedyCandidate(
                new(WholeFace.With("share"), ("door", Scalar.CodeOf(door.Name)), ("openPercent", CoolingEdits.MostOpenPercent)),
                With(d => d with { PerforatedAreaM2 = area, OpenAreaPercent = Math.Max(CoolingEdits.MostOpenPercent, d.OpenAreaPercent!.Value) }));
        }

        RackDescription With(Func<Door, Door> change) => survey.Description.EditCabinet(c =>
            door.Pointer == Pointers.FrontDoor ? c with { FrontDoor = change(c.FrontDoor!) } : c with { RearDoor = change(c.RearDoor!) });
    }

    /// <summary>A larger air conditioner, or less load on it.</summary>
    /// <param name="transferWM2K">Heat transfer coefficient for the calculation, W/(m2 K).</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> Strengthen(RackSurvey survey, double transferWM2K)
    {
        var heat = survey.Heat;
        var description = survey.Description;
        var needed = heat.CoolerNeededW(heat.SurfaceM2, heat.SetpointC, transferWM2K);
        if (CoolingEdits.Capacity(needed, heat.RatedAmbientC, heat.AmbientC) is { } capacity)
        {
            yield return new RemedyCandidate(new(LargerCooler, ("capacityW", capacity)), With(c => c with { CapacityW = capacity }));
        }

        var highest = Math.Floor(Math.Min(heat.LeastInletC ?? AirConditioners.UsualSetpointC, AirConditioners.UsualSetpointC));
        if (highest > heat.SetpointC)
        {
            yield return new RemedyCandidate(new(RemedyTitles.Setpoint, ("setpointC", highest)), With(c => c with { SetpointC = highest }));
        }

        foreach (var candidate in TakeOutHeat(survey))
        {
            yield return candidate;
        }

        RackDescription With(Func<AirConditioner, AirConditioner> change) =>
            description.EditCooling(c => c with { AirConditioner = change(c.AirConditioner!) });
    }

    /// <summary>A one-piece air conditioner instead of a split unit.</summary>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> Restyle(RackSurvey survey)
    {
        foreach (var style in new[] { AirConditionerStyle.Wall, AirConditionerStyle.Roof })
        {
            yield return new RemedyCandidate(
                new(OnePiece.With(style == AirConditionerStyle.Wall ? "wall" : null)),
                survey.Description.EditCooling(c => c with { AirConditioner = c.AirConditioner! with { Style = style } }));
        }
    }

    /// <summary>A rack with the required degree of protection.</summary>
    /// <param name="has">The degree of the opening.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> Tighten(RackSurvey survey, string required, string has)
    {
        var description = survey.Description;
        var heat = survey.Heat;
        if (IpCodes.Satisfies(Filtered, required) && description.Cooling is { Filters: not true } cooling)
        {
            yield return new RemedyCandidate(FanFilters, description with { Cooling = cooling with { Filters = true } });
        }

        if (IpCodes.Satisfies(UsualOpening, required))
        {
            yield return new RemedyCandidate(CoveredSides, Covered(description));
        }

        if (description.Cabinet!.IpCode is { } code && !IpCodes.Satisfies(code, required))
        {
            yield return new RemedyCandidate(new(RatedCabinet, ("requiredIp", required)), description.EditCabinet(c => c with { IpCode = required }));
        }

        if (heat.KnownW > 0 && IpCodes.Satisfies(Filtered, required) && FilteredFans(survey) is { } fans)
        {
            yield return fans;
        }

        yield return new RemedyCandidate(new(ClosedCabinet, ("requiredIp", required)), description.Closed());
        if (heat.HasHeat && Cooler(survey, null) is { } cooler)
        {
            yield return cooler;
        }

        yield return new RemedyCandidate(
            new(OtherPlace, ("ipCode", has)), description with { Site = description.Site! with { RequiredIp = has } });
    }

    private static IEnumerable<RemedyCandidate> OtherWays(RackSurvey survey)
    {
        var description = survey.Description;
        var heat = survey.Heat;
        if (Allows(survey, UsualOpening))
        {
            if (description.WithOpenDoors() is var doors
                && (doors.Cabinet!.FrontDoor != description.Cabinet!.FrontDoor || doors.Cabinet.RearDoor != description.Cabinet.RearDoor))
            {
                yield return new RemedyCandidate(new(RemedyTitles.OpenDoors, ("openPercent", CoolingEdits.UsualOpenPercent)), doors);
            }

            if (RoofFans(survey, description) is { } fans)
            {
                yield return new RemedyCandidate(
                    new(RoofFansFit, ("count", fans.Count), ("flowM3h", CoolingEdits.FanFreeM3h)), fans.After);
            }

            if (heat.AirPath.HasTrays && doors.WithTrays(heat.ForcedNeedM3h, heat.DensityKgM3) is { } trays)
            {
                yield return new RemedyCandidate(new(AddedTrays, ("count", trays.Count), ("flowM3h", CoolingEdits.FanFreeM3h)), trays.After);
            }
        }
        else if (Allows(survey, Filtered) && FilteredFans(survey) is { } filtered)
        {
            yield return filtered;
        }

        if (Cooler(survey, null) is { } cooler)
        {
            yield return cooler;
        }
    }

    private static RemedyCandidate? FilteredFans(RackSurvey survey) =>
        survey.Description.WithFilteredIntake(survey.Heat.RoofNeedM3h, survey.Heat.DensityKgM3)
            .WithRoofFans(survey.Heat.RoofNeedM3h, survey.Heat.DensityKgM3) is { } fans
            ? new RemedyCandidate(
                new(ClosedWithFilters, ("count", fans.Count), ("flowM3h", CoolingEdits.FanFreeM3h), ("areaCm2", fans.After.Cooling!.IntakeAreaCm2!.Value)),
                fans.After)
            : null;

    /// <summary>A closed cabinet with an air conditioner, set to the inlet limit of the most sensitive item, but not above the usual setpoint.</summary>
    /// <param name="mostC">Maximum setpoint, C.</param>
    /// <returns>The candidate; null if no air conditioner is large enough.</returns>
    internal static RemedyCandidate? Cooler(RackSurvey survey, double? mostC)
    {
        var setpoint = Math.Min(
            Math.Min(AirConditioners.UsualSetpointC, mostC ?? double.PositiveInfinity), Math.Floor(survey.Heat.LeastInletC ?? double.PositiveInfinity));
        return setpoint >= -20 && survey.Description.WithCooler(survey.Heat, setpoint) is { } made
            ? new RemedyCandidate(
                new(ClosedWithCooler, ("capacityW", made.Cooler.CapacityW), ("setpointC", setpoint)), made.After)
            : null;
    }

    // The item with the most heat goes first, twice as many items each time; the last step is all items that give off heat, or may.
    private static IEnumerable<RemedyCandidate> TakeOutHeat(RackSurvey survey)
    {
        var items = survey.Items.Where(i => HeatSurvey.HeatOf(i) is not 0)
            .OrderByDescending(i => HeatSurvey.HeatOf(i) ?? 0).ThenBy(i => i.Id, StringComparer.Ordinal).ToArray();
        for (var count = 1; count <= items.Length; count = count == items.Length ? count + 1 : Math.Min(2 * count, items.Length))
        {
            if (PlaceRemedies.TakeOut(survey, items[..count]) is { } takeOut)
            {
                yield return takeOut with { Kind = nameof(TakeOutHeat) };
            }
        }
    }

    // A usual perforated door closes an open front or rear, and side panels close the sides.
    private static RackDescription Covered(RackDescription description) => description.EditCabinet(c => c with
    {
        FrontDoor = c.FrontDoor?.Style == DoorStyle.None
            ? new Door { Style = DoorStyle.Perforated, OpenAreaPercent = CoolingEdits.UsualOpenPercent, Bonded = true }
            : c.FrontDoor,
        RearDoor = c.RearDoor?.Style == DoorStyle.None
            ? new Door { Style = DoorStyle.Perforated, OpenAreaPercent = CoolingEdits.UsualOpenPercent, Bonded = true }
            : c.RearDoor,
        SidePanels = c.SidePanels == false ? true : c.SidePanels,
    });

    private static bool Allows(RackSurvey survey, string code) =>
        survey.Description.Site?.RequiredIp is not { } required || IpCodes.Satisfies(code, required);
}
