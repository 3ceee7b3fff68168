using RackCheck.Model;

namespace RackCheck.Planning.Building;

/// <summary>What assumed values of a rack made from an order are based on.</summary>
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
}
