using System.Text.Json;
using RackCheck.Model;
using RackCheck.Model.Json;

namespace RackCheck.Testing;

/// <summary>Racks as text, to be pasted into a request when a test fails.</summary>
public static class Wording
{
    public static string Of(RackDescription rack) => JsonSerializer.Serialize(rack, ContractJson.Default.RackDescription);
}
