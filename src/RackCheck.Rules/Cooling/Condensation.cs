using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using static System.FormattableString;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds cooled air below the dew point of the room.</summary>
public sealed class Condensation : Rule
{
    /// <summary>Margin of cooled air above the dew point; 2 K to 3 K is good practice.</summary>
    public static RuleLimit MarginK { get; } = new(
        "marginK", "margin of cooled air above the dew point; 2 K to 3 K is good practice", 0, "K", 0, 10, Stricter.Higher);

    private static readonly WordingChoice Cold = new(
        "cooling.condensation",
        "The [setpoint:setpoint of the air conditioner|air from the floor] is at {coldC} C; a room at {ambientC} C and {humidityPercent} % "
            + "relative humidity has a dew point of {dewC} C, so the minimum is {leastC} C.");

    private static readonly MissingData MissingHumidity = new(
        "cooling.condensation.missing-humidity",
        "The humidity of the room is missing, so condensation cannot be checked.");

    private static readonly MissingData MissingUnderfloorC = new(
        "cooling.condensation.missing-underfloor-c",
        "The temperature of the underfloor air is missing, so condensation cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.condensation",
        Title = "Condensation on cooled surfaces",
        Severity = Severity.Warning,
        What =
            "Finds setpoints of air conditioners and temperatures of underfloor air below the dew point of the room. The walls of a closed cabinet without "
            + "either are never colder than the room, so they stay above the dew point.",
        Why = "Water condenses on cold surfaces, runs down, and gets into equipment and mains connections.",
        Formula = "setpointC, supplyC >= t_d + marginK; t_d = 243.12 g/(17.62 - g), g = ln(RH/100) + 17.62 t/(243.12 + t)",
        Sources = [Sources.Wmo8],
        Limits = [MarginK],
        Needs = ["/cooling/airConditioner/setpointC", "/cooling/underfloor/supplyC", "/site/ambientMaxC", "/site/humidityMaxPercent"],
        Remedies = ["Raise the setpoint, where the equipment permits it.", "Dehumidify the room."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var cooling = context.Survey.Description.Cooling;
        var supply = cooling?.Underfloor?.SupplyC;
        if (cooling is not ({ AirConditioner: not null } or { Underfloor: not null }))
        {
            return;
        }

        if (cooling.Underfloor is not null && supply is null)
        {
            context.ReportMissing(Pointers.UnderfloorC, MissingUnderfloorC);
        }

        if (context.Survey.Description.Site?.HumidityMaxPercent is null)
        {
            context.ReportMissing(Pointers.Humidity, MissingHumidity);
        }
        else if (context.Survey.Heat.DewPointC is { } dew)
        {
            var least = Math.Round(dew, 2, MidpointRounding.AwayFromZero);
            if (cooling.AirConditioner is not null)
            {
                Judge(context, "setpoint of the air conditioner", Pointers.Setpoint, context.Survey.Heat.SetpointC, least);
            }

            if (supply is { } cold)
            {
                Judge(context, "air from the floor", Pointers.UnderfloorC, cold, least);
            }
        }
    }

    private static void Judge(RuleContext context, string what, string pointer, double cold, double dew)
    {
        var heat = context.Survey.Heat;
        var margin = context.Limit(MarginK);
        var least = Quantities.Round(dew + margin);
        if (Quantities.Round(cold) >= least)
        {
            return;
        }

        var humidity = context.Survey.Description.Site!.HumidityMaxPercent!.Value;
        var gamma = Math.Log(humidity / 100) + (17.62 * heat.AmbientC / (243.12 + heat.AmbientC));
        context.Report(new FindingDraft
        {
            Message = Cold.With(pointer == Pointers.Setpoint ? "setpoint" : ""),
            Data = [("coldC", cold), ("ambientC", heat.AmbientC), ("humidityPercent", humidity), ("dewC", dew), ("leastC", least)],
            Subject = Subjects.Named(what),
            Identity = [what],
            Pointers = [pointer, Pointers.Humidity],
            Actual = Quantities.Of(cold, "C"),
            Limit = Quantities.Of(least, "C"),
            Calculation =
                Invariant($"ln({humidity:0.###} / 100) + 17.62 x {heat.AmbientC:0.###} / (243.12 + {heat.AmbientC:0.###}) = {gamma:0.######}; ")
                + Invariant($"243.12 x {gamma:0.######} / (17.62 - {gamma:0.######}) = {heat.DewPointC:0.###}; ")
                + Invariant($"{dew:0.##} + {margin:0.###} = {least:0.###} > {cold:0.###}"),
            Candidates = RoomAirRemedies.Warmer(context.Survey, pointer, cold, least, margin),
        });
    }
}
