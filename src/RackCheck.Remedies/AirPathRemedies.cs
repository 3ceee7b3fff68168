using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Remedies;

/// <summary>Remedies that open or close the airflow path of a cabinet, or stir the air in it.</summary>
public static class AirPathRemedies
{
    private static readonly MessageWording StirringTray = new(
        "remedy.stirring-tray", "Fit a fan tray of {count} fans of {flowM3h:exact} m3/h that stirs the air");
    private static readonly WordedText SolidRear = new("remedy.solid-rear-door", "Fit a solid rear door");
    private static readonly WordedText NoRoofFans = new(
        "remedy.no-roof-fans", "Remove the roof fans and close their openings; the equipment's own fans move the air through the doors");
    private static readonly WordedText CloseCabinet = new(
        "remedy.close-cabinet", "Close the cabinet: solid doors, side panels and roof, no fans to the outside");
    private static readonly MessageWording VentOpenings = new("remedy.vent-openings", "Fit an intake and a vented roof of {areaCm2:exact} cm2 each");

    private const double OpeningStepCm2 = 100;

    /// <summary>A fan tray that stirs the air in a closed cabinet.</summary>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> Stir(RackSurvey survey)
    {
        if (!survey.Heat.IsStirred)
        {
            yield return new RemedyCandidate(
                new(StirringTray, ("count", CoolingEdits.StirringFans), ("flowM3h", CoolingEdits.StirringM3h)),
                survey.Description.WithStirringTray());
        }
    }

    /// <summary>Doors or roof fans, not both.</summary>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> EndBypass(RackSurvey survey)
    {
        var description = survey.Description;
        yield return new RemedyCandidate(SolidRear, description.WithSolidRear());
        if (survey.Heat.AirPath.HasEntry == true)
        {
            yield return new RemedyCandidate(
                NoRoofFans,
                description.EditCabinet(c => c with { Roof = new Roof { Style = RoofStyle.Solid } }).EditCooling(c => c with { RoofFans = null }));
        }
    }

    /// <summary>A closed cabinet around the air conditioner, or none.</summary>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> CloseAround(RackSurvey survey)
    {
        yield return new RemedyCandidate(CloseCabinet, survey.Description.Closed());
        foreach (var candidate in CoolingRemedies.WithoutCooler(survey))
        {
            yield return candidate;
        }
    }

    /// <summary>Openings that ventilate batteries, or the batteries elsewhere.</summary>
    /// <param name="areaCm2">Free area of each opening, cm2.</param>
    /// <param name="batteries">The items with batteries.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> Ventilate(RackSurvey survey, double areaCm2, IReadOnlyList<MountedItem> batteries)
    {
        var description = survey.Description;
        var size = OpeningStepCm2 * Math.Ceiling(areaCm2 / OpeningStepCm2);
        if (description.Cooling?.AirConditioner is null && size <= 20_000)
        {
            yield return new RemedyCandidate(
                new(VentOpenings, ("areaCm2", size)),
                description.EditCabinet(c => c with
                {
                    Roof = new Roof { Style = RoofStyle.Vented, OpenAreaCm2 = Math.Max(size, c.Roof?.OpenAreaCm2 ?? 0) },
                }).EditCooling(c => c with { IntakeAreaCm2 = Math.Max(size, c.IntakeAreaCm2 ?? 0) }));
            yield return new RemedyCandidate(
                new(RemedyTitles.OpenDoors, ("openPercent", CoolingEdits.UsualOpenPercent)), description.WithOpenDoors());
        }

        if (PlaceRemedies.TakeOut(survey, batteries) is { } takeOut)
        {
            yield return takeOut;
        }
    }
}
