using RackCheck.Model;

namespace RackCheck.Planning.Building;

/// <summary>What is said of the lines of a basket: why a part is missing, is not needed, is exchanged, or stays missing.</summary>
internal static class LineWordings
{
    /// <summary>A missing shelf.</summary>
    public static WordingChoice Shelf { get; } =
        new("line.shelf", "{items} [one:is|are] not rack-mountable and [one:needs|need] a shelf.");

    /// <summary>Missing slides or runners.</summary>
    public static WordingChoice Rails { get; } = new(
        "line.rails", "{items} [one:is|are] too heavy, high or deep for front-panel mounting alone and [one:needs|need] {style}.");

    /// <summary>A missing KVM switch.</summary>
    public static WordingChoice Kvm { get; } = new("line.kvm-switch", "{missing} of {hosts} hosts [one:has|have] no KVM port.");

    /// <summary>Missing roof fans.</summary>
    public static MessageWording RoofFans { get; } = new(
        "line.roof-fans", "The heat load needs {neededM3h} m3/h of air; the airflow is {airflowM3h} m3/h. These roof fans supply enough.");

    /// <summary>Missing outlets.</summary>
    public static WordingChoice Outlets { get; } = new("line.outlets", "{items} [one:has|have] no outlet for {plugs} plugs.");

    /// <summary>Outlets on a second supply.</summary>
    public static WordingChoice SecondSupply { get; } = new(
        "line.second-supply", "{items} [one:has|have] outlets for {plugs} plugs on one supply only and [one:needs|need] a second supply.");

    /// <summary>A PDU behind a UPS.</summary>
    public static MessageWording UpsUnit { get; } = new("line.ups-pdu", "The UPS feeds equipment through it.");

    /// <summary>A PDU that shares the load.</summary>
    public static MessageWording SharedLoad { get; } = new(
        "line.shared-load", "The cords of the equipment need its outlets, and the load is divided over several PDUs.");

    /// <summary>A cooling part.</summary>
    public static MessageWording Cooling { get; } = new("line.cooling", "It removes heat that the cabinet cannot give off.");

    /// <summary>A missing earth bar.</summary>
    public static WordingChoice EarthBar { get; } = new(
        "line.earth-bar",
        "{needed} terminals are needed for [one-lead:{leads} earth lead|leads:{leads} earth leads][comma:, ][one-part:{parts} part of the cabinet|"
        + "parts:{parts} parts of the cabinet][and: and ]the main protective conductor; the [none:cabinet has no earth bar|earth bar has {terminals}].");

    /// <summary>Missing earth leads.</summary>
    public static WordingChoice EarthLeads { get; } = new(
        "line.earth-leads",
        "{items} [one:has an earth stud|have earth studs]; the route to the earth bar takes up to {lengthM} m including slack.");

    /// <summary>Missing mains cords.</summary>
    public static WordingChoice Cords { get; } = new(
        "line.cords", "{items} [one:needs|need] a cord from outlet to inlet[route:, up to {lengthM} m long].");

    /// <summary>Missing blanking panels.</summary>
    public static MessageWording Panels { get; } = new(
        "line.panels", "Open U positions beside equipment with airflow front to rear cause hot-air recirculation; blanking panels close them.");

    /// <summary>Missing fixings.</summary>
    public static WordingChoice Fixings { get; } = new(
        "line.fixings",
        "{needed} [cage:cage nuts with screws|clip:clip nuts with screws|screws] are needed on the uprights, four per front panel and four per pair of rails; "
        + "{missing} of them [one:is|are] missing.");

    /// <summary>Missing cable arms.</summary>
    public static WordingChoice CableArms { get; } = new(
        "line.cable-arms", "{items} [one:is|are] pulled out in use and [one:needs|need] a cable-management arm.");

    /// <summary>Missing KVM leads.</summary>
    public static WordingChoice KvmLeads { get; } = new(
        "line.kvm-leads", "{items} [one:needs|need] a lead to the KVM switch, {lengthM} m or longer.");

    /// <summary>A missing cabinet.</summary>
    public static WordingChoice Cabinet { get; } = new(
        "line.cabinet",
        "[several:The equipment does not go into one cabinet; these are the fewest that take everything|closest:The basket has no cabinet; none on offer takes "
        + "everything, and this one comes closest|The basket has no cabinet; this is the smallest on offer that takes everything].");
}
