using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Architecture;

/// <summary>Conventions of the code.</summary>
public sealed partial class ConventionTests
{
    private static IEnumerable<Type> Types => Rooms.Names.SelectMany(r => Assembly.Load(r).GetTypes())
        .Where(t => t.Namespace?.StartsWith("RackCheck", StringComparison.Ordinal) == true && t.GetCustomAttribute<CompilerGeneratedAttribute>() is null);

    [Fact]
    public void Class_without_subclasses_is_sealed()
    {
        var bases = Types.Select(t => t.BaseType).Where(t => t is not null).Select(t => t!.IsGenericType ? t.GetGenericTypeDefinition() : t).ToHashSet();
        Assert.Empty(Types.Where(t => t is { IsClass: true, IsSealed: false, IsAbstract: false } && !bases.Contains(t)).Select(t => t.FullName));
    }

    [Fact]
    public void ContractRecord_is_immutable()
    {
        var records = typeof(RackDescription).Assembly.GetTypes().Where(t => t.Namespace == "RackCheck.Model" && t.IsClass);
        var settable =
            from record in records
            from property in record.GetProperties()
            where property.SetMethod is { } set && !set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit))
            select $"{record.Name}.{property.Name}";
        Assert.Empty(settable);
    }

    [Fact]
    public void ContractList_is_read_only()
    {
        var lists =
            from record in typeof(RackDescription).Assembly.GetTypes()
            where record.Namespace == "RackCheck.Model"
            from property in record.GetProperties()
            where property.PropertyType.IsArray
                || (property.PropertyType.IsGenericType && property.PropertyType.Name.StartsWith("List`", StringComparison.Ordinal))
            select $"{record.Name}.{property.Name}";
        Assert.Empty(lists);
    }

    [Fact]
    public void Code_uses_no_clock_sleep_or_machine_culture()
    {
        var found =
            from file in Repository.Sources("src")
            from line in File.ReadLines(file)
            where Forbidden().IsMatch(line)
            select $"{Path.GetFileName(file)}: {line.Trim()}";
        Assert.Empty(found);
    }

    [Fact]
    public void Rule_is_named_in_its_own_file_only()
    {
        var sources = Repository.Sources("src").ToDictionary(f => f, File.ReadAllText);
        var elsewhere =
            from rule in RuleSet.Default.All
            from source in sources
            where Path.GetFileNameWithoutExtension(source.Key) != rule.GetType().Name
            where source.Value.Contains($"Id = \"{rule.Descriptor.Id}\"", StringComparison.Ordinal) || NamesRule(source.Key, source.Value, rule.GetType())
            select $"{rule.Descriptor.Id} in {Path.GetFileName(source.Key)}";
        Assert.Empty(elsewhere);
    }

    // Outside its folder a rule with the name of a record of the contract is told from that by its namespace. As a type argument it is addressed, not named.
    private static bool NamesRule(string file, string source, Type rule)
    {
        var folder = rule.Namespace!.Split('.')[^1];
        var isShared = typeof(RackDescription).Assembly.GetType($"RackCheck.Model.{rule.Name}") is not null
            && !file.Contains($"RackCheck.Rules/{folder}/", StringComparison.Ordinal);
        return Regex.IsMatch(source, isShared ? $@"(?<!<Rules\.)\b{folder}\.{rule.Name}\b" : $@"\b(new|typeof|nameof)\W+{rule.Name}\b");
    }

    [Fact]
    public void File_has_limited_length() =>
        Assert.Empty(Repository.Sources("src").Concat(Repository.Sources("tests")).Where(f => File.ReadLines(f).Count() > 400).Select(Path.GetFileName));

    [Fact]
    public void No_line_is_over_160_columns()
    {
        var found =
            from file in Repository.Sources("src").Concat(Repository.Sources("tests"))
            from line in File.ReadLines(file).Select((text, index) => (text.Length, Number: index + 1))
            where line.Length > 160
            select $"{Path.GetRelativePath(Repository.Root, file)}:{line.Number}";
        Assert.Empty(found);
    }

    [GeneratedRegex(@"DateTime(Offset)?\.(Utc)?Now|Thread\.Sleep|Task\.Delay|CurrentCulture|CurrentUICulture|"
        + @"(?<!utcome)\.Result\b(?!\s*=)|\.GetAwaiter\(\)\.GetResult|Environment\.TickCount|new Random|NotImplementedException|TODO|FIXME")]
    private static partial Regex Forbidden();
}
