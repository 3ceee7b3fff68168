using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;

namespace RackCheck.Rules.Layout;

/// <summary>Finds cage-nut fixings on uprights that do not take them.</summary>
public sealed class HoleType : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "layout.hole-type",
        Title = "Cage nuts without square holes",
        Severity = Severity.Warning,
        What = "Finds items fastened with cage nuts on uprights with round or threaded holes.",
        Why = "A cage nut snaps into a square hole; in another it does not hold.",
        Formula = "fixing cage-nut needs square holes of 9.5 mm",
        Sources = [Sources.Iec60297],
        Needs = ["/items/*/fixing", "/cabinet/uprights/hole"],
        Remedies = ["Fasten it as the holes ask for: clip nuts on round holes, screws in threaded ones."],
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
                context.Lacks(Pointers.Hole, "Cage nuts are asked for; without the shape of the holes it cannot be said whether they hold.");
                continue;
            }

            var round = actual == UprightHole.Round;
            var pointer = $"{item.Pointer}/fixing";
            context.Report(new FindingDraft
            {
                Message = "{item} is to be fastened with cage nuts, but the uprights have {hole} holes.",
                Data = [("item", item.Id), ("hole", round ? "round" : "threaded")],
                Subject = context.Survey.Cabinet.Place(item),
                Identity = [item.Id],
                Pointers = [pointer, Pointers.Hole],
                Cures =
                [
                    round
                        ? new CureBuilder(context.Survey).SetItem(item, i => i with { Fixing = Fixing.ClipNut }).Titled($"Fasten {item.Id} with clip nuts")
                        : new CureBuilder(context.Survey).SetItem(item, i => i with { Fixing = Fixing.Screw }).Titled($"Fasten {item.Id} with screws into the threads"),
                ],
            });
        }
    }
}
