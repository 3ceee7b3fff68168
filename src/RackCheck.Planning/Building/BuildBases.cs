using RackCheck.Model;
using RackCheck.Model.Converters;

namespace RackCheck.Planning.Building;

/// <summary>Assumed values of a rack made from an order that are texts, and what assumed values are based on.</summary>
internal static class BuildBases
{
    /// <summary>An order without a console.</summary>
    public static readonly WordedText NoConsole = new(
        "assumption.no-console",
        "the basket has no console and no KVM switch: hosts are operated over the network or at their own keyboard and display");

    /// <summary>An order without supplies.</summary>
    public static readonly WordedText SupplyPerPdu = new(
        "assumption.supply-per-pdu", "no supplies specified: one assumed per PDU, to suit its plug and the region");

    /// <summary>A cabinet of the catalogue.</summary>
    public static readonly WordedText FactoryBonds = new(
        "assumption.factory-bonds", "the cabinet is a product of the catalogue: its parts are bonded as it leaves the factory");

    /// <summary>Front uprights of the customer's cabinet, at another place than they have now.</summary>
    public static readonly MessageWording MovedUprights = new(
        "assumption.moved-uprights", "the front uprights of the cabinet that is there are {setbackMm} mm behind its front now: move them before mounting");

    private static readonly WordingChoice Rating = new(
        "assumed-value.supply", "{voltageV:exact} V, {ratedA:exact} A, {phases:exact} [one:phase|phases]");

    private static readonly MessageWording Parts = new("assumed-value.bonded-parts", "{parts:all}");

    /// <summary>An assumed supply.</summary>
    public static WordedText RatingOf(Supply supply) => new(
        Rating.With(supply.Phases == 1 ? "one" : null), ("voltageV", supply.VoltageV), ("ratedA", supply.RatedA), ("phases", supply.Phases ?? 1));

    /// <summary>Parts of the cabinet that are assumed bonded.</summary>
    public static WordedText PartsOf(IReadOnlyList<BondedPart> parts) =>
        new(Parts, ("parts", Scalar.Ids(parts.Select(NamedEnumConverter<BondedPart>.Name))));
}
