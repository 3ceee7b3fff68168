using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Remedies;

/// <summary>Titles of remedies that several classes offer, or a rule itself.</summary>
public static class RemedyTitles
{
    /// <summary>Items moved to another rack.</summary>
    public static readonly MessageWording AnotherRack = new("remedy.another-rack", "Move {items} to another rack");

    /// <summary>A cabinet of another width.</summary>
    public static readonly WordingChoice CabinetWidth = new(
        "remedy.cabinet-width", "Use a cabinet {widthMm:exact} mm wide[off-pallet: and deliver it off the pallet]");

    /// <summary>A cabinet of another depth.</summary>
    public static readonly WordingChoice CabinetDepth = new(
        "remedy.cabinet-depth", "Use a cabinet {depthMm:exact} mm deep[off-pallet: and deliver it off the pallet]");

    /// <summary>A cabinet of another height.</summary>
    public static readonly WordingChoice CabinetHeight = new(
        "remedy.cabinet-height", "Use a {heightU}U cabinet[move: and move {items} to another rack][off-pallet: and deliver it off the pallet]");

    /// <summary>A deeper cabinet with other uprights.</summary>
    public static readonly MessageWording DeeperAndUprights = new(
        "remedy.cabinet-depth-uprights", "Use a cabinet {depthMm:exact} mm deep and set its front uprights {setbackMm:exact} mm behind the front face");

    /// <summary>Another setback.</summary>
    public static readonly MessageWording FrontUprights = new("remedy.front-uprights", "Set the front uprights {setbackMm:exact} mm behind the front face");

    /// <summary>Another position.</summary>
    public static readonly WordingChoice MountAt = new("remedy.mount", "Mount {item} at {units:units}, {face}[panels: in place of {panels}]");

    /// <summary>Perforated doors.</summary>
    public static readonly MessageWording OpenDoors = new("remedy.perforated-doors", "Use perforated doors, {openPercent:exact} % open");

    /// <summary>Another setpoint.</summary>
    public static readonly MessageWording Setpoint = new("remedy.setpoint", "Set the air conditioner to {setpointC:exact} C");

    /// <summary>A supply of another rating.</summary>
    public static readonly MessageWording SuppliedRating = new("remedy.supply-rating", "Use supply {supply} and its PDUs rated for {ratedA:exact} A");

    /// <summary>An earth bar.</summary>
    public static readonly MessageWording EarthBar = new("remedy.earth-bar", "Fit an earth bar with {terminals} terminals");

    /// <summary>An earth lead of another cross-sectional area.</summary>
    public static readonly MessageWording EarthLeadArea = new("remedy.earth-lead-area", "Fit an earth lead of {sectionMm2:exact} mm2 for {item}");

    /// <summary>An earth lead of another length.</summary>
    public static readonly MessageWording EarthLeadLength = new("remedy.earth-lead-length", "Fit an earth lead of {lengthM:exact} m for {item}");

    /// <summary>A larger main earth conductor.</summary>
    public static readonly MessageWording MainConductor = new("remedy.main-conductor", "Fit a main earth conductor of {sectionMm2:exact} mm2");

    /// <summary>A main earth conductor.</summary>
    public static readonly MessageWording RunMainConductor = new(
        "remedy.run-main-conductor", "Run a main earth conductor of {sectionMm2:exact} mm2 to the earth bar");

    /// <summary>A shorter disconnection time.</summary>
    public static readonly MessageWording Disconnection = new(
        "remedy.disconnection-time", "Provide a disconnection time of {seconds:exact} s on supply {supply}");

    /// <summary>An RCD.</summary>
    public static readonly MessageWording Rcd = new("remedy.rcd", "Fit a {ratedMa:exact} mA RCD for supply {supply}");

    /// <summary>A less sensitive RCD.</summary>
    public static readonly WordingChoice OtherRcd = new(
        "remedy.other-rcd", "Fit an RCD of {ratedMa:exact} mA for supply {supply}[unless:, unless {personalMa:exact} mA is required]");

    /// <summary>A breaker of another curve.</summary>
    public static readonly WordingChoice Curve = new(
        "remedy.breaker-curve", "Use a curve {curve} breaker for supply {supply}[checked: after checking its disconnection time]");

    /// <summary>A breaker of a larger breaking capacity.</summary>
    public static readonly MessageWording BreakingCapacity = new(
        "remedy.breaking-capacity", "Use a breaker of {breakingKa:exact} kA breaking capacity for supply {supply}");

    /// <summary>One of several connections.</summary>
    public static readonly MessageWording KeepConnection = new("remedy.keep-connection", "Keep {item} plugged into group {group} of {pdu}");

    /// <summary>A PDU behind a UPS.</summary>
    public static readonly MessageWording FeedFromUps = new("remedy.feed-from-ups", "Feed {pdu} from {item}");

    /// <summary>A second cord.</summary>
    public static readonly MessageWording SecondCord = new("remedy.second-cord", "Give {item} a second cord");

    /// <summary>Equipment that needs no second feed.</summary>
    public static readonly WordingChoice SingleFeed = new(
        "remedy.single-feed", "Describe [one:{item}|the {count} items on one supply] as fed from one supply only");

    /// <summary>A person who takes receipt.</summary>
    public static readonly WordedText Receiver = new("remedy.receiver", "Arrange for a person to take receipt");

    /// <summary>A rack bolted to the floor.</summary>
    public static readonly WordedText BoltRack = new("remedy.bolt-rack", "Bolt the rack to the floor");

    /// <summary>The rest bolted to the floor.</summary>
    public static readonly WordedText BoltIt = new("remedy.bolt", "Bolt it to the floor");

    /// <summary>A cable arm.</summary>
    public static readonly MessageWording CableArm = new("remedy.cable-arm", "Fit a cable-management arm behind {item}");

