using RackCheck.Model;
using RackCheck.Survey.Layout;

namespace RackCheck.Documents.Drawings.Elevations;

/// <summary>Depths of a cabinet in side view, mm behind its outer front face, as the survey has them.</summary>
internal sealed class DepthStack
{
    private readonly Scene scene;

    public DepthStack(Scene scene)
    {
        this.scene = scene;
        var (depth, cabinet) = (scene.Survey.Depth, scene.Cabinet);
        IsFrontSet = depth.SetbackMm is not null;
        FrontPlaneMm = Math.Min(depth.SetbackMm ?? depth.All.LeastMm, cabinet.Depth.DepthMm);
        IsRearSet = cabinet.SpacingMm is not null;
        RearPlaneMm = IsRearSet ? FrontPlaneMm + cabinet.SpacingMm!.Value : Math.Max(FrontPlaneMm + 100, cabinet.Depth.RearLimitMm - 60);
        Deepest = depth.Deepest;
    }

    /// <summary>Place of the front uprights.</summary>
    public double FrontPlaneMm { get; }

    /// <summary>Whether the front uprights are set, or some setback suits all items.</summary>
    public bool IsFrontSet { get; }

    /// <summary>Place of the rear uprights; far back where it is not given.</summary>
    public double RearPlaneMm { get; }

    /// <summary>Whether the place of the rear uprights is given.</summary>
    public bool IsRearSet { get; }

    /// <summary>The item that the figure of the deepest stack is of; null if no depth is known.</summary>
    public MountedItem? Deepest { get; }

    /// <summary>The mounting plane of an item.</summary>
    public double PlaneOf(MountedItem item) => item.Face == Face.Front ? FrontPlaneMm : RearPlaneMm;

    /// <summary>Foremost and rearmost point of an item.</summary>
    public (double From, double To) Reach(MountedItem item)
    {
        var plane = PlaneOf(item);
        var behind = (item.BodyDepthMm ?? 0) + item.RearProjectionMm;
        return item.Face == Face.Front ? (plane - item.FrontProjectionMm, plane + behind) : (plane - behind, plane + item.FrontProjectionMm);
    }

    /// <summary>Ends of projection, body and space for cables, ascending.</summary>
    public IReadOnlyList<double> Marks(MountedItem item)
    {
        var (plane, body) = (PlaneOf(item), item.BodyDepthMm!.Value);
        var (from, to) = Reach(item);
        return item.Face == Face.Front ? [from, plane, plane + body, to] : [from, plane - body, plane, to];
    }

    /// <summary>What the first part of the stack is.</summary>
    public static string FirstWord(MountedItem item) => item.Face == Face.Front ? "projection" : "cables";

    /// <summary>What the last part of the stack is.</summary>
    public static string LastWord(MountedItem item) => item.Face == Face.Front ? "cables" : "projection";

    /// <summary>The stack line by line: what, and how deep, mm.</summary>
    public IEnumerable<(string What, double Mm)> Lines(MountedItem item)
    {
        var (depth, reach) = (scene.Cabinet.Depth, Reach(item));
        yield return ("Front door", depth.FrontDoorMm);
        yield return ("Clearance to the front door", reach.From - depth.FrontDoorMm);
        yield return item.Face == Face.Front ? ("Front projection", item.FrontProjectionMm) : ("Cables and bend radius", item.RearProjectionMm);
        yield return ("Body", item.BodyDepthMm!.Value);
        yield return item.Face == Face.Front ? ("Cables and bend radius", item.RearProjectionMm) : ("Projection to the rear", item.FrontProjectionMm);
        yield return ("Clearance to the rear door", depth.RearLimitMm - reach.To);
        yield return ("Rear door", depth.DepthMm - depth.RearLimitMm);
    }
}
