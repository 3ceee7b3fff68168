using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Earthing;

/// <summary>Finds earth leads that resist too much.</summary>
public sealed class Resistance : Rule
{
    private const double UsualSlackMm = 200;

    private static readonly RuleLimit PathOhm = new(
        "pathOhm", "most resistance from a stud to the bar", EarthConductors.MostPathOhm, "ohm", 0.01, 1, Stricter.Lower);

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "earthing.resistance",
        Title = "Earth path resists too much",
        Severity = Severity.Error,
        Safety = true,
        What = "Finds earth leads whose resistance from stud to bar is over 0.1 ohm, by length and section of the copper at 20 C.",
        Why = "A fault raises the metal above earth by current times resistance, and its current may be too low to trip the breaker.",
        Formula = "R = 0.017241 L / S <= pathOhm",
        Sources = [Sources.Iec60028, Sources.Iec60950EarthTest],
        Limits = [PathOhm],
        Needs = ["/items/*/earthStud", "/items/*/earthLead/lengthM", "/items/*/earthLead/crossSectionMm2"],
        Remedies = ["Take a thicker lead.", "Take a shorter lead, where its way allows it.", "Take the equipment out of the rack."],
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
                context.Lacks(Pointers.ItemLeadLength[item.Index], "Without length and section of an earth lead it cannot be said what it resists.");
            }

            if (lead?.CrossSectionMm2 is null)
            {
                context.Lacks(Pointers.ItemLeadSection[item.Index], "Without length and section of an earth lead it cannot be said what it resists.");
            }

            // A section of 0 is no conductor: what is wrong with it is not its resistance.
            if (lead is { LengthM: { } length, CrossSectionMm2: { } section and > 0 } && RoundedOhm(length, section) is var ohm && ohm > limit)
            {
                Report(context, item, length, section, ohm, limit);
            }
        }
    }

    // To a hundredth of a milliohm: finer than anybody measures, and a sum redone by hand comes to the same.
    private static double RoundedOhm(double length, double section) => Math.Round(EarthConductors.ResistanceOhm(length, section), 5, MidpointRounding.AwayFromZero);

    private static void Report(RuleContext context, Mounted item, double length, double section, double ohm, double limit) => context.Report(new FindingDraft
    {
        Message = "The earth lead of {item}, {lengthM} m of {sectionMm2} mm2, has a resistance of {pathMohm} mohm; {limitMohm} mohm is the most that it may have.",
        Data = [("item", item.Id), ("lengthM", length), ("sectionMm2", section), ("pathMohm", 1000 * ohm), ("limitMohm", 1000 * limit)],
        Subject = context.Survey.Cabinet.Place(item),
        Identity = [item.Id],
        Pointers = [Invariant($"/items/{item.Index}/earthLead"), Pointers.ItemLeadSection[item.Index], Pointers.ItemLeadLength[item.Index]],
        Actual = new Quantity { Value = ohm, Unit = "ohm" },
        Limit = new Quantity { Value = limit, Unit = "ohm" },
        UtilisationPercent = 100 * ohm / limit,
        Calculation = Invariant($"{EarthConductors.CopperOhmMm2PerM} x {length:0.###} / {section:0.###} = {ohm:0.#####} > {limit:0.#####}"),
        Cures = Cures(context.Survey, item, length, section, limit),
    });

    private static IEnumerable<Cure> Cures(RackSurvey survey, Mounted item, double length, double section, double limit)
    {
        var enough = EarthConductors.CopperOhmMm2PerM * length / limit;
        if (EarthConductors.NextSectionMm2(enough) is { } next && next > section)
        {
            yield return new Cure(Invariant($"Take an earth lead of {next:0.###} mm2 for {item.Id}"), With(l => l with { CrossSectionMm2 = next }));
        }

        if (EarthRoute.Of(survey.Cabinet, item) is { IsKnown: true } route && Math.Ceiling(2 * (route.LengthMm + UsualSlackMm) / 1000) / 2 is var reach && reach < length)
        {
            yield return new Cure(Invariant($"Take an earth lead {reach:0.#} m long for {item.Id}"), With(l => l with { LengthM = reach }));
        }

        yield return new Cure(Names.ToAnotherRack([item.Id]), survey.Description.WithoutItems([item.Id]));

        RackDescription With(Func<EarthLead, EarthLead> change) => survey.Description.EditItem(item.Index, i => i with { EarthLead = change(i.EarthLead!) });
    }
}
