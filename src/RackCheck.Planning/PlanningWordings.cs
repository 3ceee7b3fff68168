using RackCheck.Model;
using RackCheck.Planning.Baskets;
using RackCheck.Planning.Building;
using RackCheck.Planning.Proposals;

namespace RackCheck.Planning;

/// <summary>Wordings of texts about orders and proposals, for clients that word them anew.</summary>
public static class PlanningWordings
{
    /// <summary>All of them.</summary>
    public static IReadOnlyList<MessageWording> All { get; } =
    [
        .. new[]
        {
            typeof(LineWordings), typeof(ExcessWordings), typeof(StatusWordings), typeof(BuildBases), typeof(ProposalWordings), typeof(RemedyLoop),
        }.SelectMany(MessageWording.DeclaredIn),
    ];
}
