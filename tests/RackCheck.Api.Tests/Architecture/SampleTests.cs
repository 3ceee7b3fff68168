using System.Text.RegularExpressions;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Architecture;

/// <summary>How many samples the properties run on.</summary>
public sealed partial class SampleTests
{
    [FullSampleFact]
    public void Properties_ran_on_all_their_samples() => Assert.True(Samples.Share >= 1);

    [Theory]
    [InlineData(3_000, 20, 0.1, 300)]
    [InlineData(3_000, 20, 1, 3_000)]
    [InlineData(3_000, 20, 10, 30_000)]
    [InlineData(100, 20, 0.1, 20)]
    [InlineData(10, 20, 0.1, 10)]
    [InlineData(10, 20, 3, 30)]
    public void Share_scales_the_number_down_to_a_minimum(int full, int least, double share, int samples) =>
        Assert.Equal(samples, Samples.Of(full, least, share));

    [Theory]
    [InlineData(null, 0.1)]
    [InlineData("", 0.1)]
    [InlineData("0.5", 0.5)]
    [InlineData("20", 20)]
    public void Share_is_a_tenth_unless_given(string? value, double share) => Assert.Equal(share, Samples.ShareOf(value));

    [Theory]
    [InlineData("0")]
    [InlineData("-1")]
    [InlineData("all")]
    [InlineData("NaN")]
    [InlineData("1e9")]
    public void Share_out_of_range_is_refused(string value) => Assert.Throws<InvalidOperationException>(() => Samples.ShareOf(value));

    [Fact]
    public void Every_property_takes_its_number_of_samples_from_the_share_and_has_the_trait()
    {
        var properties = Repository.Sources("tests").Select(f => (File: Path.GetFileName(f), Text: File.ReadAllText(f)))
            .Where(f => Property().IsMatch(f.Text)).ToArray();
        Assert.True(properties.Length > 20, $"{properties.Length} files with properties");
        Assert.Empty(properties.Where(f => Property().Count(f.Text) != Scaled().Count(f.Text)).Select(f => $"{f.File}: a number of its own"));
        Assert.Empty(properties.Where(f => Property().Count(f.Text) > Trait().Count(f.Text)).Select(f => $"{f.File}: no trait"));
    }

    [GeneratedRegex(@"\.Sample\(")]
    private static partial Regex Property();

    [GeneratedRegex(@"iter: Samples\.Of\(")]
    private static partial Regex Scaled();

    [GeneratedRegex(@"\[Trait\(""Kind"", ""property""\)\]")]
    private static partial Regex Trait();
}
