using System.Xml.Linq;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Architecture;

/// <summary>Dependencies point down the list of rooms only.</summary>
public sealed class DependencyTests
{
    // From the top of the house to its foundation; what each room may know of the others.
    private static readonly Dictionary<string, string[]> Rooms = new(StringComparer.Ordinal)
    {
        ["RackCheck.Api"] = ["RackCheck.Documents", "RackCheck.Planning", "RackCheck.Rules", "RackCheck.Remedies", "RackCheck.Survey", "RackCheck.Model", "RackCheck.Engineering"],
        ["RackCheck.Documents"] = ["RackCheck.Planning", "RackCheck.Rules", "RackCheck.Remedies", "RackCheck.Survey", "RackCheck.Model", "RackCheck.Engineering"],
        ["RackCheck.Planning"] = ["RackCheck.Rules", "RackCheck.Remedies", "RackCheck.Survey", "RackCheck.Model", "RackCheck.Engineering"],
        ["RackCheck.Rules"] = ["RackCheck.Remedies", "RackCheck.Survey", "RackCheck.Model", "RackCheck.Engineering"],
        ["RackCheck.Remedies"] = ["RackCheck.Survey", "RackCheck.Model", "RackCheck.Engineering"],
        ["RackCheck.Survey"] = ["RackCheck.Model", "RackCheck.Engineering"],
        ["RackCheck.Model"] = [],
        ["RackCheck.Engineering"] = [],
    };

    public static TheoryData<string> RoomNames => [.. Rooms.Keys];

    [Fact]
    public void Every_project_is_a_room_and_every_room_a_project() =>
        Assert.Equal(
            Rooms.Keys.Order(StringComparer.Ordinal),
            Directory.EnumerateDirectories(Repository.PathOf("src")).Select(d => Path.GetFileName(d)!).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(RoomNames))]
    public void A_project_refers_to_rooms_below_it_only(string room)
    {
        var project = XDocument.Load(Repository.PathOf("src", room, room + ".csproj"));
        var references = project.Descendants("ProjectReference").Select(r => Path.GetFileNameWithoutExtension(r.Attribute("Include")!.Value));
        Assert.Empty(references.Except(Rooms[room]));
    }

    [Theory]
    [MemberData(nameof(RoomNames))]
    public void An_assembly_uses_rooms_below_it_only(string room)
    {
        var used = System.Reflection.Assembly.Load(room).GetReferencedAssemblies().Select(a => a.Name!).Where(n => n.StartsWith("RackCheck.", StringComparison.Ordinal));
        Assert.Empty(used.Except(Rooms[room]));
    }

    [Theory]
    [InlineData("RackCheck.Engineering")]
    [InlineData("RackCheck.Model")]
    [InlineData("RackCheck.Survey")]
    [InlineData("RackCheck.Remedies")]
    [InlineData("RackCheck.Rules")]
    [InlineData("RackCheck.Planning")]
    [InlineData("RackCheck.Documents")]
    public void Only_the_topmost_room_knows_the_web(string room)
    {
        var used = System.Reflection.Assembly.Load(room).GetReferencedAssemblies().Select(a => a.Name!);
        Assert.DoesNotContain(used, n => n.StartsWith("Microsoft.AspNetCore", StringComparison.Ordinal) || n.StartsWith("Swashbuckle", StringComparison.Ordinal) || n.StartsWith("Serilog", StringComparison.Ordinal) || n.StartsWith("FluentValidation", StringComparison.Ordinal));
    }

    [Fact]
    public void The_formulae_know_no_json() =>
        Assert.DoesNotContain(
            System.Reflection.Assembly.Load("RackCheck.Engineering").GetReferencedAssemblies(),
            a => a.Name!.StartsWith("System.Text.Json", StringComparison.Ordinal));
}
