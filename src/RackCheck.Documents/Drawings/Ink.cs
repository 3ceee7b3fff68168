using RackCheck.Engineering;

namespace RackCheck.Documents.Drawings;

/// <summary>Weights and dashes of lines and the colours of the sheet, the same for every renderer.</summary>
internal static class Ink
{
    /// <summary>Colours of a light sheet.</summary>
    public static readonly Palette Light = new("#ffffff", "#141414", "#5c5c5c", "#f4f4f4", "#e2e2e2", "#9a9a9a");

    /// <summary>Colours of a dark sheet.</summary>
    public static readonly Palette Dark = new("#15171a", "#ececec", "#b2b2b2", "#1d2024", "#2d3137", "#70757c");

    /// <summary>Size of a hole on the sheet: smaller than life, so that uprights stay light.</summary>
    public const float HoleMm = 5;

    private static readonly float[] Full = [];

    // Hole, gap, hole, gap, hole, gap of one U.
    private static readonly float[] Holes = [.. Enumerable.Range(1, 3).SelectMany(h => (float[])[HoleMm, GapAfter(h)])];

    /// <summary>Weight of a line.</summary>
    public static double Weight(Stroke stroke) => stroke switch
    {
        Stroke.Thick => 6,
        Stroke.Normal => 2.6,
        Stroke.Holes => HoleMm,
        Stroke.CordA or Stroke.CordB or Stroke.CordC or Stroke.CordD or Stroke.CordUps => 3,
        Stroke.CordE or Stroke.CordF or Stroke.CordG or Stroke.CordH => 5.6,
        _ => 1.4,
    };

    private static float GapAfter(int hole) =>
        (float)((hole < 3 ? RackGeometry.HoleCentreMm(1, hole + 1) : RackGeometry.HoleCentreMm(2, 1)) - RackGeometry.HoleCentreMm(1, hole)) - HoleMm;

    /// <summary>Lengths of dashes and gaps; none for a full line.</summary>
    public static float[] Dashes(Stroke stroke) => stroke switch
    {
        Stroke.Hidden => [12, 8],
        Stroke.Holes => Holes,
        Stroke.CordB or Stroke.CordF => [14, 8],
        Stroke.CordC => [3, 7],
        Stroke.CordG => [5.6f, 7],
        Stroke.CordD or Stroke.CordH => [18, 6, 3, 6],
        Stroke.CordUps => [18, 5, 3, 5, 3, 5],
        _ => Full,
    };
}

/// <summary>The colours of a sheet.</summary>
/// <param name="Paper">The sheet.</param>
/// <param name="Line">Lines and text.</param>
/// <param name="Faint">Lighter text.</param>
/// <param name="Soft">A light tint.</param>
/// <param name="Shade">A tint.</param>
/// <param name="Ground">Light lines.</param>
internal sealed record Palette(string Paper, string Line, string Faint, string Soft, string Shade, string Ground)
{
    /// <summary>Colour of a line.</summary>
    public string Of(Stroke stroke) => stroke == Stroke.Light ? Ground : Line;

    /// <summary>Colour of a face.</summary>
    public string Of(Fill fill) => fill switch { Fill.Ink => Line, Fill.Soft => Soft, Fill.Shade => Shade, _ => Paper };

    /// <summary>Colour of a text.</summary>
    public string Of(Tone tone) => tone switch { Tone.Ink => Line, Tone.Light => Faint, _ => Paper };
}
