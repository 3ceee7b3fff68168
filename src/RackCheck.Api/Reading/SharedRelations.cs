using System.Text.RegularExpressions;
using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Survey.Limits;
using static System.FormattableString;

namespace RackCheck.Api.Reading;

/// <summary>Adds a fault.</summary>
/// <param name="pointer">JSON pointer, RFC 6901.</param>
/// <param name="code">One of <see cref="FaultCodes"/>.</param>
/// <param name="detail">Message for people.</param>
internal delegate void AddFault(string pointer, string code, string detail);

/// <summary>Relations that descriptions and baskets have in common.</summary>
internal static class SharedRelations
{
    private static readonly Regex TimePattern = new(Timestamps.Pattern, RegexOptions.CultureInvariant | RegexOptions.Compiled, TimeSpan.FromMilliseconds(100));

    private static readonly Regex PointerPattern =
        new(@"\A(/([^/~]|~[01])*)*\z", RegexOptions.CultureInvariant | RegexOptions.NonBacktracking, TimeSpan.FromMilliseconds(100));

    /// <summary>Finds supplies with duplicate ids.</summary>
    public static void SuppliesAreUnique(IReadOnlyList<Supply>? supplies, AddFault fail)
    {
        for (var i = 0; i < supplies?.Count; i++)
        {
            if (supplies[i] is { } supply && FirstIndex(supplies, supply.Id, static x => x?.Id) < i)
            {
                fail(Invariant($"/supplies/{i}/id"), FaultCodes.DuplicateId, $"Another supply has the id {supply.Id}.");
            }
        }
    }

    /// <summary>
    /// Finds three-phase supplies in Europe that are given with the voltage between two lines: their outlets are between a line and neutral, and all currents
    /// would be too low by sqrt(3).
    /// </summary>
    public static void VoltagesAreOfOutlets(IReadOnlyList<Supply>? supplies, IReadOnlyList<Pdu>? units, Region? region, AddFault fail)
    {
        for (var i = 0; i < supplies?.Count; i++)
        {
            if (region is Region.Eu or Region.Uk
                && supplies[i] is { Phases: 3, VoltageV: >= Currents.LeastLineToLineV and <= Currents.MostLineToLineV and var voltage } supply
                && units?.Any(u => u?.Supply == supply.Id && u.Groups?.Any(g => g?.Phase >= Phase.L1L2) == true) != true)
            {
                var has = Invariant($"State what an outlet of supply {supply.Id} has between a line and neutral: {voltage / Math.Sqrt(3):0} V.");
                fail(Invariant($"/supplies/{i}/voltageV"), FaultCodes.Inconsistent, Invariant($"{voltage:0.###} V is between two lines. {has}"));
            }
        }
    }

    /// <summary>Finds policy settings that the rules do not allow.</summary>
    public static void PolicyIsAllowed(RuleSet rules, Policy? policyGiven, AddFault fail)
    {
        if (policyGiven?.Rules is not { } policies)
        {
            return;
        }

        foreach (var (id, policy) in policies)
        {
            var pointer = FaultList.Below("/policy/rules", id);
            if (rules.Find(id) is not { } rule)
            {
                fail(pointer, FaultCodes.UnknownRule, "There is no such rule.");
                continue;
            }

            if (policy is null)
            {
                fail(pointer, FaultCodes.NullValue, "An element must not be null.");
                continue;
            }

            if (rule.Safety && policy.Severity is { } severity && severity > (PolicySeverity)(int)rule.Severity)
            {
                fail(pointer + "/severity", FaultCodes.SafetyWeakened, "A safety rule can only be made stricter; it cannot be weakened or switched off.");
            }

            foreach (var (name, value) in policy.Limits ?? new Dictionary<string, double>())
            {
                LimitIsAllowed(fail, rule, name, value, FaultList.Below(pointer + "/limits", name));
            }
        }
    }

