using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Earthing;

/// <summary>Finds earth leads and main earth conductors with too small a cross-sectional area.</summary>
public sealed class ConductorSize : Rule
{
    /// <summary>Minimum cross-sectional area of a mechanically protected conductor (cabinet closed on all sides).</summary>
    public static RuleLimit ProtectedMm2 { get; } = new(
        "protectedMm2", "minimum cross-sectional area of a mechanically protected conductor (cabinet closed on all sides)", EarthConductors.LeastProtectedMm2,
        "mm2", 0.5, 120, Stricter.Higher);

    /// <summary>Minimum cross-sectional area of an unprotected conductor.</summary>
    public static RuleLimit UnprotectedMm2 { get; } = new(
        "unprotectedMm2", "minimum cross-sectional area of an unprotected conductor", EarthConductors.LeastUnprotectedMm2, "mm2", 0.5, 120, Stricter.Higher);

    private static readonly WordingChoice Defect = new(
        "earthing.conductor-size",
        "The [lead:earth lead of {item}|main earth conductor] has {sectionMm2} mm2, but [line-conductor:the {lineMm2} mm2 line conductors of "
            + "supply {supply} require {neededMm2} mm2|fault:a fault current of {faultA} A on supply {supply} with a disconnection time of "
            + "{seconds} s requires {neededMm2} mm2|breaker:the {breakerA} A breaker of supply {supply} requires {neededMm2} mm2|closed:a "
            + "conductor in a closed cabinet requires {neededMm2} mm2|an unprotected conductor requires {neededMm2} mm2].");

    private static readonly MissingData Missing = new(
        "earthing.conductor-size.missing",
        "The line conductors of a supply, its trip curve, or its fault current and disconnection time are missing, so the size of an earth conductor cannot "
            + "be checked.");

    private static readonly MissingData MissingLetThrough = new(
        "earthing.conductor-size.missing-let-through",
        "The disconnection time of a supply is under 0.1 s, where the energy that the breaker lets through decides: ask its manufacturer for that energy.");

    private static readonly MissingData MissingLeadSection = new(
        "earthing.conductor-size.missing-lead-section",
        "The cross-sectional area of an earth lead is missing, so its size cannot be checked.");

