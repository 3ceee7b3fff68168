using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Remedies;

/// <summary>Remedies for vertical PDUs without a place: horizontal mounting, fewer PDUs, a taller cabinet.</summary>
public static class PduRemedies
{
    // Outlets that fit on a horizontal PDU of 1 U; common practice, no source.
    private const int MostOutlets = 8;

    /// <summary>A taller cabinet, or the PDU mounted horizontally.</summary>
    /// <param name="index">Index of the PDU.</param>
    /// <param name="lengthMm">Its length, mm.</param>
    /// <param name="uprightMm">Length of the uprights, mm.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> TooLong(RackSurvey survey, int index, double lengthMm, double uprightMm)
    {
        var unit = survey.Description.Pdus![index];
        if (OutletsOf(unit) <= MostOutlets)
        {
            yield return new RemedyCandidate(
                Invariant($"Use a PDU no longer than {uprightMm:0.#} mm for {unit.Id}"),
                survey.Description.EditUnit(index, u => u with { LengthMm = Math.Floor(uprightMm) }));
        }

        if (CabinetSizes.HeightAtLeast(RackGeometry.UnitsForHeight(lengthMm)) is { } roof && roof > survey.Cabinet.HeightU)
        {
            yield return new RemedyBuilder(survey).Raise(roof).Titled(Invariant($"Use a {roof}U cabinet"));
        }

        if (Horizontal(survey, index) is { } horizontal)
        {
            yield return horizontal;
        }

        if (Without(survey, index) is { } without)
        {
            yield return without;
        }
    }

    /// <summary>One PDU less behind the uprights: the one with the fewest outlets removed, or mounted horizontally.</summary>
    /// <param name="vertical">Indices of the vertical PDUs.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> TooMany(RackSurvey survey, IReadOnlyList<int> vertical)
    {
        var units = survey.Description.Pdus!;
        foreach (var index in vertical.OrderBy(i => OutletsOf(units[i])).ThenBy(i => units[i].Id, StringComparer.Ordinal))
        {
            if (Horizontal(survey, index) is { } horizontal)
            {
                yield return horizontal with { Kind = nameof(Horizontal) };
            }

            if (Without(survey, index) is { } without)
            {
                yield return without with { Kind = nameof(Without) };
            }
        }
    }

    private static int OutletsOf(Pdu unit) => unit.Groups?.Sum(g => g.Outlets.Sum(o => o.Count)) ?? int.MaxValue;

    private static RemedyCandidate? Horizontal(RackSurvey survey, int index)
    {
        var unit = survey.Description.Pdus![index];
        var what = new MountedItem
        {
            Index = index, Id = unit.Id, HeightU = Allowances.HorizontalUnitHeightU, Face = Face.Rear, BodyDepthMm = Allowances.HorizontalUnitDepthMm,
            FrontProjectionMm = Allowances.FrontProjectionMm, RearProjectionMm = Allowances.RearProjectionCabledMm,
        };
        return OutletsOf(unit) <= MostOutlets && survey.Occupancy.FindPlace(what, what.HeightU, 1, survey.Cabinet.HeightU) is { } bottom
            ? new RemedyCandidate(
                $"Mount PDU {unit.Id} horizontally at {survey.Cabinet.UnitsText(bottom, bottom)}, rear",
                survey.Description.EditUnit(index, u => u with
                {
                    Mounting = PduMounting.Horizontal, LengthMm = null, Position = new Position { U = survey.Cabinet.Renumber(bottom), Face = Face.Rear },
                }))
            : null;
    }

    // The service finds other outlets for its cords; the trial by all rules shows whether there are enough. A PDU fed by a UPS in the rack stays.
    private static RemedyCandidate? Without(RackSurvey survey, int index)
    {
        var description = survey.Description;
        var id = description.Pdus![index].Id;
        return description.Items.Any(i => i.Ups?.Feeds?.Contains(id) == true)
            ? null
            : new RemedyCandidate(
                $"Remove PDU {id}: the outlets of the others suffice",
                description.WithoutConnections(c => c.Pdu == id) with { Pdus = [.. description.Pdus.Where((_, i) => i != index)] });
    }
}
