using FluentValidation;
using FluentValidation.Results;
using RackCheck.Model;
using RackCheck.Rules;
using static System.FormattableString;

namespace RackCheck.Api.Reading;

/// <summary>
/// Checks the relations between members of a description: unique ids, references to existing ids, required sizes, minimum and maximum in order,
/// and policies and acceptances that the rules allow. Ranges of single members are attributes of the records.
/// </summary>
/// <remarks>
/// One rule per relation, each over the whole description, since a separate validator per item takes longer than the check of the rack.
/// Required members can be null, because the readable part of a faulty document is validated too.
/// The property name of a failure is a JSON pointer (RFC 6901); its error code is one of <see cref="FaultCodes"/>.
/// </remarks>
public sealed class DescriptionValidator : AbstractValidator<RackDescription>
{
    /// <summary>Creates the validator.</summary>
    /// <param name="rules">The rules that policies and acceptances name.</param>
    public DescriptionValidator(RuleSet rules)
    {
        RuleFor(d => d).Custom(CabinetIsThere);
        RuleFor(d => d).Custom(ItemsAreWhole);
        RuleFor(d => d).Custom(SuppliesAreThere);
        RuleFor(d => d).Custom(CoolingIsFed);
        RuleFor(d => d).Custom(ConnectionsPointSomewhere);
        RuleFor(d => d).Custom(PowerRelations.LinesAreThere);
        RuleFor(d => d).Custom(PowerRelations.FeedsAreATree);
        RuleFor(d => d).Custom((d, context) => SharedRelations.PolicyIsAllowed(rules, d.Policy, Into(context)));
        RuleFor(d => d).Custom((d, context) => SharedRelations.AcceptancesAreAllowed(rules, d.Acceptances, d.AsOf, Into(context)));
        RuleFor(d => d).Custom((d, context) => SharedRelations.SignOffsAreAllowed(rules, d.SignOffs, Into(context)));
    }

    private static void CabinetIsThere(RackDescription description, ValidationContext<RackDescription> context)
    {
        if (description.Cabinet is not { } cabinet)
        {
            Fail(context, "/cabinet", FaultCodes.MissingMember, "A check requires a cabinet.");
            return;
        }

        Need(context, cabinet.HeightU is null && cabinet.PartNumber is null, "/cabinet/heightU");
        Need(context, cabinet.WidthMm is null && cabinet.PartNumber is null, "/cabinet/widthMm");
        Need(context, cabinet.DepthMm is null && cabinet.PartNumber is null, "/cabinet/depthMm");
        Need(context, HasNoStyle(cabinet, cabinet.FrontDoor), "/cabinet/frontDoor/style");
        Need(context, HasNoStyle(cabinet, cabinet.RearDoor), "/cabinet/rearDoor/style");
        var doors = DoorDepth(cabinet.FrontDoor) + DoorDepth(cabinet.RearDoor);
        if (doors >= cabinet.DepthMm)
        {
            Fail(context, "/cabinet/depthMm", FaultCodes.Inconsistent, Invariant($"The doors take {doors} mm of {cabinet.DepthMm} mm; no depth is left."));
        }
    }

    private static bool HasNoStyle(Cabinet cabinet, Door? door) => door is { Style: null, PartNumber: null } && cabinet.PartNumber is null;

    private static double DoorDepth(Door? door) => door?.Style == DoorStyle.None ? 0 : door?.DepthMm ?? 0;

    private static void Need(ValidationContext<RackDescription> context, bool absent, string pointer)
    {
        if (absent)
        {
            Fail(context, pointer, FaultCodes.MissingMember, "It is required but missing.");
        }
    }

    private static void ItemsAreWhole(RackDescription description, ValidationContext<RackDescription> context)
    {
        var items = description.Items;
        for (var i = 0; i < items?.Count; i++)
        {
            if (items[i] is not { } item)
            {
                continue;
            }

            if (SharedRelations.FirstIndex(items, item.Id, static x => x?.Id) < i)
            {
                Fail(context, Invariant($"/items/{i}/id"), FaultCodes.DuplicateId, $"Another item has the id {item.Id}.");
            }

            if (item.HeightU is null && item.PartNumber is null)
            {
                Fail(context, Invariant($"/items/{i}/heightU"), FaultCodes.MissingMember, "It is required but missing.");
            }

            if (item.OnShelf is { } shelf && SharedRelations.FirstIndex(items, shelf, static x => x?.Id) == items.Count)
            {
                Fail(context, Invariant($"/items/{i}/onShelf"), FaultCodes.UnknownId, $"No item has the id {shelf}.");
            }

            if (item.Quantity > 1)
            {
                Fail(context, Invariant($"/items/{i}/quantity"), FaultCodes.NotHere, "Quantities are for baskets only; a rack has one entry for each item.");
            }

            if (item.Support is { MinSpacingMm: { } least, MaxSpacingMm: { } greatest } && least > greatest)
            {
                Fail(
                    context,
                    Invariant($"/items/{i}/support/minSpacingMm"),
                    FaultCodes.Inconsistent,
                    Invariant($"{least} is greater than maxSpacingMm, {greatest}."));
            }

            FeedsPointSomewhere(description, context, i, item.Ups?.Feeds);
        }
    }

