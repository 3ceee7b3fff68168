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
    public static WordingChoice Outlets { get; } = new("line.outlets", "{items} [one:needs|need] PDU outlets for {plugs} plugs; none is free.");

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

    /// <summary>A perforated door.</summary>
    public static MessageWording OpenDoor { get; } = new("line.perforated-door", "It lets cooling air through.");

    /// <summary>A missing earth bar.</summary>
    public static WordingChoice EarthBar { get; } = new(
        "line.earth-bar",
        "{needed} terminals are needed for [lead:{leads} earth lead and |leads:{leads} earth leads and |part:{parts} part of the cabinet and |"
        + "parts:{parts} parts of the cabinet and |lead-part:{leads} earth lead, {parts} part of the cabinet and |"
        + "lead-parts:{leads} earth lead, {parts} parts of the cabinet and |leads-part:{leads} earth leads, {parts} part of the cabinet and |"
        + "leads-parts:{leads} earth leads, {parts} parts of the cabinet and ]the main protective conductor; "
        + "the [none:cabinet has no earth bar|earth bar has {terminals}].");

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

    /// <summary>A cabinet to exchange, with what is wrong in it.</summary>
    public static MessageWording CannotTake { get; } = new("replace.cabinet", "{cabinet} does not suit this order: {message}");

    /// <summary>A cabinet to exchange that is too small.</summary>
    public static MessageWording NoPosition { get; } = new(
        "replace.no-position", "{cabinet} does not take the equipment: there is no position for all of it.");

    /// <summary>Says what no UPS feeds, in a proposal and of a basket.</summary>
    public const string NotOnUps = "No UPS of the rack feeds {items}[time:: with a run time of {minutes:exact} minutes it carries no more].";

    /// <summary>A UPS to exchange that has too little power.</summary>
    public static MessageWording SmallUps { get; } = new(
        "replace.ups", "It supplies {ratedW:exact} W; everything that is to be on it takes {neededW:exact} W.");

    /// <summary>A UPS to exchange that has too little apparent power.</summary>
    public static MessageWording SmallUpsVa { get; } = new(
        "replace.ups-va", "It supplies {ratedVa:exact} VA; everything that is to be on it takes {neededVa:exact} VA.");

    /// <summary>A UPS to exchange whose battery does not last.</summary>
    public static MessageWording ShortUps { get; } = new(
        "replace.ups-time", "With everything that is to be on it, it does not last {minutes:exact} minutes.");

    /// <summary>A missing shelf that is not on offer.</summary>
    public static MessageWording ShelfNeed { get; } = new("need.shelf", "A shelf for {item}");

    /// <summary>Why no shelf on offer serves.</summary>
    public static WordingChoice NoShelf { get; } = new(
        "unmet.shelf",
        "It is not rack-mountable and needs a shelf; no shelf on offer for this cabinet takes [size:{widthMm:exact} x {depthMm:exact} mm|its size]"
        + "[mass: and {massKg:exact} kg].");

    /// <summary>A missing earth bar that is not on offer.</summary>
    public static MessageWording EarthBarNeed { get; } = new("need.earth-bar", "An earth bar with {terminals} terminals");

    /// <summary>Why no earth bar on offer serves.</summary>
    public static WordedText NoEarthBar { get; } = new(
        "unmet.earth-bar", "Earth leads and bonded cabinet parts terminate on it; no earth bar on offer has enough terminals.");

    /// <summary>A missing earth lead that is not on offer.</summary>
    public static MessageWording EarthLeadNeed { get; } = new("need.earth-lead", "An earth lead for {item}");

    /// <summary>Why no earth lead on offer serves.</summary>
    public static MessageWording NoEarthLead { get; } = new(
        "unmet.earth-lead", "The route to the earth bar needs a lead of {lengthM:exact} m and {sectionMm2:exact} mm2; no earth lead on offer suits.");

    /// <summary>Missing rails that are not on offer.</summary>
    public static WordingChoice RailsNeed { get; } = new("need.rails", "[slides:Slides|runners:Runners|Slides or runners] for {item}");

    /// <summary>Why no rails on offer serve.</summary>
    public static WordingChoice NoRails { get; } = new(
        "unmet.rails",
        "[extended:It is pulled out in use|The front panel cannot carry it]; no [extended:slides|rails] on offer suit "
        + "[both:its width, its mass of {massKg:exact} kg and the upright spacing of {spacingMm:exact} mm"
        + "|mass:its width and its mass of {massKg:exact} kg|spacing:its width and the upright spacing of {spacingMm:exact} mm|its width].");

    /// <summary>A missing cord that is not on offer.</summary>
    public static MessageWording CordNeed { get; } = new("need.cord", "A mains cord {plug} to {socket} for {item}");

    /// <summary>Why no cord on offer serves.</summary>
    public static MessageWording NoCord { get; } = new(
        "unmet.cord", "The route from its outlet takes {lengthM:exact} m; no cord on offer fits both ends at that length.");

    /// <summary>Missing fixings that are not on offer.</summary>
    public static WordingChoice FixingsNeed { get; } = new("need.fixings", "{missing} [cage:cage nuts|clip:clip nuts|screws]");

    /// <summary>Why fixings stay missing.</summary>
    public static WordedText NoFixings { get; } = new("unmet.fixings", "They fasten the equipment to the uprights; no pack is on offer.");

    /// <summary>Items without a position.</summary>
    public static MessageWording RoomNeed { get; } = new("need.room", "Room for {items}");

    /// <summary>Why items have no position.</summary>
    public static MessageWording NoRoom { get; } = new(
        "unmet.room",
        "The cabinet has {heightU} U; the equipment takes {takenU} U including items on shelves, plus free U positions between runners. Choose a higher "
        + "cabinet or use a second basket.");

    /// <summary>Why an item has no position in any cabinet.</summary>
    public static WordingChoice TooHigh { get; } = new(
        "unmet.too-high", "It takes {heightU} U; [own:the cabinet|the highest cabinet on offer] has {highestU} U.");

    /// <summary>PDUs without a position.</summary>
    public static MessageWording PduPlaceNeed { get; } = new("need.pdu-room", "A U position for {pdus:all}");

    /// <summary>Why PDUs have no position.</summary>
    public static WordingChoice NoPduPlace { get; } = new(
        "unmet.pdu-room",
        "No U position is free for [one:it|them], neither at the rear nor at the front of the cabinet.");

    /// <summary>Missing panels that are not on offer.</summary>
    public static MessageWording PanelNeed { get; } = new("need.panels", "Blanking panels for {openU} U");

    /// <summary>Why U positions stay open.</summary>
    public static WordedText NoPanel { get; } = new(
        "unmet.panels",
        "Equipment beside these U positions has airflow front to rear; no panel on offer is low enough, or the rack has the maximum number of items.");

    /// <summary>Missing outlets that are not on offer.</summary>
    public static MessageWording OutletNeed { get; } = new("need.outlets", "Outlets for {plugs} plugs");

    /// <summary>Why outlets stay missing.</summary>
    public static WordingChoice NoOutlets { get; } = new(
        "unmet.outlets",
        "{items} [one:needs|need] PDU outlets for {plugs} plugs; none is free, and no PDU on offer suits plug, voltage and "
        + "[given:the specified supplies|region].");

    /// <summary>A missing second supply that is not on offer.</summary>
    public static WordedText SecondSupplyPdu { get; } = new("need.second-supply", "A PDU on a second supply");

    /// <summary>Why a second supply stays missing.</summary>
    public static WordingChoice NoSecondSupply { get; } = new(
        "unmet.second-supply",
        "{items} [one:has|have] outlets for {plugs} plugs on one supply only and [one:needs|need] a second supply; no PDU on offer suits plug, voltage and "
        + "[given:the specified supplies|region].");

    /// <summary>Equipment that is to be fed from a UPS.</summary>
    public static MessageWording UpsNeed { get; } = new("need.ups-power", "UPS power for {items:all}");

    /// <summary>Why no UPS feeds equipment.</summary>
    public static WordingChoice NoUpsLeft { get; } = new(
        "unmet.ups-power",
        "[none:The order has no UPS|power:The UPS of the order supplies {ratedW:exact} W; everything that is to be on it takes {neededW:exact} W|"
        + "va:The UPS of the order supplies {ratedVa:exact} VA; everything that is to be on it takes {neededVa:exact} VA|"
        + "time:With this equipment on it the UPS of the order does not last {minutes:exact} minutes|"
        + "The UPS of the order has too few outlets or too little power left for this equipment].");

    /// <summary>A UPS on offer that supplies enough.</summary>
    public static MessageWording LargerUps { get; } = new("unmet.larger-ups", "{name} supplies {ratedW:exact} W.");

    /// <summary>Ends the reason of a need for which nothing was found, without a proof.</summary>
    public static WordedText NothingElse { get; } = new("unmet.not-proven", "No other solution was found.");

    /// <summary>A cabinet that is not on offer.</summary>
    public static WordedText AnyCabinet { get; } = new("need.cabinet", "A cabinet for this equipment");

    /// <summary>Why no cabinet on offer serves.</summary>
    public static MessageWording NoCabinet { get; } = new(
        "unmet.cabinet", "No cabinet on offer takes it, whatever else is chosen. In {cabinet}: {message}");

    /// <summary>Why the customer's own cabinet does not serve.</summary>
    public static MessageWording NotInOwnCabinet { get; } = new(
        "unmet.own-cabinet", "The cabinet that is there does not take it, whatever else is chosen: {message}");

    /// <summary>A rack that no choice of parts leaves without an error.</summary>
    public static WordedText SoundRack { get; } = new("need.sound-rack", "A rack of these products without an error");

    /// <summary>An error of the completed rack.</summary>
    public static MessageWording StillWrong { get; } = new("unmet.error", "The completed rack has an error: {message}");

    /// <summary>A sentence with a choice between singular and plural.</summary>
    /// <param name="wordings">The wordings; the part <c>one</c> is singular.</param>
    /// <param name="isOne">Whether it is about one.</param>
    /// <param name="data">The values by name.</param>
    public static WordedText Of(WordingChoice wordings, bool isOne, params (string Name, Scalar Value)[] data) =>
        new(wordings.With(isOne ? "one" : null), data);

    /// <summary>Ids in the order of a rack, each once.</summary>
    public static Scalar Ids(IEnumerable<string> names) => Scalar.Ids(names.Distinct().Order(IdOrder.Instance));
}
