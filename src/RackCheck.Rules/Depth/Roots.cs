namespace RackCheck.Rules.Depth;

/// <summary>Defects of the whole rack that are reported by the items which bring them; when those go and others are named, the defect is the same.</summary>
internal static class Roots
{
    /// <summary>No setback of the uprights serves all items, be it for two of them or for one alone.</summary>
    public const string NoSetbackServes = "no setback serves all items";

    /// <summary>The setback given does not serve all items.</summary>
    public const string SetbackIsWrong = "the setback given does not serve all items";
}
