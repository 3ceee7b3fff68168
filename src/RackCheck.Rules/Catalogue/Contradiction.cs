using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Catalogue;
using static System.FormattableString;

namespace RackCheck.Rules.Catalogue;

/// <summary>Finds given values that differ from the catalogue.</summary>
public sealed class Contradiction : PartRule
{
    private static readonly WordingChoice Height = new(
        "catalogue.contradiction.cabinet-height",
        "Part number {partNumber} of [part:the {item:words}|{item}] is made for cabinets of {catalogueValue} U, but the cabinet has {given} U.");

    private static readonly WordingChoice Width = new(
        "catalogue.contradiction.cabinet-width",
        "Part number {partNumber} of [part:the {item:words}|{item}] is made for cabinets {catalogueValue} mm wide, but the cabinet is {given} mm wide.");

    private static readonly WordingChoice WithUnit = new(
        "catalogue.contradiction.value-with-unit",
        "{member} of [part:the {item:words}|{item}] is given as {given} {unit}, but the catalogue has {catalogueValue} {unit} for part "
            + "number {partNumber}.");

    private static readonly WordingChoice Value = new(
        "catalogue.contradiction.value",
        "{member} of [part:the {item:words}|{item}] is given as {given}, but the catalogue has {catalogueValue} for part number {partNumber}.");

