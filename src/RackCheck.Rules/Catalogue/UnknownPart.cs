using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Model.Converters;
using RackCheck.Remedies;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Rules.Catalogue;

/// <summary>Finds part numbers that are not in the catalogue, or belong to another kind of product.</summary>
public sealed class UnknownPart : PartRule
{
    private static readonly WordingChoice Unknown = new(
        "catalogue.unknown-part.unknown",
        "Part number {partNumber} of [part:the {item:words}|{item}] is not in the catalogue.");

    private static readonly WordingChoice Faulty = new(
        "catalogue.unknown-part.faulty",
        "The catalogue data of part number {partNumber} of [part:the {item:words}|{item}] is not valid ({member}: {fault:words}).");

    private static readonly WordingChoice OtherKind = new(
        "catalogue.unknown-part.other-kind",
        "The catalogue lists part number {partNumber} of [part:the {item:words}|{item}] as {kind:words}, not as {neededKind:words}.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "catalogue.unknown-part",
        Title = "Part number not in the catalogue",
        Severity = Severity.Error,
        What =
            "Finds part numbers of the cabinet, its doors and earth bar, of items and of PDUs that are not in the catalogue, whose data in the "
            + "catalogue is not valid, or that belong to another kind of product.",
        Why = "The data of the product is missing, and an unknown part number cannot be ordered.",
        Formula =
            "the part number is in the catalogue, and its product is of the kind that its place in the description requires (cabinet, front or rear door, "
            + "earth bar, equipment, PDU)",
        Sources = [Sources.Bookkeeping],
        Needs =
        [
            "/cabinet/partNumber", "/cabinet/frontDoor/partNumber", "/cabinet/rearDoor/partNumber", "/cabinet/earthBar/partNumber", "/items/*/partNumber",
            "/pdus/*/partNumber",
        ],
        Notes =
        [
            "An unknown part number does not stop the check. Where the item is described by hand, all rules run; where its size is missing too, nothing "
                + "can be said of the rack, and every rule reports that.",
            "A product whose catalogue data is not valid is left out. The finding names the member and its fault; the catalogue has to be corrected.",
        ],
        Remedies = ["Remove the part number where the item is fully described.", "Correct the part number to match the catalogue."],
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
            (WordingChoice Wording, (string, Scalar)[] Data) told = kind is not null ? (OtherKind, [("neededKind", NeededKind(part)), ("kind", kind)])
                : part.Fault is { } fault ? (Faulty, [("member", fault.Pointer.Length > 0 ? fault.Pointer : "product"), ("fault", fault.Code)])
                : (Unknown, []);
            context.Report(new FindingDraft
            {
                Message = told.Wording.With(part.IsOfCabinet ? "part" : ""),
                Data = [("item", part.Code), ("partNumber", part.Number), .. told.Data],
                Subject = part.IsOfCabinet ? Subjects.Named(part.Name) : Subjects.Id(part.Name),
                Identity = part.Pointer.StartsWith("/cabinet", StringComparison.Ordinal) ? [part.Pointer[1..], ""] : [part.Pointer.Split('/')[1], part.Name],
                Pointers = [part.Pointer + "/partNumber"],
                Candidates = Candidates(context.Rack, part),
            });
        }
    }

    private static string NeededKind(Part part) => part.Pointer switch
    {
        "/cabinet" => "cabinet",
        "/cabinet/frontDoor" => "front-door",
        "/cabinet/rearDoor" => "rear-door",
        "/cabinet/earthBar" => "earth-bar",
        var other => other.StartsWith("/pdus", StringComparison.Ordinal) ? "PDU" : "equipment",
    };

    // A door for the other face is another product.
    private static string KindOf(Product product) =>
        product.Door is { } door ? NamedEnumConverter<Face>.Name(door.Face) + "-door" : NamedEnumConverter<ProductKind>.Name(product.Kind);

    // Only where the item is fully described: otherwise its data comes from the part number.
    private static IEnumerable<RemedyCandidate> Candidates(ResolvedRack rack, Part part)
    {
        var without = PartEdits.Without(rack.Description, part);
        if (!rack.Missing().Any(m => m.StartsWith(part.Pointer + "/", StringComparison.Ordinal))
            && without.Connections?.Any(c => ResolvedRack.PointsNowhere(without, c)) != true)
        {
            yield return new RemedyCandidate(
                new(RemedyTitles.NoPartNumber.With(part.IsOfCabinet ? "part" : null), ("item", part.Code)), without);
        }
    }
}
