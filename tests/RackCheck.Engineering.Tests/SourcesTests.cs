using System.Reflection;

namespace RackCheck.Engineering.Tests;

public sealed class SourcesTests
{
    private static readonly Source[] All =
        [.. typeof(Sources).GetProperties(BindingFlags.Public | BindingFlags.Static).Select(p => (Source)p.GetValue(null)!)];

    [Fact]
    public void Keys_are_unique() =>
        Assert.Equal(All.Length, All.Select(s => s.Key).Distinct(StringComparer.OrdinalIgnoreCase).Count());

    [Fact]
    public void Every_source_says_what_is_taken_from_it() =>
        Assert.All(All, s => Assert.True(s.Key.Length > 0 && s.Text.Length > 2 * s.Key.Length && s.Text.EndsWith('.'), s.Key));

    [Fact]
    public void Common_practice_is_called_so_and_nothing_else_is() =>
        Assert.All(All, s => Assert.Equal(s.Standing == SourceStanding.CommonPractice, s.Key.StartsWith("practice: ", StringComparison.Ordinal)));

    [Fact]
    public void Every_source_of_a_table_is_one_of_the_house() =>
        Assert.All(DataTables.All.SelectMany(t => t.Sources), s => Assert.Contains(s, All));
}
