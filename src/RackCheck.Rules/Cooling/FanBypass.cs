using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds roof fans that draw room air through a perforated rear door.</summary>
public sealed class FanBypass : Rule
{
    private static readonly MessageWording Defect = new(
        "cooling.fan-bypass",
        "The roof fans draw room air through the open rear side past the equipment instead of through it.");

    private static readonly MissingData Missing = new(
        "cooling.fan-bypass.missing",
        "The style of the rear door is missing, so it is unknown what air the roof fans draw.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.fan-bypass",
        Title = "Roof fans above a perforated rear door",
        Severity = Severity.Advice,
        What = "Finds roof fans in cabinets whose rear door lets air through.",
        Why = "The fans draw room air in through the rear door and out through the roof, past the equipment. The airflow through the equipment does not grow.",
        Formula = "roof fans and a rear door that is perforated or left off, side panels fitted",
        Sources = [Sources.CoolingPractice, Sources.AirflowPractice],
        Needs = ["/cooling/roofFans", "/cabinet/rearDoor/style", "/cabinet/sidePanels"],
        Remedies = ["Fit a solid rear door.", "Remove the roof fans where the equipment's own fans are enough."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var path = context.Survey.Heat.AirPath;
        if (path is not { HasRoofFans: true, AreSidesOpen: false, Mode: CoolingMode.Forced or CoolingMode.Doors })
        {
            return;
        }

        var rear = context.Survey.Cabinet.Source.RearDoor;
        if (AirPath.LetsAirThrough(rear) is not { } isOpen)
        {
            context.ReportMissing(Pointers.RearDoor + "/style", Missing);
        }
        else if (isOpen)
        {
            context.Report(new FindingDraft
            {
                Message = Defect,
                Data = [],
                Subject = Subjects.RoofFans,
                Identity = ["bypass"],
                Pointers = [Pointers.RoofFans, Pointers.RearDoor],
                Candidates = AirPathRemedies.EndBypass(context.Survey),
            });
        }
    }
}
