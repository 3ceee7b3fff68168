namespace RackCheck.Api.Tests.Architecture;

/// <summary>Finds circular references between namespaces, direct or indirect. A nested namespace counts separately.</summary>
internal static class NamespaceCircles
{
    /// <summary>Finds the circles among the namespaces below a root.</summary>
    /// <returns>One line per circle: its namespaces and one example of each reference.</returns>
    public static IReadOnlyList<string> In(IEnumerable<string> assemblyPaths, string root)
    {
        var examples = new SortedDictionary<(string From, string To), string>();
        var references = assemblyPaths.SelectMany(TypeReferences.Of)
            .Where(r => IsBelow(r.From, root) && IsBelow(r.To, root) && r.From.Namespace != r.To.Namespace);
        foreach (var (from, to) in references)
        {
            examples.TryAdd((from.Namespace, to.Namespace), $"{from} -> {to}");
        }

        var known = examples.Keys.ToLookup(e => e.From, e => e.To);
        var reached = known.ToDictionary(n => n.Key, n => Reached(n.Key, known));
        return
        [
            .. reached.Where(n => n.Value.Contains(n.Key))
                .GroupBy(n => string.Join(
                    ", ", n.Value.Where(other => reached.GetValueOrDefault(other)?.Contains(n.Key) == true).Order(StringComparer.Ordinal)))
                .Select(circle => circle.Key.Split(", "))
                .Select(circle => $"{string.Join(", ", circle)}: "
                    + string.Join("; ", examples.Where(e => circle.Contains(e.Key.From) && circle.Contains(e.Key.To)).Select(e => e.Value))),
        ];
    }

    private static bool IsBelow(TypeName type, string root) =>
        type.Namespace == root || type.Namespace.StartsWith(root + ".", StringComparison.Ordinal);

    private static HashSet<string> Reached(string start, ILookup<string, string> known)
    {
        var reached = new HashSet<string>(StringComparer.Ordinal);
        var open = new Stack<string>([start]);
        while (open.TryPop(out var next))
        {
            foreach (var other in known[next].Where(reached.Add))
            {
                open.Push(other);
            }
        }

        return reached;
    }
}
