using RackCheck.Testing;

namespace RackCheck.Api.Tests.OpenApi;

/// <summary>An example request of openapi/examples, and where its answer is recorded.</summary>
/// <param name="Name">Name of the answer.</param>
/// <param name="Path">Path of the operation.</param>
/// <param name="File">File of the request.</param>
public sealed record RecordedRequest(string Name, string Path, string File)
{
    private const string Svg = "image/svg+xml";

    /// <summary>Every example on the operation that takes it, and the parts list of every rack.</summary>
    public static IReadOnlyList<RecordedRequest> Examples { get; } =
    [
        .. from file in Directory.EnumerateFiles(Repository.PathOf("openapi", "examples"), "*.json").Select(f => System.IO.Path.GetFileName(f))
           from request in Of(file)
           orderby request.Name
           select request,
    ];

    /// <summary>Whether the answer is JSON; a drawing otherwise.</summary>
    public bool IsJson => MediaType != Svg;

    /// <summary>Media type of the answer.</summary>
    public string MediaType => Path == "/v1/elevations" ? Svg : "application/json";

    /// <summary>File of the answer.</summary>
    public string Answer => Name + (IsJson ? ".json" : ".svg");

    private static IEnumerable<RecordedRequest> Of(string file)
    {
        var name = System.IO.Path.GetFileNameWithoutExtension(file);
        switch (name.Split('-')[0])
        {
            case "basket":
                return [new(name, "/v1/baskets/checks", file)];
            case "comparison":
                return [new(name, "/v1/comparisons", file)];
            case "elevation":
                return [new(name, "/v1/elevations", file)];
            case "proposal":
                return [new(name, "/v1/proposals", file)];
            default:
                return [new(name, "/v1/checks", file), new("parts-" + name, "/v1/parts-lists", file)];
        }
    }
}
