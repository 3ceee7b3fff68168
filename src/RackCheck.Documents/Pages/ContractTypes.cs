using System.Text.Json;

namespace RackCheck.Documents.Pages;

/// <summary>The types of the contract, by the document that they are part of, and where each of their members is explained.</summary>
internal sealed class ContractTypes
{
    private const string Description = "RackDescription";

    // A type is explained with the first document that leads to it. What no document leads to comes last.
    private static readonly (string Name, string Title, string[] Roots)[] Documents =
    [
        ("rack-description", "Rack description", [Description]),
        ("check-report", "Check report", ["CheckReport"]),
        ("basket", "Basket request", ["BasketRequest"]),
        ("basket-report", "Basket report", ["BasketReport"]),
        ("proposal", "Proposal request", ["ProposalRequest"]),
        ("proposal-answer", "Proposal answer", ["ProposalAnswer"]),
        ("comparison", "Comparison request", ["ComparisonRequest"]),
        ("comparison-answer", "Comparison answer", ["ComparisonAnswer"]),
        ("documents", "Drawings and parts lists", ["ElevationRequest", "PartsList"]),
        ("rules-and-tables", "Rules and tables", ["RuleList", "RulePage", "ReferenceTable"]),
        ("problem", "Problem", ["Problem"]),
        ("other", "Other types", []),
    ];

    private readonly Dictionary<string, string> documentOf = new(StringComparer.Ordinal);

    /// <summary>Sorts the types of a contract.</summary>
    /// <param name="contract">The contract, OpenAPI 3.1.</param>
    public ContractTypes(JsonElement contract)
    {
        var schemas = contract.GetProperty("components").GetProperty("schemas");
        Types = schemas.EnumerateObject().ToDictionary(s => s.Name, s => new ContractType(s.Name, s.Value), StringComparer.Ordinal);
        var pages = new List<ContractDocument>();
        foreach (var (name, title, roots) in Documents)
        {
            pages.Add(new ContractDocument(name, title, Reach(name, roots.Length > 0 ? roots : Types.Keys.Order(StringComparer.Ordinal))));
        }

        All = pages;
    }

    /// <summary>Names and titles of the documents. One that the contract does not have has no types.</summary>
    public static IEnumerable<(string Name, string Title)> Titles => Documents.Select(d => (d.Name, d.Title));

    /// <summary>The types, by name.</summary>
    public IReadOnlyDictionary<string, ContractType> Types { get; }

    /// <summary>The documents.</summary>
    public IReadOnlyList<ContractDocument> All { get; }

    /// <summary>Address of the explanation of a type.</summary>
    /// <param name="type">Its name.</param>
    public string AddressOf(string type) => $"{Paths.Members}/{documentOf[type]}#{type}";

    /// <summary>Address of the explanation of a member of a rack description.</summary>
    /// <param name="pointer">Its pointer, with * for an index.</param>
    /// <returns>The address; null where the contract has no such member.</returns>
    public string? AddressOfMember(string pointer)
    {
        var type = Types[Description];
        string? address = null;
        foreach (var name in pointer.Split('/').Skip(1).Where(s => s != "*"))
        {
            if (type?.Members.FirstOrDefault(m => m.Name == name) is not { } member)
            {
                return null;
            }

            address = $"{AddressOf(type.Name)}.{member.Name}";
            type = member.TypeName is { } next ? Types.GetValueOrDefault(next) : null;
        }

        return address;
    }

    private List<ContractType> Reach(string document, IEnumerable<string> roots)
    {
        var (found, open) = (new List<ContractType>(), new Queue<string>(roots));
        while (open.TryDequeue(out var name))
        {
            if (Types.TryGetValue(name, out var type) && documentOf.TryAdd(name, document))
            {
                found.Add(type);
                foreach (var next in type.Members.Select(m => m.TypeName).OfType<string>())
                {
                    open.Enqueue(next);
                }
            }
        }

        return found;
    }
}

/// <summary>A document of the contract with the types that it is made of.</summary>
/// <param name="Name">Name in its address.</param>
/// <param name="Title">Its title.</param>
/// <param name="Types">The types, the document itself first.</param>
internal sealed record ContractDocument(string Name, string Title, IReadOnlyList<ContractType> Types);
