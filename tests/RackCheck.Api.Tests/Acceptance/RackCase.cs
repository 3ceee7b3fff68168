using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Remedies.Patches;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Acceptance;

/// <summary>
/// A case of <c>tests/acceptance/racks</c>: a sound rack as it would be released, or a sound rack with a patch that puts one serious defect into it.
/// </summary>
public sealed record RackCase
{
    // A misspelt expectation would expect nothing, so unknown members are refused.
    private static readonly JsonSerializerOptions Form = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        AllowDuplicateProperties = false,
        RespectNullableAnnotations = true,
    };

    private static readonly string Folder = Repository.PathOf("tests", "acceptance", "racks");

    public static IReadOnlyList<RackCase> All { get; } = ReadAll();

    [JsonIgnore]
    public string Name { get; init; } = "";

    /// <summary>What the rack is for, or what is wrong with it.</summary>
    public required string About { get; init; }

    /// <summary>What was wrong with the first drawing of a sound rack, and how it was corrected.</summary>
    public string? Corrected { get; init; }

    /// <summary>The sound rack.</summary>
    public JsonNode? Request { get; init; }

    /// <summary>The sound rack of which this one is a variant.</summary>
    public string? Base { get; init; }

    /// <summary>What differs from it (RFC 6902).</summary>
    public JsonNode? Patch { get; init; }

    /// <summary>What a practitioner would find; null for a sound rack.</summary>
    public ExpectedDefect? Expect { get; init; }

    /// <summary>Judgements of all other findings. Those of the base apply as well.</summary>
    public IReadOnlyList<Judgement> Judgements { get; init; } = [];

    [JsonIgnore]
    public bool IsSound => Expect is null;

    /// <summary>The sound rack of which this one is a variant; itself for a sound rack.</summary>
    [JsonIgnore]
    public RackCase Origin => Base is null ? this : All.Single(c => c.Name == Base);

    /// <summary>The rack to post.</summary>
    public JsonNode Rack()
    {
        JsonNode? rack = Origin.Request!.DeepClone();
        var operations = Patch?.AsArray() ?? [];
        for (var i = 0; i < operations.Count; i++)
        {
            rack = RackPatch.Apply(rack, operations[i]!.Deserialize(ContractJson.Default.PatchOperation)!, i);
        }

        return rack!;
    }

    /// <summary>The judgement of a finding; null if nobody judged it.</summary>
    public Judgement? Of(string rule, string severity) => Expect is { } expect && expect.Rule == rule && expect.Severity == severity
        ? new Judgement { Rule = rule, Severity = severity, Agrees = true, Why = About }
        : Judgements.Concat(Origin.Judgements).FirstOrDefault(j => j.Rule == rule && j.Severity == severity);

    private static RackCase[] ReadAll() =>
    [
        .. Directory.EnumerateFiles(Folder, "*.json").Order(StringComparer.Ordinal)
            .Select(f => JsonSerializer.Deserialize<RackCase>(File.ReadAllText(f), Form)! with { Name = Path.GetFileNameWithoutExtension(f) }),
    ];
}

/// <summary>The finding that a practitioner expects, and the verdict that it must not leave at release.</summary>
public sealed record ExpectedDefect
{
    public required string Rule { get; init; }

    /// <summary>Severity of the finding; null where the rule asks for missing data instead.</summary>
    public string? Severity { get; init; }

    /// <summary>Whether the rule asks for missing data.</summary>
    public bool Asked { get; init; }

    /// <summary>product or site.</summary>
    public required string Concern { get; init; }
}

/// <summary>Whether a practitioner would agree with a finding.</summary>
public sealed record Judgement
{
    public required string Rule { get; init; }

    public required string Severity { get; init; }

    public required bool Agrees { get; init; }

    public required string Why { get; init; }
}
