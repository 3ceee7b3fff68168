using FluentValidation;
using FluentValidation.Results;
using RackCheck.Model;

namespace RackCheck.Api.Reading;

/// <summary>Relations between members of a comparison request. Descriptions and baskets are checked as those of the other operations.</summary>
public sealed class ComparisonValidator : AbstractValidator<ComparisonRequest>
{
    private readonly IValidator<RackDescription> descriptions;
    private readonly IValidator<BasketRequest> baskets;

    /// <summary>Sets the relations up.</summary>
    /// <param name="descriptions">Checks descriptions.</param>
    /// <param name="baskets">Checks baskets.</param>
    public ComparisonValidator(IValidator<RackDescription> descriptions, IValidator<BasketRequest> baskets)
    {
        (this.descriptions, this.baskets) = (descriptions, baskets);
        RuleFor(c => c).Custom((comparison, context) =>
        {
            Check("/before", comparison.Before, context);
            Check("/after", comparison.After, context);
        });
    }

    private void Check(string pointer, ComparedSide? side, ValidationContext<ComparisonRequest> context)
    {
        if (side is null)
        {
            return;
        }

        if (side.Basket is not null ? side.Description is not null || side.Report is not null : side.Description is null && side.Report is null)
        {
            context.AddFailure(new ValidationFailure(pointer, "Give a description, a basket, or a report with or without its description.")
            {
                ErrorCode = FaultCodes.Inconsistent,
            });
        }

        foreach (var failure in side.Description is { } description ? descriptions.Validate(description).Errors : [])
        {
            Add(pointer + "/description", failure);
        }

        foreach (var failure in side.Basket is { } basket ? baskets.Validate(basket).Errors : [])
        {
            Add(pointer + "/basket", failure);
        }

        void Add(string prefix, ValidationFailure failure) =>
            context.AddFailure(new ValidationFailure(prefix + failure.PropertyName, failure.ErrorMessage) { ErrorCode = failure.ErrorCode });
    }
}
