using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Catalogue;
using static System.FormattableString;

namespace RackCheck.Rules.Catalogue;

/// <summary>Finds values that are given by hand and differ from the catalogue's.</summary>
public sealed class Contradiction : PartRule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "catalogue.contradiction",
        Title = "Value against the catalogue",
        Severity = Severity.Warning,
        What = "Finds values of a thing with a part number that are given by hand and differ from the catalogue's, and doors that are made for a cabinet of another size. What is given by hand is what the check goes by. Wishes, cables, rails and settings of the day are the caller's and never a contradiction, and a roof with fans in it is not the one of the cabinet's part number.",
        Why = "Either the value is wrong or the part number is: what is delivered will not be what was checked.",
        Formula = "a length differs by more than 1 mm, another number by more than 1 %, anything else at all",
        Sources = [Sources.Bookkeeping],
        Needs = ["/cabinet/partNumber", "/cabinet/frontDoor/partNumber", "/cabinet/rearDoor/partNumber", "/cabinet/earthBar/partNumber", "/items/*/partNumber", "/pdus/*/partNumber"],
        Remedies = ["Take the catalogue's values.", "Leave the part number out: the thing is another one."],
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

    // What a door is made for, against the cabinet that it is to close.
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
        var (limit, text) = Bound(difference.Member, difference.Given!.Value.Number!.Value, difference.Told!.Value.Number!.Value);
        var unit = UnitOf(difference.Member)!;
        return new FindingDraft
        {
            Message = unit == "U"
                ? "Part number {partNumber} of {item} is made for cabinets of {told} U, but the cabinet has {given} U."
                : "Part number {partNumber} of {item} is made for cabinets {told} mm wide, but the cabinet is {given} mm wide.",
            Data = [("item", part.Name), ("partNumber", part.Number), ("member", difference.Member), ("given", difference.Given.Value), ("told", difference.Told.Value)],
            Subject = part.Name,
            Identity = ["cabinet", part.Name, "fit" + difference.Pointer],
            Pointers = [part.Pointer + "/partNumber", difference.Pointer],
            Actual = Quantities.Of(difference.Given.Value.Number.Value, unit),
            Limit = Quantities.Of(limit, unit),
            Calculation = text,
            Cures = [new Cure($"Leave the part number of {part.Name} out: it is another product", PartEdits.Without(rack.Description, part))],
        };
    }

    private static FindingDraft Draft(ResolvedRack rack, Part part, PartDifference difference)
    {
        var unit = UnitOf(difference.Member);
        var after = unit is null or "U" ? unit is null ? "" : " U" : " " + unit;
        var (given, told) = (difference.Given, difference.Told);
        var bound = given?.Number is { } a && told?.Number is { } b ? Bound(difference.Member, a, b) : ((double LimitValue, string Text)?)null;
        return new FindingDraft
        {
            Message = given is not null && told is not null
                ? $"{{member}} of {{item}} is given as {{given}}{after}, but the catalogue has {{told}}{after} for part number {{partNumber}}."
                : "{member} of {item} is given otherwise than the catalogue has it for part number {partNumber}.",
            Data =
            [
                ("item", part.Name), ("partNumber", part.Number), ("member", difference.Member),
                .. given is { } one && told is { } other ? [("given", one), ("told", other)] : ((string, Scalar)[])[],
            ],
            Subject = part.Name,
            Identity = [part.Pointer.Split('/')[1], part.Name, difference.Pointer[part.Pointer.Length..]],
            Pointers = [difference.Pointer, part.Pointer + "/partNumber"],
            Actual = given?.Number is { } number && unit is not null ? Quantities.Of(number, unit) : null,
            Limit = bound is { LimitValue: var limit } && unit is not null ? Quantities.Of(limit, unit) : null,
            Calculation = bound?.Text,
            Cures =
            [
                new Cure($"Take the values of the catalogue for {part.Name}", PartEdits.AsTold(rack.Description, part)),
                new Cure($"Leave the part number of {part.Name} out: it is another product", PartEdits.Without(rack.Description, part)),
            ],
        };
    }

    // The nearest value that would do, and how it comes about.
    private static (double LimitValue, string Text) Bound(string member, double given, double told)
    {
        var (tolerance, text) = member.EndsWith("Mm", StringComparison.Ordinal)
            ? (PartTolerances.LengthMm, "1")
            : (PartTolerances.Share * Math.Abs(told), Invariant($"0.01 x {Math.Abs(told):0.###}"));
        var isOver = given > told;
        var bound = Quantities.Round(isOver ? told + tolerance : told - tolerance);
        return (bound, Invariant($"{given:0.###} {(isOver ? '>' : '<')} {told:0.###} {(isOver ? '+' : '-')} {text} = {bound:0.###}"));
    }

    // The contract's names end in their units.
    private static string? UnitOf(string member)
    {
        (string Ending, string Unit)[] units =
        [
            ("Mm2", "mm2"), ("Mm", "mm"), ("Kg", "kg"), ("Va", "VA"), ("W", "W"), ("M3h", "m3/h"), ("M2", "m2"), ("Cm2", "cm2"), ("Ma", "mA"), ("heightU", "U"), ("A", "A"), ("V", "V"),
            ("Percent", "%"), ("Minutes", "min"), ("C", "C"),
        ];
        return units.FirstOrDefault(u => member.EndsWith(u.Ending, StringComparison.Ordinal)).Unit;
    }
}
