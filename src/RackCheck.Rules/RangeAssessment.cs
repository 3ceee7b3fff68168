using RackCheck.Model;
using RackCheck.Remedies.Verification;
using RackCheck.Survey;
using RackCheck.Survey.Bounds;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Rules;

/// <summary>
/// Asks the rules that read missing facts again, with these at the ends of their plausible ranges. A rule with the same answer at all ends is assessed; one
/// whose answer turns within the ranges waits for the facts, which become questions.
/// </summary>
internal sealed class RangeAssessment
{
    private readonly RuleSet rules;
    private readonly ResolvedRack rack;
    private readonly IReadOnlyDictionary<string, RulePolicy>? policy;
    private readonly Action<RuleDescriptor, Exception> onRuleFault;
    private readonly MissingFacts facts;
    private readonly RuleContext?[] atEnds = new RuleContext?[(int)End.Middle + 1];
    private readonly Dictionary<(End End, int Turned), RuleContext> atTurned = [];
    private FactSet assumed;
    private PostedPointers? posted;

    public RangeAssessment(RuleSet rules, ResolvedRack rack, MissingFacts facts, Action<RuleDescriptor, Exception> onRuleFault)
    {
        (this.rules, this.rack, this.facts, this.onRuleFault, policy) = (rules, rack, facts, onRuleFault, rack.Posted.Policy?.Rules);
    }

    /// <summary>The missing facts.</summary>
    public MissingFacts Facts => facts;

    /// <summary>The rules whose answer depends on missing facts, by id.</summary>
    public List<OpenRule> Open { get; } = [];

    /// <summary>Findings that are graver over the whole range; they left the list.</summary>
    public HashSet<Finding> Replaced { get; } = new(ReferenceEqualityComparer.Instance);

    /// <summary>The ranges over which rules were assessed, one entry a fact.</summary>
    public IEnumerable<Assumption> Ranges()
    {
        for (var i = 0; i < FactTable.Bounded.Length; i++)
        {
            if (assumed.Has(i))
            {
                var (fact, range) = (FactTable.Bounded[i], facts.RangeOf(i));
                yield return new Assumption
                {
                    Pointers = [.. facts.PointersOf(i)], From = Quantities.Round(range.Low), To = Quantities.Round(range.High), Unit = fact.Unit,
                    Basis = fact.Assumed.Text, BasisKey = fact.Assumed.Key, BasisData = fact.Assumed.Values,
                };
            }
        }
    }

    /// <summary>Asks the rules again.</summary>
    /// <param name="all">The findings; those that hold over all ranges are added.</param>
    /// <param name="notAssessed">The rules that miss data; those that are assessed over the ranges are removed.</param>
    /// <param name="cancellation">Stops between two rules.</param>
    public void Run(FindingList all, List<NotAssessed> notAssessed, CancellationToken cancellation)
    {
        for (var i = 0; i < rules.RackRules.Length; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            var rule = rules.RackRules[i];
            var at = IndexOf(notAssessed, rule.Descriptor.Id);
            var entry = at < 0 ? null : notAssessed[at];
            var read = facts.Set.And(rules.FactsRead[i]);
            var waits = entry is { Reason: NotAssessedReason.Missing, Missing.Count: > 0 };
            if ((entry is not null && !waits) || (!waits && (read.IsEmpty || IsAdviceOnly(rule.Descriptor))) || IsOff(rule.Descriptor))
            {
                continue;
            }

            var own = FindingsOf(rule.Descriptor.Id, all.Written);
            var given = own is null && !waits ? RuleAnswer.Clean : new RuleAnswer(own ?? [], waits ? entry!.Missing : [], false);
            if (Ask(rule, read, given, all) && waits)
            {
                notAssessed.RemoveAt(at);
            }
        }
    }

    /// <summary>Adds the findings that hold over all ranges, and leaves open what a rule asks for: for racks that are compared.</summary>
    /// <param name="all">The findings.</param>
    /// <param name="notAssessed">The rules that miss data. Others were assessed with defaults and have no finding more.</param>
    /// <param name="cancellation">Stops between two rules.</param>
    public void AddFindings(FindingList all, IReadOnlyList<NotAssessed> notAssessed, CancellationToken cancellation)
    {
        foreach (var entry in notAssessed)
        {
            cancellation.ThrowIfCancellationRequested();
            if (entry is { Reason: NotAssessedReason.Missing, Missing.Count: > 0 } && rules.FindRackRule(entry.Rule) is { } rule)
            {
                AddFindings(rule, entry, all);
            }
        }
    }

