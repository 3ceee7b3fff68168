using RackCheck.Model;

namespace RackCheck.Planning.Baskets;

/// <summary>Why a line of a basket is in excess.</summary>
internal static class ExcessWordings
{
    /// <summary>The equipment does not need it.</summary>
    public static readonly WordedText CabinetSpare = new("excess.cabinet", "The equipment does not need it.");

    /// <summary>No further item needs these rails and suits their load rating and length in this cabinet.</summary>
    public static readonly WordedText Rails = new(
        "excess.rails", "No further item needs these rails and suits their load rating and length in this cabinet.");

    /// <summary>No open front U positions are left to close.</summary>
    public static readonly WordedText Panels = new("excess.panels", "No open front U positions are left to close.");

    /// <summary>Equipment is fed from appliance outlets of PDUs; the plug of this cord fits another type of outlet.</summary>
    public static readonly WordedText OutletCords = new(
        "excess.outlet-cord", "Equipment is fed from appliance outlets of PDUs; the plug of this cord fits another type of outlet.");

    /// <summary>No further item has an inlet that this cord fits and an outlet within its length.</summary>
    public static readonly WordedText Cords = new(
        "excess.cord", "No further item has an inlet that this cord fits and an outlet within its length.");

    /// <summary>No further item with an earth stud suits its length and cross-sectional area.</summary>
    public static readonly WordedText EarthLeads = new("excess.earth-lead", "No further item with an earth stud suits its length and cross-sectional area.");

    /// <summary>The cabinet has an earth bar with enough terminals.</summary>
    public static readonly WordedText EarthBars = new("excess.earth-bar", "The cabinet has an earth bar with enough terminals.");

    /// <summary>A bar with more terminals takes its place.</summary>
    public static readonly WordedText SmallEarthBar = new(
        "excess.small-earth-bar", "It has too few terminals for this rack; a bar with more takes its place.");

    /// <summary>The rack already has an air conditioner.</summary>
    public static readonly WordedText AirConditioners = new("excess.air-conditioner", "The rack already has an air conditioner.");

    /// <summary>One with more capacity takes its place.</summary>
    public static readonly WordedText SmallAirConditioner = new(
        "excess.small-air-conditioner", "Its capacity is too low for this rack; an air conditioner with more takes its place.");

    /// <summary>The air through the cabinet removes the heat.</summary>
    public static readonly WordedText NoCoolerNeeded = new(
        "excess.no-cooling", "The air through the cabinet removes the heat; an air conditioner needs a closed cabinet.");

    /// <summary>The roof already has the maximum number of fans.</summary>
    public static readonly WordedText RoofFans = new("excess.roof-fans", "The roof already has the maximum number of fans.");

    /// <summary>No further item is pulled out in use.</summary>
    public static readonly WordedText CableArms = new("excess.cable-arm", "No further item is pulled out in use.");

    /// <summary>No further host has a KVM port within the length of this lead.</summary>
    public static readonly WordedText KvmLeads = new("excess.kvm-lead", "No further host has a KVM port within the length of this lead.");

    /// <summary>The air intake already has a filter mat.</summary>
    public static readonly WordedText Filters = new("excess.filter", "The air intake already has a filter mat.");

    /// <summary>The rack does not need it.</summary>
    public static readonly WordedText NotNeeded = new("excess.not-needed", "The rack does not need it.");

    /// <summary>The rack already has the maximum number of PDUs.</summary>
    public static readonly WordedText TooManyPdus = new("excess.pdu-limit", "The rack already has the maximum number of PDUs.");

    /// <summary>No U position is free for it.</summary>
    public static readonly WordedText NoPduPlace = new("excess.pdu-room", "No U position is free for it, neither at the rear nor at the front of the cabinet.");

    /// <summary>Its plug fits none of the specified supplies.</summary>
    public static readonly WordedText PlugFitsNoSupply = new("excess.pdu-plug", "Its plug fits none of the specified supplies.");

    /// <summary>Its plug is not used in the region of the site.</summary>
    public static readonly WordedText PlugOfOtherRegion = new("excess.pdu-region", "Its plug is not used in the region of the site.");

    /// <summary>It is fed from a UPS, and the order has none.</summary>
    public static readonly WordedText NoUpsOrdered = new("excess.no-ups", "It is fed from a UPS, and the order has none.");

    /// <summary>It needs a UPS, but none is free, and its plug fits none of the specified supplies.</summary>
    public static readonly WordedText NoUpsNorSupply = new(
        "excess.ups-pdu-plug", "It needs a UPS, but none is free, and its plug fits none of the specified supplies.");

    /// <summary>It needs a UPS, but none is free.</summary>
    public static readonly WordedText NoUps = new("excess.ups-pdu", "It needs a UPS, but none is free.");

    /// <summary>Nothing in the rack is left to fasten.</summary>
    public static readonly WordedText NothingToFasten = new("excess.no-fixings", "Nothing in the rack is left to fasten.");

    /// <summary>The other fixings in the basket are enough.</summary>
    public static readonly WordedText EnoughFixings = new("excess.fixings", "The other fixings in the basket are enough.");

    /// <summary>The equipment on the uprights uses another type of fixing.</summary>
    public static readonly WordedText OtherFixings = new("excess.other-fixings", "The equipment on the uprights uses another type of fixing.");

    /// <summary>A door of another size.</summary>
    public static readonly MessageWording Door = new("excess.door", "The door is not of the size of {cabinet}.");

    /// <summary>A second door on one side.</summary>
    public static readonly MessageWording SecondDoor = new("excess.second-door", "{cabinet} gets another door of this order on that side.");

    /// <summary>A door that the rack is not sound with.</summary>
    public static readonly MessageWording UnsoundDoor = new("excess.unsound-door", "{cabinet} is sound for this order without this door, not with it.");
}