    private static readonly WordingChoice Differs = new(
        "catalogue.contradiction.differs",
        "{member} of [part:the {item:words}|{item}] differs from the catalogue value of part number {partNumber}.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "catalogue.contradiction",
        Title = "Value differs from the catalogue",
        Severity = Severity.Warning,
        What =
            "Finds given values of a part-numbered item that differ from the catalogue, and doors made for a cabinet of another size. The check uses the "
            + "given value. Options, cables, rails and operating settings belong to the caller and are never a contradiction. A roof with fans is not the roof "
            + "of the cabinet's part number.",
        Why = "Either the value or the part number is wrong, so the delivered product differs from the checked one.",
        Formula = "contradiction: a length that differs by more than 1 mm, another number by more than 1 %, any other value that differs at all",
        Sources = [Sources.Bookkeeping],
        Needs =
        [
            "/cabinet/partNumber", "/cabinet/frontDoor/partNumber", "/cabinet/rearDoor/partNumber", "/cabinet/earthBar/partNumber", "/items/*/partNumber",
            "/pdus/*/partNumber",
        ],
        Notes =
        [
            "A length contradicts the catalogue if it differs by more than 1 mm, another number if it differs by more than 1 %.",
            "Options, cables, rails and site settings are the choice of the customer and never contradict. A door or an earth bar with its own part "
                + "number is compared with that product, not with the cabinet.",
            "An inlet takes a cord with the plug of the country: such a plug does not contradict. Nor does equipment that can be fed twice and is fed once.",
            "A remedy that changes an item against its product takes out the part number and writes the item in full.",
        ],
        Remedies = ["Use the values of the catalogue.", "Remove the part number of a different product."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var found = new List<PartDifference>();
        foreach (var part in context.Rack.Parts)
        {
            found.Clear();
            part.Compare(context.Rack.Posted, found);
            foreach (var difference in found)
            {
                context.Report(Draft(context.Rack, part, difference));
            }

            foreach (var difference in Misfits(context.Rack.Description.Cabinet!, part))
            {
                context.Report(Misfit(context.Rack, part, difference));
            }
        }
    }

    // The cabinet size of the door product against the size of the cabinet.
    private static IEnumerable<PartDifference> Misfits(Cabinet cabinet, Part part)
    {
        if (part is not { Facts: Door, Product.Door: { } made })
        {
            yield break;
        }

        if (cabinet.WidthMm is { } width && PartTolerances.Differs("widthMm", width, made.WidthMm))
        {
            yield return new PartDifference("/cabinet/widthMm", "widthMm", width, made.WidthMm);
        }

        if (cabinet.HeightU is { } units && units != made.HeightU)
        {
            yield return new PartDifference("/cabinet/heightU", "heightU", units, made.HeightU);
        }
    }

    private static FindingDraft Misfit(ResolvedRack rack, Part part, PartDifference difference)
    {
        var (limit, text) = Bound(difference.Member, difference.Given!.Value.Number!.Value, difference.FromCatalogue!.Value.Number!.Value);
        var unit = UnitOf(difference.Member)!;
        return new FindingDraft
        {
            Message = (unit == "U" ? Height : Width).With(part.IsOfCabinet ? "part" : ""),
            Data =
            [
                ("item", part.Code), ("partNumber", part.Number), ("member", difference.Member), ("given", difference.Given.Value),
                ("catalogueValue", difference.FromCatalogue.Value),
            ],
            Subject = part.IsOfCabinet ? Subjects.Named(part.Name) : Subjects.Id(part.Name),
            Identity = ["cabinet", part.Name, "fit" + difference.Pointer],
            Pointers = [part.Pointer + "/partNumber", difference.Pointer],
            Actual = Quantities.Of(difference.Given.Value.Number.Value, unit),
            Limit = Quantities.Of(limit, unit),
            Calculation = text,
            Candidates = [new RemedyCandidate(Other(part), PartEdits.Without(rack.Description, part))],
        };
    }

    private static WordedText Other(Part part) => new(RemedyTitles.OtherProduct.With(part.IsOfCabinet ? "part" : null), ("item", part.Code));

    private static FindingDraft Draft(ResolvedRack rack, Part part, PartDifference difference)
    {
        var unit = UnitOf(difference.Member);
        var (given, fromCatalogue) = (difference.Given, difference.FromCatalogue);
        var bound = given?.Number is { } a && fromCatalogue?.Number is { } b ? Bound(difference.Member, a, b) : ((double LimitValue, string Text)?)null;
        return new FindingDraft
        {
            Message = (given is null || fromCatalogue is null ? Differs : unit is null ? Value : WithUnit).With(part.IsOfCabinet ? "part" : ""),
            Data =
            [
                ("item", part.Code), ("partNumber", part.Number), ("member", difference.Member),
                .. given is { } one && fromCatalogue is { } other ? [("given", one), ("catalogueValue", other)] : ((string, Scalar)[])[],
                .. unit is not null ? [("unit", unit)] : ((string, Scalar)[])[],
            ],
            Subject = part.IsOfCabinet ? Subjects.Named(part.Name) : Subjects.Id(part.Name),
            Identity = [part.Pointer.Split('/')[1], part.Name, difference.Pointer[part.Pointer.Length..]],
            Pointers = [difference.Pointer, part.Pointer + "/partNumber"],
            Actual = given?.Number is { } number && unit is not null ? Quantities.Of(number, unit) : null,
            Limit = bound is { LimitValue: var limit } && unit is not null ? Quantities.Of(limit, unit) : null,
            Calculation = bound?.Text,
            Candidates =
            [
                new RemedyCandidate(
                    new(RemedyTitles.CatalogueValues.With(part.IsOfCabinet ? "part" : null), ("item", part.Code)), PartEdits.AsTold(rack.Description, part)),
                new RemedyCandidate(Other(part), PartEdits.Without(rack.Description, part)),
            ],
        };
    }

    // The nearest permitted value and its calculation.
    private static (double LimitValue, string Text) Bound(string member, double given, double fromCatalogue)
    {
        var (tolerance, text) = member.EndsWith("Mm", StringComparison.Ordinal)
            ? (PartTolerances.LengthMm, "1")
            : (PartTolerances.Share * Math.Abs(fromCatalogue), Invariant($"0.01 x {Math.Abs(fromCatalogue):0.###}"));
        var isOver = given > fromCatalogue;
        var bound = Quantities.Round(isOver ? fromCatalogue + tolerance : fromCatalogue - tolerance);
        return (bound, Invariant($"{given:0.###} {(isOver ? '>' : '<')} {fromCatalogue:0.###} {(isOver ? '+' : '-')} {text} = {bound:0.###}"));
    }

    // The names of the contract end in their units.
    private static string? UnitOf(string member)
    {
        (string Ending, string Unit)[] units =
        [
            ("Mm2", "mm2"), ("Mm", "mm"), ("Kg", "kg"), ("Va", "VA"), ("W", "W"), ("M3h", "m3/h"), ("M2", "m2"), ("Cm2", "cm2"), ("Ma", "mA"), ("heightU", "U"),
                ("A", "A"), ("V", "V"),
            ("Percent", "%"), ("Minutes", "min"), ("C", "C"),
        ];
        return units.FirstOrDefault(u => member.EndsWith(u.Ending, StringComparison.Ordinal)).Unit;
    }
}