    private void AddFindings(Rule rule, NotAssessed entry, FindingList all)
    {
        var given = new RuleAnswer(FindingsOf(entry.Rule, all.Written) ?? [], entry.Missing, false);
        var favourable = At(rule, End.Favourable);
        if (!favourable.IsFailed && favourable.Findings.Any(f => !given.Has(f)))
        {
            var ends = Ends(rule, facts.Set.And(rules.FactsReadBy(entry.Rule)), At(rule, End.Adverse));
            if (!ends.Exists(e => e.Answer.IsFailed))
            {
                var lasting = Lasting(rule, given, favourable, ends);
                Add(all, given, all.IsOutline ? lasting : Written(rule, lasting));
            }
        }
    }

    private static int IndexOf(List<NotAssessed> entries, string rule)
    {
        for (var i = 0; i < entries.Count; i++)
        {
            if (entries[i].Rule == rule)
            {
                return i;
            }
        }

        return -1;
    }

    private static List<Finding>? FindingsOf(string rule, List<Finding> all)
    {
        List<Finding>? own = null;
        foreach (var finding in all)
        {
            if (finding.Rule == rule)
            {
                (own ??= []).Add(finding);
            }
        }

        return own;
    }

    private static bool IsUnbounded(string pointer) => FactTable.Find(pointer)?.Fact is not { Range: not null };

    private bool IsOff(RuleDescriptor rule) => policy?.GetValueOrDefault(rule.Id)?.Severity == PolicySeverity.Off;

    private bool IsAdviceOnly(RuleDescriptor rule) =>
        (policy?.GetValueOrDefault(rule.Id)?.Severity is { } own ? (Severity)own : rule.Severity) == Severity.Advice;

    // Whether the rule is assessed.
    private bool Ask(Rule rule, FactSet read, RuleAnswer given, FindingList all)
    {
        // Most rules: nothing is wrong as described, nor at the adverse end.
        var adverse = At(rule, End.Adverse);
        var isPlain = ReferenceEquals(given, RuleAnswer.Clean) && !read.Has(FactTable.DecidingRules) && Pulls(read) == 1 << (int)Pull.OneWay;
        return (isPlain && ReferenceEquals(adverse, RuleAnswer.Clean)) || AskAtEnds(rule, read, given, adverse, all);
    }

    private bool AskAtEnds(Rule rule, FactSet read, RuleAnswer given, RuleAnswer adverse, FindingList all)
    {
        var ends = Ends(rule, read, adverse);
        if (ends.Exists(e => e.Answer.IsFailed))
        {
            return false;
        }

        var favourable = ends[^1].Answer;
        if (given is { Findings.Count: 0, Missing.Count: 0 } && ends.TrueForAll(static e => e.Answer is { Findings.Count: 0, Missing.Count: 0 }))
        {
            return true;
        }

        // What has no range was not filled in: where another rule takes over at the ends, that has not answered it.
        string[] still = given.Missing.Count == 0 && ends.TrueForAll(static e => e.Answer.Missing.Count == 0)
            ? []
            : [.. ends.SelectMany(e => e.Answer.Missing).Concat(given.Missing.Where(IsUnbounded)).Distinct()];
        var said = given;
        if (Lasting(rule, given, favourable, ends) is { Count: > 0 } lasting)
        {
            said = given.With(lasting);
            Add(all, given, Written(rule, lasting));
        }

        var turns = ends.Exists(e => !e.Answer.IsSame(said));
        if (!turns && still.Length == 0)
        {
            Assume(given.Missing);
            return true;
        }

        var gravest = still.Length > 0 && given.Missing.Count > 0
            ? Gravest(rule.Descriptor)
            : RuleAnswer.GravestDifference([.. ends.Select(e => e.Answer), said]);
        if (gravest < Severity.Advice)
        {
            var named = turns ? Named(rule, read, ends) : [];
            string[] turning = [.. named.SelectMany(facts.PointersOf)];

            // A rule can turn by a value that has a default alone. It still waits for what it misses, so that this is asked for too.
            var awaited = turning.Length > 0 && !turning.Any(given.Missing.Contains) ? given.Missing : [];
            Open.Add(new OpenRule(
                rule.Descriptor, gravest, [.. still.Concat(turning).Concat(awaited).Distinct()],
                [.. given.Findings.Where(f => !favourable.Has(f)).Select(f => f.Fingerprint)],
                still.Length > 0 || awaited.Count > 0 ? [] : [.. named.Where(n => Settles(rule, read, ends, n)).SelectMany(facts.PointersOf)]));
        }

        return false;
    }

