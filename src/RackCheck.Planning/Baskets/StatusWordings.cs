using RackCheck.Model;
using RackCheck.Planning.Building;

namespace RackCheck.Planning.Baskets;

/// <summary>What a shop shows beside a line.</summary>
internal static class StatusWordings
{
    /// <summary>Caution of a basket whose search ended at the limit of work.</summary>
    public static readonly WordedText CutShort = new(
        "caution.basket-cut-short",
        "The search ended at the limit of work for one basket: posted again, the completed basket may lack something or have something in excess.");

    /// <summary>Caution of an order of more cabinets without equipment than one answer has racks.</summary>
    public static readonly MessageWording FurtherCabinets = new(
        "caution.basket-further-cabinets",
        "{racks} of the {cabinets} cabinets were checked, each with its share of the parts. What the others lack is not among the missing lines.");

    /// <summary>Caution of a basket with a UPS that does not feed all servers, computers and network equipment.</summary>
    public static readonly WordingChoice NotOnUps = new("caution.basket-not-on-ups", LineWordings.NotOnUps);

    /// <summary>Caution of hosts that stand in another cabinet than the console.</summary>
    public static readonly WordingChoice NoConsole = new(
        "caution.basket-no-console",
        "{items} [one:stands in a cabinet without a console: it is|stand in a cabinet without a console: they are] operated over the network or at a "
        + "keyboard and display of [one:its|their] own.");

    /// <summary>Begins the status of a line to exchange.</summary>
    public static readonly MessageWording Instead = new("status.replace", "Order {name} instead.");

    /// <summary>Begins the status of a line that is not needed at all.</summary>
    public static readonly WordedText NotNeeded = new("status.excess", "It is not needed.");

    /// <summary>Begins the status of a line of which some are needed.</summary>
    public static readonly MessageWording PartlyNeeded = new("status.excess.some", "{spare} of {ordered} are not needed.");

    /// <summary>A line in order with parts that nothing in the order needs.</summary>
    public static readonly WordingChoice Spare = new(
        "status.spare",
        "[shelf:Nothing in this order stands on|pdu:No cord in this order needs|The cooling of this order does not need] "
        + "[it:it|all:any of them|{spare} of the {ordered}].");

    /// <summary>An order without a rack.</summary>
    public static readonly WordedText NoRack = new("status.no-rack", "The order makes no rack, so that the fit of this part was not checked.");

    /// <summary>A part whose data are not valid.</summary>
    public static readonly MessageWording Faulty = new("status.faulty", "The data of {partNumber} in the catalogue cannot be used: {member}: {fault:words}.");

    /// <summary>Equipment of the caller's own without a height.</summary>
    public static readonly WordingChoice NoHeight = new(
        "status.no-height", "The catalogue has no height of {partNumber}.[like: Did you mean {like}, {name}? Else state| State] heightU of {item}.");

    /// <summary>An unknown part.</summary>
    public static readonly WordingChoice Unknown = new("status.unknown", "The catalogue has no part {partNumber}.[like: Did you mean {like}, {name}?]");
}
