using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Remedies;

/// <summary>Cures for items that foul a door: other setback of the uprights, deeper cabinet, no front door, or out with what does not fit.</summary>
public static class DepthRemedies
{
    /// <summary>All that would serve every item, best first.</summary>
    /// <param name="survey">The facts.</param>
    /// <returns>Remedies.</returns>
    public static IEnumerable<RemedyCandidate> For(RackSurvey survey) => Several(survey, OtherSetback, DeeperCabinet, NoFrontDoor, TakeOutUnfit);

    /// <summary>Another setback of the uprights, or a deeper cabinet, in which every item is served and the rear uprights stand before the rear door.</summary>
    /// <param name="survey">The facts.</param>
    /// <returns>Cures, best first.</returns>
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

    // Uprights that are not set yet need no patch: whoever builds the cabinet sets them where every item is served.
    private static RemedyCandidate? OtherSetback(RackSurvey survey) =>
        survey.Cabinet.SetbackMm is not null && SetbackFor(survey, survey.Cabinet.Depth) is { } setback
            ? SetSetback(new RemedyBuilder(survey), setback)
                .Titled(Invariant($"Set the front uprights {setback:0.###} mm behind the front face"))
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
                        Invariant($"Take a cabinet {depth:0.###} mm deep and set its front uprights {mm:0.###} mm behind the front face"))
                    : builder.Titled(Invariant($"Take a cabinet {depth:0.###} mm deep"));
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
            ? SetSetback(builder, mm).Titled(Invariant($"Leave the front door off and set the front uprights {mm:0.###} mm behind the front face"))
            : builder.Titled("Leave the front door off");
    }

    // The item that sets the tighter bound goes first, until some setback serves the rest.
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

    // How far an item is from being served: by the setback given, else by any.
    private static double Served(RackSurvey survey, MountedItem item)
    {
        var interval = survey.Depth.Interval(item);
        return survey.Cabinet.SetbackMm is { } setback
            ? Math.Min(setback - interval.LeastMm, interval.GreatestMm - setback)
            : interval.GreatestMm - interval.LeastMm;
    }

    // Where the setback is given, one on the pitch of the holes must serve; and the patch sets it where it is another.
    private static bool IsServed(RackSurvey survey, CabinetDepth cabinet, out double? setback, IReadOnlyCollection<MountedItem>? without = null)
    {
        setback = null;
        var all = survey.Depth.AllIn(cabinet, without);
        if (without is null)
        {
            // The rear uprights stand behind the front ones by their distance, or by what the longest rails need, and before the rear door.
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
