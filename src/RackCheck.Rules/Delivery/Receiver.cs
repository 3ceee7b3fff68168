using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;

namespace RackCheck.Rules.Delivery;

/// <summary>Finds deliveries without a person to take receipt.</summary>
public sealed class Receiver : Rule
{
    private static readonly MessageWording Defect = new("delivery.receiver", "No person is arranged to take receipt of the rack.");

    private static readonly MissingData Missing = new("delivery.receiver.missing", "Without this value, the receipt of the delivery cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "delivery.receiver",
        Title = "No person to take receipt",
        Severity = Severity.Advice,
        Concern = Concern.Site,
        What = "Finds deliveries for which no person is arranged to take receipt.",
        Why = "The carrier returns with the rack, or the rack is left outdoors and is not inspected for damage.",
        Formula = "receiverArranged is false",
        Sources = [Sources.ReceiptPractice],
        Needs = ["/site/delivery/receiverArranged"],
        Remedies = ["Arrange for a person to take receipt."],
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
                context.ReportMissing(Pointer, Missing);
                break;
            case { ReceiverArranged: false }:
                context.Report(new FindingDraft
                {
                    Message = Defect,
                    Data = [],
                    Subject = Subjects.Delivery,
                    Identity = [],
                    Pointers = [Pointer],
                    Candidates =
                    [
                        new RemedyCandidate(
                            RemedyTitles.Receiver,
                            context.Survey.Description.EditDelivery(static d => d with { ReceiverArranged = true })),
                    ],
                });
                break;
        }
    }
}
