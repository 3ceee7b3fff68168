namespace RackCheck.Model;

/// <summary>Pointers to the site, the delivery route and the ergonomics of a rack.</summary>
public static class SitePointers
{
    /// <summary>Whether doors and panels can be locked.</summary>
    public const string Lockable = "/cabinet/lockable";

    /// <summary>Whether the site is unattended.</summary>
    public const string Remote = "/site/remote";

    /// <summary>Whether the public has access to the rack.</summary>
    public const string PublicAccess = "/site/publicAccess";

    /// <summary>Aisle width in front of the rack.</summary>
    public const string AisleFront = "/site/aisleFrontMm";

    /// <summary>Aisle width behind the rack.</summary>
    public const string AisleRear = "/site/aisleRearMm";

    /// <summary>Whether the site is in a seismic zone.</summary>
    public const string Seismic = "/site/seismic";

    /// <summary>Whether the rack is delivered with its equipment.</summary>
    public const string Loaded = "/site/delivery/loaded";

    /// <summary>Ramps on the delivery route.</summary>
    public static IndexedPointer Ramp { get; } = new("/site/delivery/ramps/", "");

    /// <summary>Length of a PDU.</summary>
    public static IndexedPointer PduLength { get; } = new("/pdus/", "/lengthMm");

    /// <summary>Whether a KVM switch can be used from another site.</summary>
    public static IndexedPointer ItemRemoteAccess { get; } = new("/items/", "/remoteAccess");

    /// <summary>The delivery route.</summary>
    public const string Delivery = "/site/delivery";

    /// <summary>PDUs.</summary>
    public const string Pdus = "/pdus";

    /// <summary>Cables of an item.</summary>
    public static IndexedPointer ItemCables { get; } = new("/items/", "/cables");

    /// <summary>Whether an item needs a KVM port.</summary>
    public static IndexedPointer ItemConsole { get; } = new("/items/", "/console");

    /// <summary>KVM ports that an item provides.</summary>
    public static IndexedPointer ItemKvmPorts { get; } = new("/items/", "/kvmPorts");
}
