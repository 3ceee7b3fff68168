using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds closed doors that block the airflow of equipment.</summary>
public sealed class SolidDoor : Rule
{
    private static readonly MessageWording One = new(
        "cooling.solid-door.one",
        "The {door:words} is closed and blocks the airflow of {item}; there is no other airflow path.");

    private static readonly MessageWording Several = new(
        "cooling.solid-door.several",
        "The {door:words} is closed and blocks the airflow of {count} items, the first of them {item}; there is no other airflow path.");

    private static readonly MissingData MissingAirflowDirection = new(
        "cooling.solid-door.missing-airflow-direction",
        "The airflow direction of an item behind a closed door is missing, so its airflow path cannot be checked.");

    private static readonly MissingData MissingStyle = new(
        "cooling.solid-door.missing-style",
        "The style of the doors is missing, so the airflow through them cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.solid-door",
        Title = "Closed door blocks the airflow",
        Severity = Severity.Error,
        What =
            "Finds solid and glazed doors of cabinets that hold equipment with airflow front to rear or rear to front, without fans, underfloor supply, vented "
            + "roof above an open front, air conditioner or open sides as another airflow path. Each door has its own finding. Where the temperature of "
            + "the closed cabinet can be checked, cooling.sealed-rise does so instead.",
        Why = "Hot-air recirculation behind the closed door heats the equipment until it switches off.",
        Formula =
            "door solid or glazed; an item with airflow front-to-rear or rear-to-front; no fans, underfloor supply, vented roof above an open front or air "
            + "conditioner, side panels fitted; cooling.sealed-rise cannot be checked",
        Sources = [Sources.AirflowPractice, Sources.CoolingPractice],
        Needs =
        [
            "/cabinet/frontDoor/style", "/cabinet/rearDoor/style", "/cabinet/sidePanels", "/cabinet/roof", "/items/*/airflow/direction",
            "/items/*/heatW", "/items/*/maxInletC", "/cooling", "/site/ambientMaxC", "/site/altitudeM", "/site/humidityMaxPercent",
        ],
        Notes = ["Natural draught through a vented roof is a path; cooling.airflow compares it with the heat load, as a warning."],
        Remedies = ["Fit perforated doors.", "Fit fans in the roof.", "Fit an air conditioner.", "Move the equipment to another rack."],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var path = context.Survey.Heat.AirPath;
        if (path.AreSidesOpen || path.Mode is CoolingMode.Forced or CoolingMode.Underfloor or CoolingMode.Draught or CoolingMode.AirConditioner
            || context.Survey.Heat.IsSealedRiseKnown || context.Survey.Heat.IsSealedTooHot)
        {
            return;
        }

        var doors = context.Survey.Cabinet.Source;
        var isClosed = AirPath.LetsAirThrough(doors.FrontDoor) == false || AirPath.LetsAirThrough(doors.RearDoor) == false;
        var through = new List<MountedItem>();
        foreach (var item in context.Survey.Items)
        {
            if (isClosed && HeatSurvey.MayNeedAirflow(item))
            {
                context.ReportMissing(Pointers.ItemAirflowDirection[item.Index], MissingAirflowDirection);
            }

            if (item.Item!.Airflow?.Direction is AirflowDirection.FrontToRear or AirflowDirection.RearToFront)
            {
                through.Add(item);
            }
        }

        if (through.Count > 0)
        {
            through.Sort(static (x, y) => string.CompareOrdinal(x.Id, y.Id));
            var cabinet = context.Survey.Cabinet.Source;
            Judge(context, cabinet.FrontDoor, "front door", Pointers.FrontDoor, through);
            Judge(context, cabinet.RearDoor, "rear door", Pointers.RearDoor, through);
        }
    }

    private static void Judge(RuleContext context, Door? door, string name, string pointer, List<MountedItem> through)
    {
        if (AirPath.LetsAirThrough(door) is not { } open)
        {
            context.ReportMissing(pointer + "/style", MissingStyle);
        }
        else if (!open)
        {
            var first = through[0];
            context.Report(new FindingDraft
            {
                Message = through.Count == 1 ? One : Several,
                Data = [("door", Scalar.CodeOf(name)), ("count", through.Count), ("item", first.Id)],
                Subject = Subjects.Named(name),
                Identity = [name],
                Pointers = [pointer + "/style", .. through.Select(i => i.Pointer)],
                Candidates = CoolingRemedies.ClearDoors(context.Survey, through),
            });
        }
    }
}
