using System.Reflection;
using System.Text.Encodings.Web;
using System.Text.Json;
using RackCheck.Api.Http;
using RackCheck.Rules;

namespace RackCheck.Api.Endpoints;

/// <summary>GET /version.</summary>
internal static class VersionEndpoints
{
    // The version has a plus sign, which the default encoder escapes.
    private static readonly JsonSerializerOptions Plain = new(JsonSerializerDefaults.Web) { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Maps the group.</summary>
    public static void MapVersion(this IEndpointRouteBuilder routes)
    {
        var build = typeof(VersionEndpoints).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion;
        var answer = new StaticAnswer(JsonSerializer.SerializeToUtf8Bytes(new VersionAnswer(build, RuleSet.CurrentVersion, "v1"), Plain));
        routes.MapGet("/version", (Delegate)((HttpContext context) => answer.WriteAsync(context)))
            .WithName("getVersion")
            .WithTags("Health")
            .WithSummary("Read the version")
            .WithDescription("Versions of the build, of the rules and of the contract.")
            .AnswersWith<VersionAnswer>()
            .Produces(StatusCodes.Status304NotModified);
    }
}

/// <summary>Versions of the service.</summary>
/// <param name="Build">Version of the program, with the revision of its source.</param>
/// <param name="Ruleset">Version of the rules.</param>
/// <param name="Contract">Version of the contract.</param>
public sealed record VersionAnswer(string Build, string Ruleset, string Contract);
