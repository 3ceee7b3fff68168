using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds perforated doors that hold the air back.</summary>
public sealed class DoorRestriction : Rule
{
    private static readonly RuleLimit DoorLossPa = new(
        "doorLossPa", "most pressure that a door may take of the air at the flow that the heat needs", 5, "Pa", 0.1, 100, Stricter.Lower);

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.door-restriction",
        Title = "Perforated door holds the air back",
        Severity = Severity.Warning,
        What = "Finds perforated doors that lose more than 5 Pa at the flow that the heat needs. One finding a door. All of the air is taken to go through the door. The loss is within about 30 % either way.",
        Why = "The fans of equipment build up a few pascal beyond their own: behind a tight door they move less, and hot air finds its way back to the inlets.",
        Formula = "zeta = (0.707 (1-f)^0.375 + 1 - f)^2/f^2; w = V/(3600 A); zeta rho w^2/2 <= doorLossPa",
        Sources = [Sources.Idelchik, Sources.DoorLossPractice, Sources.AshraeFundamentals],
        Limits = [DoorLossPa],
        Needs = ["/cabinet/frontDoor/openAreaPercent", "/cabinet/frontDoor/perforatedAreaM2", "/cabinet/rearDoor/openAreaPercent", "/cabinet/rearDoor/perforatedAreaM2", "/items/*/heatW", "/items/*/power/ratedW", "/cooling/riseK"],
        Remedies = ["Take a door with more of it open.", "Take a door that is perforated over its whole face."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        const string Message = "Without the style of the doors, their open share and the heat of all items it cannot be said what pressure the doors take of the air.";
        var heat = context.Survey.Heat;
        if (!heat.HasHeat || MissingHeatData.ReportDoors(context, Message))
        {
            return;
        }

        if (heat.Way.Front is not null || heat.Way.Rear is not null)
        {
            MissingHeatData.ReportHeat(context, Message);
        }

        Judge(context, heat.Way.Front, Message);
        Judge(context, heat.Way.Rear, Message);
    }

    private static void Judge(RuleContext context, AiredDoor? door, string message)
    {
        if (door is null)
        {
            return;
        }

        if (door.Door.OpenAreaPercent is not { } open)
        {
            context.Lacks(door.Pointer + "/openAreaPercent", message);
            return;
        }

        var heat = context.Survey.Heat;
        var limit = context.Limit(DoorLossPa);
        var zeta = Round4(Openings.PlateZeta(open / 100));
        var velocity = Round4(Openings.VelocityMS(heat.NeededM3h, door.AreaM2));
        var loss = Quantities.Round(Openings.VelocityLossPa(zeta, heat.DensityKgM3, velocity));
        if (loss <= Quantities.Round(limit))
        {
            return;
        }

        context.Report(new FindingDraft
        {
            Message = "The {door}, {openPercent} % open over {areaM2} m2, holds back the {neededM3h} m3/h of air that the heat needs by {lossPa} Pa, give or take {uncertaintyPercent} %; {limitPa} Pa is the most that it should.",
            Data =
            [
                ("door", door.Name), ("openPercent", open), ("areaM2", door.AreaM2), ("lossPa", loss), ("neededM3h", heat.NeededM3h),
                ("uncertaintyPercent", Openings.DoorUncertaintyPercent), ("limitPa", limit),
            ],
            Subject = door.Name,
            Identity = [door.Name],
            Pointers = [door.Pointer, door.Pointer + "/openAreaPercent"],
            Actual = Quantities.Of(loss, "Pa"),
            Limit = Quantities.Of(limit, "Pa"),
            UtilisationPercent = 100 * loss / limit,
            Calculation = Invariant($"{heat.NeededM3h:0.###} / (3600 x {door.AreaM2:0.######}) = {velocity:0.####}; {zeta:0.####} x {heat.DensityKgM3:0.####} x {velocity:0.####}^2 / 2 = {loss:0.###} > {limit:0.###}"),
            Cures = CoolingCures.OpenWider(context.Survey, door),
        });
    }

    private static double Round4(double value) => Math.Round(value, 4, MidpointRounding.AwayFromZero);
}
