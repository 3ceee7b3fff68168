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
    public void Every_source_states_the_values_taken() =>
        Assert.All(All, s => Assert.True(s.Key.Length > 0 && s.Text.Length > 2 * s.Key.Length && s.Text.EndsWith('.'), s.Key));

    [Fact]
    public void Only_common_practice_has_practice_key() =>
        Assert.All(All, s => Assert.Equal(s.Standing == SourceStanding.CommonPractice, s.Key.StartsWith("practice: ", StringComparison.Ordinal)));

    [Fact]
    public void Every_source_of_a_table_is_listed() =>
        Assert.All(DataTables.All.SelectMany(t => t.Sources), s => Assert.Contains(s, All));
}
