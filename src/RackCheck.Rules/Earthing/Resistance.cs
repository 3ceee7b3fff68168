using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Earthing;

/// <summary>Finds earth leads with too high a resistance.</summary>
public sealed class Resistance : Rule
{
    private const double UsualSlackMm = 200;

    /// <summary>Maximum earth continuity resistance from an earth stud to the earth bar.</summary>
    public static RuleLimit PathOhm { get; } = new(
        "pathOhm", "maximum earth continuity resistance from an earth stud to the earth bar", EarthConductors.MostPathOhm, "ohm", 0.01, 1, Stricter.Lower);

    private static readonly MessageWording Defect = new(
        "earthing.resistance",
        "The earth lead of {item} ({lengthM} m of {sectionMm2} mm2) has a resistance of {pathMohm} mohm; the limit is {limitMohm} mohm.");

    private static readonly MissingData Missing = new(
        "earthing.resistance.missing",
        "The length or cross-sectional area of an earth lead is missing, so its resistance is unknown.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "earthing.resistance",
        Title = "Earth continuity resistance too high",
        Severity = Severity.Error,
        Concern = Concern.Site,
        Safety = true,
        What =
            "Finds earth leads with a resistance from earth stud to earth bar above 0.1 ohm, from the length and cross-sectional area of the copper at 20 C.",
        Why = "The touch voltage in a fault is current times resistance, and the fault current may be too low to trip the breaker.",
        Formula = "R = 0.017241 L / S <= pathOhm",
        Sources = [Sources.Iec60028, Sources.Iec60950EarthTest],
        Limits = [PathOhm],
        Needs = ["/items/*/earthStud", "/items/*/earthLead/lengthM", "/items/*/earthLead/crossSectionMm2"],
        Remedies =
        [
            "Fit an earth lead with a larger cross-sectional area.", "Fit a shorter earth lead, where its route allows it.",
            "Move the equipment to another rack.",
        ],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var limit = context.Limit(PathOhm);
        foreach (var item in context.Survey.Earth.Studs)
        {
            var lead = item.Item!.EarthLead;
            if (lead?.LengthM is null)
            {
                context.ReportMissing(Pointers.ItemLeadLength[item.Index], Missing);
            }

            if (lead?.CrossSectionMm2 is null)
            {
                context.ReportMissing(Pointers.ItemLeadSection[item.Index], Missing);
            }

            // A cross-sectional area of 0 is no conductor; another rule reports it.
            if (lead is { LengthM: { } length, CrossSectionMm2: { } section and > 0 } && RoundedOhm(length, section) is var ohm && ohm > limit)
            {
                Report(context, item, length, section, ohm, limit);
            }
        }
    }

    // Rounded to 0.01 milliohm, so that the calculation can be repeated by hand.
    private static double RoundedOhm(double length, double section) =>
        Math.Round(EarthConductors.ResistanceOhm(length, section), 5, MidpointRounding.AwayFromZero);

    private static void Report(RuleContext context, MountedItem item, double length, double section, double ohm, double limit) =>
        context.Report(new FindingDraft
    {
        Message = Defect,
        Data = [("item", item.Id), ("lengthM", length), ("sectionMm2", section), ("pathMohm", 1000 * ohm), ("limitMohm", 1000 * limit)],
        Subject = context.Survey.Cabinet.Place(item),
        Identity = [item.Id],
        Pointers = [Invariant($"/items/{item.Index}/earthLead"), Pointers.ItemLeadSection[item.Index], Pointers.ItemLeadLength[item.Index]],
        Actual = new Quantity { Value = ohm, Unit = "ohm" },
        Limit = new Quantity { Value = limit, Unit = "ohm" },
        UtilisationPercent = 100 * ohm / limit,
        Calculation = Invariant($"{EarthConductors.CopperOhmMm2PerM} x {length:0.###} / {section:0.###} = {ohm:0.#####} > {limit:0.#####}"),
        Candidates = Candidates(context.Survey, item, length, section, limit),
    });

    private static IEnumerable<RemedyCandidate> Candidates(RackSurvey survey, MountedItem item, double length, double section, double limit)
    {
        var enough = EarthConductors.CopperOhmMm2PerM * length / limit;
        if (EarthConductors.NextSectionMm2(enough) is { } next && next > section)
        {
            yield return new RemedyCandidate(
                new(RemedyTitles.EarthLeadArea, ("sectionMm2", next), ("item", item.Id)), With(l => l with { CrossSectionMm2 = next }));
        }

        if (EarthRoute.Of(survey.Cabinet, item) is { IsKnown: true } route && Math.Ceiling(2 * (route.LengthMm + UsualSlackMm) / 1000) / 2 is var reach
            && reach < length)
        {
            yield return new RemedyCandidate(
                new(RemedyTitles.EarthLeadLength, ("lengthM", Quantities.RoundTo(reach, 1)), ("item", item.Id)), With(l => l with { LengthM = reach }));
        }

        yield return new RemedyCandidate(RemedyTitles.ToAnotherRack([item.Id]), survey.Description.WithoutItems([item.Id]));

        RackDescription With(Func<EarthLead, EarthLead> change) => survey.Description.EditItem(item.Index, i => i with { EarthLead = change(i.EarthLead!) });
    }
}
