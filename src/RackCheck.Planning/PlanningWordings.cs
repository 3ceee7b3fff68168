using RackCheck.Model;
using RackCheck.Planning.Baskets;
using RackCheck.Planning.Building;

namespace RackCheck.Planning;

/// <summary>Wordings of texts about orders, for clients that word them anew.</summary>
public static class PlanningWordings
{
    /// <summary>All of them.</summary>
    public static IReadOnlyList<MessageWording> All { get; } =
    [
        .. new[] { typeof(LineWordings), typeof(ExcessWordings), typeof(StatusWordings), typeof(BuildBases) }.SelectMany(MessageWording.DeclaredIn),
    ];
}
