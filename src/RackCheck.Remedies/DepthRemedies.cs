using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Remedies;

/// <summary>Remedies for items that foul a door: another setback of the uprights, a deeper cabinet, no front door, or removal of items.</summary>
public static class DepthRemedies
{
    private static readonly WordingChoice OpenFront = new(
        "remedy.no-front-door", "Remove the front door[uprights: and set the front uprights {setbackMm:exact} mm behind the front face]");

    /// <summary>Remedies that suit every item, best first.</summary>
    public static IEnumerable<RemedyCandidate> For(RackSurvey survey) => Several(survey, OtherSetback, DeeperCabinet, NoFrontDoor, TakeOutUnfit);

    /// <summary>Another setback of the uprights, or a deeper cabinet, that suits every item and leaves the rear uprights in front of the rear door.</summary>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> Uprights(RackSurvey survey) => Several(survey, OtherSetback, DeeperCabinet);

    private static IEnumerable<RemedyCandidate> Several(RackSurvey survey, params Func<RackSurvey, RemedyCandidate?>[] changes)
    {
        foreach (var change in changes)
        {
            if (change(survey) is { } candidate)
            {
                yield return candidate;
            }
        }
    }

    // Uprights without a setback need no patch: the cabinet builder sets them to suit every item.
    private static RemedyCandidate? OtherSetback(RackSurvey survey) =>
        survey.Cabinet.SetbackMm is not null && SetbackFor(survey, survey.Cabinet.Depth) is { } setback
            ? SetSetback(new RemedyBuilder(survey), setback)
                .Titled(new(RemedyTitles.FrontUprights, ("setbackMm", setback)))
            : null;

    private static RemedyCandidate? DeeperCabinet(RackSurvey survey)
    {
        var now = survey.Cabinet.Depth;
        foreach (var depth in CabinetSizes.DepthsMm)
        {
            var other = now with { DepthMm = depth };
            if (depth > now.DepthMm && IsServed(survey, other, out var setback))
            {
                var builder = new RemedyBuilder(survey).SetCabinet(c => c with { DepthMm = depth });
                return setback is { } mm
                    ? SetSetback(builder, mm).Titled(
                        new(RemedyTitles.DeeperAndUprights, ("depthMm", depth), ("setbackMm", mm)))
                    : builder.Titled(RemedyTitles.Deep(depth));
            }
        }

        return null;
    }

    private static RemedyCandidate? NoFrontDoor(RackSurvey survey)
    {
        var open = survey.Cabinet.Depth with { FrontDoorMm = 0, FrontOpen = true };
        if (survey.Cabinet.Depth.FrontOpen || !IsServed(survey, open, out var setback))
        {
            return null;
        }

        var builder = new RemedyBuilder(survey).SetCabinet(c => c with { FrontDoor = new Door { Style = DoorStyle.None } });
        return setback is { } mm
            ? SetSetback(builder, mm).Titled(new(OpenFront.With("uprights"), ("setbackMm", mm)))
            : builder.Titled(new(OpenFront.With()));
    }

    // The item that sets the tighter bound is removed first, until some setback suits the rest.
    private static RemedyCandidate? TakeOutUnfit(RackSurvey survey)
    {
        var cabinet = survey.Cabinet.Depth;
        var unfit = new List<MountedItem>();
        while (!IsServed(survey, cabinet, out _, unfit))
        {
            var rest = survey.Items.Except(unfit).OrderBy(i => i.Id, StringComparer.Ordinal).ToArray();
            if (rest.Length == 0)
            {
                return null;
            }

            unfit.Add(rest.MinBy(i => Served(survey, i))!);
        }

        return unfit.Count == 0 ? null : PlaceRemedies.TakeOut(survey, unfit);
    }

    // By how much an item does not fit: at the given setback, else at any.
    private static double Served(RackSurvey survey, MountedItem item)
    {
        var interval = survey.Depth.Interval(item);
        return survey.Cabinet.SetbackMm is { } setback
            ? Math.Min(setback - interval.LeastMm, interval.GreatestMm - setback)
            : interval.GreatestMm - interval.LeastMm;
    }

    // If the setback is given, one on the hole pitch must suit all items; the patch sets it if it is different.
    private static bool IsServed(RackSurvey survey, CabinetDepth cabinet, out double? setback, IReadOnlyCollection<MountedItem>? without = null)
    {
        setback = null;
        var all = survey.Depth.AllIn(cabinet, without);
        if (without is null)
        {
            // The rear uprights stand behind the front ones by the spacing, or by the need of the longest rails, and in front of the rear door.
            var spacing = survey.Cabinet.SpacingMm ?? survey.Items.Where(i => i.HasRails).Select(i => i.RailRange.LeastMm).DefaultIfEmpty(0).Max();
            all = all.Intersect(new SetbackInterval(0, cabinet.RearLimitMm - spacing));
        }

        if (survey.Cabinet.SetbackMm is not { } given)
        {
            return !all.IsEmpty;
        }

        var found = all.OnPitch(given, survey.Cabinet.PitchMm);
        setback = found != given ? found : null;
        return without is null ? found is not null : found == given;
    }

    private static double? SetbackFor(RackSurvey survey, CabinetDepth cabinet) =>
        IsServed(survey, cabinet, out var setback) ? setback : null;

    private static RemedyBuilder SetSetback(RemedyBuilder builder, double setback) =>
        builder.SetUprights(u => u with { FrontSetbackMm = setback });
}
