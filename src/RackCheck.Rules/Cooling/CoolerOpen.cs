using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds air conditioners in cabinets that are not closed.</summary>
public sealed class CoolerOpen : Rule
{
    private static readonly MessageWording Defect = new("cooling.cooler-open", "An air conditioner needs a closed cabinet; this one has {openings:words}.");

    private static readonly MissingData Missing = new(
        "cooling.cooler-open.missing",
        "The style of the doors is missing, so it is unknown whether the cooled cabinet is closed.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.cooler-open",
        Title = "Air conditioner in an open cabinet",
        Severity = Severity.Error,
        What = "Finds air conditioners in cabinets with a perforated or missing door, open sides, a vented roof, roof fans or an air intake.",
        Why = "The cooled air leaves through the openings and warm, humid room air enters. The setpoint is not held, and water condenses in the cabinet.",
        Formula = "an air conditioner needs solid or glazed doors, side panels, a solid roof, no roof fans and no intake",
        Sources = [Sources.CoolingPractice],
        Needs =
        [
            "/cooling/airConditioner", "/cooling/roofFans", "/cooling/intakeAreaCm2", "/cabinet/frontDoor/style", "/cabinet/rearDoor/style",
            "/cabinet/sidePanels", "/cabinet/roof/style",
        ],
        Remedies = ["Close the cabinet.", "Do without the air conditioner where doors or fans are enough."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var survey = context.Survey;
        if (survey.Description.Cooling is not { AirConditioner: not null } cooling)
        {
            return;
        }

        var cabinet = survey.Cabinet.Source;
        var openings = new List<(string Name, string Pointer)>();
        AddDoor(context, openings, cabinet.FrontDoor, "front door", Pointers.FrontDoor);
        AddDoor(context, openings, cabinet.RearDoor, "rear door", Pointers.RearDoor);
        Add(cabinet.SidePanels == false, "open sides", Pointers.SidePanels);
        Add(survey.Heat.AirPath is { HasVent: true, HasRoofFans: false }, "a vented roof", Pointers.RoofStyle);
        Add(survey.Heat.AirPath.HasRoofFans, "roof fans", Pointers.RoofFans);
        Add(cooling.IntakeAreaCm2 > 0, "an air intake", Pointers.IntakeArea);
        if (openings.Count > 0)
        {
            context.Report(new FindingDraft
            {
                Message = Defect,
                Data = [("openings", Scalar.Ids(openings.Select(o => Scalar.CodeOf(o.Name))))],
                Subject = Subjects.AirConditioner,
                Identity = ["open"],
                Pointers = ["/cooling/airConditioner", .. openings.Select(o => o.Pointer)],
                Candidates = AirPathRemedies.CloseAround(survey),
            });
        }

        void Add(bool isOpen, string name, string pointer)
        {
            if (isOpen)
            {
                openings.Add((name, pointer));
            }
        }
    }

    private static void AddDoor(RuleContext context, List<(string Name, string Pointer)> openings, Door? door, string name, string pointer)
    {
        if (AirPath.LetsAirThrough(door) is not { } isOpen)
        {
            context.ReportMissing(pointer + "/style", Missing);
        }
        else if (isOpen)
        {
            openings.Add((door!.Style == DoorStyle.None ? $"no {name}" : $"a perforated {name}", pointer + "/style"));
        }
    }
}
