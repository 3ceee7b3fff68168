using System.Collections.Frozen;
using System.Reflection;
using RackCheck.Model;
using RackCheck.Survey.Layout;

namespace RackCheck.Rules;

/// <summary>What findings are about, as a reader finds it in the rack: an item with its place, a supply, a part of the cabinet.</summary>
public static class Subjects
{
    /// <summary>PDUs.</summary>
    public static readonly WordedText Pdus = new("subject.pdus", "PDUs");

    /// <summary>Rear uprights.</summary>
    public static readonly WordedText RearUprights = new("subject.rear-uprights", "rear uprights");

    /// <summary>Cabinet.</summary>
    public static readonly WordedText Cabinet = new("subject.cabinet", "cabinet");

    /// <summary>Console ports.</summary>
    public static readonly WordedText ConsolePorts = new("subject.console-ports", "console ports");

    /// <summary>Remote access.</summary>
    public static readonly WordedText RemoteAccess = new("subject.remote-access", "remote access");

    /// <summary>Fans.</summary>
    public static readonly WordedText Fans = new("subject.fans", "fans");

    /// <summary>Humidity of the room.</summary>
    public static readonly WordedText HumidityOfTheRoom = new("subject.humidity-of-the-room", "humidity of the room");

    /// <summary>Mains cords.</summary>
    public static readonly WordedText MainsCords = new("subject.mains-cords", "mains cords");

    /// <summary>Air through the rack.</summary>
    public static readonly WordedText AirThroughTheRack = new("subject.air-through-the-rack", "air through the rack");

    /// <summary>Air conditioner.</summary>
    public static readonly WordedText AirConditioner = new("subject.air-conditioner", "air conditioner");

    /// <summary>Batteries.</summary>
    public static readonly WordedText Batteries = new("subject.batteries", "batteries");

    /// <summary>Roof fans.</summary>
    public static readonly WordedText RoofFans = new("subject.roof-fans", "roof fans");

    /// <summary>Closed cabinet.</summary>
    public static readonly WordedText ClosedCabinet = new("subject.closed-cabinet", "closed cabinet");

    /// <summary>Site.</summary>
    public static readonly WordedText Site = new("subject.site", "site");

    /// <summary>UPS.</summary>
    public static readonly WordedText Ups = new("subject.ups", "UPS");

    /// <summary>Delivery.</summary>
    public static readonly WordedText Delivery = new("subject.delivery", "delivery");

    /// <summary>Lift.</summary>
    public static readonly WordedText Lift = new("subject.lift", "lift");

    /// <summary>Floor.</summary>
    public static readonly WordedText Floor = new("subject.floor", "floor");

    /// <summary>Rack.</summary>
    public static readonly WordedText Rack = new("subject.rack", "rack");

    /// <summary>Wall.</summary>
    public static readonly WordedText Wall = new("subject.wall", "wall");

    /// <summary>Castors.</summary>
    public static readonly WordedText Castors = new("subject.castors", "castors");

    /// <summary>Base.</summary>
    public static readonly WordedText Base = new("subject.base", "base");

    /// <summary>Earth bar.</summary>
    public static readonly WordedText EarthBar = new("subject.earth-bar", "earth bar");

    /// <summary>Main earth conductor.</summary>
    public static readonly WordedText MainEarthConductor = new("subject.main-earth-conductor", "main earth conductor");

    /// <summary>Side channels.</summary>
    public static readonly WordedText SideChannels = new("subject.side-channels", "side channels");

    /// <summary>Front door.</summary>
    public static readonly WordedText FrontDoor = new("subject.front-door", "front door");

    /// <summary>Rear door.</summary>
    public static readonly WordedText RearDoor = new("subject.rear-door", "rear door");

    /// <summary>Frame.</summary>
    public static readonly WordedText Frame = new("subject.frame", "frame");

    /// <summary>Side panels.</summary>
    public static readonly WordedText SidePanels = new("subject.side-panels", "side panels");

    /// <summary>Roof.</summary>
    public static readonly WordedText Roof = new("subject.roof", "roof");

    /// <summary>Side without a front door.</summary>
    public static readonly WordedText SideWithoutAFrontDoor = new("subject.side-without-a-front-door", "side without a front door");

    /// <summary>Side without a rear door.</summary>
    public static readonly WordedText SideWithoutARearDoor = new("subject.side-without-a-rear-door", "side without a rear door");

