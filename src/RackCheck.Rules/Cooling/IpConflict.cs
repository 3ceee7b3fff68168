using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds openings below the required degree of protection.</summary>
public sealed class IpConflict : Rule
{
    /// <summary>Degree of protection of a usual perforated door or open vent.</summary>
    public const string UsualOpening = "IP20";

    /// <summary>Degree of protection of fans and intakes with filters.</summary>
    public const string Filtered = "IP54";

    private const string Open = "IP00";

    // IEC 60529 (value from memory): holes down to 1 mm give at most a first digit of 3; dripping water is the most that an upright perforated door keeps out.
    private const string FinestOpening = "IP31";

    private static readonly MessageWording Defect = new(
        "cooling.ip-conflict",
        "The site requires {requiredIp}; the degree of protection of the {what:words} is {ipCode}.");

    private static readonly MissingData MissingFilters = new(
        "cooling.ip-conflict.missing-filters",
        "The site requires a degree of protection, but the filters of fans and intake are not given.");

    private static readonly MissingData MissingIpCode = new(
        "cooling.ip-conflict.missing-ip-code",
        "The site requires a degree of protection, but the IP code of the cabinet is missing.");

    private static readonly MissingData MissingStyle = new(
        "cooling.ip-conflict.missing-style",
        "The site requires a degree of protection, but the style of the doors is missing.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.ip-conflict",
        Title = "Opening below the required degree of protection",
        Severity = Severity.Error,
        What =
            "Finds perforated doors, open sides, vented roofs, and fans and intakes without filters that are below the required degree of protection. "
            + "Perforated doors and vented roofs have IP20, or the degree of the cabinet up to IP31. Fans and intakes with filters "
            + "have IP54. Each opening has its own finding.",
        Why = "Dust, water or fingers get into the cabinet.",
        Formula = "both digits of the IP code of the opening >= requiredIp",
        Sources = [Sources.Iec60529, Sources.OpeningIpPractice],
        Needs =
        [
            "/site/requiredIp", "/cabinet/ipCode", "/cabinet/frontDoor/style", "/cabinet/rearDoor/style", "/cabinet/sidePanels", "/cabinet/roof/style",
            "/cabinet/placement",
            "/cooling/roofFans", "/cooling/intakeAreaCm2", "/cooling/filters",
        ],
        Notes =
        [
            "The degree of the cabinet is that of the closed cabinet. Above IP31 no perforated door or open vent has it, so there it counts as IP20.",
            "A door or panel that is left off counts as IP00, whatever the cabinet is rated. In the middle of a row the neighbours close the sides: there "
                + "they have the degree of the cabinet.",
        ],
        Remedies =
        [
            "Fit filters.", "Close the opening, and cool the rack with filtered fans.", "Use a closed cabinet of that degree with an air conditioner.",
            "Move the rack to a place with lower requirements.",
        ],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var description = context.Survey.Description;
        if (description.Site?.RequiredIp is not { } required || IpCodes.Satisfies(Open, required))
        {
            return;
        }

        var cabinet = description.Cabinet!;
        JudgeDoor(context, cabinet.FrontDoor, "front door", Pointers.FrontDoor, required);
        JudgeDoor(context, cabinet.RearDoor, "rear door", Pointers.RearDoor, required);
        if (cabinet.SidePanels == false)
        {
            Judge(context, "open side", Pointers.SidePanels, IsBetweenNeighbours(cabinet) ? cabinet.IpCode ?? UsualOpening : Open, required);
        }

        var hasRoofFans = context.Survey.Heat.AirPath.HasRoofFans;
        if (cabinet.Roof?.Style == RoofStyle.Vented && !hasRoofFans)
        {
            Judge(context, "vented roof", Pointers.RoofStyle, OpeningOf(cabinet), required);
        }

        JudgeFiltered(context, hasRoofFans, "fans in the roof", Pointers.RoofFans, required);
        JudgeFiltered(context, description.Cooling?.IntakeAreaCm2 > 0, "air intake", Pointers.IntakeArea, required);
        JudgeCabinet(context, cabinet, required);
    }

    // A code that no perforation can have is that of the closed cabinet: with a perforated door or a vented roof it is lost.
    private static string OpeningOf(Cabinet cabinet) => cabinet.IpCode is { } code && IpCodes.Satisfies(FinestOpening, code) ? code : UsualOpening;

    private static bool IsBetweenNeighbours(Cabinet cabinet) =>
        cabinet.Placement is Placement.RowMiddle or Placement.RowMiddleWall or Placement.RowMiddleWallCovered;

    private static void JudgeDoor(RuleContext context, Door? door, string name, string pointer, string required)
    {
        if (door is null)
        {
            context.ReportMissing(pointer + "/style", MissingStyle);
        }
        else if (door.Style == DoorStyle.Perforated)
        {
            Judge(context, name, pointer + "/style", OpeningOf(context.Survey.Cabinet.Source), required);
        }
        else if (door.Style == DoorStyle.None)
        {
            Judge(context, $"side without a {name}", pointer + "/style", Open, required);
        }
    }

    private static void JudgeFiltered(RuleContext context, bool isThere, string name, string pointer, string required)
    {
        if (!isThere || IpCodes.Satisfies(UsualOpening, required))
        {
            return;
        }

        var cooling = context.Survey.Description.Cooling!;
        bool? filters = FilterMat.IsFitted(cooling) ? true : cooling.Filters;
        if (filters is null && IpCodes.Satisfies(Filtered, required))
        {
            context.ReportMissing(Pointers.Filters, MissingFilters);
        }
        else
        {
            Judge(context, name, pointer, filters == true ? Filtered : UsualOpening, required);
        }
    }

    // A cabinet without openings has its rated degree. Any closed cabinet protects against fingers.
    private static void JudgeCabinet(RuleContext context, Cabinet cabinet, string required)
    {
        if (cabinet is not { FrontDoor.Style: DoorStyle.Solid or DoorStyle.Glazed, RearDoor.Style: DoorStyle.Solid or DoorStyle.Glazed })
        {
            return;
        }

        if (cabinet.IpCode is { } code)
        {
            Judge(context, "cabinet", Pointers.IpCode, code, required);
        }
        else if (!IpCodes.Satisfies(UsualOpening, required))
        {
            context.ReportMissing(Pointers.IpCode, MissingIpCode);
        }
    }

    private static void Judge(RuleContext context, string what, string pointer, string code, string required)
    {
        if (!IpCodes.Satisfies(code, required))
        {
            context.Report(new FindingDraft
            {
                Message = Defect,
                Data = [("requiredIp", required), ("what", Scalar.CodeOf(what)), ("ipCode", code)],
                Subject = Subjects.Named(what),
                Identity = [what],
                Pointers = [pointer, Pointers.RequiredIp],
                Candidates = CoolingRemedies.Tighten(context.Survey, required, code),
            });
        }
    }
}
