using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds perforated doors with too high a pressure drop.</summary>
public sealed class DoorRestriction : Rule
{
    /// <summary>Maximum pressure drop of a door at the airflow through it.</summary>
    public static RuleLimit DoorLossPa { get; } = new(
        "doorLossPa", "maximum pressure drop of a door at the airflow through it", 5, "Pa", 0.1, 100, Stricter.Lower);

    private static readonly MessageWording Defect = new(
        "cooling.door-restriction",
        "The {door:words} ({openPercent} % open over {areaM2} m2) has a pressure drop of {lossPa} Pa +-{uncertaintyPercent} % at an airflow "
            + "of {flowM3h} m3/h; the limit is {limitPa} Pa.");

    private static readonly MissingData Missing = new(
        "cooling.door-restriction.missing",
        "Style or open area of the doors, or heat loads of items, are missing, so the pressure drop of the doors is unknown.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.door-restriction",
        Title = "Pressure drop of a door too high",
        Severity = Severity.Warning,
        What =
            "Finds perforated doors with a pressure drop above 5 Pa at the larger of the airflow that the heat load needs and that of the items' own fans. "
            + "Each door has its own finding. All air is assumed to flow through the door. The uncertainty of the pressure drop is about +-30 %.",
        Why =
            "Equipment fans have only a few pascals of pressure to spare. Behind a restrictive door they deliver less air, and hot air recirculates to the "
            + "inlets.",
        Formula = "zeta = (0.707 (1-f)^0.375 + 1 - f)^2/f^2; w = V/(3600 A); zeta rho w^2/2 <= doorLossPa",
        Sources = [Sources.Idelchik, Sources.DoorLossPractice, Sources.AshraeFundamentals, Sources.AirRisePractice],
        Limits = [DoorLossPa],
        Needs =
        [
            "/cabinet/frontDoor/openAreaPercent", "/cabinet/frontDoor/perforatedAreaM2", "/cabinet/rearDoor/openAreaPercent",
            "/cabinet/rearDoor/perforatedAreaM2", "/items/*/heatW", "/items/*/power/ratedW", "/items/*/airflow/flowM3h", "/cooling/riseK",
            "/site/ambientMaxC", "/site/altitudeM", "/site/humidityMaxPercent",
        ],
        Notes =
        [
            "The airflow is the larger of the need at riseK, where a rise is set, and the sum of the items' own airflows; an item without a stated airflow "
                + "counts at 15 K.",
        ],
        Remedies = ["Fit a door with a larger open area.", "Fit a door that is perforated over its whole face."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var heat = context.Survey.Heat;
        if (!heat.HasHeat || MissingHeatData.ReportDoors(context, Missing))
        {
            return;
        }

        if (heat.AirPath.Front is not null || heat.AirPath.Rear is not null)
        {
            MissingHeatData.ReportHeat(context, Missing);
        }

        Judge(context, heat.AirPath.Front, Missing);
        Judge(context, heat.AirPath.Rear, Missing);
    }

    private static void Judge(RuleContext context, AiredDoor? door, MissingData message)
    {
        if (door is null)
        {
            return;
        }

        if (door.Door.OpenAreaPercent is not { } open)
        {
            context.ReportMissing(door.Pointer + "/openAreaPercent", message);
            return;
        }

        var heat = context.Survey.Heat;
        var limit = context.Limit(DoorLossPa);
        var zeta = Round4(Openings.PlateZeta(open / 100));
        var flow = heat.DoorFlowM3h;
        var velocity = Round4(Openings.VelocityMS(flow, door.AreaM2));
        var loss = Quantities.Round(Openings.VelocityLossPa(zeta, heat.DensityKgM3, velocity));
        if (!Comparison.IsOver(loss, limit))
        {
            return;
        }

        context.Report(new FindingDraft
        {
            Message = Defect,
            Data =
            [
                ("door", Scalar.CodeOf(door.Name)), ("openPercent", open), ("areaM2", door.AreaM2), ("lossPa", loss), ("flowM3h", flow),
                ("uncertaintyPercent", Openings.DoorUncertaintyPercent), ("limitPa", limit),
            ],
            Subject = Subjects.Named(door.Name),
            Identity = [door.Name],
            Pointers = [door.Pointer, door.Pointer + "/openAreaPercent"],
            Actual = Quantities.Of(loss, "Pa"),
            Limit = Quantities.Of(limit, "Pa"),
            UtilisationPercent = 100 * loss / limit,
            Calculation =
                Invariant($"{flow:0.###} / (3600 x {door.AreaM2:0.######}) = {velocity:0.####}; ")
                + Invariant($"{zeta:0.####} x {heat.DensityKgM3:0.####} x {velocity:0.####}^2 / 2 = {loss:0.###} > {limit:0.###}"),
            Candidates = CoolingRemedies.OpenWider(context.Survey, door),
        });
    }

    private static double Round4(double value) => Math.Round(value, 4, MidpointRounding.AwayFromZero);
}