    /// <summary>Open side.</summary>
    public static readonly WordedText OpenSide = new("subject.open-side", "open side");

    /// <summary>Vented roof.</summary>
    public static readonly WordedText VentedRoof = new("subject.vented-roof", "vented roof");

    /// <summary>Fans in the roof.</summary>
    public static readonly WordedText FansInTheRoof = new("subject.fans-in-the-roof", "fans in the roof");

    /// <summary>Air intake.</summary>
    public static readonly WordedText AirIntake = new("subject.air-intake", "air intake");

    /// <summary>Setpoint of the air conditioner.</summary>
    public static readonly WordedText SetpointOfTheAirConditioner = new("subject.setpoint-of-the-air-conditioner", "setpoint of the air conditioner");

    /// <summary>Air from the floor.</summary>
    public static readonly WordedText AirFromTheFloor = new("subject.air-from-the-floor", "air from the floor");

    /// <summary>The cabinet.</summary>
    public static readonly WordedText TheCabinet = new("subject.the-cabinet", "the cabinet");

    /// <summary>The front door.</summary>
    public static readonly WordedText TheFrontDoor = new("subject.the-front-door", "the front door");

    /// <summary>The rear door.</summary>
    public static readonly WordedText TheRearDoor = new("subject.the-rear-door", "the rear door");

    /// <summary>The earth bar.</summary>
    public static readonly WordedText TheEarthBar = new("subject.the-earth-bar", "the earth bar");

    private static readonly MessageWording OneId = new("subject.id", "{id}");
    private static readonly MessageWording TwoItems = new("subject.items", "{item} and {other}");
    private static readonly MessageWording OneSupply = new("subject.supply", "supply {supply}");
    private static readonly MessageWording SupplySocket = new("subject.supply-socket", "socket of supply {supply}");
    private static readonly MessageWording SupplyCable = new("subject.supply-cable", "cable of supply {supply}");
    private static readonly MessageWording SupplyNeutral = new("subject.supply-neutral", "neutral of supply {supply}");
    private static readonly MessageWording OnePdu = new("subject.pdu", "PDU {pdu}");
    private static readonly MessageWording PduGroup = new("subject.pdu-group", "PDU {pdu}, group {group}");
    private static readonly MessageWording PlugCords = new("subject.cords", "{plug} cords");
    private static readonly MessageWording RouteCorner = new("subject.corner", "corner from {fromMm:exact} mm into {intoMm:exact} mm");
    private static readonly MessageWording RouteOpening = new("subject.opening", "the opening of {widthMm:exact} x {heightMm:exact} mm");
    private static readonly MessageWording Uprights = new("subject.uprights-for", "uprights, for {item}");
    private static readonly WordingChoice CabinetForItems = new("subject.cabinet-for", "cabinet, for {item}[two: and {other}]");
    private static readonly WordingChoice Outlet = new("subject.item-outlet", "{item}" + CabinetFacts.PlacePattern + ", {pdu}, group {group}");
    private static readonly WordingChoice ShelfItem = new("subject.on-shelf", "{item}, on {carrier}" + CabinetFacts.PlacePattern);
    private static readonly MessageWording NoShelf = new("subject.without-shelf", "{item}, without a shelf");
    private static readonly MessageWording FrontUnits = new("subject.open-units", "{units:units}, front");
    private static readonly MessageWording ManyItems = new("subject.heap", "{count} items, {units:units}");
    private static readonly WordingChoice Overlapping = new("subject.overlap", "{item} and {other}, {units:units}, [face:{face}|front and rear]");
    private static readonly MessageWording OneSignOff = new("subject.sign-off", "sign-off of {rule}");
    private static readonly MessageWording OneAcceptance = new("subject.acceptance", "acceptance of {rule}");

    private static readonly FrozenDictionary<string, WordedText> ByName = typeof(Subjects).GetFields(BindingFlags.Static | BindingFlags.Public)
        .Select(f => f.GetValue(null)).OfType<WordedText>().ToFrozenDictionary(t => t.Text, StringComparer.Ordinal);

    /// <summary>Wordings of all subjects.</summary>
    public static IReadOnlyList<MessageWording> Wordings { get; } = [.. MessageWording.DeclaredIn(typeof(Subjects)), .. CabinetFacts.ItemPlace.All];

