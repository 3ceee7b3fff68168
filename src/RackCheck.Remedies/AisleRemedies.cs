using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Remedies;

/// <summary>Remedies for an aisle that is too narrow: a wider aisle, a door with two leaves, shorter slides or fixed runners.</summary>
public static class AisleRemedies
{
    private static readonly MessageWording TwoLeaves = new("remedy.two-leaves", "Use a {side} door with two leaves");
    private static readonly MessageWording WiderAisle = new("remedy.aisle", "Place the rack with an aisle of {aisleMm:exact} mm at the {side}");
    private static readonly MessageWording ShorterSlides = new("remedy.slide-extension", "Use slides with an extension of {extensionMm:exact} mm for {item}");

    /// <summary>A door with two leaves, or an aisle as wide as its leaf.</summary>
    /// <param name="face">The side of the door.</param>
    /// <param name="leafMm">Width of a leaf, mm.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> ForDoor(RackSurvey survey, Face face, double leafMm)
    {
        var (source, side) = (survey.Cabinet.Source, CabinetFacts.FaceText(face));
        var door = face == Face.Front ? source.FrontDoor : source.RearDoor;
        if (door is not null && door.Leaves != 2)
        {
            yield return new RemedyBuilder(survey)
                .SetCabinet(c => face == Face.Front
                    ? c with { FrontDoor = c.FrontDoor! with { Leaves = 2 } }
                    : c with { RearDoor = c.RearDoor! with { Leaves = 2 } })
                .Titled(new(TwoLeaves, ("side", side)));
        }

        yield return Wider(survey, face, leafMm);
    }

    /// <summary>A wider aisle, slides with a shorter extension, or fixed runners where the item need not pull out.</summary>
    /// <param name="item">The item on slides.</param>
    /// <param name="pullMm">Its extension, mm.</param>
    /// <param name="aisleMm">Width of the aisle, mm.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> ForSlides(RackSurvey survey, MountedItem item, double pullMm, double aisleMm)
    {
        yield return Wider(survey, item.Face, pullMm);
        if (aisleMm > 0 && !SupportRemedies.MustPullOut(item))
        {
            yield return new RemedyBuilder(survey).SetSupport(item, item.Item!.Support! with { ExtensionMm = aisleMm }).Titled(
                new(ShorterSlides, ("extensionMm", aisleMm), ("item", item.Id)));
        }

        foreach (var candidate in SupportRemedies.Fixed(survey, item))
        {
            yield return candidate;
        }
    }

    private static RemedyCandidate Wider(RackSurvey survey, Face face, double neededMm) => new(
        new(WiderAisle, ("aisleMm", neededMm), ("side", CabinetFacts.FaceText(face))),
        survey.Description.EditSite(s => face == Face.Front ? s with { AisleFrontMm = neededMm } : s with { AisleRearMm = neededMm }));
}