    private static readonly MissingData MissingMainConductor = new(
        "earthing.conductor-size.missing-main-conductor",
        "The cross-sectional area of the main earth conductor is missing, so its size cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "earthing.conductor-size",
        Title = "Earth conductor too small",
        Severity = Severity.Error,
        Safety = true,
        What =
            "Finds earth leads and main earth conductors below the minimum cross-sectional area, which follows from mechanical "
                + "strength, from fault current and "
            + "disconnection time, and for the main conductor from the line conductors of the supply. In North America the breaker decides.",
        Why = "The conductor melts or breaks before the supply disconnects, and the metal stays live.",
        Formula =
            "S >= the largest of: line conductor, main conductor only (S up to 16, 16 up to 35, S/2 above); protectedMm2 or unprotectedMm2; "
            + "sqrt(I^2 t) / 143, I = U/(U/I0 + 1.2 x 2 x 0.017241 L/S) at the end of the cable, t from 0.1 s; North America: by breaker, "
            + "15 A 2.1, 20 A 3.3, 30 to 60 A 5.3",
        Sources = [Sources.Iec60364Earthing, Sources.Iec60898Energy, Sources.Nec250, Sources.RingLoop],
        Limits = [ProtectedMm2, UnprotectedMm2],
        Needs =
        [
            "/items/*/earthLead/crossSectionMm2", "/earthing/mainConductorMm2", "/supplies/*/cable/crossSectionMm2", "/supplies/*/cable/lengthM",
            "/supplies/*/cable/ring", "/supplies/*/voltageV", "/supplies/*/faultCurrentA",
            "/supplies/*/disconnectionTimeS", "/supplies/*/breaker", "/cabinet/sidePanels", "/site/region", "/connections",
        ],
        Notes =
        [
            "Behind a breaker of curve B or C up to 32 A the let-through energy is taken as 90 000 A2s, which needs 2.1 mm2: "
                + "less than the minimum for strength. "
                + "Fault current and disconnection time are then not asked for; a trip curve that is not given is, where curve D could change the answer.",
            "The fault is in the rack: its current is that at the end of the cable. Without the length or the area of the cable it is that at the origin, "
                + "which is higher. The end of a ring final circuit is its far point, L/4 away: two legs in parallel, each half of the ring long.",
            "Under 0.1 s the formula does not hold. Behind a breaker of curve B or C up to 32 A the let-through energy is then taken as above; elsewhere the "
                + "fault is not assessed.",
            "A lead of an item follows the item's own cord, not the cable of the supply.",
        ],
        Remedies =
        [
            "Fit the next standard cross-sectional area.", "Shorten the disconnection time, to not less than 0.1 s.", "Move the equipment to another rack.",
        ],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var survey = context.Survey;
        var earth = survey.Earth;
        var strength = context.Limit(earth.IsEnclosed ? ProtectedMm2 : UnprotectedMm2);
        foreach (var item in earth.Studs)
        {
            var feeders = earth.FeedersOf(item);
            ReportMissing(context, feeders, item.Item!.EarthLead?.CrossSectionMm2, isMain: false);
            if (item.Item.EarthLead?.CrossSectionMm2 is { } section)
            {
                Judge(context, item, feeders, section, ConductorNeed.Of(feeders, strength, isMain: false));
            }
            else
            {
                context.ReportMissing(Pointers.ItemLeadSection[item.Index], MissingLeadSection);
            }
        }

        if (earth.MainMm2 is { } main)
        {
            ReportMissing(context, survey.Power.Supplies, main, isMain: true);
            Judge(context, null, survey.Power.Supplies, main, ConductorNeed.Of(survey.Power.Supplies, strength, isMain: true));
        }
        else if (earth.Bar is not null || earth.NeedsBar(EarthConductors.HighIntegrityFromMa))
        {
            context.ReportMissing(Pointers.MainConductor, MissingMainConductor);
        }
    }

    private static void ReportMissing(RuleContext context, IReadOnlyList<SupplyNode> supplies, double? sectionMm2, bool isMain)
    {
        if (context.Survey.Description.Supplies is null)
        {
            context.ReportMissing("/supplies", Missing);
        }

        foreach (var supply in supplies.Where(s => !s.IsNorthAmerica))
        {
            switch (supply.Source)
            {
                case { FaultCurrentA: not null, DisconnectionTimeS: not null } when ConductorNeed.IsTooShort(supply) && !ConductorNeed.IsLimited(supply):
                    context.ReportNotAssessed(MissingLetThrough);
                    break;
                case { FaultCurrentA: not null, DisconnectionTimeS: null } when !ConductorNeed.IsLimited(supply):
                    context.ReportMissing(Invariant($"/supplies/{supply.Index}/disconnectionTimeS"), Missing);
                    break;
                case { FaultCurrentA: null, DisconnectionTimeS: not null } when !ConductorNeed.IsLimited(supply):
                    context.ReportMissing(Invariant($"/supplies/{supply.Index}/faultCurrentA"), Missing);
                    break;
                case { FaultCurrentA: null, DisconnectionTimeS: null } when !ConductorNeed.IsLimited(supply):
                    context.ReportMissing(Invariant($"/supplies/{supply.Index}/faultCurrentA"), Missing);
                    break;
            }

            if (ConductorNeed.TurnsOnCurve(supply, sectionMm2 ?? 0))
            {
                context.ReportMissing(Invariant($"/supplies/{supply.Index}/breaker/curve"), Missing);
            }

            if (isMain && supply.Source is { FaultCurrentA: null, Cable: null or { CrossSectionMm2: null } })
            {
                context.ReportMissing(Invariant($"/supplies/{supply.Index}/cable/crossSectionMm2"), Missing);
            }
        }
    }