    /// <summary>One of the subjects above by its name in a sentence.</summary>
    /// <param name="name">The name, as "front door".</param>
    public static WordedText Named(string name) => ByName[name];

    /// <summary>Something with an id or a name of the caller's.</summary>
    public static WordedText Id(string id) => new(OneId, ("id", id));

    /// <summary>Two items.</summary>
    public static WordedText Pair(string item, string other) => new(TwoItems, ("item", item), ("other", other));

    /// <summary>A supply.</summary>
    public static WordedText Supply(string id) => new(OneSupply, ("supply", id));

    /// <summary>The socket of a supply.</summary>
    public static WordedText SocketOf(string supply) => new(SupplySocket, ("supply", supply));

    /// <summary>The cable of a supply.</summary>
    public static WordedText CableOf(string supply) => new(SupplyCable, ("supply", supply));

    /// <summary>The neutral conductor of a supply.</summary>
    public static WordedText NeutralOf(string supply) => new(SupplyNeutral, ("supply", supply));

    /// <summary>A PDU.</summary>
    public static WordedText Pdu(string id) => new(OnePdu, ("pdu", id));

    /// <summary>An outlet group of a PDU.</summary>
    public static WordedText Group(string pdu, string group) => new(PduGroup, ("pdu", pdu), ("group", group));

    /// <summary>Cords with plugs of one type.</summary>
    public static WordedText Cords(string plug) => new(PlugCords, ("plug", plug));

    /// <summary>A corner of the delivery route.</summary>
    public static WordedText Corner(double fromMm, double intoMm) => new(RouteCorner, ("fromMm", fromMm), ("intoMm", intoMm));

    /// <summary>An opening of the delivery route without a name.</summary>
    public static WordedText OpeningOf(double widthMm, double heightMm) => new(RouteOpening, ("widthMm", widthMm), ("heightMm", heightMm));

    /// <summary>The uprights, because of an item.</summary>
    public static WordedText UprightsFor(string item) => new(Uprights, ("item", item));

    /// <summary>The cabinet, because of an item.</summary>
    public static WordedText CabinetFor(string item) => new(CabinetForItems.With(), ("item", item));

    /// <summary>The cabinet, because of two items.</summary>
    public static WordedText CabinetFor(string item, string other) => new(CabinetForItems.With("two"), ("item", item), ("other", other));

    /// <summary>An item on an outlet group.</summary>
    public static WordedText OnOutlet(CabinetFacts cabinet, MountedItem item, string pdu, string group) =>
        cabinet.Place(Outlet, item, ("item", item.Id), ("pdu", pdu), ("group", group));

    /// <summary>An item on a shelf, and the place of the shelf.</summary>
    public static WordedText OnShelf(CabinetFacts cabinet, string item, MountedItem shelf) =>
        cabinet.Place(ShelfItem, shelf, ("item", item), ("carrier", shelf.Id));

    /// <summary>An item that needs a shelf.</summary>
    public static WordedText WithoutShelf(string item) => new(NoShelf, ("item", item));

    /// <summary>Open U positions at the front.</summary>
    public static WordedText OpenUnits(Scalar units) => new(FrontUnits, ("units", units));

    /// <summary>Several items in one U position.</summary>
    public static WordedText Heap(int count, Scalar units) => new(ManyItems, ("count", count), ("units", units));

    /// <summary>Two items in the same space: on one face, or from both faces.</summary>
    public static WordedText Overlap(string item, string other, Scalar units, Face? face) => face is { } one
        ? new(Overlapping.With("face"), ("item", item), ("other", other), ("units", units), ("face", CabinetFacts.FaceText(one)))
        : new(Overlapping.With(), ("item", item), ("other", other), ("units", units));

    /// <summary>An item of a stack, and the place of the stack.</summary>
    public static WordedText Run(string item, Scalar units, Face face) =>
        new(CabinetFacts.ItemPlace.With("placed"), ("item", item), ("units", units), ("face", CabinetFacts.FaceText(face)));

    /// <summary>A sign-off.</summary>
    public static WordedText SignOff(string rule) => new(OneSignOff, ("rule", rule));

    /// <summary>An acceptance.</summary>
    public static WordedText Acceptance(string rule) => new(OneAcceptance, ("rule", rule));
}
