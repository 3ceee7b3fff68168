namespace RackCheck.Api.Tests.Architecture;

/// <summary>The projects of the service, from the top of the house to its foundation, and what each may know of the others.</summary>
internal static class Rooms
{
    public static IReadOnlyDictionary<string, string[]> MayKnow { get; } = new Dictionary<string, string[]>(StringComparer.Ordinal)
    {
        ["RackCheck.Api"] = ["RackCheck.Documents", "RackCheck.Planning", "RackCheck.Rules", "RackCheck.Remedies", "RackCheck.Survey", "RackCheck.Model", "RackCheck.Engineering"],
        ["RackCheck.Documents"] = ["RackCheck.Planning", "RackCheck.Rules", "RackCheck.Remedies", "RackCheck.Survey", "RackCheck.Model", "RackCheck.Engineering"],
        ["RackCheck.Planning"] = ["RackCheck.Rules", "RackCheck.Remedies", "RackCheck.Survey", "RackCheck.Model", "RackCheck.Engineering"],
        ["RackCheck.Rules"] = ["RackCheck.Remedies", "RackCheck.Survey", "RackCheck.Model", "RackCheck.Engineering"],
        ["RackCheck.Remedies"] = ["RackCheck.Survey", "RackCheck.Model", "RackCheck.Engineering"],
        ["RackCheck.Survey"] = ["RackCheck.Model", "RackCheck.Engineering"],
        ["RackCheck.Model"] = [],
        ["RackCheck.Engineering"] = [],
    };

    public static IEnumerable<string> Names => MayKnow.Keys;
}
