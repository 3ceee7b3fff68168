using System.Text.Json;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Planning.Tests.Baskets;
using RackCheck.Remedies;
using RackCheck.Remedies.Verification;
using RackCheck.Rules;
using RackCheck.Survey.Assumed;
using RackCheck.Survey.Bounds;
using RackCheck.Testing;

namespace RackCheck.Planning.Tests;

/// <summary>The templates that the service serves, and the texts of the demo catalogue.</summary>
internal static class ServedKeys
{
    /// <summary>The catalogue as JSON: its names may have spaces.</summary>
    public static readonly string Catalogue =
        JsonSerializer.Serialize(new ProductList { Products = DemoCatalogue.Products }, ContractJson.Default.ProductList);

    /// <summary>All templates, none of which is used yet.</summary>
    public static WordingKeys Make() => new(
    [
        .. PlanningWordings.All, .. RuleSet.Default.All.SelectMany(r => r.Wordings), .. FactTable.Wordings, .. Subjects.Wordings, .. RemedyTitles.Wordings,
        .. RemedyTrials.Wordings, .. Bases.Wordings, .. AssumedTexts.Wordings, .. FactTable.Bounded.Select(f => f.Assumed.Wording), .. Cautions.Wordings,
    ]);
}
