using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Rules.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Remedies;

/// <summary>Cures for items that foul a door: other setback of the uprights, deeper cabinet, no front door, or out with what does not fit.</summary>
public static class DepthRemedies
{
    /// <summary>All that would serve every item, best first.</summary>
    /// <param name="survey">The facts.</param>
    /// <returns>Remedies.</returns>
    public static List<Remedy> For(RackSurvey survey)
    {
        var remedies = new List<Remedy>();
        AddIfAny(remedies, OtherSetback(survey));
        AddIfAny(remedies, DeeperCabinet(survey));
        AddIfAny(remedies, NoFrontDoor(survey));
        AddIfAny(remedies, TakeOutUnfit(survey));
        return remedies;
    }

    private static void AddIfAny(List<Remedy> remedies, Remedy? remedy)
    {
        if (remedy is not null)
        {
            remedies.Add(remedy);
        }
    }

    /// <summary>Another setback of the uprights, or a deeper cabinet, in which every item is served and the rear uprights stand before the rear door.</summary>
    /// <param name="survey">The facts.</param>
    /// <returns>Remedies, best first.</returns>
    public static List<Remedy> Uprights(RackSurvey survey)
    {
        var remedies = new List<Remedy>();
        AddIfAny(remedies, OtherSetback(survey));
        AddIfAny(remedies, DeeperCabinet(survey));
        return remedies;
    }

    // Uprights that are not set yet need no patch: whoever builds the cabinet sets them where every item is served.
    private static Remedy? OtherSetback(RackSurvey survey) =>
        survey.Cabinet.SetbackMm is not null && SetbackFor(survey, survey.Cabinet.Depth) is { } setback
            ? SetSetback(new PatchBuilder(survey), setback)
                .Titled(Invariant($"Set the front uprights {setback:0.###} mm behind the front face"))
            : null;

    private static Remedy? DeeperCabinet(RackSurvey survey)
    {
        var now = survey.Cabinet.Depth;
        foreach (var depth in CabinetSizes.DepthsMm)
        {
            var other = now with { DepthMm = depth };
            if (depth > now.DepthMm && IsServed(survey, other, out var setback))
            {
                var patch = new PatchBuilder(survey).Set(Pointers.CabinetDepth, depth);
                return setback is { } mm
                    ? SetSetback(patch, mm).Titled(Invariant($"Take a cabinet {depth:0.###} mm deep and set its front uprights {mm:0.###} mm behind the front face"))
                    : patch.Titled(Invariant($"Take a cabinet {depth:0.###} mm deep"));
            }
        }

        return null;
    }

    private static Remedy? NoFrontDoor(RackSurvey survey)
    {
        var open = survey.Cabinet.Depth with { FrontDoorMm = 0, FrontOpen = true };
        if (survey.Cabinet.Depth.FrontOpen || !IsServed(survey, open, out var setback))
        {
            return null;
        }

        var patch = new PatchBuilder(survey).SetFrontDoor(new Door { Style = DoorStyle.None });
        return setback is { } mm
            ? SetSetback(patch, mm).Titled(Invariant($"Leave the front door off and set the front uprights {mm:0.###} mm behind the front face"))
            : patch.Titled("Leave the front door off");
    }

    // The item that sets the tighter bound goes first, until some setback serves the rest.
    private static Remedy? TakeOutUnfit(RackSurvey survey)
    {
        var cabinet = survey.Cabinet.Depth;
        var unfit = new List<Mounted>();
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
    private static double Served(RackSurvey survey, Mounted item)
    {
        var interval = survey.Depth.Interval(item);
        return survey.Cabinet.SetbackMm is { } setback
            ? Math.Min(setback - interval.LeastMm, interval.GreatestMm - setback)
            : interval.GreatestMm - interval.LeastMm;
    }

    // Where the setback is given, one on the pitch of the holes must serve; and the patch sets it where it is another.
    private static bool IsServed(RackSurvey survey, CabinetDepth cabinet, out double? setback, IReadOnlyCollection<Mounted>? without = null)
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

    private static PatchBuilder SetSetback(PatchBuilder patch, double setback) =>
        patch.SetUprights(u => u with { FrontSetbackMm = setback });
}
