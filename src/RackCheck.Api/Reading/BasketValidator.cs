using System.Globalization;
using FluentValidation;
using FluentValidation.Results;
using RackCheck.Model;
using RackCheck.Rules;
using static System.FormattableString;

namespace RackCheck.Api.Reading;

/// <summary>
/// Checks the relations between members of a basket. The property name of a failure is a JSON pointer (RFC 6901); its error code is one of <see
/// cref="FaultCodes"/>.
/// </summary>
public sealed class BasketValidator : AbstractValidator<BasketRequest>
{
    /// <summary>Creates the validator.</summary>
    /// <param name="rules">The rules that policies and acceptances name.</param>
    /// <param name="descriptions">Checks own equipment and an existing cabinet as parts of a rack description.</param>
    public BasketValidator(RuleSet rules, IValidator<RackDescription> descriptions)
    {
        RuleFor(b => b).Custom(LinesNameOnePart);
        RuleFor(b => b).Custom((basket, context) => OwnEquipmentIsWhole(descriptions, basket, context));
        RuleFor(b => b).Custom((basket, context) => ExistingCabinetIsWhole(descriptions, basket, context));
        RuleFor(b => b).Custom(static (basket, context) => SharedRelations.SuppliesAreUnique(basket.Supplies, Into(context)));
        RuleFor(b => b).Custom(
            static (basket, context) => SharedRelations.VoltagesAreOfOutlets(basket.Supplies, null, basket.Site?.Region, Into(context)));
        RuleFor(b => b).Custom((basket, context) => SharedRelations.PolicyIsAllowed(rules, basket.Policy, Into(context)));
        RuleFor(b => b).Custom((basket, context) => SharedRelations.AcceptancesAreAllowed(rules, basket.Acceptances, basket.AsOf, Into(context)));
        RuleFor(b => b).Custom((basket, context) => SharedRelations.SignOffsAreAllowed(rules, basket.SignOffs, Into(context)));
    }

    private static void LinesNameOnePart(BasketRequest basket, ValidationContext<BasketRequest> context)
    {
        var fail = Into(context);
        for (var i = 0; i < basket.Lines?.Count; i++)
        {
            var line = basket.Lines[i];
            if (line is { PartNumber: null, Item: null })
            {
                fail(Invariant($"/lines/{i}/partNumber"), FaultCodes.MissingMember, "A line needs a part number, or an item with the data of own equipment.");
            }
            else if (line is { PartNumber: not null, Item: not null })
            {
                fail(
                    Invariant($"/lines/{i}/item"),
                    FaultCodes.Inconsistent,
                    "A line has a part number or an item, not both. An item can have a part number itself.");
            }
        }
    }

    // Own equipment as the items of a rack, without the places that the basket gives them.
    private static void OwnEquipmentIsWhole(
        IValidator<RackDescription> descriptions, BasketRequest basket, ValidationContext<BasketRequest> context)
    {
        (int Line, Item Item)[] own = [.. (basket.Lines ?? []).Index().Where(l => l.Item?.Item is not null).Select(l => (l.Index, l.Item.Item!))];
        var rack = new RackDescription
        {
            Cabinet = new Cabinet { HeightU = 60, WidthMm = 600, DepthMm = 1000 },
            Items = [.. own.Select(o => o.Item with { Position = null, OnShelf = null })],
        };
        foreach (var failure in own.Length == 0 ? [] : descriptions.Validate(rack).Errors)
        {
            var steps = failure.PropertyName.Split('/', 4);
            if (steps is [_, "items", var index, ..] && int.TryParse(index, NumberStyles.None, CultureInfo.InvariantCulture, out var at) && at < own.Length)
            {
                var pointer = Invariant($"/lines/{own[at].Line}/item") + (steps.Length > 3 ? "/" + steps[3] : "");
                context.AddFailure(new ValidationFailure(pointer, failure.ErrorMessage) { ErrorCode = failure.ErrorCode });
            }
        }
    }

    private static void ExistingCabinetIsWhole(
        IValidator<RackDescription> descriptions, BasketRequest basket, ValidationContext<BasketRequest> context)
    {
        if (basket.Options?.Cabinet?.Existing is not { } cabinet)
        {
            return;
        }

        foreach (var failure in descriptions.Validate(new RackDescription { Cabinet = cabinet, Items = [] }).Errors)
        {
            var pointer = "/options/cabinet/existing" + failure.PropertyName["/cabinet".Length..];
            context.AddFailure(new ValidationFailure(pointer, failure.ErrorMessage) { ErrorCode = failure.ErrorCode });
        }
    }

    private static AddFault Into(ValidationContext<BasketRequest> context) =>
        (pointer, code, detail) => context.AddFailure(new ValidationFailure(pointer, detail) { ErrorCode = code });
}
