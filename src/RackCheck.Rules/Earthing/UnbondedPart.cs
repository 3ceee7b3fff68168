using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;

namespace RackCheck.Rules.Earthing;

/// <summary>Finds metal parts of the cabinet that are not bonded.</summary>
public sealed class UnbondedPart : Rule
{
    private static readonly MessageWording Panels = new("earthing.unbonded-part.panels", "The {part:words} are not bonded to protective earth.");

    private static readonly MessageWording Part = new("earthing.unbonded-part.part", "The {part:words} is not bonded to protective earth.");

    private static readonly MissingData Missing = new(
        "earthing.unbonded-part.missing",
        "The list of bonded parts is missing, so the bonding of the cabinet cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "earthing.unbonded-part",
        Title = "Cabinet part not bonded",
        Severity = Severity.Error,
        Safety = true,
        What = "Finds cabinet parts (frame, doors, side panels, vented roof with fans) that are not bonded to protective earth.",
        Why = "Paint and hinges do not conduct reliably. A loose wire inside makes the part live, and no breaker trips.",
        Formula = "every part is in the list of bonded parts, or its door is given as bonded",
        Sources = [Sources.BondingPractice],
        Needs =
        [
            "/earthing/bonded", "/cabinet/frontDoor/bonded", "/cabinet/rearDoor/bonded", "/cabinet/sidePanels", "/cabinet/roof/style", "/cooling/roofFans",
        ],
        Remedies = ["Bond the part to the earth bar with its own lead."],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var earth = context.Survey.Earth;
        if (!earth.IsElectrical)
        {
            return;
        }

        foreach (var part in earth.Parts)
        {
            if (part.IsBonded is null)
            {
                context.ReportMissing(Pointers.Bonded, Missing);
                if (part.OwnPointer is { } own)
                {
                    context.ReportMissing(own, Missing);
                }
            }
            else if (part.IsBonded == false)
            {
                context.Report(new FindingDraft
                {
                    Message = part.Part == BondedPart.SidePanels ? Panels : Part,
                    Data = [("part", Scalar.CodeOf(part.Name))],
                    Subject = Subjects.Named(part.Name),
                    Identity = [part.Name],
                    Pointers = [.. new[] { part.Pointer, PlaceOf(part.Part) }.Distinct()],
                    Candidates = Candidates(context.Survey, part),
                });
            }
        }
    }

    // All parts share one list; this second pointer tells them apart.
    private static string PlaceOf(BondedPart part) => part switch
    {
        BondedPart.FrontDoor => Pointers.FrontDoor,
        BondedPart.RearDoor => Pointers.RearDoor,
        BondedPart.SidePanels => Pointers.SidePanels,
        BondedPart.Roof => "/cabinet/roof",
        _ => "/cabinet",
    };

    private static IEnumerable<RemedyCandidate> Candidates(RackSurvey survey, EarthPart part)
    {
        yield return new RemedyCandidate(
            new(RemedyTitles.Bond.With(part.Part == BondedPart.SidePanels ? "their" : null), ("part", Scalar.CodeOf(part.Name))),
            Joined(survey.Description, part));
        var open = survey.Earth.Parts.Where(p => p.IsBonded == false).ToArray();
        if (open.Length > 1)
        {
            yield return new RemedyCandidate(RemedyTitles.BondAll, open.Aggregate(survey.Description, Joined));
        }
    }

    // A given list is complete, so a missing list stays missing: a new list would state that all other parts are not bonded.
    private static RackDescription Joined(RackDescription description, EarthPart part)
    {
        if (description.Earthing?.Bonded is { } list && !list.Contains(part.Part))
        {
            description = description.EditEarthing(e => e with { Bonded = [.. list.Append(part.Part).Distinct()] });
        }

        return part.Part switch
        {
            BondedPart.FrontDoor when description.Cabinet!.FrontDoor is { Bonded: not null } door =>
                description.EditCabinet(c => c with { FrontDoor = door with { Bonded = true } }),
            BondedPart.RearDoor when description.Cabinet!.RearDoor is { Bonded: not null } door =>
                description.EditCabinet(c => c with { RearDoor = door with { Bonded = true } }),
            _ => description,
        };
    }
}
