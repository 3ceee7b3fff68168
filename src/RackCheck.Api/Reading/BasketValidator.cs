using FluentValidation;
using FluentValidation.Results;
using RackCheck.Model;
using RackCheck.Rules;

namespace RackCheck.Api.Reading;

/// <summary>
/// Checks the relations between members of a basket. The property name of a failure is a JSON pointer (RFC 6901); its error code is one of <see
/// cref="FaultCodes"/>.
/// </summary>
public sealed class BasketValidator : AbstractValidator<BasketRequest>
{
    /// <summary>Creates the validator.</summary>
    /// <param name="rules">The rules that policies and acceptances name.</param>
    public BasketValidator(RuleSet rules)
    {
        RuleFor(b => b).Custom(static (basket, context) => SharedRelations.SuppliesAreUnique(basket.Supplies, Into(context)));
        RuleFor(b => b).Custom((basket, context) => SharedRelations.PolicyIsAllowed(rules, basket.Policy, Into(context)));
        RuleFor(b => b).Custom((basket, context) => SharedRelations.AcceptancesAreAllowed(rules, basket.Acceptances, basket.AsOf, Into(context)));
        RuleFor(b => b).Custom((basket, context) => SharedRelations.SignOffsAreAllowed(rules, basket.SignOffs, Into(context)));
    }

    private static AddFault Into(ValidationContext<BasketRequest> context) =>
        (pointer, code, detail) => context.AddFailure(new ValidationFailure(pointer, detail) { ErrorCode = code });
}
