using System.Xml.Linq;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Architecture;

/// <summary>Projects depend only on projects further down the list.</summary>
public sealed class DependencyTests
{
    public static TheoryData<string> RoomNames => [.. Rooms.Names];

    public static TheoryData<string> LowerRooms => [.. Rooms.Names.Skip(1)];

    [Fact]
    public void Projects_and_dependency_list_agree() =>
        Assert.Equal(
            Rooms.Names.Concat(Rooms.OfTheCompiler).Order(StringComparer.Ordinal),
            Directory.EnumerateDirectories(Repository.PathOf("src")).Select(d => Path.GetFileName(d)!).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(RoomNames))]
    public void Project_references_only_projects_below_it(string room)
    {
        var project = XDocument.Load(Repository.PathOf("src", room, room + ".csproj"));
        var references = project.Descendants("ProjectReference").Where(r => r.Attribute("OutputItemType")?.Value != "Analyzer")
            .Select(r => Path.GetFileNameWithoutExtension(r.Attribute("Include")!.Value));
        Assert.Empty(references.Except(Rooms.MayKnow[room]));
    }

    [Theory]
    [MemberData(nameof(RoomNames))]
    public void Assembly_uses_only_projects_below_it(string room)
    {
        var used = System.Reflection.Assembly.Load(room)
            .GetReferencedAssemblies()
            .Select(a => a.Name!)
            .Where(n => n.StartsWith("RackCheck.", StringComparison.Ordinal));
        Assert.Empty(used.Except(Rooms.MayKnow[room]));
    }

    [Theory]
    [MemberData(nameof(LowerRooms))]
    public void Only_the_top_project_uses_the_web_framework(string room)
    {
        var used = System.Reflection.Assembly.Load(room).GetReferencedAssemblies().Select(a => a.Name!);
        string[] web = ["Microsoft.AspNetCore", "Swashbuckle", "Serilog", "FluentValidation"];
        Assert.DoesNotContain(used, n => web.Any(w => n.StartsWith(w, StringComparison.Ordinal)));
    }

    [Fact]
    public void Engineering_does_not_use_json() =>
        Assert.DoesNotContain(
            System.Reflection.Assembly.Load("RackCheck.Engineering").GetReferencedAssemblies(),
            a => a.Name!.StartsWith("System.Text.Json", StringComparison.Ordinal));
}
