using FluentValidation;
using FluentValidation.Results;
using RackCheck.Model;
using static System.FormattableString;

namespace RackCheck.Api.Reading;

/// <summary>Relations between members of a proposal request. What it shares with a rack description is checked as one.</summary>
public sealed class ProposalValidator : AbstractValidator<ProposalRequest>
{
    private static readonly Cabinet Any = new() { HeightU = 60, WidthMm = 600, DepthMm = 1000 };

    /// <summary>Sets the relations up.</summary>
    /// <param name="descriptions">Checks the members of a rack description.</param>
    public ProposalValidator(IValidator<RackDescription> descriptions)
    {
        RuleFor(p => p).Custom((proposal, context) =>
        {
            foreach (var failure in descriptions.Validate(proposal.In(Any)).Errors)
            {
                context.AddFailure(failure);
            }
        });
        RuleFor(p => p).Custom((proposal, context) => CabinetsAreWhole(descriptions, proposal, context));
        RuleFor(p => p).Custom(KeptItemsHavePositions);
    }

    private static void CabinetsAreWhole(
        IValidator<RackDescription> descriptions, ProposalRequest proposal, ValidationContext<ProposalRequest> context)
    {
        for (var i = 0; i < proposal.Cabinets?.Count; i++)
        {
            if (proposal.Cabinets[i] is not { } cabinet)
            {
                continue;
            }

            foreach (var failure in descriptions.Validate(new RackDescription { Cabinet = cabinet, Items = [] }).Errors)
            {
                var pointer = Invariant($"/cabinets/{i}") + failure.PropertyName["/cabinet".Length..];
                context.AddFailure(new ValidationFailure(pointer, failure.ErrorMessage) { ErrorCode = failure.ErrorCode });
            }
        }
    }

    private static void KeptItemsHavePositions(ProposalRequest proposal, ValidationContext<ProposalRequest> context)
    {
        for (var i = 0; i < proposal.Keep?.Count; i++)
        {
            var pointer = Invariant($"/keep/{i}");
            var index = proposal.Items is null ? 0 : SharedRelations.FirstIndex(proposal.Items, proposal.Keep[i], static x => x?.Id);
            if (index >= (proposal.Items?.Count ?? 0))
            {
                context.AddFailure(new ValidationFailure(pointer, $"No item has the id {proposal.Keep[i]}.") { ErrorCode = FaultCodes.UnknownId });
            }
            else if (proposal.Items![index].Position is null)
            {
                context.AddFailure(new ValidationFailure(pointer, $"{proposal.Keep[i]} has no position to keep.") { ErrorCode = FaultCodes.Inconsistent });
            }
        }
    }
}
