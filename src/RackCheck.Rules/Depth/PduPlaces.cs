using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using static System.FormattableString;

namespace RackCheck.Rules.Depth;

/// <summary>Finds more vertical PDUs than the cabinet has places for, and vertical PDUs that are longer than the uprights.</summary>
public sealed class PduPlaces : Rule
{
    /// <summary>Places for vertical PDUs, each as long as the uprights.</summary>
    public static RuleLimit Places { get; } = new(
        "places", "places for vertical PDUs, each as long as the uprights", Allowances.VerticalPduPlaces, "PDUs", 0, Allowances.VerticalPduPlaces,
        Stricter.Lower);

    private static readonly MessageWording Length = new("depth.pdu-places.length", "{pdu} is {lengthMm} mm long; the uprights are {uprightMm} mm long.");

    private static readonly MessageWording PlacesDefect = new(
        "depth.pdu-places.places",
        "{count} vertical PDUs need {needed} places behind the rear uprights; the cabinet has {places}.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "depth.pdu-places",
        Title = "No place for a vertical PDU",
        Severity = Severity.Error,
        What = "Finds vertical PDUs that are longer than the uprights, and more vertical PDUs than the cabinet has places for: two on each side. PDUs of "
            + "known length share a place where they fit one above the other; one of unknown length takes a place.",
        Why = "The PDU cannot be mounted.",
        Formula = "lengthMm <= 44.45 x heightU; places needed, longest PDU first, <= places",
        Sources = [Sources.PduPlacePractice, Sources.Iec60297],
        Limits = [Places],
        Needs = ["/pdus/*/mounting", "/pdus/*/lengthMm", "/cabinet/heightU"],
        Remedies = ["Mount a PDU horizontally.", "Remove a PDU that is not needed.", "Use a taller cabinet.", "Use a shorter PDU."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var units = context.Survey.Description.Pdus ?? [];
        var upright = RackGeometry.ApertureMm(context.Survey.Cabinet.HeightU);
        var vertical = Enumerable.Range(0, units.Count).Where(i => units[i].Mounting == PduMounting.Vertical).ToArray();
        foreach (var index in vertical)
        {
            if (units[index].LengthMm is { } length && Comparison.IsOver(length, upright))
            {
                ReportLength(context, index, length, upright);
            }
        }

        var needed = PduPlacing.PlacesFor(vertical.Select(i => units[i].LengthMm), upright);
        if (Comparison.IsOver(needed, context.Limit(Places)))
        {
            ReportPlaces(context, vertical, needed);
        }
    }

    private static void ReportLength(RuleContext context, int index, double length, double upright)
    {
        var survey = context.Survey;
        var id = survey.Description.Pdus![index].Id;
        context.Report(new FindingDraft
        {
            Message = Length,
            Data = [("pdu", id), ("lengthMm", length), ("uprightMm", upright)],
            Subject = Subjects.Id(id),
            Identity = ["length", id],
            Pointers = [SitePointers.PduLength[index], Pointers.CabinetHeightU],
            Actual = Quantities.Millimetres(length),
            Limit = Quantities.Millimetres(upright),
            UtilisationPercent = 100 * length / upright,
            Calculation = Invariant($"{length:0.###} > {survey.Cabinet.HeightU} x {RackGeometry.UnitMm} = {upright:0.###}"),
            Candidates = PduRemedies.TooLong(survey, index, length, upright),
        });
    }

    private static void ReportPlaces(RuleContext context, int[] vertical, int needed)
    {
        var places = context.Limit(Places);
        context.Report(new FindingDraft
        {
            Message = PlacesDefect,
            Data = [("count", vertical.Length), ("needed", needed), ("places", places)],
            Subject = Subjects.Pdus,
            Identity = ["places"],
            Pointers = [.. vertical.Select(i => Pointers.Pdu[i])],
            Actual = Quantities.Of(needed, "places"),
            Limit = Quantities.Of(places, "places"),
            UtilisationPercent = places > 0 ? 100 * needed / places : null,
            Calculation = Invariant($"{needed} > {places:0.###}"),
            Candidates = PduRemedies.TooMany(context.Survey, vertical),
        });
    }
}
