using RackCheck.Documents.Sheets;
using RackCheck.Documents.Tests.Parts;
using RackCheck.Testing;

namespace RackCheck.Documents.Tests.Sheets;

public sealed class EarthConductorTests
{
    // The area as given, unless none is or the rules find it too small: then one by the rules and common practice.
    [Theory]
    [InlineData(null, "16 mm2")]
    [InlineData(10.0, "10 mm2")]
    [InlineData(1.5, "16 mm2")]
    public void Main_earth_conductor_is_the_same_in_all_documents(double? givenMm2, string area)
    {
        var rack = EarthRacks.Earthed(main: givenMm2);
        Assert.Contains(Listed.Bare(rack).Lines, l => l.Description == "Main protective conductor, " + area);
        Assert.Contains(Texts(SheetKind.Specification), t => t == "Main protective conductor, " + area);
        Assert.Contains(Texts(SheetKind.PackingList), t => t.EndsWith($"main protective conductor ({area}).", StringComparison.Ordinal));
        var rows = ReadSheet.Html(ReadSheet.Of(rack, SheetKind.Installation).Sheet).Named("tr");
        Assert.Contains(rows.Single(r => r.Value.Contains("building's", StringComparison.Ordinal)).Elements(), c => c.Value == area);

        IReadOnlyList<string> Texts(SheetKind kind) => ReadSheet.Html(ReadSheet.Of(rack, kind).Sheet).Texts();
    }
}
