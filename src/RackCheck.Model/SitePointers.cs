namespace RackCheck.Model;

/// <summary>Pointers to the site, the way in and the working at a rack.</summary>
public static class SitePointers
{
    /// <summary>Whether doors and panels can be locked.</summary>
    public const string Lockable = "/cabinet/lockable";

    /// <summary>Whether nobody is near.</summary>
    public const string Remote = "/site/remote";

    /// <summary>Whether the public can reach the rack.</summary>
    public const string PublicAccess = "/site/publicAccess";

    /// <summary>Aisle before the front.</summary>
    public const string AisleFront = "/site/aisleFrontMm";

    /// <summary>The way in.</summary>
    public const string Delivery = "/site/delivery";

    /// <summary>PDUs.</summary>
    public const string Pdus = "/pdus";

    /// <summary>Cables of an item.</summary>
    public static IndexedPointer ItemCables { get; } = new("/items/", "/cables");

    /// <summary>Whether an item wants a console.</summary>
    public static IndexedPointer ItemConsole { get; } = new("/items/", "/console");

    /// <summary>Console ports that an item offers.</summary>
    public static IndexedPointer ItemKvmPorts { get; } = new("/items/", "/kvmPorts");
}
