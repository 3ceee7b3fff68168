using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;

namespace RackCheck.Remedies;

/// <summary>Remedies for instability: mass lower down, a stabiliser, a wider base, bolts.</summary>
public static class TipRemedies
{
    private static readonly WordedText Feet = new("remedy.feet", "Use levelling feet instead of castors");
    private static readonly WordedText Interlock = new("remedy.interlock", "Fit an interlock, so that one item comes out at a time");
    private static readonly MessageWording Stabiliser = new("remedy.stabiliser", "Fit a stabiliser that reaches {reachMm:exact} mm in front of the rack");

    // Usual reach of a stabiliser in front of the rack, mm; common practice, no source.
    private static readonly double[] StabilisersMm = [200, 300, 400, 500, 600];

    /// <summary>Prevents tipping over an edge while all items are in place.</summary>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> Stand(RackSurvey survey, SupportSide side)
    {
        foreach (var candidate in side == SupportSide.Front ? Stabilisers(survey) : Wider(survey, side))
        {
            yield return candidate;
        }

        foreach (var candidate in LoadRemedies.Sink(survey))
        {
            yield return candidate;
        }

        yield return Bolted(survey);
    }

    /// <summary>Prevents tipping while an item is extended.</summary>
    /// <param name="face">The side from which it extends.</param>
    /// <param name="ratio">Minimum ratio of stabilising to overturning moment.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> Hold(RackSurvey survey, Face face, double ratio)
    {
        foreach (var candidate in face == Face.Front ? Stabilisers(survey) : [])
        {
            yield return candidate;
        }

        if (survey.Mass.Stand.Style == BaseStyle.Castors)
        {
            yield return OnBase(survey, BaseStyle.Feet, Feet);
        }

        yield return Bolted(survey);
        var tipping = survey.Items.Where(i => survey.Mass.Balance!.PullOut(i) is { } pulled && Comparison.IsOver(ratio, pulled.Factor))
            .OrderBy(i => i.Id, StringComparer.Ordinal).ToArray();
        foreach (var candidate in tipping is [var only] ? SupportRemedies.Fixed(survey, only) : [])
        {
            yield return candidate;
        }

        if (PlaceRemedies.TakeOut(survey, tipping) is { } takeOut)
        {
            yield return takeOut;
        }
    }

    /// <summary>Prevents tipping while two items are extended together.</summary>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> HoldPair(RackSurvey survey, PulledItems pair)
    {
        yield return new RemedyBuilder(survey).SetCabinet(c => c with { Interlock = true })
            .Titled(Interlock);
        foreach (var candidate in pair.Item.Face == Face.Front ? Stabilisers(survey) : [])
        {
            yield return candidate;
        }

        yield return Bolted(survey);
        if (PlaceRemedies.TakeOut(survey, pair.Item) is { } takeOut)
        {
            yield return takeOut;
        }
    }

    /// <summary>The cabinet on another base, with its height unchanged.</summary>
    /// <param name="style">The new base.</param>
    /// <param name="title">Title of the change.</param>
    public static RemedyCandidate OnBase(RackSurvey survey, BaseStyle style, WordedText title) =>
        new(title, OnBase(survey.Description, style));

    /// <summary>A rack bolted to the floor.</summary>
    /// <returns>The bolted rack.</returns>
    public static RackDescription Bolt(RackDescription description) => OnBase(description, BaseStyle.Bolted);

    private static RackDescription OnBase(RackDescription description, BaseStyle style) =>
        description.EditCabinet(c => c with { Base = (c.Base ?? new CabinetBase()) with { Style = style } });

    /// <summary>The rack bolted to the floor.</summary>
    public static RemedyCandidate Bolted(RackSurvey survey) => OnBase(survey, BaseStyle.Bolted, RemedyTitles.BoltRack);

    private static IEnumerable<RemedyCandidate> Stabilisers(RackSurvey survey)
    {
        foreach (var reach in StabilisersMm)
        {
            if (reach > (survey.Cabinet.Source.Base?.StabiliserMm ?? 0))
            {
                yield return new RemedyBuilder(survey)
                    .SetCabinet(c => c with { Base = (c.Base ?? new CabinetBase()) with { StabiliserMm = reach } })
                    .Titled(new(Stabiliser, ("reachMm", reach))) with { Kind = nameof(Stabilisers) };
            }
        }
    }

    private static IEnumerable<RemedyCandidate> Wider(RackSurvey survey, SupportSide side)
    {
        var cabinet = survey.Cabinet;
        if (survey.Mass.Stand.Style == BaseStyle.Castors)
        {
            yield return OnBase(survey, BaseStyle.Feet, Feet);
        }

        if (side == SupportSide.Rear)
        {
            foreach (var depth in CabinetSizes.DepthsMm.Where(d => d > cabinet.Depth.DepthMm))
            {
                yield return LoadRemedies.Larger(survey, cabinet.WidthMm, depth) with { Kind = nameof(Wider) };
            }
        }
        else
        {
            foreach (var width in CabinetSizes.WidthsMm.Where(w => w > cabinet.WidthMm))
            {
                yield return LoadRemedies.Larger(survey, width, cabinet.Depth.DepthMm) with { Kind = nameof(Wider) };
            }
        }
    }
}
