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
        RuleFor(p => p).Custom(GroupsNameItems);
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

    // An item belongs to one group at most.
    private static void GroupsNameItems(ProposalRequest proposal, ValidationContext<ProposalRequest> context)
    {
        var grouped = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < proposal.Groups?.Count; i++)
        {
            if (proposal.Groups[i] is not { } group)
            {
                continue;
            }

            if (SharedRelations.FirstIndex(proposal.Groups, group.Id, static g => g?.Id) < i)
            {
                Fail(Invariant($"/groups/{i}/id"), FaultCodes.DuplicateId, $"Another group has the id {group.Id}.");
            }

            for (var j = 0; j < group.Items?.Count; j++)
            {
                var pointer = Invariant($"/groups/{i}/items/{j}");
                var id = group.Items[j];
                if (proposal.Items is { } items && SharedRelations.FirstIndex(items, id, static x => x?.Id) == items.Count)
                {
                    Fail(pointer, FaultCodes.UnknownId, $"No item has the id {id}.");
                }
                else if (!grouped.Add(id))
                {
                    Fail(pointer, FaultCodes.Inconsistent, $"{id} is in another group already, or twice in this one.");
                }
            }
        }

        void Fail(string pointer, string code, string message) => context.AddFailure(new ValidationFailure(pointer, message) { ErrorCode = code });
    }
}
