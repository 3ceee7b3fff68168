using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Remedies;

/// <summary>Remedies that change the temperature or humidity of the air that the equipment takes in.</summary>
public static class RoomAirRemedies
{
    private static readonly MessageWording FloorAir = new("remedy.floor-air", "Supply the floor air at {supplyC:exact} C");
    private static readonly MessageWording CoolRoom = new("remedy.cool-room", "Keep the room at {ambientC:exact} C or cooler");
    private static readonly MessageWording DryRoom = new("remedy.dry-room", "Keep the room's humidity at {humidityPercent:exact} % or less");
    private static readonly MessageWording WarmRoom = new("remedy.warm-room", "Keep the room at {ambientC:exact} C or warmer");

    /// <summary>Cooler inlet air for an item.</summary>
    /// <param name="limitC">Its limit at the site, C.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> CoolInlet(RackSurvey survey, MountedItem item, double limitC)
    {
        var description = survey.Description;
        var cool = Math.Floor(limitC);
        switch (survey.Heat.AirPath.Mode)
        {
            case CoolingMode.Underfloor when cool >= -20:
                yield return new RemedyCandidate(
                    new(FloorAir, ("supplyC", cool)),
                    description.EditCooling(c => c with { Underfloor = c.Underfloor! with { SupplyC = cool } }));
                break;
            case CoolingMode.AirConditioner when cool >= -20:
                yield return new RemedyCandidate(
                    new(RemedyTitles.Setpoint, ("setpointC", cool)),
                    description.EditCooling(c => c with { AirConditioner = c.AirConditioner! with { SetpointC = cool } }));
                break;
            case not (CoolingMode.Underfloor or CoolingMode.AirConditioner) when cool >= -50:
                yield return new RemedyCandidate(
                    new(CoolRoom, ("ambientC", cool)),
                    description with { Site = (description.Site ?? new Site()) with { AmbientMaxC = cool } });
                break;
        }

        if (CoolingRemedies.Cooler(survey, cool) is { } cooler)
        {
            yield return cooler;
        }

        if (PlaceRemedies.TakeOut(survey, item) is { } takeOut)
        {
            yield return takeOut;
        }
    }

    /// <summary>A higher temperature of the cooled air, or a drier room.</summary>
    /// <param name="pointer">JSON Pointer of the temperature.</param>
    /// <param name="coldC">The temperature, C.</param>
    /// <param name="leastC">Minimum temperature, C.</param>
    /// <param name="marginK">The share of it that is margin above the dew point, K.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> Warmer(RackSurvey survey, string pointer, double coldC, double leastC, double marginK)
    {
        var description = survey.Description;
        var warmer = Math.Ceiling(leastC);
        if (warmer <= 60)
        {
            yield return pointer == Pointers.Setpoint
                ? new RemedyCandidate(
                    new(RemedyTitles.Setpoint, ("setpointC", warmer)),
                    description.EditCooling(c => c with { AirConditioner = c.AirConditioner! with { SetpointC = warmer } }))
                : new RemedyCandidate(
                    new(FloorAir, ("supplyC", warmer)),
                    description.EditCooling(c => c with { Underfloor = c.Underfloor! with { SupplyC = warmer } }));
        }

        if (coldC - marginK > -Air.ZeroC / 2)
        {
            var humidity = Math.Floor(100 * Air.SaturationPa(coldC - marginK - 0.01) / Air.SaturationPa(survey.Heat.AmbientC));
            yield return new RemedyCandidate(
                new(DryRoom, ("humidityPercent", humidity)),
                description with { Site = description.Site! with { HumidityMaxPercent = humidity } });
        }
    }

    /// <summary>A drier room.</summary>
    /// <param name="mostPercent">Maximum relative humidity, percent.</param>
    /// <param name="mostDewPointC">Maximum dew point, C.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> Drier(RackSurvey survey, double mostPercent, double mostDewPointC)
    {
        var byDewPoint = 100 * Air.SaturationPa(mostDewPointC) / Air.SaturationPa(survey.Heat.AmbientC);
        var humidity = Math.Floor(Math.Min(mostPercent, byDewPoint));
        yield return new RemedyCandidate(
            new(DryRoom, ("humidityPercent", humidity)),
            survey.Description with { Site = survey.Description.Site! with { HumidityMaxPercent = humidity } });
    }

    /// <summary>A room that does not get as cold.</summary>
    /// <param name="leastC">Minimum temperature, C.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> HeatRoom(RackSurvey survey, double leastC)
    {
        var warm = Math.Ceiling(leastC);
        if (warm > survey.Heat.AmbientC)
        {
            yield break;
        }

        yield return new RemedyCandidate(
            new(WarmRoom, ("ambientC", warm)),
            survey.Description with { Site = survey.Description.Site! with { AmbientMinC = warm } });
    }

    /// <summary>Cooler air at the inlets, so that the exhaust is cooler by as much.</summary>
    /// <param name="lessK">Difference, K.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> CoolExhaust(RackSurvey survey, double lessK)
    {
        var description = survey.Description;
        var heat = survey.Heat;
        if (heat.AirPath.Mode is CoolingMode.AirConditioner or CoolingMode.Underfloor || heat.AmbientC - lessK < InletLimits.RecommendedLeastC)
        {
            yield break;
        }

        // Cooler air is denser, which lowers the rise as well.
        var cool = Math.Floor(heat.AmbientC - lessK);
        yield return new RemedyCandidate(
            new(CoolRoom, ("ambientC", cool)), description with { Site = (description.Site ?? new Site()) with { AmbientMaxC = cool } });
    }
}