    private static void LimitIsAllowed(AddFault fail, RuleDescriptor rule, string name, double value, string pointer)
    {
        if (rule.Limits.FirstOrDefault(l => l.Name == name) is not { } limit)
        {
            var names = rule.Limits.Count == 0 ? "none" : string.Join(", ", rule.Limits.Select(l => l.Name));
            fail(pointer, FaultCodes.UnknownLimit, $"{rule.Id} has no such limit. Its limits: {names}.");
        }
        else if (!(value >= limit.Minimum && value <= limit.Maximum))
        {
            fail(pointer, FaultCodes.OutOfRange, RangeWording.Outside(value, limit.Minimum, limit.Maximum, " " + limit.Unit));
        }
        else if (rule.Safety && (limit.Stricter == Stricter.Lower ? value > limit.Default : value < limit.Default))
        {
            var bound = limit.Stricter == Stricter.Lower ? "maximum" : "minimum";
            fail(pointer, FaultCodes.SafetyWeakened, Invariant($"A safety rule can only be made stricter: {bound} {limit.Default} {limit.Unit}."));
        }
    }

    /// <summary>Finds acceptances that the rules do not allow.</summary>
    public static void AcceptancesAreAllowed(RuleSet rules, IReadOnlyList<Acceptance>? acceptances, string? asOf, AddFault fail)
    {
        for (var i = 0; i < acceptances?.Count; i++)
        {
            if (acceptances[i] is not { Rule: { } id } acceptance)
            {
                continue;
            }

            var pointer = Invariant($"/acceptances/{i}");
            if (rules.Find(id) is not { } rule)
            {
                fail(pointer + "/rule", FaultCodes.UnknownRule, "There is no such rule.");
            }
            else if (rule.Safety)
            {
                fail(pointer + "/rule", FaultCodes.SafetyWeakened, "Findings of a safety rule cannot be accepted.");
            }

            if ((acceptance.Fingerprint is null ? 0 : 1) + (acceptance.Item is null ? 0 : 1) + (acceptance.Pointer is null ? 0 : 1) != 1)
            {
                fail(pointer, FaultCodes.Inconsistent, "An acceptance identifies its finding by one of fingerprint, item and pointer.");
            }

            if (acceptance.Pointer is { } place && !PointerPattern.IsMatch(place))
            {
                fail(
                    pointer + "/pointer",
                    FaultCodes.WrongForm,
                    "It is not a JSON pointer (RFC 6901), such as /items/3: each step begins with /, and ~ is written ~0, / in a name ~1.");
            }

            TimeExists(acceptance.AcceptedAt, pointer + "/acceptedAt", fail);
            TimeExists(acceptance.ExpiresAt, pointer + "/expiresAt", fail);
            if (acceptance.ExpiresAt is not null && asOf is null)
            {
                fail(pointer + "/expiresAt", FaultCodes.Inconsistent, "An acceptance that expires requires asOf, so that the answer can be repeated.");
            }
        }

        TimeExists(asOf, "/asOf", fail);
    }

    /// <summary>Sign-offs are for safety rules.</summary>
    /// <param name="rules">The rules.</param>
    /// <param name="signOffs">The sign-offs.</param>
    /// <param name="fail">Adds a fault.</param>
    public static void SignOffsAreAllowed(RuleSet rules, IReadOnlyList<SignOff>? signOffs, AddFault fail)
    {
        for (var i = 0; i < signOffs?.Count; i++)
        {
            if (signOffs[i] is not { Rule: { } id } signOff)
            {
                continue;
            }

            var pointer = Invariant($"/signOffs/{i}");
            if (rules.Find(id) is not { } rule)
            {
                fail(pointer + "/rule", FaultCodes.UnknownRule, "There is no such rule.");
            }
            else if (!rule.Safety)
            {
                fail(pointer + "/rule", FaultCodes.Inconsistent, "Only safety rules take a sign-off. Findings of other rules can be accepted.");
            }

            TimeExists(signOff.At, pointer + "/at", fail);
        }
    }

    // A text of another form is reported by its pattern.
    private static void TimeExists(string? text, string pointer, AddFault fail)
    {
        if (text is not null && TimePattern.IsMatch(text) && !Timestamps.TryParse(text, out _))
        {
            fail(pointer, FaultCodes.WrongForm, "There is no such date and time.");
        }
    }

    /// <summary>Index of the first element with an id; the length of the list if there is none.</summary>
    /// <remarks>Lists of the contract have at most 200 elements; a linear search is faster than building a table.</remarks>
    public static int FirstIndex<TElement>(IReadOnlyList<TElement> list, string? id, Func<TElement, string?> idOf)
    {
        var index = 0;
        while (index < list.Count && (id is null || idOf(list[index]) != id))
        {
            index++;
        }

        return index;
    }
}
