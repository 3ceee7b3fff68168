using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;

namespace RackCheck.Rules.Service;

/// <summary>Finds racks that the public can reach into.</summary>
public sealed class UnlockedPanels : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "service.unlocked-panels",
        Title = "Open to the public",
        Severity = Severity.Warning,
        What = "Finds racks in reach of the public whose doors and panels do not lock, or without one of them.",
        Why = "Whoever passes can touch live parts, pull cords, or take things away.",
        Formula = "publicAccess, and not lockable, or a door or the side panels left off",
        Sources = [Sources.AccessPractice],
        Needs = ["/site/publicAccess", "/cabinet/lockable", "/cabinet/frontDoor/style", "/cabinet/rearDoor/style", "/cabinet/sidePanels"],
        Remedies = ["Take a cabinet whose doors and panels lock.", "Fit the door or the panels."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        if (context.Survey.Description.Site?.PublicAccess != true)
        {
            return;
        }

        var cabinet = context.Survey.Cabinet.Source;
        if (cabinet.Lockable is null)
        {
            context.Lacks(SitePointers.Lockable, "The public can reach the rack; whether its doors and panels lock is not given.");
        }
        else if (cabinet.Lockable == false)
        {
            Report(context, "Doors and panels do not lock", "locks", SitePointers.Lockable, "Take a cabinet whose doors and panels lock", static (d, _) => d.EditCabinet(c => c with { Lockable = true }));
        }

        if (cabinet.FrontDoor?.Style == DoorStyle.None)
        {
            Report(context, "There is no front door", "front-door", Pointers.FrontDoor, "Fit a perforated front door", static (d, bonded) => d.EditCabinet(c => c with { FrontDoor = Fitted(bonded) }));
        }

        if (cabinet.RearDoor?.Style == DoorStyle.None)
        {
            Report(context, "There is no rear door", "rear-door", Pointers.RearDoor, "Fit a perforated rear door", static (d, bonded) => d.EditCabinet(c => c with { RearDoor = Fitted(bonded) }));
        }

        if (cabinet.SidePanels == false)
        {
            Report(context, "There are no side panels", "side-panels", Pointers.SidePanels, "Fit side panels", Panelled);
        }
    }

    private static void Report(RuleContext context, string what, string id, string pointer, string title, Func<RackDescription, bool, RackDescription> cure)
    {
        var survey = context.Survey;
        context.Report(new FindingDraft
        {
            Message = what + ", and the public can reach the rack.",
            Data = [],
            Subject = "cabinet",
            Identity = [id],
            Pointers = [pointer, SitePointers.PublicAccess],
            Cures = [new Cure(title + (survey.Earth.IsElectrical && id != "locks" ? " and join to earth what is fitted" : ""), cure(survey.Description, survey.Earth.IsElectrical))],
        });
    }

    // Perforated, since what stood open may breathe there.
    private static Door Fitted(bool bonded) => new() { Style = DoorStyle.Perforated, Bonded = bonded ? true : null };

    private static RackDescription Panelled(RackDescription description, bool bonded)
    {
        var after = description.EditCabinet(static c => c with { SidePanels = true });
        return bonded && after.Earthing?.Bonded is { } parts && !parts.Contains(BondedPart.SidePanels)
            ? after.EditEarthing(e => e with { Bonded = [.. parts, BondedPart.SidePanels] })
            : after;
    }
}
