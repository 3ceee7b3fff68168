using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Survey;

/// <summary>Route of an earth lead from the stud at the back of an item to the earth bar at the rear bottom of the cabinet.</summary>
/// <param name="DownMm">From the centre of the item to the lower edge of U1, mm.</param>
/// <param name="SideMm">From the middle of the opening to an upright, mm.</param>
/// <param name="BackMm">From the back of the body to the rear uprights, mm; null if unknown.</param>
/// <param name="PullMm">Extension of the slides, mm; 0 without slides, null if unknown.</param>
public sealed record EarthRoute(double DownMm, double SideMm, double? BackMm, double? PullMm)
{
    /// <summary>Length, mm: the minimum if part of it is unknown.</summary>
    public double LengthMm => DownMm + SideMm + (BackMm ?? 0) + (PullMm ?? 0);

    /// <summary>Whether the full length is known.</summary>
    public bool IsKnown => BackMm is not null && PullMm is not null;

    /// <summary>The sum with its numbers, such as "88.9 + 225 + 250 + 450".</summary>
    public string Sum => string.Join(" + ", new[] { DownMm, SideMm, BackMm, PullMm }.Where(p => p is > 0).Select(p => Invariant($"{p:0.###}")));

    /// <summary>The route of the earth lead of an item.</summary>
    /// <param name="item">The item; an item on a shelf counts at the position of the shelf.</param>
    /// <returns>The route; null if the item is not placed.</returns>
    public static EarthRoute? Of(CabinetFacts cabinet, MountedItem item)
    {
        var carrier = item.Shelf ?? item;
        if (carrier.Bottom is not { } bottom)
        {
            return null;
        }

        // The back of an item on the rear uprights faces the front.
        var back = carrier.Face == Face.Rear ? item.BodyDepthMm
            : cabinet.SpacingMm is { } spacing && item.BodyDepthMm is { } depth ? Math.Abs(spacing - depth)
            : null;
        var pull = carrier.SupportStyle == SupportStyle.Slides ? carrier.Item!.Support!.ExtensionMm ?? carrier.BodyDepthMm : 0;
        return new EarthRoute(Math.Abs(RackGeometry.UnitMm * (bottom - 1 + (carrier.HeightU / 2.0))), cabinet.OpeningMm / 2, back, pull);
    }
}