    // A finding that is graver whatever is missing takes the place of the milder one.
    private void Add(FindingList all, RuleAnswer given, IEnumerable<Finding> further)
    {
        foreach (var finding in further)
        {
            if (given.Findings.FirstOrDefault(f => f.Fingerprint == finding.Fingerprint) is { } milder)
            {
                all.Written.Remove(milder);
                Replaced.Add(milder);
            }

            all.Written.Add(finding);
        }
    }

    // The favourable end is the last, where anything is wrong at another. Where nothing is at the adverse one, and no rule pulls apart, nothing is at any.
    private List<(End End, RuleAnswer Answer)> Ends(Rule rule, FactSet read, RuleAnswer adverse)
    {
        var ends = OwnEnds(rule, read, adverse);
        if (read.Has(FactTable.DecidingRules))
        {
            // Before the favourable end, which stays the last.
            ends.InsertRange(0, ends.Select(e => (e.End, At(rule, e.End, FactTable.DecidingRules))).ToArray());
        }

        return ends;
    }

    private List<(End End, RuleAnswer Answer)> OwnEnds(Rule rule, FactSet read, RuleAnswer adverse)
    {
        var pulls = Pulls(read);
        List<(End End, RuleAnswer Answer)> ends = [(End.Adverse, adverse)];
        var isClean = adverse is { IsFailed: false, Findings.Count: 0 };
        if (isClean)
        {
            if ((pulls & ~(1 << (int)Pull.OneWay)) == 0)
            {
                return ends;
            }

            // What pulls apart is tried at its other end too, all else still adverse: where nothing is wrong at either, nothing is at the favourable one.
            AddCrossed(ends, rule, pulls);
            if (ends.Count > 1 && ends.TrueForAll(e => e.Answer is { IsFailed: false, Findings.Count: 0 }))
            {
                return ends;
            }
        }

        var favourable = At(rule, End.Favourable);
        if (!isClean && adverse.IsSame(favourable))
        {
            AddCrossed(ends, rule, pulls);
        }

        ends.Add((End.Favourable, favourable));
        return ends;
    }

    // Ends that fill in the same values as another are left out.
    private void AddCrossed(List<(End End, RuleAnswer Answer)> ends, Rule rule, int pulls)
    {
        var byHeight = (pulls & (1 << (int)Pull.ByHeight)) != 0;
        if (byHeight || pulls == ((1 << (int)Pull.Apart) | (1 << (int)Pull.OneWay)))
        {
            ends.Add((End.Crossed, At(rule, End.Crossed)));
        }

        if (byHeight)
        {
            ends.Add((End.CrossedBack, At(rule, End.CrossedBack)));
        }
    }

    // The findings that hold at every end, though what is missing kept them from being found. They hold in the middle too, or the rule is not monotone in what
    // is missing.
    private List<Finding> Lasting(Rule rule, RuleAnswer given, RuleAnswer favourable, List<(End End, RuleAnswer Answer)> ends)
    {
        if (given.Missing.Count == 0)
        {
            return [];
        }

        var lasting = favourable.Findings.Where(f => !given.Covers(f) && ends.TrueForAll(e => e.Answer.Covers(f))).ToList();
        if (lasting.Count > 0)
        {
            var middle = At(rule, End.Middle);
            lasting.RemoveAll(f => !middle.Covers(f));
        }

        return lasting;
    }

    // Findings known by fingerprint, with their words and values.
    private IEnumerable<Finding> Written(Rule rule, List<Finding> lasting) => lasting.Count == 0 ? [] :
        At(rule, End.Favourable, inFull: true).Findings.Where(f => lasting.Exists(l => l.Fingerprint == f.Fingerprint)).Select(HoldingAnyway);

