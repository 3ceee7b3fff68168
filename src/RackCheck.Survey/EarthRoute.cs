using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Survey;

/// <summary>The way of an earth lead from an item's stud, at the back of its body, to the bar at the foot of the cabinet, behind.</summary>
/// <param name="DownMm">From the item's centre to the lower edge of U1, mm.</param>
/// <param name="SideMm">From the middle of the opening to an upright, mm.</param>
/// <param name="BackMm">From the back of the body to the rear uprights, mm; null where not known.</param>
/// <param name="PullMm">How far slides pull the item out, mm, 0 without slides; null where not known.</param>
public sealed record EarthRoute(double DownMm, double SideMm, double? BackMm, double? PullMm)
{
    /// <summary>Its length, mm: the least that it can be where part of it is not known.</summary>
    public double LengthMm => DownMm + SideMm + (BackMm ?? 0) + (PullMm ?? 0);

    /// <summary>Whether all of it is known.</summary>
    public bool IsKnown => BackMm is not null && PullMm is not null;

    /// <summary>The sum with its numbers put in, as "88.9 + 225 + 250 + 450".</summary>
    public string Sum => string.Join(" + ", new[] { DownMm, SideMm, BackMm, PullMm }.Where(p => p is > 0).Select(p => Invariant($"{p:0.###}")));

    /// <summary>The way of an item's lead.</summary>
    /// <param name="cabinet">The cabinet.</param>
    /// <param name="item">The item; a thing on a shelf is where the shelf is.</param>
    /// <returns>The way; null where the item is not placed.</returns>
    public static EarthRoute? Of(CabinetFacts cabinet, MountedItem item)
    {
        var carrier = item.Shelf ?? item;
        if (carrier.Bottom is not { } bottom)
        {
            return null;
        }

        // An item on the rear uprights has its back towards the front.
        var back = carrier.Face == Face.Rear ? item.BodyDepthMm
            : cabinet.SpacingMm is { } spacing && item.BodyDepthMm is { } depth ? Math.Abs(spacing - depth)
            : null;
        var pull = carrier.SupportStyle == SupportStyle.Slides ? carrier.Item!.Support!.ExtensionMm ?? carrier.BodyDepthMm : 0;
        return new EarthRoute(Math.Abs(RackGeometry.UnitMm * (bottom - 1 + (carrier.HeightU / 2.0))), cabinet.OpeningMm / 2, back, pull);
    }
}
