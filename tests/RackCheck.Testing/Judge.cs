using System.Collections;
using System.Collections.Concurrent;
using System.ComponentModel.DataAnnotations;
using System.Reflection;
using RackCheck.Model;
using RackCheck.Remedies.Patches;
using RackCheck.Remedies.Verification;
using RackCheck.Rules;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Testing;

/// <summary>Judges remedies as a client would: apply the patch, check again, compare.</summary>
public static class Judge
{
    private static readonly ConcurrentDictionary<Type, (PropertyInfo, ValidationAttribute[])[]> Members = new();

    /// <summary>A checker whose rules must not fail: in tests a throw is a fault.</summary>
    public static RackChecker Checker { get; } = new(RuleSet.Default, Throw);

    /// <summary>One whose rules answer for what is given, without ranges of what is missing.</summary>
    public static RackChecker AsGiven { get; } = new(RuleSet.Default, Throw) { AssessesRanges = false };

    /// <summary>One whose rules judge every remedy, whatever it changes.</summary>
    public static RackChecker Whole { get; } = new(RuleSet.Default, Throw) { JudgesWholeRacks = true };

    /// <summary>Checks a rack, its part numbers looked up in the catalogue of the demo.</summary>
    public static CheckReport Check(RackDescription rack) => Checker.Check(Resolve(rack));

    /// <summary>A rack with its part numbers looked up in the catalogue of the demo.</summary>
    public static ResolvedRack Resolve(RackDescription rack) =>
        ResolvedRack.PartNumbers(rack).Count == 0 ? ResolvedRack.Plain(rack) : ResolvedRack.Of(rack, DemoProducts.ByPartNumber);

    /// <summary>
    /// One with the rules on layout, depth and acceptances only, for tests that count what a report holds: rules of other themes leave them alone.
    /// </summary>
    public static RackChecker Geometry { get; } = new(GeometryRules, Throw) { AssessesRanges = false };

    /// <summary>Those rules.</summary>
    public static RuleSet GeometryRules => RuleSet.Of(RuleSet.Default.All.Where(r => r.Descriptor.Theme is "layout" or "depth" or "acceptance"));

    /// <summary>Whether a finding holds over the whole range of what is missing: no remedy is offered before the data is given.</summary>
    public static bool HoldsOverRanges(Finding finding) => finding.NoRemedyKey == RemedyTrials.MissingDecides.Key;

    /// <summary>What is wrong with a remedy: it does not apply, leaves no sound request, does not clear its finding, or brings an error.</summary>
    public static IEnumerable<string> Faults(RackDescription rack, CheckReport report, Finding finding, Remedy remedy) =>
        Faults(Resolve(rack), report, finding, remedy);

    /// <summary>The same of a rack with other products than those of the demo.</summary>
    public static IEnumerable<string> Faults(ResolvedRack resolved, CheckReport report, Finding finding, Remedy remedy)
    {
        var rack = resolved.Posted;
        RackDescription patched;
        string? fault = null;
        try
        {
            patched = RackPatch.Apply(rack, remedy);
        }
        catch (RackPatchException e)
        {
            fault = $"does not apply: {e.Message}";
            patched = rack;
        }

        if (fault is not null)
        {
            yield return fault;
            yield break;
        }

        foreach (var unsound in Unsound(patched))
        {
            yield return $"leaves no sound request: {unsound}";
        }

        var after = Checker.Recheck(resolved.With(patched));
        if (after.Findings.Any(f => IsSame(f, finding)))
        {
            yield return "does not clear its finding";
        }

        foreach (var error in Errors(after).Where(e => IsNew(e, report)))
        {
            yield return $"brings {error.Rule}: {error.Message}";
        }
    }

    /// <summary>Whether an error is new, or worse than before by its utilisation.</summary>
    public static bool IsNew(Finding error, CheckReport before) =>
        !Errors(before).Any(b => IsSame(b, error) && !((error.UtilisationPercent ?? 0) > (b.UtilisationPercent ?? 0) + 0.001));

    public static bool IsSame(Finding one, Finding other) => one.Rule == other.Rule && one.Fingerprint == other.Fingerprint;

