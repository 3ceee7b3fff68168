using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Model.Converters;
using RackCheck.Remedies;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Rules.Catalogue;

/// <summary>Finds part numbers that the catalogue does not know, or knows as something else.</summary>
public sealed class UnknownPart : PartRule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "catalogue.unknown-part",
        Title = "Part number not in the catalogue",
        Severity = Severity.Error,
        What = "Finds part numbers of the cabinet, its doors and earth bar, of items and of PDUs that the catalogue does not know, or knows as another kind of product.",
        Why = "What a part number would have told is missing, and what cannot be looked up cannot be delivered.",
        Formula = "the catalogue knows the part number, and its product is a cabinet, a front or rear door, an earth bar, equipment or a PDU where one stands",
        Sources = [Sources.Bookkeeping],
        Needs = ["/cabinet/partNumber", "/cabinet/frontDoor/partNumber", "/cabinet/rearDoor/partNumber", "/cabinet/earthBar/partNumber", "/items/*/partNumber", "/pdus/*/partNumber"],
        Remedies = ["Leave the part number out where the thing is described by hand.", "Give the part number as the catalogue has it."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        foreach (var part in context.Rack.Parts)
        {
            if (part.Facts is not null)
            {
                continue;
            }

            var kind = part.Product is { } product ? KindOf(product) : null;
            context.Report(new FindingDraft
            {
                Message = kind is null
                    ? "The catalogue does not know part number {partNumber} of {item}."
                    : "Part number {partNumber} of {item} is no {wanted} in the catalogue, but of the kind {kind}.",
                Data =
                [
                    ("item", part.Name), ("partNumber", part.Number),
                    .. kind is null ? ((string, Scalar)[])[] : [("wanted", Wanted(part)), ("kind", kind)],
                ],
                Subject = part.Name,
                Identity = part.Pointer.StartsWith("/cabinet", StringComparison.Ordinal) ? [part.Pointer[1..], ""] : [part.Pointer.Split('/')[1], part.Name],
                Pointers = [part.Pointer + "/partNumber"],
                Cures = Cures(context.Rack, part),
            });
        }
    }

    private static string Wanted(Part part) => part.Pointer switch
    {
        "/cabinet" => "cabinet",
        "/cabinet/frontDoor" => "front door",
        "/cabinet/rearDoor" => "rear door",
        "/cabinet/earthBar" => "earth bar",
        var other => other.StartsWith("/pdus", StringComparison.Ordinal) ? "PDU" : "equipment",
    };

    // Of a door, the other face is what makes it another product.
    private static string KindOf(Product product) => product.Door is { } door ? NamedEnumConverter<Face>.Name(door.Face) + "-door" : NamedEnumConverter<ProductKind>.Name(product.Kind);

    // Only where nothing hangs on it: a thing that is not described by hand either cannot do without.
    private static IEnumerable<Cure> Cures(ResolvedRack rack, Part part)
    {
        if (!rack.Missing().Any(m => m[..m.LastIndexOf('/')] == part.Pointer))
        {
            yield return new Cure($"Leave the part number of {part.Name} out, since it is described by hand", PartEdits.Without(rack.Description, part));
        }
    }
}