    private static void FeedsPointSomewhere(RackDescription description, ValidationContext<RackDescription> context, int item, IReadOnlyList<string>? feeds)
    {
        for (var i = 0; i < feeds?.Count; i++)
        {
            if (Find(description.Pdus, feeds[i], static x => x?.Id) is null)
            {
                Fail(context, Invariant($"/items/{item}/ups/feeds/{i}"), FaultCodes.UnknownId, $"No PDU has the id {feeds[i]}.");
            }
        }
    }

    private static string PlugsOf(string item, int plugs) => plugs switch
    {
        0 => $"{item} has no plug.",
        1 => $"{item} has one plug, number 0.",
        _ => Invariant($"{item} has {plugs} plugs, numbered from 0 to {plugs - 1}."),
    };

    private static void SuppliesAreThere(RackDescription description, ValidationContext<RackDescription> context)
    {
        var supplies = description.Supplies;
        SharedRelations.SuppliesAreUnique(supplies, Into(context));
        SharedRelations.VoltagesAreOfOutlets(supplies, description.Pdus, description.Site?.Region, Into(context));
        var units = description.Pdus;
        for (var i = 0; i < units?.Count; i++)
        {
            if (units[i] is not { } unit)
            {
                continue;
            }

            if (SharedRelations.FirstIndex(units, unit.Id, static x => x?.Id) < i)
            {
                Fail(context, Invariant($"/pdus/{i}/id"), FaultCodes.DuplicateId, $"Another PDU has the id {unit.Id}.");
            }

            if (unit.Supply is { } supply && Find(supplies, supply, static x => x?.Id) is null)
            {
                Fail(context, Invariant($"/pdus/{i}/supply"), FaultCodes.UnknownId, $"No supply has the id {supply}.");
            }

            Need(context, unit.RatedA is null && unit.PartNumber is null, Invariant($"/pdus/{i}/ratedA"));
            Need(context, unit.Groups is null && unit.PartNumber is null, Invariant($"/pdus/{i}/groups"));
            for (var g = 0; g < unit.Groups?.Count; g++)
            {
                if (unit.Groups[g] is { } group && SharedRelations.FirstIndex(unit.Groups, group.Id, static x => x?.Id) < g)
                {
                    Fail(context, Invariant($"/pdus/{i}/groups/{g}/id"), FaultCodes.DuplicateId, $"Another group of this PDU has the id {group.Id}.");
                }
            }
        }
    }

    private static void CoolingIsFed(RackDescription description, ValidationContext<RackDescription> context)
    {
        Check(description.Cooling?.AirConditioner?.Supply, "/cooling/airConditioner/supply");
        CheckFans(description.Cooling?.RoofFans, "/cooling/roofFans");
        CheckFans(description.Cooling?.FanTrays, "/cooling/fanTrays");

        void CheckFans(IReadOnlyList<FanSet>? fans, string pointer)
        {
            for (var i = 0; i < fans?.Count; i++)
            {
                Check(fans[i]?.Supply, Invariant($"{pointer}/{i}/supply"));
            }
        }

        void Check(string? supply, string pointer)
        {
            if (supply is not null && Find(description.Supplies, supply, static x => x?.Id) is null)
            {
                Fail(context, pointer, FaultCodes.UnknownId, $"No supply has the id {supply}.");
            }
        }
    }

    private static void ConnectionsPointSomewhere(RackDescription description, ValidationContext<RackDescription> context)
    {
        for (var i = 0; i < description.Connections?.Count; i++)
        {
            if (description.Connections[i] is not { } connection)
            {
                continue;
            }

            if (connection.Item is { } itemId)
            {
                var item = Find(description.Items, itemId, static x => x?.Id);
                var plugs = item?.Power?.Plugs?.Count ?? 0;
                if (item is null)
                {
                    Fail(context, Invariant($"/connections/{i}/item"), FaultCodes.UnknownId, $"No item has the id {itemId}.");
                }
                else if ((connection.Plug ?? 0) >= plugs && !(item.PartNumber is not null && item.Power?.Plugs is null))
                {
                    Fail(context, Invariant($"/connections/{i}/plug"), FaultCodes.UnknownId, PlugsOf(itemId, plugs));
                }
            }

            if (connection.Pdu is { } unitId)
            {
                var unit = Find(description.Pdus, unitId, static x => x?.Id);
                if (unit is null)
                {
                    Fail(context, Invariant($"/connections/{i}/pdu"), FaultCodes.UnknownId, $"No PDU has the id {unitId}.");
                }
                else if (connection.Group is { } group
                    && !(unit.PartNumber is not null && unit.Groups is null)
                    && Find(unit.Groups, group, static x => x?.Id) is null)
                {
                    Fail(context, Invariant($"/connections/{i}/group"), FaultCodes.UnknownId, $"{unitId} has no group with the id {group}.");
                }
            }
        }
    }

    private static TElement? Find<TElement>(IReadOnlyList<TElement>? list, string id, Func<TElement, string?> idOf)
        where TElement : class
    {
        var index = list is null ? 0 : SharedRelations.FirstIndex(list, id, idOf);
        return index < (list?.Count ?? 0) ? list![index] : null;
    }

    private static AddFault Into(ValidationContext<RackDescription> context) => (pointer, code, detail) => Fail(context, pointer, code, detail);

    /// <summary>Adds a failure.</summary>
    internal static void Fail(ValidationContext<RackDescription> context, string pointer, string code, string detail) =>
        context.AddFailure(new ValidationFailure(pointer, detail) { ErrorCode = code });
}
