namespace RackCheck.Rules.Depth;

/// <summary>Defects of the whole rack that a finding reports with the items that cause them. With other items, the defect is the same.</summary>
internal static class Roots
{
    /// <summary>No setback of the uprights suits all items.</summary>
    public const string NoSetbackServes = "no setback serves all items";

    /// <summary>The specified setback does not suit all items.</summary>
    public const string SetbackIsWrong = "the setback given does not serve all items";
}
