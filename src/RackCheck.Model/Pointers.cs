namespace RackCheck.Model;

/// <summary>Pointers into a description. Pointers to list elements are made once for the process, because every request needs them.</summary>
public static class Pointers
{
    /// <summary>Overall depth of the cabinet.</summary>
    public const string CabinetDepth = "/cabinet/depthMm";

    /// <summary>Overall width of the cabinet.</summary>
    public const string CabinetWidth = "/cabinet/widthMm";

    /// <summary>Height of the cabinet, U.</summary>
    public const string CabinetHeightU = "/cabinet/heightU";

    /// <summary>Setback of the front uprights.</summary>
    public const string FrontSetback = "/cabinet/uprights/frontSetbackMm";

    /// <summary>Distance between front and rear uprights.</summary>
    public const string Spacing = "/cabinet/uprights/spacingMm";

    /// <summary>Opening between the uprights.</summary>
    public const string Opening = "/cabinet/uprights/openingMm";

    /// <summary>Holes of the uprights.</summary>
    public const string Hole = "/cabinet/uprights/hole";

    /// <summary>Front door.</summary>
    public const string FrontDoor = "/cabinet/frontDoor";

    /// <summary>Rear door.</summary>
    public const string RearDoor = "/cabinet/rearDoor";

    /// <summary>Side panels.</summary>
    public const string SidePanels = "/cabinet/sidePanels";

    /// <summary>Style of the roof.</summary>
    public const string RoofStyle = "/cabinet/roof/style";

    /// <summary>Overall height of the cabinet.</summary>
    public const string CabinetHeight = "/cabinet/heightMm";

    /// <summary>Mass of the empty cabinet.</summary>
    public const string CabinetMass = "/cabinet/massKg";

    /// <summary>Static load rating of the cabinet.</summary>
    public const string RatedLoad = "/cabinet/ratedLoadKg";

    /// <summary>Dynamic load rating of the cabinet.</summary>
    public const string RollingLoad = "/cabinet/rollingLoadKg";

    /// <summary>Base of the cabinet.</summary>
    public const string Base = "/cabinet/base";

    /// <summary>Style of the base.</summary>
    public const string BaseStyle = "/cabinet/base/style";

    /// <summary>Distance from the frame to the line of feet.</summary>
    public const string BaseInset = "/cabinet/base/insetMm";

    /// <summary>Transport load rating of the cabinet.</summary>
    public const string TransportLoad = "/cabinet/transportLoadKg";

    /// <summary>Load rating of a wall-hung cabinet.</summary>
    public const string WallLoad = "/cabinet/wallLoadKg";

    /// <summary>Interlock of the slides.</summary>
    public const string Interlock = "/cabinet/interlock";

    /// <summary>Height of the base.</summary>
    public const string BaseHeight = "/cabinet/base/heightMm";

    /// <summary>Distributed load capacity of the floor.</summary>
    public const string FloorDistributed = "/site/floor/distributedKnM2";

    /// <summary>Point load capacity of the floor.</summary>
    public const string FloorPoint = "/site/floor/pointKn";

    /// <summary>Free area of the roof's openings.</summary>
    public const string RoofOpenArea = "/cabinet/roof/openAreaCm2";

    /// <summary>Placement of the cabinet.</summary>
    public const string Placement = "/cabinet/placement";

    /// <summary>Degree of protection of the cabinet.</summary>
    public const string IpCode = "/cabinet/ipCode";

    /// <summary>Cooling.</summary>
    public const string Cooling = "/cooling";

    /// <summary>Fans in the roof.</summary>
    public const string RoofFans = "/cooling/roofFans";

    /// <summary>Fan trays.</summary>
    public const string FanTrays = "/cooling/fanTrays";

    /// <summary>Free area of the air intake.</summary>
    public const string IntakeArea = "/cooling/intakeAreaCm2";

    /// <summary>Whether intakes and fans have filters.</summary>
    public const string Filters = "/cooling/filters";

    /// <summary>Permitted air temperature rise.</summary>
    public const string RiseK = "/cooling/riseK";

    /// <summary>Airflow from the raised floor.</summary>
    public const string UnderfloorFlow = "/cooling/underfloor/supplyM3h";

    /// <summary>Temperature of the air from the raised floor.</summary>
    public const string UnderfloorC = "/cooling/underfloor/supplyC";

    /// <summary>Capacity of the air conditioner.</summary>
    public const string CoolerCapacity = "/cooling/airConditioner/capacityW";

    /// <summary>Setpoint of the air conditioner.</summary>
    public const string Setpoint = "/cooling/airConditioner/setpointC";

    /// <summary>Ambient temperature at the rated capacity of the air conditioner.</summary>
    public const string RatedAmbient = "/cooling/airConditioner/ratedAmbientC";

    /// <summary>Style of the air conditioner.</summary>
    public const string CoolerStyle = "/cooling/airConditioner/style";

    /// <summary>Maximum room temperature.</summary>
    public const string Ambient = "/site/ambientMaxC";

    /// <summary>Maximum room humidity.</summary>
    public const string Humidity = "/site/humidityMaxPercent";

    /// <summary>Altitude of the site.</summary>
    public const string Altitude = "/site/altitudeM";

    /// <summary>Required degree of protection.</summary>
    public const string RequiredIp = "/site/requiredIp";

    /// <summary>Whether an outside wall is available.</summary>
    public const string OutsideWall = "/site/outsideWall";

    /// <summary>Earth bar.</summary>
    public const string EarthBar = "/cabinet/earthBar";

    /// <summary>Terminals of the earth bar.</summary>
    public const string EarthBarTerminals = "/cabinet/earthBar/terminals";

