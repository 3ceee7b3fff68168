namespace RackCheck.Api.Tests.Architecture;

/// <summary>The projects of the service from top to bottom, and the projects that each may reference.</summary>
internal static class Rooms
{
    public static IReadOnlyDictionary<string, string[]> MayKnow { get; } = new Dictionary<string, string[]>(StringComparer.Ordinal)
    {
        ["RackCheck.Api"] =
        [
            "RackCheck.Documents", "RackCheck.Planning", "RackCheck.Rules", "RackCheck.Remedies", "RackCheck.Survey",
            "RackCheck.Model", "RackCheck.Engineering",
        ],
        ["RackCheck.Documents"] =
        [
            "RackCheck.Planning", "RackCheck.Rules", "RackCheck.Remedies", "RackCheck.Survey", "RackCheck.Model",
            "RackCheck.Engineering",
        ],
        ["RackCheck.Planning"] = ["RackCheck.Rules", "RackCheck.Remedies", "RackCheck.Survey", "RackCheck.Model", "RackCheck.Engineering"],
        ["RackCheck.Rules"] = ["RackCheck.Remedies", "RackCheck.Survey", "RackCheck.Model", "RackCheck.Engineering"],
        ["RackCheck.Remedies"] = ["RackCheck.Survey", "RackCheck.Model", "RackCheck.Engineering"],
        ["RackCheck.Survey"] = ["RackCheck.Model", "RackCheck.Engineering"],
        ["RackCheck.Model"] = [],
        ["RackCheck.Engineering"] = [],
    };

    /// <summary>Projects that the compiler loads; the service knows nothing of them.</summary>
    public static IReadOnlyList<string> OfTheCompiler { get; } = ["RackCheck.ContractGenerator"];

    public static IEnumerable<string> Names => MayKnow.Keys;
}