    private static void Judge(RuleContext context, MountedItem? item, IReadOnlyList<SupplyNode> supplies, double section, ConductorNeed need)
    {
        var needed = Quantities.Round(need.SectionMm2);
        if (Quantities.Round(section) >= needed)
        {
            return;
        }

        var (why, data, pointers) = Asking(context.Survey.Earth, need);
        context.Report(new FindingDraft
        {
            Message = Defect.With(item is null ? "" : "lead", why),
            Data = [.. item is null ? Array.Empty<(string, Scalar)>() : [("item", item.Id)], ("sectionMm2", section), ("neededMm2", needed), .. data],
            Subject = item is null ? Subjects.MainEarthConductor : context.Survey.Cabinet.Place(item),
            Identity = item is null ? ["main"] : ["lead", item.Id],
            Pointers = [item is null ? Pointers.MainConductor : Pointers.ItemLeadSection[item.Index], .. pointers],
            Actual = Quantities.Of(section, "mm2"),
            Limit = Quantities.Of(needed, "mm2"),
            UtilisationPercent = section > 0 ? 100 * needed / section : null,
            Calculation = need.Calculation(section),
            Candidates = Candidates(context.Survey, item, supplies, section, need),
        });
    }

    private static (string Why, (string Name, Scalar Value)[] Data, string[] Pointers) Asking(EarthSurvey earth, ConductorNeed need)
    {
        var supply = need.Supply;
        return need.Reason switch
        {
            ConductorReason.LineConductor => (
                "line-conductor",
                [("lineMm2", supply!.Source.Cable!.CrossSectionMm2!.Value), ("supply", supply.Id)],
                [Invariant($"/supplies/{supply.Index}/cable/crossSectionMm2")]),
            ConductorReason.Fault => (
                "fault",
                [("faultA", ConductorNeed.FaultA(supply!)), ("supply", supply!.Id), ("seconds", supply.Source.DisconnectionTimeS!.Value)],
                [Invariant($"/supplies/{supply.Index}/faultCurrentA"), Invariant($"/supplies/{supply.Index}/disconnectionTimeS")]),
            ConductorReason.Breaker => (
                "breaker",
                [("breakerA", supply!.BreakerA), ("supply", supply.Id)],
                [Pointers.Supply[supply.Index]]),
            _ when earth.IsEnclosed => ("closed", [], []),
            _ => ("", [], []),
        };
    }

    private const int MostSections = 6;

    private static IEnumerable<RemedyCandidate> Candidates(
        RackSurvey survey, MountedItem? item, IReadOnlyList<SupplyNode> supplies, double section, ConductorNeed need)
    {
        // The smallest sufficient sizes: a long lead may need a larger one for its resistance.
        var next = EarthConductors.NextSectionMm2(need.SectionMm2);
        foreach (var enough in EarthConductors.SectionsMm2.Where(s => s >= next).Take(MostSections))
        {
            yield return new RemedyCandidate(Title(enough), With(enough), nameof(ConductorSize));
        }

        if (EarthRemedies.Sooner(survey, supplies, section, survey.Description) is { } sooner)
        {
            yield return new RemedyCandidate(sooner.Title, sooner.After);
        }

        // No standard size is enough for this fault current: the largest size with a shorter disconnection time.
        if (next is null && EarthRemedies.Sooner(survey, supplies, EarthConductors.SectionsMm2[^1], With(EarthConductors.SectionsMm2[^1])) is { } both)
        {
            yield return new RemedyCandidate(Title(EarthConductors.SectionsMm2[^1]).Then(both.Title), both.After);
        }

        if (item is not null)
        {
            yield return new RemedyCandidate(RemedyTitles.ToAnotherRack([item.Id]), survey.Description.WithoutItems([item.Id]));
        }

        WordedText Title(double mm2) => item is null
            ? new(RemedyTitles.MainConductor, ("sectionMm2", mm2))
            : new(RemedyTitles.EarthLeadArea, ("sectionMm2", mm2), ("item", item.Id));

        RackDescription With(double mm2) => item is null
            ? survey.Description.EditEarthing(e => e with { MainConductorMm2 = mm2 })
            : survey.Description.EditItem(item.Index, i => i with { EarthLead = i.EarthLead! with { CrossSectionMm2 = mm2 } });
    }
}
