namespace RackCheck.Documents.Drawings.Elevations;

/// <summary>Which sides of a cabinet are drawn.</summary>
public enum ElevationView
{
    /// <summary>Front, rear and side.</summary>
    All,

    /// <summary>The front.</summary>
    Front,

    /// <summary>The rear.</summary>
    Rear,

    /// <summary>The side, seen from the right.</summary>
    Side,
}
