using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Service;

/// <summary>Finds doors that cannot be opened, and equipment on slides that cannot be fully extended, in the aisles of the rack.</summary>
public sealed class Aisle : Rule
{
    private static readonly WordingChoice Leaf = new(
        "service.aisle.leaf",
        "The leaf of the {side} door is {leafMm} mm wide; the aisle there is {aisleMm} mm wide.[leaves: Two leaves would open; the number of "
            + "leaves is not specified.]");

    private static readonly MessageWording Extension = new(
        "service.aisle.extension",
        "{item} extends {pullMm} mm; the aisle at the {side} of the rack is {aisleMm} mm wide.");

    private static readonly MissingData MissingExtension = new(
        "service.aisle.missing-extension",
        "Without the extension of the slides, the service clearance in the aisle cannot be checked.");

    private static readonly MissingData MissingWidth = new(
        "service.aisle.missing-width",
        "Items are mounted on slides. Without the aisle width, the service clearance cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "service.aisle",
        Title = "Aisle too narrow for a door or for extended slides",
        Severity = Severity.Warning,
        MilderSeverity = Severity.Advice,
        Concern = Concern.Site,
        What = "Finds items on slides whose full extension exceeds the aisle on their side, and doors whose leaf is wider than the aisle. A door with two "
            + "leaves needs half of the cabinet's width. Leaves not given and the aisle wide enough for one of two: advice.",
        Why = "The item or the door hits the wall before it is fully open, and the equipment cannot be serviced.",
        Formula = "extension > aisleFrontMm or aisleRearMm, default extension: the body depth; widthMm / leaves > aisle",
        Sources = [Sources.AislePractice],
        Needs =
        [
            "/site/aisleFrontMm", "/site/aisleRearMm", "/cabinet/widthMm", "/cabinet/frontDoor/style", "/cabinet/frontDoor/leaves",
            "/cabinet/rearDoor/style", "/cabinet/rearDoor/leaves", "/items/*/support/style", "/items/*/support/extensionMm", "/items/*/body/depthMm",
        ],
        Notes =
        [
            "Every cabinet has doors unless their style is none. Without a number of leaves a front door has one. A rear door may have two, so its finding is "
                + "advice where two leaves would open.",
            "An aisle that is not given is asked for only where an item extends into it.",
        ],
        Remedies =
        [
            "Place the rack at a wider aisle.", "Use a door with two leaves.", "Use slides with a shorter extension.", "Mount it on fixed runners.",
        ],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var (site, cabinet) = (context.Survey.Description.Site, context.Survey.Cabinet.Source);
        CheckSide(context, Face.Front, site?.AisleFrontMm, cabinet.FrontDoor, SitePointers.AisleFront);
        CheckSide(context, Face.Rear, site?.AisleRearMm, cabinet.RearDoor, SitePointers.AisleRear);
    }

    private static void CheckSide(RuleContext context, Face face, double? aisle, Door? door, string pointer)
    {
        if (aisle is { } roomMm)
        {
            CheckDoor(context, face, roomMm, door, pointer);
        }

        foreach (var item in context.Survey.Items)
        {
            if (item.SupportStyle != SupportStyle.Slides || item.Face != face)
            {
                continue;
            }

            if (aisle is not { } room)
            {
                context.ReportMissing(pointer, MissingWidth);
                break;
            }

            if (Balance.ExtensionMm(item) is not { } pull)
            {
                context.ReportMissing(Pointers.ItemExtension[item.Index], MissingExtension);
            }
            else if (Comparison.IsOver(pull, room))
            {
                Report(context, item, pull, room, pointer);
            }
        }
    }

    private static void CheckDoor(RuleContext context, Face face, double aisle, Door? door, string pointer)
    {
        if (door?.Style == DoorStyle.None)
        {
            return;
        }

        var width = context.Survey.Cabinet.WidthMm;
        var leaf = DoorLeaves.WidthMm(width, door?.Leaves ?? 1);
        if (!Comparison.IsOver(leaf, aisle))
        {
            return;
        }

        // Front doors have one leaf unless specified; rear doors are often divided.
        var isAdvice = face == Face.Rear && door?.Leaves is null && !Comparison.IsOver(DoorLeaves.WidthMm(width, 2), aisle);
        var side = CabinetFacts.FaceText(face);
        context.Report(new FindingDraft
        {
            Severity = isAdvice ? Severity.Advice : Severity.Warning,
            Message = Leaf.With(isAdvice ? "leaves" : ""),
            Data = [("side", side), ("leafMm", leaf), ("aisleMm", aisle)],
            Subject = face == Face.Front ? Subjects.FrontDoor : Subjects.RearDoor,
            Identity = ["door", side],
            Pointers = [face == Face.Front ? Pointers.FrontDoor : Pointers.RearDoor, pointer],
            Actual = Quantities.Millimetres(leaf),
            Limit = Quantities.Millimetres(aisle),
            UtilisationPercent = aisle > 0 ? 100 * leaf / aisle : null,
            Calculation = (door?.Leaves == 2 ? Invariant($"{width:0.###} / 2 = {leaf:0.###}") : Invariant($"{leaf:0.###}")) + Invariant($" > {aisle:0.###}"),
            Candidates = AisleRemedies.ForDoor(context.Survey, face, leaf),
        });
    }

    private static void Report(RuleContext context, MountedItem item, double pull, double aisle, string pointer) => context.Report(new FindingDraft
    {
        Message = Extension,
        Data = [("item", item.Id), ("pullMm", pull), ("side", CabinetFacts.FaceText(item.Face)), ("aisleMm", aisle)],
        Subject = context.Survey.Cabinet.Place(item),
        Identity = [item.Id],
        Pointers = [Pointers.ItemExtension[item.Index], pointer],
        Actual = Quantities.Millimetres(pull),
        Limit = Quantities.Millimetres(aisle),
        UtilisationPercent = aisle > 0 ? 100 * pull / aisle : null,
        Calculation = Invariant($"{pull:0.###} > {aisle:0.###}"),
        Candidates = AisleRemedies.ForSlides(context.Survey, item, pull, aisle),
    });
}
