namespace RackCheck.Rules;

/// <summary>What has to be minded by whoever acts on a report.</summary>
public static class Cautions
{
    /// <summary>Stands in every report.</summary>
    public const string General =
        "This report is worked out from the data given and advises only: local codes and regulations and a qualified person's judgement decide.";

    /// <summary>Says which themes of the contract no rule judges yet, so that a release is not taken for more than it is.</summary>
    /// <param name="rules">The rules.</param>
    /// <returns>The caution, or null where every theme is judged.</returns>
    public static string? NotJudged(RuleSet rules)
    {
        var missing = Themes.Except(rules.All.Select(r => r.Descriptor.Theme)).ToArray();
        return missing.Length == 0 ? null : $"This version does not judge {string.Join(", ", missing)}: whatever the verdict, these are still to be checked by a person.";
    }

    private static readonly string[] Themes = ["layout", "depth", "load", "power", "cooling", "earthing", "cabling", "service", "delivery"];

    /// <summary>With findings on power and earth.</summary>
    public const string Electricity =
        "Before anything is opened, replugged or wired: isolate it at the supply, lock it off and prove it dead; with two supplies isolate both, and mind that a UPS goes on feeding. Only a qualified person may do it, to the local wiring rules.";

    /// <summary>With findings whose cure moves equipment.</summary>
    public const string Handling =
        "Before equipment is moved: isolate its supply and prove it dead, keep the rack from tipping, and lift with two people or a lift aid what is heavy or above shoulder height.";

    /// <summary>With findings on the way in.</summary>
    public const string Transport =
        "Before the rack is moved or lifted: see the whole way, doors, thresholds and floors, with its real sizes; people, truck and slings count on a lift too. Strap loose equipment, nobody under or below it, and tilt it only where its makers allow that.";
}
