using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Acceptance;

/// <summary>A case of <c>tests/acceptance/cases</c>: the request and the expected response. <c>run.py</c> defines the format.</summary>
public sealed record AcceptanceCase
{
    // A misspelt expectation would expect nothing, so unknown members are refused.
    private static readonly JsonSerializerOptions Form = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        AllowDuplicateProperties = false,
        RespectNullableAnnotations = true,
    };

    private static readonly string Folder = Repository.PathOf("tests", "acceptance", "cases");

    public static IReadOnlyList<string> Names { get; } =
        [.. Directory.EnumerateFiles(Folder, "*.json").Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];

    public required string About { get; init; }

    public string Post { get; init; } = "/v1/checks";

    public IReadOnlyDictionary<string, string> Headers { get; init; } = new Dictionary<string, string>();

    public required JsonNode Request { get; init; }

    public required Expectation Expect { get; init; }

    public static AcceptanceCase Read(string name) => Parse(File.ReadAllText(Path.Combine(Folder, name)));

    public static AcceptanceCase Parse(string text) => JsonSerializer.Deserialize<AcceptanceCase>(text, Form)!;
}

/// <summary>Expected response. A number is <c>[value, relative tolerance]</c>; a null value means that the number must be missing.</summary>
public sealed record Expectation
{
    public int Status { get; init; } = 200;

    public string? Verdict { get; init; }

    public IReadOnlyList<ExpectedFinding> Findings { get; init; } = [];

    public IReadOnlyList<string> NoFinding { get; init; } = [];

    public IReadOnlyDictionary<string, double?[]> Figures { get; init; } = new Dictionary<string, double?[]>();

    public IReadOnlyList<string> NotAssessed { get; init; } = [];

    public IReadOnlyList<ExpectedFault> Problem { get; init; } = [];

    public IReadOnlyList<string> RemedyClears { get; init; } = [];
}

/// <summary>A required finding; all members given must match.</summary>
public sealed record ExpectedFinding
{
    public required string Rule { get; init; }

    public string? Severity { get; init; }

    public string? Pointer { get; init; }

    public double?[]? Actual { get; init; }

    public double?[]? Limit { get; init; }
}

/// <summary>A required entry of a problem's errors; all members given must match.</summary>
public sealed record ExpectedFault
{
    public string? Pointer { get; init; }

    public string? Code { get; init; }
}
