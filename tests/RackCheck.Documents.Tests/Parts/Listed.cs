using RackCheck.Documents.Parts;
using RackCheck.Model;
using RackCheck.Testing;

namespace RackCheck.Documents.Tests.Parts;

/// <summary>Parts lists of test racks.</summary>
internal static class Listed
{
    /// <summary>The list, without products on offer.</summary>
    public static PartsList Bare(RackDescription rack) => PartsLists.Of(Judge.Resolve(rack), Judge.Checker, []).List;

    /// <summary>The list with the products of the demo on offer.</summary>
    public static PartsList Offered(RackDescription rack) => PartsLists.Of(Judge.Resolve(rack), Judge.Checker, DemoProducts.All).List;

    public static PartLine[] Of(this PartsList list, PartKind kind) => [.. list.Lines.Where(l => l.Kind == kind)];

    public static IEnumerable<string> Texts(this PartsList list) => list.Of(PartKind.Label).Select(l => l.Data.Text!);
}
