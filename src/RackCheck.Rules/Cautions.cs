using RackCheck.Model;

namespace RackCheck.Rules;

/// <summary>Safety notes of a report.</summary>
public static class Cautions
{
    /// <summary>Part of every report.</summary>
    public static readonly WordedText General = new(
        "caution.general",
        "This report is calculated from the given data and is advisory only. "
        + "Local codes and regulations and the judgement of a qualified person take precedence.");

    /// <summary>The same for pages that are about reports and are none.</summary>
    public const string Documentation =
        "Reports are calculated from the given data and are advisory only. "
        + "Local codes and regulations, the makers' instructions and the judgement of a qualified person take precedence.";

    /// <summary>Names the themes of the contract that have no rules yet, to avoid a false sense of approval.</summary>
    /// <param name="rules">The rules.</param>
    /// <returns>The caution, or null where every theme has a rule.</returns>
    public static WordedText? NotJudged(RuleSet rules)
    {
        var missing = Themes.Except(rules.All.Select(r => r.Descriptor.Theme)).ToArray();
        return missing.Length == 0 ? null : new WordedText(ThemesWithoutRules, ("themes", Scalar.Ids(missing)));
    }

    private static readonly MessageWording ThemesWithoutRules = new(
        "caution.not-judged", "This version does not check these themes: {themes:exact}. Whatever the verdict, a person must check them.");

    private static readonly string[] Themes = ["layout", "depth", "load", "power", "cooling", "earthing", "cabling", "service", "delivery"];

    /// <summary>For a rack with so many cords and outlets that the search for an assignment stopped at its limit.</summary>
    public static readonly WordedText SearchCutShort = new(
        "caution.search-cut-short",
        "The search for outlets stopped at its limit. The assignment of cords in this report may not be the best one; connections in the request replace it.");

    /// <summary>For findings on power and earthing.</summary>
    public static readonly WordedText Electricity = new(
        "caution.electricity",
        "Before opening, replugging or wiring equipment: isolate it at the supply, lock it off and prove it dead. Isolate both supplies of dual-fed equipment. "
        + "A UPS continues to supply its outlets. Only a qualified person may do this work, to the local wiring rules.");

    /// <summary>For racks on the floor with more than two items on slides at one side and no interlock.</summary>
    public static readonly WordedText PullOut = new(
        "caution.pull-out",
        "Stability is checked with at most two items pulled out. Pull out one item at a time, and put a label on the rack that says so.");

    /// <summary>For findings whose remedy moves equipment.</summary>
    public static readonly WordedText Handling = new(
        "caution.handling",
        "Before moving equipment: isolate its supply, prove it dead and secure the rack against tipping. "
        + "Lift heavy equipment, and equipment above shoulder height, with two people or a lifting aid.");

    /// <summary>For findings on the delivery route.</summary>
    public static readonly WordedText Transport = new(
        "caution.transport",
        "Before moving or lifting the rack: inspect the whole delivery route, its doors, thresholds and floors, and measure it. "
        + "The load of a lift includes people, pallet truck and slings. Secure loose equipment, keep people clear of the load, "
        + "and tilt the rack only where its manufacturers permit it.");

    /// <summary>Wordings of the cautions.</summary>
    public static IReadOnlyList<MessageWording> Wordings { get; } = [.. MessageWording.DeclaredIn(typeof(Cautions))];
}
