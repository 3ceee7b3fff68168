using FluentValidation;
using FluentValidation.Results;
using RackCheck.Model;
using static System.FormattableString;

namespace RackCheck.Api.Reading;

/// <summary>Relations between members of a request for a drawing of several racks. Each rack is checked as that of a check.</summary>
public sealed class ElevationValidator : AbstractValidator<ElevationRequest>
{
    /// <summary>Sets the relations up.</summary>
    /// <param name="descriptions">Checks descriptions.</param>
    public ElevationValidator(IValidator<RackDescription> descriptions) => RuleFor(e => e).Custom((request, context) =>
    {
        if (request.Racks is not null ? request.Before is not null || request.After is not null : request.Before is null || request.After is null)
        {
            context.AddFailure(new ValidationFailure("", "Give racks, or before and after.") { ErrorCode = FaultCodes.Inconsistent });
        }

        for (var i = 0; i < request.Racks?.Count; i++)
        {
            Check(Invariant($"/racks/{i}"), request.Racks[i]);
        }

        Check("/before", request.Before);
        Check("/after", request.After);

        void Check(string pointer, RackDescription? rack)
        {
            foreach (var failure in rack is null ? [] : descriptions.Validate(rack).Errors)
            {
                context.AddFailure(new ValidationFailure(pointer + failure.PropertyName, failure.ErrorMessage) { ErrorCode = failure.ErrorCode });
            }
        }
    });
}
