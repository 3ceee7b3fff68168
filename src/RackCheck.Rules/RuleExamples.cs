namespace RackCheck.Rules;

/// <summary>The example racks of the rules: JSON files beside them, named after the class, embedded in this assembly.</summary>
internal static class RuleExamples
{
    /// <summary>Reads an example.</summary>
    /// <param name="className">Class of the rule.</param>
    /// <param name="outcome">Result of the rule: fails or passes.</param>
    /// <returns>JSON of a rack.</returns>
    /// <exception cref="InvalidOperationException">The file is not there.</exception>
    public static string Read(string className, string outcome)
    {
        var name = $"Rules/{className}.{outcome}.json";
        using var stream = typeof(RuleExamples).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"There is no example {name}.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
