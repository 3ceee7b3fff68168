using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Remedies;

/// <summary>Remedies for vertical PDUs without a place: horizontal mounting, fewer PDUs, a taller cabinet.</summary>
public static class PduRemedies
{
    private static readonly MessageWording Shorter = new("remedy.pdu-length", "Use a PDU no longer than {lengthMm:exact} mm for {pdu}");
    private static readonly MessageWording HorizontalAt = new("remedy.pdu-horizontal", "Mount PDU {pdu} horizontally at {units:units}, rear");
    private static readonly MessageWording FewerPdus = new("remedy.pdu-remove", "Remove PDU {pdu}: the outlets of the others suffice");

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
                new(Shorter, ("lengthMm", Quantities.RoundTo(uprightMm, 1)), ("pdu", unit.Id)),
                survey.Description.EditUnit(index, u => u with { LengthMm = Math.Floor(uprightMm) }));
        }

        if (CabinetSizes.HeightAtLeast(RackGeometry.UnitsForHeight(lengthMm)) is { } roof && roof > survey.Cabinet.HeightU)
        {
            yield return new RemedyBuilder(survey).Raise(roof).Titled(RemedyTitles.High(roof));
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
                new(HorizontalAt, ("pdu", unit.Id), ("units", survey.Cabinet.Units(bottom, bottom))),
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
                new(FewerPdus, ("pdu", id)),
                description.WithoutConnections(c => c.Pdu == id) with { Pdus = [.. description.Pdus.Where((_, i) => i != index)] });
    }
}