    /// <summary>Cross-sectional area of the main protective conductor.</summary>
    public const string MainConductor = "/earthing/mainConductorMm2";

    /// <summary>Whether a secondary earth is required.</summary>
    public const string SecondaryEarth = "/earthing/secondaryEarth";

    /// <summary>Bonded parts.</summary>
    public const string Bonded = "/earthing/bonded";

    /// <summary>An item.</summary>
    public static IndexedPointer Item { get; } = new("/items/", "");

    /// <summary>Position of an item.</summary>
    public static IndexedPointer ItemPosition { get; } = new("/items/", "/position");

    /// <summary>Depth of an item's body.</summary>
    public static IndexedPointer ItemBodyDepth { get; } = new("/items/", "/body/depthMm");

    /// <summary>Width of an item's body.</summary>
    public static IndexedPointer ItemBodyWidth { get; } = new("/items/", "/body/widthMm");

    /// <summary>Height of an item's body.</summary>
    public static IndexedPointer ItemBodyHeight { get; } = new("/items/", "/body/heightMm");

    /// <summary>Front projection of an item.</summary>
    public static IndexedPointer ItemFrontProjection { get; } = new("/items/", "/frontProjectionMm");

    /// <summary>Rear projection of an item.</summary>
    public static IndexedPointer ItemRearProjection { get; } = new("/items/", "/rearProjectionMm");

    /// <summary>Mass of an item.</summary>
    public static IndexedPointer ItemMass { get; } = new("/items/", "/massKg");

    /// <summary>Support of an item.</summary>
    public static IndexedPointer ItemSupport { get; } = new("/items/", "/support");

    /// <summary>Style of an item's support.</summary>
    public static IndexedPointer ItemSupportStyle { get; } = new("/items/", "/support/style");

    /// <summary>Thickness of an item's support.</summary>
    public static IndexedPointer ItemSupportThickness { get; } = new("/items/", "/support/thicknessMm");

    /// <summary>Minimum upright spacing of an item's support.</summary>
    public static IndexedPointer ItemMinSpacing { get; } = new("/items/", "/support/minSpacingMm");

    /// <summary>Maximum upright spacing of an item's support.</summary>
    public static IndexedPointer ItemMaxSpacing { get; } = new("/items/", "/support/maxSpacingMm");

    /// <summary>Load rating of an item's support.</summary>
    public static IndexedPointer ItemSupportRating { get; } = new("/items/", "/support/ratedKg");

    /// <summary>Extension of an item's slides.</summary>
    public static IndexedPointer ItemExtension { get; } = new("/items/", "/support/extensionMm");

    /// <summary>Shelf on which an item stands.</summary>
    public static IndexedPointer ItemOnShelf { get; } = new("/items/", "/onShelf");

    /// <summary>Airflow direction of an item.</summary>
    public static IndexedPointer ItemAirflowDirection { get; } = new("/items/", "/airflow/direction");

    /// <summary>Power factor of an item.</summary>
    public static IndexedPointer ItemPowerFactor { get; } = new("/items/", "/power/powerFactor");

    /// <summary>Rated power of an item.</summary>
    public static IndexedPointer ItemRatedW { get; } = new("/items/", "/power/ratedW");

    /// <summary>Plugs of an item.</summary>
    public static IndexedPointer ItemPlugs { get; } = new("/items/", "/power/plugs");

    /// <summary>Protective conductor current of an item.</summary>
    public static IndexedPointer ItemLeakage { get; } = new("/items/", "/power/leakageMa");

    /// <summary>Inrush of an item.</summary>
    public static IndexedPointer ItemInrush { get; } = new("/items/", "/power/inrushA");

    /// <summary>Heat of an item.</summary>
    public static IndexedPointer ItemHeat { get; } = new("/items/", "/heatW");

    /// <summary>Airflow of an item's own fans.</summary>
    public static IndexedPointer ItemFlow { get; } = new("/items/", "/airflow/flowM3h");

    /// <summary>Maximum inlet air temperature of an item.</summary>
    public static IndexedPointer ItemMaxInlet { get; } = new("/items/", "/maxInletC");

    /// <summary>Earth stud of an item.</summary>
    public static IndexedPointer ItemEarthStud { get; } = new("/items/", "/earthStud");

    /// <summary>Cross-sectional area of an item's earth lead.</summary>
    public static IndexedPointer ItemLeadSection { get; } = new("/items/", "/earthLead/crossSectionMm2");

    /// <summary>Length of an item's earth lead.</summary>
    public static IndexedPointer ItemLeadLength { get; } = new("/items/", "/earthLead/lengthM");

    /// <summary>A supply.</summary>
    public static IndexedPointer Supply { get; } = new("/supplies/", "");

    /// <summary>A PDU.</summary>
    public static IndexedPointer Pdu { get; } = new("/pdus/", "");

    /// <summary>Position of a PDU.</summary>
    public static IndexedPointer PduPosition { get; } = new("/pdus/", "/position");
}

/// <summary>A pointer with a list index in it.</summary>
public sealed class IndexedPointer
{
    private const int Known = 200;
    private readonly string before;
    private readonly string after;
    private readonly string[] made;

    internal IndexedPointer(string before, string after)
    {
        (this.before, this.after) = (before, after);
        made = [.. Enumerable.Range(0, Known).Select(Make)];
    }

    /// <summary>The pointer with this index in it.</summary>
    /// <param name="index">The index, 0 or more.</param>
    public string this[int index] => index < Known ? made[index] : Make(index);

    private string Make(int index) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{before}{index}{after}");
}
