using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;

namespace RackCheck.Rules.Earthing;

/// <summary>Finds metal parts of the cabinet that are not joined to earth.</summary>
public sealed class UnbondedPart : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "earthing.unbonded-part",
        Title = "Part not joined to earth",
        Severity = Severity.Error,
        Safety = true,
        What = "Finds the frame, doors, side panels, or a vented roof with fans, where they are not joined to protective earth.",
        Why = "Paint and hinges do not conduct: a wire that comes off inside makes the part live, and nothing trips.",
        Formula = "every part to join is among those joined, or its door says so",
        Sources = [Sources.BondingPractice],
        Needs = ["/earthing/bonded", "/cabinet/frontDoor/bonded", "/cabinet/rearDoor/bonded", "/cabinet/sidePanels", "/cabinet/roof/style", "/cooling/roofFans"],
        Remedies = ["Join the part to the earth bar by a lead of its own."],
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
                context.Lacks(Pointers.Bonded, "Without the list of parts that are joined to earth it cannot be said whether all are.");
            }
            else if (part.IsBonded == false)
            {
                context.Report(new FindingDraft
                {
                    Message = part.Part == BondedPart.SidePanels ? "The {part} are not joined to protective earth." : "The {part} is not joined to protective earth.",
                    Data = [("part", part.Name)],
                    Subject = part.Name,
                    Identity = [part.Name],
                    Pointers = [.. new[] { part.Pointer, PlaceOf(part.Part) }.Distinct()],
                    Cures = Cures(context.Survey, part),
                });
            }
        }
    }

    // Parts share one list; what each is told by keeps them apart for a client that goes by pointers.
    private static string PlaceOf(BondedPart part) => part switch
    {
        BondedPart.FrontDoor => Pointers.FrontDoor,
        BondedPart.RearDoor => Pointers.RearDoor,
        BondedPart.SidePanels => Pointers.SidePanels,
        BondedPart.Roof => "/cabinet/roof",
        _ => "/cabinet",
    };

    private static IEnumerable<Cure> Cures(RackSurvey survey, EarthPart part)
    {
        yield return new Cure($"Join the {part.Name} to earth by a lead of {(part.Part == BondedPart.SidePanels ? "their" : "its")} own", Joined(survey.Description, part));
        var open = survey.Earth.Parts.Where(p => p.IsBonded == false).ToArray();
        if (open.Length > 1)
        {
            yield return new Cure("Join every part of the cabinet to earth", open.Aggregate(survey.Description, Joined));
        }
    }

    // A list that is given is complete, so none is begun where there was none: it would unsay all other parts.
    private static RackDescription Joined(RackDescription description, EarthPart part)
    {
        if (description.Earthing?.Bonded is { } list && !list.Contains(part.Part))
        {
            description = description.EditEarthing(e => e with { Bonded = [.. list.Append(part.Part).Distinct()] });
        }

        return part.Part switch
        {
            BondedPart.FrontDoor when description.Cabinet!.FrontDoor is { Bonded: not null } door => description.EditCabinet(c => c with { FrontDoor = door with { Bonded = true } }),
            BondedPart.RearDoor when description.Cabinet!.RearDoor is { Bonded: not null } door => description.EditCabinet(c => c with { RearDoor = door with { Bonded = true } }),
            _ => description,
        };
    }
}
