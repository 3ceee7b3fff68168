using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds openings that let in what the degree of protection asked for keeps out.</summary>
public sealed class IpConflict : Rule
{
    /// <summary>Degree of a usual perforated door or open vent.</summary>
    public const string UsualOpening = "IP20";

    /// <summary>Degree that fans and intakes with filters reach by their own rating.</summary>
    public const string Filtered = "IP54";

    private const string Open = "IP00";

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.ip-conflict",
        Title = "Opening breaks the degree of protection",
        Severity = Severity.Error,
        What = "Finds perforated doors, sides left open, vented roofs, and fans and intakes without filters, that do not have the degree of protection asked for. Doors and roof have what the cabinet is rated for, IP20 unless told; with filters fans and intakes have IP54. One finding an opening.",
        Why = "Dust, water or fingers get in where the site asks that they do not.",
        Formula = "both digits of the opening's degree do what requiredIp asks",
        Sources = [Sources.Iec60529, Sources.OpeningIpPractice],
        Needs = ["/site/requiredIp", "/cabinet/ipCode", "/cabinet/frontDoor/style", "/cabinet/rearDoor/style", "/cabinet/sidePanels", "/cabinet/roof/style", "/cooling/roofFans", "/cooling/intakeAreaCm2", "/cooling/filters"],
        Remedies = ["Fit filters.", "Close it, and cool the rack by fans with filters.", "Take a closed cabinet of that degree with an air conditioner.", "Find the rack a place that asks for less."],
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
        var sheet = cabinet.IpCode;
        JudgeDoor(context, cabinet.FrontDoor, "front door", Pointers.FrontDoor, required);
        JudgeDoor(context, cabinet.RearDoor, "rear door", Pointers.RearDoor, required);
        if (cabinet.SidePanels == false)
        {
            Judge(context, "open side", Pointers.SidePanels, Open, required);
        }

        var hasRoofFans = context.Survey.Heat.Way.HasRoofFans;
        if (cabinet.Roof?.Style == RoofStyle.Vented && !hasRoofFans)
        {
            Judge(context, "vented roof", Pointers.RoofStyle, sheet ?? UsualOpening, required);
        }

        JudgeFiltered(context, hasRoofFans, "fans in the roof", Pointers.RoofFans, required);
        JudgeFiltered(context, description.Cooling?.IntakeAreaCm2 > 0, "air intake", Pointers.IntakeArea, required);
        JudgeCabinet(context, cabinet, required);
    }

    private static void JudgeDoor(RuleContext context, Door? door, string name, string pointer, string required)
    {
        if (door is null)
        {
            context.Lacks(pointer + "/style", "A degree of protection is asked for; without the style of the doors it cannot be said whether they have it.");
        }
        else if (door.Style == DoorStyle.Perforated)
        {
            Judge(context, name, pointer + "/style", context.Survey.Cabinet.Source.IpCode ?? UsualOpening, required);
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

        var filters = context.Survey.Description.Cooling!.Filters;
        if (filters is null && IpCodes.Satisfies(Filtered, required))
        {
            context.Lacks(Pointers.Filters, "A degree of protection is asked for; without a word on filters it cannot be said whether fans and intake have it.");
        }
        else
        {
            Judge(context, name, pointer, filters == true ? Filtered : UsualOpening, required);
        }
    }

    // What has no opening has what the cabinet is rated for. Any closed cabinet keeps fingers out.
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
            context.Lacks(Pointers.IpCode, "A degree of protection is asked for; it is not said which the cabinet has.");
        }
    }

    private static void Judge(RuleContext context, string what, string pointer, string code, string required)
    {
        if (!IpCodes.Satisfies(code, required))
        {
            context.Report(new FindingDraft
            {
                Message = "The site asks for protection {requiredIp} against dust and water, but the {what} has {ipCode}.",
                Data = [("requiredIp", required), ("what", what), ("ipCode", code)],
                Subject = what,
                Identity = [what],
                Pointers = [pointer, Pointers.RequiredIp],
                Cures = CoolingCures.Tighten(context.Survey, required, code),
            });
        }
    }
}
