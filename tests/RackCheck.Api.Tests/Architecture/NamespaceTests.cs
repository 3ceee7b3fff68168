using System.Reflection;

namespace RackCheck.Api.Tests.Architecture;

/// <summary>No namespaces refer to each other in a circle, not even within a project.</summary>
public sealed class NamespaceTests
{
    private const string Fixtures = "RackCheck.Api.Tests.Architecture.Circles";

    [Fact]
    public void Namespaces_have_no_circular_reference()
    {
        var circles = NamespaceCircles.In(Rooms.Names.Select(r => Assembly.Load(r).Location), "RackCheck");
        Assert.True(circles.Count == 0, string.Join(Environment.NewLine, circles));
    }

    [Theory]
    [InlineData("BySignature")]
    [InlineData("ByBody")]
    [InlineData("ByLambda")]
    [InlineData("ByAttribute")]
    [InlineData("ByConstraint")]
    [InlineData("ByParent")]
    public void Circle_is_found_with_a_reference_for_each_direction(string name)
    {
        var circle = Assert.Single(NamespaceCircles.In([typeof(NamespaceTests).Assembly.Location], $"{Fixtures}.{name}"));
        var (one, other) = name == "ByParent" ? (name, "ByParent.Child") : ($"{name}.One", $"{name}.Other");
        Assert.StartsWith($"{Fixtures}.{one}, {Fixtures}.{other}: ", circle, StringComparison.Ordinal);
        Assert.Contains($"{Fixtures}.{one}.Left -> {Fixtures}.{other}.Right", circle, StringComparison.Ordinal);
        Assert.Contains($"{Fixtures}.{other}.Right -> {Fixtures}.{one}.Left", circle, StringComparison.Ordinal);
    }

    [Fact]
    public void Circle_of_three_namespaces_is_found()
    {
        var circle = Assert.Single(NamespaceCircles.In([typeof(NamespaceTests).Assembly.Location], Fixtures + ".OfThree"));
        Assert.StartsWith($"{Fixtures}.OfThree.A, {Fixtures}.OfThree.B, {Fixtures}.OfThree.C: ", circle, StringComparison.Ordinal);
    }

    [Fact]
    public void OneWayReference_is_not_a_circle() =>
        Assert.Empty(NamespaceCircles.In([typeof(NamespaceTests).Assembly.Location], Fixtures + ".OneWay"));
}