    /// <summary>A cable arm in a deeper cabinet.</summary>
    public static readonly MessageWording CableArmDeeper = new(
        "remedy.cable-arm-deeper", "Fit a cable-management arm behind {item} and use a cabinet {depthMm:exact} mm deep");

    /// <summary>Rails of another length.</summary>
    public static readonly MessageWording OtherRails = new("remedy.rails", "Order rails for {item} for an upright spacing of {spacingMm:exact} mm");

    /// <summary>A deeper shelf.</summary>
    public static readonly MessageWording ShelfDepth = new("remedy.shelf-depth", "Use a shelf {depthMm:exact} mm deep for {item}");

    /// <summary>Blanking panels.</summary>
    public static readonly WordingChoice Panels = new("remedy.blanking", "Fit [one:a blanking panel of {heightsU:u}|blanking panels of {heightsU:u}]");

    /// <summary>Another height.</summary>
    public static readonly MessageWording ItemHeight = new("remedy.item-height", "Give {item} a height of {heightU} U");

    /// <summary>Clip nuts.</summary>
    public static readonly MessageWording ClipNuts = new("remedy.clip-nuts", "Fix {item} with clip nuts");

    /// <summary>Screws.</summary>
    public static readonly MessageWording Screws = new("remedy.screws", "Fix {item} with screws in the threaded holes");

    /// <summary>Thinner slides.</summary>
    public static readonly MessageWording ThinSlides = new("remedy.thin-slides", "Use slides no thicker than {thicknessMm:exact} mm for {item}");

    /// <summary>A bonded part.</summary>
    public static readonly WordingChoice Bond = new("remedy.bond", "Bond the {part:words} to earth with [their:their|its] own lead");

    /// <summary>All parts bonded.</summary>
    public static readonly WordedText BondAll = new("remedy.bond-all", "Bond all parts of the cabinet to earth");

    /// <summary>A part number that does not belong.</summary>
    public static readonly WordingChoice OtherProduct = new(
        "remedy.other-product", "Remove the part number of [part:the {item:words}|{item}]: it is a different product");

    /// <summary>Values of the catalogue.</summary>
    public static readonly WordingChoice CatalogueValues = new("remedy.catalogue-values", "Use the values of the catalogue for [part:the {item:words}|{item}]");

    /// <summary>A part number that is not needed.</summary>
    public static readonly WordingChoice NoPartNumber = new(
        "remedy.no-part-number", "Remove the part number of [part:the {item:words}|{item}], which is fully described");

    /// <summary>A cabinet closed to the public.</summary>
    public static readonly WordingChoice Locks = new(
        "remedy.public-access",
        "[locks:Use a cabinet with lockable doors and panels|front-door:Fit a perforated front door|"
        + "rear-door:Fit a perforated rear door|side-panels:Fit side panels][bond: and bond it to earth|bond-them: and bond them to earth]");

    /// <summary>Acceptances or sign-offs removed.</summary>
    public static readonly WordingChoice Unused = new("remedy.unused", "Remove the [one:{what}|{count} identical {what}s]");

    /// <summary>Another delivery route.</summary>
    public static readonly WordingChoice Route = new(
        "remedy.route",
        "Choose an access route without [corner:that corner|lift:the lift|"
        + "ramps:ramps|steep-ramps:ramps steeper than {slopePercent:exact} %|unnamed:the opening of {widthMm:exact} x {heightMm:exact} mm|{opening}]");

    /// <summary>Wordings of all titles: these, and those of the classes that make remedies.</summary>
    public static IReadOnlyList<MessageWording> Wordings { get; } =
    [
        .. typeof(RemedyTitles).Assembly.GetTypes().Where(t => t is { IsAbstract: true, IsSealed: true, ContainsGenericParameters: false })
            .SelectMany(MessageWording.DeclaredIn),
    ];

    /// <summary>Items moved to another rack.</summary>
    /// <param name="ids">Their ids, at least one.</param>
    public static WordedText ToAnotherRack(IEnumerable<string> ids) => new(AnotherRack, ("items", Names.Ids(ids)));

    /// <summary>A cabinet of another width.</summary>
    public static WordedText Wide(double widthMm) => new(CabinetWidth.With(), ("widthMm", widthMm));

    /// <summary>A cabinet of another depth.</summary>
    public static WordedText Deep(double depthMm) => new(CabinetDepth.With(), ("depthMm", depthMm));

    /// <summary>A cabinet of another height.</summary>
    public static WordedText High(int heightU) => new(CabinetHeight.With(), ("heightU", heightU));

    /// <summary>An item at another position.</summary>
    /// <param name="cabinet">The cabinet.</param>
    /// <param name="what">The item.</param>
    /// <param name="bottom">Its lowest U position, counted from the bottom.</param>
    /// <param name="heightU">Its height, U.</param>
    /// <param name="panels">Blanking panels that it takes the place of.</param>
    public static WordedText Mount(CabinetFacts cabinet, MountedItem what, int bottom, int heightU, params IReadOnlyList<MountedItem> panels)
    {
        (string, Scalar)[] place = [("item", what.Id), ("units", cabinet.Units(bottom, bottom + heightU - 1)), ("face", CabinetFacts.FaceText(what.Face))];
        return panels.Count == 0
            ? new(MountAt.With(), place)
            : new(MountAt.With("panels"), [.. place, ("panels", Names.Ids(panels.Select(p => p.Id)))]);
    }

    /// <summary>The part of a choice with the article that a code needs, as "an IEC60309-16A-1P" or "a C14".</summary>
    /// <param name="code">A code of a plug or socket.</param>
    public static string? Article(string code) => code[0] is 'I' ? "an" : null;
}
