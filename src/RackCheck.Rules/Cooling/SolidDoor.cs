using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds closed doors before or behind equipment that breathes through them.</summary>
public sealed class SolidDoor : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.solid-door",
        Title = "Closed door in the way of equipment that breathes through it",
        Severity = Severity.Error,
        What = "Finds solid and glazed doors of cabinets in which equipment breathes from front to rear or from rear to front, where neither fans, nor air from the floor, nor an air conditioner, nor open sides give it another way. One finding a door.",
        Why = "What blows against a closed door takes its own hot air in again and grows hotter until it switches off.",
        Formula = "door solid or glazed; an item with airflow front-to-rear or rear-to-front; no fans, underfloor supply or air conditioner, side panels fitted",
        Sources = [Sources.BreathingPractice, Sources.CoolingPractice],
        Needs = ["/cabinet/frontDoor/style", "/cabinet/rearDoor/style", "/cabinet/sidePanels", "/items/*/airflow/direction", "/cooling"],
        Remedies = ["Take perforated doors.", "Fit fans in the roof.", "Take an air conditioner.", "Take the equipment out of the rack."],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var way = context.Survey.Heat.Way;
        if (way.AreSidesOpen || way.Path is AirPath.Forced or AirPath.Underfloor or AirPath.AirConditioner)
        {
            return;
        }

        var doors = context.Survey.Cabinet.Source;
        var isClosed = AirWay.LetsAirThrough(doors.FrontDoor) == false || AirWay.LetsAirThrough(doors.RearDoor) == false;
        var breathing = new List<Mounted>();
        foreach (var item in context.Survey.Items)
        {
            if (isClosed && HeatSurvey.MayBreathe(item))
            {
                context.Lacks(Pointers.ItemAirflowDirection[item.Index], "A door lets no air through; without this it cannot be said whether an item breathes through it.");
            }

            if (item.Item!.Airflow?.Direction is AirflowDirection.FrontToRear or AirflowDirection.RearToFront)
            {
                breathing.Add(item);
            }
        }

        if (breathing.Count > 0)
        {
            breathing.Sort(static (x, y) => string.CompareOrdinal(x.Id, y.Id));
            var cabinet = context.Survey.Cabinet.Source;
            Judge(context, cabinet.FrontDoor, "front door", Pointers.FrontDoor, breathing);
            Judge(context, cabinet.RearDoor, "rear door", Pointers.RearDoor, breathing);
        }
    }

    private static void Judge(RuleContext context, Door? door, string name, string pointer, List<Mounted> breathing)
    {
        if (AirWay.LetsAirThrough(door) is not { } open)
        {
            context.Lacks(pointer + "/style", "Without the style of the doors it cannot be said whether equipment can breathe through them.");
        }
        else if (!open)
        {
            var first = breathing[0];
            context.Report(new FindingDraft
            {
                Message = breathing.Count == 1
                    ? "The {door} is closed, but {item} breathes through it, and the air has no other way."
                    : "The {door} is closed, but {count} items breathe through it, {item} first, and the air has no other way.",
                Data = breathing.Count == 1 ? [("door", name), ("item", first.Id)] : [("door", name), ("count", breathing.Count), ("item", first.Id)],
                Subject = name,
                Identity = [name],
                Pointers = [pointer + "/style", .. breathing.Select(i => i.Pointer)],
                Cures = CoolingCures.ClearDoors(context.Survey, breathing),
            });
        }
    }
}
