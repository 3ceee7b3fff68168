using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;

namespace RackCheck.Rules.Layout;

/// <summary>Finds cage nuts specified for uprights without square holes.</summary>
public sealed class HoleType : Rule
{
    private static readonly MessageWording Defect = new("layout.hole-type", "{item} is fixed with cage nuts, but the uprights have {hole} holes.");

    private static readonly MissingData Missing = new(
        "layout.hole-type.missing",
        "Cage nuts are specified. Without the hole type of the uprights, the fixing cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "layout.hole-type",
        Title = "Cage nuts without square holes",
        Severity = Severity.Warning,
        What = "Finds items fixed with cage nuts to uprights with round or threaded holes.",
        Why = "A cage nut snaps into a square hole. It does not hold in a round or threaded hole.",
        Formula = "fixing cage-nut needs square holes of 9.5 mm",
        Sources = [Sources.Iec60297],
        Needs = ["/items/*/fixing", "/cabinet/uprights/hole"],
        Notes =
        [
            "items[].fixing is optional. Catalogue products bring it.",
        ],
        Remedies = ["Use the fixing that suits the holes: clip nuts for round holes, screws for threaded holes."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var hole = context.Survey.Cabinet.Source.Uprights?.Hole;
        if (hole == UprightHole.Square)
        {
            return;
        }

        foreach (var item in context.Survey.Items)
        {
            if (item.Item!.Fixing != Fixing.CageNut)
            {
                continue;
            }

            if (hole is not { } actual)
            {
                context.ReportMissing(Pointers.Hole, Missing);
                continue;
            }

            var round = actual == UprightHole.Round;
            var pointer = $"{item.Pointer}/fixing";
            context.Report(new FindingDraft
            {
                Message = Defect,
                Data = [("item", item.Id), ("hole", round ? "round" : "threaded")],
                Subject = context.Survey.Cabinet.Place(item),
                Identity = [item.Id],
                Pointers = [pointer, Pointers.Hole],
                Candidates =
                [
                    round
                        ? new RemedyBuilder(context.Survey).SetItem(item, i => i with { Fixing = Fixing.ClipNut })
                            .Titled(new(RemedyTitles.ClipNuts, ("item", item.Id)))
                        : new RemedyBuilder(context.Survey).SetItem(item, i => i with { Fixing = Fixing.Screw })
                            .Titled(new(RemedyTitles.Screws, ("item", item.Id))),
                ],
            });
        }
    }
}