    public static IEnumerable<Finding> Errors(CheckReport report) => report.Findings.Where(f => f.Severity == Severity.Error);

    /// <summary>What the request's validation would refuse: ids used twice or pointing nowhere, and members out of their range.</summary>
    public static IEnumerable<string> Unsound(RackDescription rack)
    {
        string[] ids = [.. rack.Items.Select(i => i.Id)];
        string[] units = [.. (rack.Pdus ?? []).Select(u => u.Id)];
        string[] supplies = [.. (rack.Supplies ?? []).Select(s => s.Id)];
        return ids.GroupBy(i => i).Where(g => g.Count() > 1).Select(g => $"item {g.Key} twice")
            .Concat(rack.Items.Where(i => i.OnShelf is { } shelf && !ids.Contains(shelf)).Select(i => $"{i.Id} on {i.OnShelf}, which is not there"))
            .Concat((rack.Connections ?? []).Where(c => !ids.Contains(c.Item) || !units.Contains(c.Pdu)).Select(c => $"connection of {c.Item} to {c.Pdu}"))
            .Concat((rack.Connections ?? []).Where(c => PlugOrGroupIsAbsent(rack, c)).Select(c => $"plug or group of {c.Item} on {c.Pdu}"))
            .Concat(rack.Items.Where(i => i is { HeightU: null, PartNumber: null }).Select(i => $"{i.Id} without a height"))
            .Concat((rack.Pdus ?? []).Where(u => u.PartNumber is null && (u.RatedA is null || u.Groups is null)).Select(u => $"{u.Id} without its data"))
            .Concat(rack.Cabinet is { PartNumber: null } c && (c.HeightU is null || c.WidthMm is null || c.DepthMm is null
                || c.FrontDoor is { Style: null, PartNumber: null } || c.RearDoor is { Style: null, PartNumber: null }) ? ["cabinet without its data"] : [])
            .Concat((rack.Pdus ?? []).Where(u => !supplies.Contains(u.Supply)).Select(u => $"{u.Id} on supply {u.Supply}, which is not there"))
            .Concat(OutOfRange(rack));
    }

    private static bool PlugOrGroupIsAbsent(RackDescription rack, Connection connection)
    {
        var item = rack.Items.FirstOrDefault(i => i.Id == connection.Item);
        var pdu = rack.Pdus?.FirstOrDefault(u => u.Id == connection.Pdu);
        var plugsAreOpen = item is { PartNumber: not null, Power.Plugs: null } or { PartNumber: not null, Power: null };
        var groupsAreOpen = pdu is { PartNumber: not null, Groups: null };
        return (!plugsAreOpen && (connection.Plug ?? 0) >= (item?.Power?.Plugs?.Count ?? 0))
            || (!groupsAreOpen && pdu?.Groups?.Any(g => g.Id == connection.Group) != true);
    }

    private static (PropertyInfo, ValidationAttribute[])[] MembersOf(Type type) =>
        [.. type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Select(p => (p, p.GetCustomAttributes<ValidationAttribute>().ToArray()))];

    private static IEnumerable<string> OutOfRange(object record)
    {
        foreach (var (property, rules) in Members.GetOrAdd(record.GetType(), MembersOf))
        {
            var value = property.GetValue(record);
            foreach (var broken in rules.Where(r => value is not null && !r.IsValid(value)))
            {
                yield return $"{record.GetType().Name}.{property.Name} is {value}: {broken.GetType().Name}";
            }

            IEnumerable parts = value switch
            {
                null or string or ValueType => Array.Empty<object>(),
                IDictionary map => map.Values,
                IEnumerable list => list,
                _ => new[] { value },
            };
            foreach (var fault in parts.Cast<object>().Where(p => p.GetType().Namespace == typeof(RackDescription).Namespace && !p.GetType().IsEnum)
                .SelectMany(OutOfRange))
            {
                yield return fault;
            }
        }
    }

    private static void Throw(RuleDescriptor rule, Exception fault) => throw new InvalidOperationException($"{rule.Id} threw.", fault);
}
