using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using static System.FormattableString;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds cooled air on whose surfaces water settles out of the room's.</summary>
public sealed class Condensation : Rule
{
    private static readonly RuleLimit MarginK = new(
        "marginK", "what cooled air is to stay above the dew point; two to three are good practice", 0, "K", 0, 10, Stricter.Higher);

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.condensation",
        Title = "Water settles on what is cooled",
        Severity = Severity.Warning,
        What = "Finds setpoints of air conditioners and temperatures of air from the floor under the dew point of the room's air. The walls of a closed cabinet without either are never colder than the room, and so not under it.",
        Why = "Water settles on surfaces that cold, runs down, and gets into equipment and mains.",
        Formula = "setpointC, supplyC >= t_d + marginK; t_d = 243.12 g/(17.62 - g), g = ln(RH/100) + 17.62 t/(243.12 + t)",
        Sources = [Sources.Wmo8],
        Limits = [MarginK],
        Needs = ["/cooling/airConditioner/setpointC", "/cooling/underfloor/supplyC", "/site/ambientMaxC", "/site/humidityMaxPercent"],
        Remedies = ["Hold a higher temperature, where the items bear it.", "Dry the room's air."],
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
            context.Lacks(Pointers.UnderfloorC, "Without the temperature of the air from the floor it cannot be said whether water settles on what it cools.");
        }

        if (context.Survey.Description.Site?.HumidityMaxPercent is null)
        {
            context.Lacks(Pointers.Humidity, "Without the humidity of the room it cannot be said whether water settles on what is cooled.");
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
            Message = "The {what} is at {coldC} C; in a room of {ambientC} C and {humidityPercent} % humidity water settles on what is at {dewC} C or colder, so {leastC} C is the least that it should be.",
            Data = [("what", what), ("coldC", cold), ("ambientC", heat.AmbientC), ("humidityPercent", humidity), ("dewC", dew), ("leastC", least)],
            Subject = what,
            Identity = [what],
            Pointers = [pointer, Pointers.Humidity],
            Actual = Quantities.Of(cold, "C"),
            Limit = Quantities.Of(least, "C"),
            Calculation = Invariant($"ln({humidity:0.###} / 100) + 17.62 x {heat.AmbientC:0.###} / (243.12 + {heat.AmbientC:0.###}) = {gamma:0.######}; 243.12 x {gamma:0.######} / (17.62 - {gamma:0.######}) = {heat.DewPointC:0.###}; {dew:0.##} + {margin:0.###} = {least:0.###} > {cold:0.###}"),
            Cures = CoolingCures.Warmer(context.Survey, pointer, cold, least, margin),
        });
    }
}
