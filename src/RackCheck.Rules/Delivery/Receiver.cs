using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;

namespace RackCheck.Rules.Delivery;

/// <summary>Finds deliveries that nobody takes receipt of.</summary>
public sealed class Receiver : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "delivery.receiver",
        Title = "Nobody to take receipt",
        Severity = Severity.Advice,
        What = "Finds deliveries for which nobody is arranged to take receipt.",
        Why = "The lorry goes back, or the rack stands in the rain and nobody has looked at it for damage.",
        Formula = "receiverArranged is false",
        Sources = [Sources.ReceiptPractice],
        Needs = ["/site/delivery/receiverArranged"],
        Remedies = ["Arrange for somebody to take receipt."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        const string Pointer = SitePointers.Delivery + "/receiverArranged";
        switch (context.Survey.Route?.Source)
        {
            case { ReceiverArranged: null }:
                context.Lacks(Pointer, "Whether somebody is arranged to take receipt is not given.");
                break;
            case { ReceiverArranged: false }:
                context.Report(new FindingDraft
                {
                    Message = "Nobody is arranged to take receipt of the rack.",
                    Data = [],
                    Subject = "delivery",
                    Identity = [],
                    Pointers = [Pointer],
                    Cures = [new Cure("Arrange for somebody to take receipt", context.Survey.Description.EditDelivery(static d => d with { ReceiverArranged = true }))],
                });
                break;
        }
    }
}
