using System.Xml.Linq;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Architecture;

/// <summary>Dependencies point down the list of rooms only.</summary>
public sealed class DependencyTests
{
    public static TheoryData<string> RoomNames => [.. Rooms.Names];

    public static TheoryData<string> LowerRooms => [.. Rooms.Names.Skip(1)];

    [Fact]
    public void Every_project_is_a_room_and_every_room_a_project() =>
        Assert.Equal(
            Rooms.Names.Order(StringComparer.Ordinal),
            Directory.EnumerateDirectories(Repository.PathOf("src")).Select(d => Path.GetFileName(d)!).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(RoomNames))]
    public void A_project_refers_to_rooms_below_it_only(string room)
    {
        var project = XDocument.Load(Repository.PathOf("src", room, room + ".csproj"));
        var references = project.Descendants("ProjectReference").Select(r => Path.GetFileNameWithoutExtension(r.Attribute("Include")!.Value));
        Assert.Empty(references.Except(Rooms.MayKnow[room]));
    }

    [Theory]
    [MemberData(nameof(RoomNames))]
    public void An_assembly_uses_rooms_below_it_only(string room)
    {
        var used = System.Reflection.Assembly.Load(room).GetReferencedAssemblies().Select(a => a.Name!).Where(n => n.StartsWith("RackCheck.", StringComparison.Ordinal));
        Assert.Empty(used.Except(Rooms.MayKnow[room]));
    }

    [Theory]
    [MemberData(nameof(LowerRooms))]
    public void Only_the_topmost_room_knows_the_web(string room)
    {
        var used = System.Reflection.Assembly.Load(room).GetReferencedAssemblies().Select(a => a.Name!);
        string[] web = ["Microsoft.AspNetCore", "Swashbuckle", "Serilog", "FluentValidation"];
        Assert.DoesNotContain(used, n => web.Any(w => n.StartsWith(w, StringComparison.Ordinal)));
    }

    [Fact]
    public void The_formulae_know_no_json() =>
        Assert.DoesNotContain(
            System.Reflection.Assembly.Load("RackCheck.Engineering").GetReferencedAssemblies(),
            a => a.Name!.StartsWith("System.Text.Json", StringComparison.Ordinal));
}