    private Finding HoldingAnyway(Finding finding) => RemedyTrials.Unremedied(HoldingOverRange(finding), RemedyTrials.MissingDecides);

    private Finding HoldingOverRange(Finding finding) => finding with
    {
        Message = finding.Message + CommonWordings.HoldsAnyway,
        MessageKey = finding.MessageKey + CommonWordings.HoldsAnywayKey,
        Pointers = (posted ??= new PostedPointers(rack.Posted)).Standing(finding.Pointers),
    };

    private Severity Gravest(RuleDescriptor rule) =>
        policy?.GetValueOrDefault(rule.Id)?.Severity is { } own and not PolicySeverity.Off ? (Severity)own : rule.Severity;

    // One bit for each kind of pull.
    private static int Pulls(FactSet read)
    {
        var pulls = 0;
        for (var i = 0; i < FactTable.Pulls.Length; i++)
        {
            pulls |= read.And(FactTable.Pulls[i]).IsEmpty ? 0 : 1 << i;
        }

        return pulls;
    }

    // The facts that turn the answer at some end of the others; where only several together do, a smallest set that does.
    private int[] Named(Rule rule, FactSet read, List<(End End, RuleAnswer Answer)> ends)
    {
        int[] candidates = [.. Enumerable.Range(0, FactTable.Bounded.Length).Where(read.Has)];
        int[] named = candidates.Length < 2
            ? candidates
            : [.. candidates.Where(c => ends.Exists(e => !At(rule, e.End, c).IsSame(e.Answer)))];
        return named.Length > 0 ? named : Together(rule, candidates, ends);
    }

    // From the adverse end to the favourable one the answer turns. One fact after the other stays adverse where the rest turns it still.
    private int[] Together(Rule rule, int[] candidates, List<(End End, RuleAnswer Answer)> ends)
    {
        var adverse = At(rule, End.Adverse);
        if (adverse.IsSame(ends[^1].Answer))
        {
            return candidates;
        }

        var turned = candidates.Aggregate(default(FactSet), static (set, fact) => set.With(fact));
        foreach (var fact in candidates)
        {
            var rest = turned.Without(fact);
            turned = At(rule, ContextOf(facts.At(End.Adverse, rest)), inFull: false).IsSame(adverse) ? turned : rest;
        }

        return Array.FindAll(candidates, turned.Has);
    }

    // Whether nothing is wrong with one fact at its favourable end, wherever the others are.
    private bool Settles(Rule rule, FactSet read, List<(End End, RuleAnswer Answer)> ends, int fact) =>
        !read.Has(FactTable.DecidingRules)
        && ends.TrueForAll(e => e.End == End.Favourable || At(rule, e.End, fact) is { IsFailed: false, Findings.Count: 0, Missing.Count: 0 });

    private void Assume(IReadOnlyList<string> missing)
    {
        foreach (var pointer in missing)
        {
            // A value that this rack cannot have is reported missing by some rules and has no range.
            if (FactTable.Find(pointer)?.Fact is { Range: not null } fact && FactTable.Bounded.IndexOf(fact) is var number && facts.Set.Has(number))
            {
                assumed = assumed.With(number);
            }
        }
    }

    private RuleContext ContextOf(RackSurvey survey) => new(rack.Completed(survey.Description), survey, new FindingList(), [], null);

    private RuleAnswer At(Rule rule, End end, int turned = -1, bool inFull = false) => At(
        rule,
        turned < 0 ? atEnds[(int)end] ??= ContextOf(facts.At(end))
            : atTurned.TryGetValue((end, turned), out var made) ? made
            : atTurned[(end, turned)] = ContextOf(facts.At(end, turned)),
        inFull);

#pragma warning disable CA1031 // A rule that throws must not fail the request: the rule then waits for what is missing.
    private RuleAnswer At(Rule rule, RuleContext context, bool inFull)
    {
        try
        {
            return context.Ask(rule, policy?.GetValueOrDefault(rule.Descriptor.Id), inFull);
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            onRuleFault(rule.Descriptor, fault);
            return new RuleAnswer([], [], true);
        }
    }
#pragma warning restore CA1031
}
