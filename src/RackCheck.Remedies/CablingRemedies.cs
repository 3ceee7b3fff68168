using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Remedies;

/// <summary>Remedies for cables: a wider cabinet, uprights further forward, or a deeper cabinet.</summary>
public static class CablingRemedies
{
    /// <summary>Space in the side channels: a wider cabinet, else remove equipment, largest cable area first.</summary>
    /// <param name="fillPercent">Maximum fill of the channels, percent.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> MoreChannel(RackSurvey survey, double fillPercent)
    {
        foreach (var width in CabinetSizes.WidthsMm.Where(w => w > survey.Cabinet.WidthMm))
        {
            yield return new RemedyBuilder(survey).SetCabinet(c => c with { WidthMm = width }).Titled(RemedyTitles.Wide(width));
        }

        var cabled = survey.Items.Where(i => CableSurvey.AreaMm2Of(i) > 0)
            .OrderByDescending(CableSurvey.AreaMm2Of).ThenBy(i => i.Id, StringComparer.Ordinal).ToArray();
        var left = survey.Cables.AreaMm2;
        for (var count = 1; count <= cabled.Length; count++)
        {
            left -= CableSurvey.AreaMm2Of(cabled[count - 1]);
            if (Quantities.Round(left) <= Quantities.Round(survey.Cables.SideChannelsMm2 * fillPercent / 100))
            {
                if (PlaceRemedies.TakeOut(survey, cabled[..count]) is { } takeOut)
                {
                    yield return takeOut;
                }

                break;
            }
        }
    }

    /// <summary>Bend space behind all bodies with cables: move the uprights, use a deeper cabinet, or remove the item.</summary>
    /// <param name="tight">The item with too little space.</param>
    /// <param name="diameters">Minimum bend radius, in cable diameters.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> MoreBehind(RackSurvey survey, MountedItem tight, double diameters)
    {
        var cabinet = survey.Cabinet;
        if (cabinet.SetbackMm is { } given && Setbacks(survey, cabinet.Depth, diameters).OnPitch(given, cabinet.PitchMm) is { } setback && setback != given)
        {
            yield return new RemedyBuilder(survey).SetUprights(u => u with { FrontSetbackMm = setback })
                .Titled(new(RemedyTitles.FrontUprights, ("setbackMm", setback)));
        }

        foreach (var depth in CabinetSizes.DepthsMm.Where(d => d > cabinet.Depth.DepthMm))
        {
            if (Deeper(survey, depth, diameters) is { } deeper)
            {
                yield return deeper;
            }
        }

        if (PlaceRemedies.TakeOut(survey, tight) is { } takeOut)
        {
            yield return takeOut;
        }
    }

    private static RemedyCandidate? Deeper(RackSurvey survey, double depthMm, double diameters)
    {
        var all = Setbacks(survey, survey.Cabinet.Depth with { DepthMm = depthMm }, diameters);
        var builder = new RemedyBuilder(survey).SetCabinet(c => c with { DepthMm = depthMm });
        if (all.IsEmpty)
        {
            return null;
        }

        if (survey.Cabinet.SetbackMm is not { } given || all.Holds(given))
        {
            return builder.Titled(RemedyTitles.Deep(depthMm)) with { Kind = nameof(Deeper) };
        }

        return all.OnPitch(given, survey.Cabinet.PitchMm) is not { } setback ? null
            : builder.SetUprights(u => u with { FrontSetbackMm = setback })
                .Titled(new(RemedyTitles.DeeperAndUprights, ("depthMm", depthMm), ("setbackMm", setback))) with { Kind = nameof(Deeper) };
    }

    private static SetbackInterval Setbacks(RackSurvey survey, CabinetDepth cabinet, double diameters)
    {
        var all = survey.Depth.AllIn(cabinet);
        foreach (var item in survey.Items)
        {
            if (CableSurvey.ThickestMm(item) is > 0 and var thickest)
            {
                all = all.Intersect(survey.Cables.SetbacksFor(item, diameters * thickest, cabinet));
            }
        }

        return all;
    }
}
