using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;

namespace RackCheck.Rules.Service;

/// <summary>Finds racks that are open to the public.</summary>
public sealed class UnlockedPanels : Rule
{
    private static readonly WordingChoice Defect = new(
        "service.unlocked-panels",
        "[front-door:There is no front door|rear-door:There is no rear door|side-panels:There are no side panels|The doors and panels do not "
            + "lock], and the public has access to the rack.");

    private static readonly MissingData Missing = new(
        "service.unlocked-panels.missing",
        "The rack has public access. Without this value, the locks of its doors and panels cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "service.unlocked-panels",
        Title = "Rack not locked against public access",
        Severity = Severity.Warning,
        What = "Finds racks with public access whose doors and panels do not lock, or that have no door or no side panels.",
        Why = "Unauthorised persons can touch live parts, unplug cords or remove equipment.",
        Formula = "publicAccess, and not lockable, or a door or the side panels not fitted",
        Sources = [Sources.AccessPractice],
        Needs = ["/site/publicAccess", "/cabinet/lockable", "/cabinet/frontDoor/style", "/cabinet/rearDoor/style", "/cabinet/sidePanels"],
        Remedies = ["Use a cabinet with lockable doors and panels.", "Fit the door or the panels."],
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
        var locks = !context.Survey.Cabinet.IsOpenFrame;
        if (locks && cabinet.Lockable is null)
        {
            context.ReportMissing(SitePointers.Lockable, Missing);
        }
        else if (locks && cabinet.Lockable == false)
        {
            Report(
                context, "locks", SitePointers.Lockable,
                static (d, _) => d.EditCabinet(c => c with { Lockable = true }));
        }

        if (cabinet.FrontDoor?.Style == DoorStyle.None)
        {
            Report(
                context, "front-door", Pointers.FrontDoor, static (d, bonded) => d.EditCabinet(c => c with { FrontDoor = Fitted(bonded) }));
        }

        if (cabinet.RearDoor?.Style == DoorStyle.None)
        {
            Report(
                context, "rear-door", Pointers.RearDoor, static (d, bonded) => d.EditCabinet(c => c with { RearDoor = Fitted(bonded) }));
        }

        if (cabinet.SidePanels == false)
        {
            Report(context, "side-panels", Pointers.SidePanels, Panelled);
        }
    }

    private static void Report(RuleContext context, string id, string pointer, Func<RackDescription, bool, RackDescription> change)
    {
        var survey = context.Survey;
        context.Report(new FindingDraft
        {
            Message = Defect.With(id),
            Data = [],
            Subject = Subjects.Cabinet,
            Identity = [id],
            Pointers = [pointer, SitePointers.PublicAccess],
            Candidates =
            [
                new RemedyCandidate(
                    new(RemedyTitles.Locks.With(id, survey.Earth.IsElectrical && id != "locks" ? id == "side-panels" ? "bond-them" : "bond" : null)),
                    change(survey.Description, survey.Earth.IsElectrical)),
            ],
        });
    }

    // Perforated, because equipment may use the open side as its air inlet or outlet.
    private static Door Fitted(bool bonded) => new() { Style = DoorStyle.Perforated, Bonded = bonded ? true : null };

    private static RackDescription Panelled(RackDescription description, bool bonded)
    {
        var after = description.EditCabinet(static c => c with { SidePanels = true });
        return bonded && after.Earthing?.Bonded is { } parts && !parts.Contains(BondedPart.SidePanels)
            ? after.EditEarthing(e => e with { Bonded = [.. parts, BondedPart.SidePanels] })
            : after;
    }
}
