using RackCheck.Model;
using RackCheck.Remedies.Verification;
using RackCheck.Survey;
using RackCheck.Survey.Bounds;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Rules;

/// <summary>
/// A rack that all rules have judged. Where a remedy changes neither its cabinet nor its items, the rules that do not read what it changes answer for the
/// changed rack as they did for this one.
/// </summary>
internal sealed class JudgedRack
{
    /// <summary>Sections on which so much depends that a rack that differs in them is judged as a whole.</summary>
    public const Sections Whole = Sections.Cabinet | Sections.Items | Sections.Other;

    private readonly RuleSet rules;
    private readonly ResolvedRack rack;
    private readonly Finding[] given;
    private Finding[] replaced = [];
    private Finding[] added = [];
    private MissingFacts? facts;

    private JudgedRack(RuleSet rules, ResolvedRack rack, RackSurvey survey, Finding[] given) =>
        (this.rules, this.rack, Survey, this.given) = (rules, rack, survey, given);

    /// <summary>Its survey.</summary>
    public RackSurvey Survey { get; }

    /// <summary>Whether a finding came or went because it holds for every plausible value of what is missing.</summary>
    public bool TurnsOverRanges => replaced.Length > 0 || added.Length > 0;

    /// <summary>Notes what the rules say of a rack as it is described.</summary>
    /// <param name="rules">The rules.</param>
    /// <param name="rack">The rack.</param>
    /// <param name="survey">Its survey.</param>
    /// <param name="all">Their findings.</param>
    /// <returns>The rack; null where nothing was found, a rule failed or findings are only counted.</returns>
    public static JudgedRack? Of(RuleSet rules, ResolvedRack rack, RackSurvey survey, FindingList all) =>
        all.Written.Count == 0 || all.IsIncomplete || all.Count > all.Written.Count ? null : new JudgedRack(rules, rack, survey, [.. all.Written]);

    /// <summary>Notes what they say over the ranges of what is missing.</summary>
    /// <param name="all">The findings; those that hold over all ranges were added at the end.</param>
    /// <param name="assessment">The assessment that added them.</param>
    public void OverRanges(FindingList all, RangeAssessment assessment) =>
        (replaced, added, facts) = ([.. assessment.Replaced], [.. all.Written.Skip(given.Length - assessment.Replaced.Count)], assessment.Facts);

    /// <summary>The missing facts of a changed rack.</summary>
    /// <param name="other">The changed rack.</param>
    /// <param name="changed">The sections in which it differs.</param>
    /// <returns>The facts, found by those of this rack; null where they are to be found anew.</returns>
    public MissingFacts? FactsOf(ResolvedRack other, Sections changed) =>
        facts is null || (changed & (Whole | Sections.Supplies | Sections.Pdus)) != 0 ? null : new MissingFacts(other, facts, changed);

    /// <summary>The sections in which another rack differs.</summary>
    /// <param name="other">The other rack.</param>
    public Sections ChangedIn(ResolvedRack other) => SectionTable.Changed(rack.Posted, other.Posted);

    /// <summary>Adds the findings of the rules that do not read what changed.</summary>
    /// <param name="findings">The findings of those that do.</param>
    /// <param name="changed">What changed.</param>
    public void AddOthers(FindingList findings, Sections changed) => findings.Written.AddRange(given.Where(f => IsOther(f, changed)));

    /// <summary>Makes them those that hold over the ranges of what is missing.</summary>
    /// <param name="findings">The findings with those of <see cref="AddOthers"/>.</param>
    /// <param name="changed">What changed.</param>
    public void AddOthersOverRanges(FindingList findings, Sections changed)
    {
        findings.Written.RemoveAll(f => Array.Exists(replaced, r => ReferenceEquals(r, f)));
        findings.Written.AddRange(added.Where(f => IsOther(f, changed)));
    }

    private bool IsOther(Finding finding, Sections changed) => (rules.SectionsReadBy(finding.Rule) & changed) == 0;
}
