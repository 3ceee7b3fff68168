using RackCheck.Documents.Parts;
using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using static RackCheck.Documents.Sheets.SheetContext;
using static System.FormattableString;

namespace RackCheck.Documents.Sheets;

/// <summary>The air conditioner: its data, how it is mounted, fed, drained and maintained.</summary>
internal static class CoolerBlocks
{
    /// <summary>Its heading and its name in lists.</summary>
    public const string Title = "Air conditioner";

    private const string NotDescribed = "not described: by the maker's data sheet";

    /// <summary>Its data, for the specification.</summary>
    public static Pairs? Data(SheetContext context)
    {
        if (context.Cooler is not { } cooler)
        {
            return null;
        }

        var heat = context.Survey.Heat;
        return new Pairs(
        [
            ("Style", StyleOf(cooler)), ("Part number", context.CoolerPart is { } part ? Name(part) : "not given"),
            ("Rated capacity", Invariant($"{Number(cooler.CapacityW)} W at {Number(heat.RatedAmbientC)} C ambient")
                + (cooler.RatedAmbientC is null ? " (default)" : "")),
            ("Capacity at the maximum ambient", CapacityInRoom(cooler, context)),
            ("Capacity needed", Number(context.Report.Figures.Cooling?.CoolerNeededW, "W")),
            ("Setpoint inside the cabinet", SetpointOf(cooler, heat)),
            ("Mains feed", FeedOf(cooler)), ("Electrical input", cooler.InputW is { } watts ? Number(watts, "W") : NotDescribed),
            ("Size, mass, place on the cabinet", NotDescribed),
        ]);
    }

    /// <summary>Steps of its installation; the opening is cut before equipment is mounted.</summary>
    public static Bullets? Installation(SheetContext context) =>
        context.Cooler is { } cooler ? new Bullets([.. Steps(cooler, context)], BulletMark.Box) : null;

    /// <summary>What feeds it.</summary>
    public static string FeedOf(AirConditioner cooler) =>
        cooler.Supply is { } supply ? $"supply {Name(supply)}" : "feed of its own, to be provided: none is described";

    /// <summary>What to know of it before anybody works on the rack.</summary>
    public static Bullets? Isolation(SheetContext context) => context.Cooler is not { } cooler ? null : new Bullets(
    [
        "Air conditioner: isolate it at its feed (" + (cooler.Supply is { } supply ? $"supply {Name(supply)}" : "outside the rack, not described")
            + "); the PDUs do not switch it off.",
        "Switch it off while a door or panel is open: humid air of the room condenses in the cold cabinet.",
        "Without it the temperature in the closed cabinet rises: switch off equipment that the makers do not permit above "
            + Invariant($"{Number(context.Survey.Heat.SetpointC)} C, or keep the work short."),
    ]);

    /// <summary>Its row in the table of maintenance.</summary>
    public static IEnumerable<IReadOnlyList<string>> Maintenance(SheetContext context, string interval) => context.Cooler is not { } cooler ? []
        : [[$"{Title}, {CoolerParts.TextOf(cooler)}: filter mat (if it has one), fins, seals, condensate drain", "1", "cabinet", interval]];

    /// <summary>What the receiver provides for it.</summary>
    public static IEnumerable<string> Ready(SheetContext context)
    {
        if (context.Cooler is not { } cooler)
        {
            yield break;
        }

        var input = cooler.InputW is { } watts ? Invariant($"{Number(watts)} W") : "rating by the maker's data sheet";
        yield return cooler.Supply is { } supply ? $"Supply {Name(supply)} up to the air conditioner: {input}."
            : $"A mains feed of its own for the air conditioner: {input}; none is described.";
        yield return "A drain or an evaporator for the condensate of the air conditioner."
            + (cooler.Style == AirConditionerStyle.Split ? " An opening in the outside wall for its lines, and a place for the outdoor unit." : "");
    }

    private static string StyleOf(AirConditioner cooler) => cooler.Style switch
    {
        AirConditionerStyle.Wall => "wall: in a side panel or a door",
        AirConditionerStyle.Roof => "roof: on the roof of the cabinet",
        AirConditionerStyle.Split => "split: indoor unit at the cabinet, outdoor unit outside the building",
        _ => "not given",
    };

    private static string SetpointOf(AirConditioner cooler, HeatSurvey heat) =>
        Number(heat.SetpointC, "C") + (cooler.SetpointC is null ? " (default)" : "");

    private static string RoomOf(SheetContext context) =>
        Number(context.Survey.Heat.AmbientC, "C") + (context.Survey.Description.Site?.AmbientMaxC is null ? " (assumed)" : "");

    private static string CapacityInRoom(AirConditioner cooler, SheetContext context)
    {
        var heat = context.Survey.Heat;
        return AirConditioners.IsWithinDerating(heat.RatedAmbientC, heat.AmbientC)
            ? Invariant($"{Number(Quantities.Round(AirConditioners.LeftW(cooler.CapacityW, heat.RatedAmbientC, heat.AmbientC)))} W at {RoomOf(context)}")
            : $"by the maker's curve at {RoomOf(context)}";
    }

    private static IEnumerable<string> Steps(AirConditioner cooler, SheetContext context)
    {
        var part = context.CoolerPart is { } number ? $", {Name(number)}" : "";
        var (place, carrier) = cooler.Style switch
        {
            AirConditionerStyle.Roof => ("the roof", "the roof"),
            AirConditionerStyle.Split => ("the side panel, door or roof that takes its indoor unit", "the panel, door or roof"),
            _ => ("the side panel or door that takes it", "the panel or door"),
        };
        yield return $"{Title} ({CoolerParts.TextOf(cooler)}{part}): cut the opening in {place} before equipment is mounted, by the maker's template. "
            + "The description gives neither its size nor its place. Remove all swarf and protect the edges.";
        yield return $"Weigh it, or see its data sheet: its mass is not described. Check that {carrier} can carry it; fasten it by the maker's instructions"
            + (SealOf(context) is { } ip ? $" and seal it: the cabinet keeps {ip}." : " and seal it.");
        if (cooler.Style == AirConditionerStyle.Split)
        {
            yield return "Lead its lines through the outside wall to the outdoor unit. Only certified persons work on the refrigerant circuit."
                + (context.Survey.Description.Site?.OutsideWall == true ? "" : " No outside wall is stated for this room: settle it first.");
        }

        yield return $"Bond it and {carrier} to the protective earth of the cabinet.";
        yield return cooler.Supply is { } supply
            ? $"Connect it to supply {Name(supply)} ({(cooler.InputW is { } input ? Number(input, "W") : "input " + NotDescribed)}), "
                + "not to a PDU of the equipment."
            : "Provide a mains feed of its own, with breaker and conductor by the maker's data sheet: none is described"
                + (cooler.InputW is { } watts ? Invariant($"; input {Number(watts)} W.") : ", and its input is not given.");
        yield return "Lead its condensate away with a steady fall, clear of equipment; test the drain with water.";
        yield return "Keep its air inlets and outlets free inside and outside the cabinet: distances by the maker's instructions.";
        yield return Invariant($"Set it to {SetpointOf(cooler, context.Survey.Heat)}. Maximum ambient of the site: {RoomOf(context)}; ")
            + Invariant($"its capacity is rated at {Number(context.Survey.Heat.RatedAmbientC)} C ambient. Check its operating range.");
    }

    private static string? SealOf(SheetContext context) =>
        (context.Survey.Description.Site?.RequiredIp ?? context.Cabinet.Source.IpCode) is { } code ? Name(code) : null;
}
