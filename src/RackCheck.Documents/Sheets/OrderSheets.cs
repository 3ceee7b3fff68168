using RackCheck.Documents.Drawings.Elevations;
using RackCheck.Documents.Parts;
using RackCheck.Model;
using RackCheck.Planning.Building;
using RackCheck.Rules;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Documents.Sheets;

/// <summary>Makes the documents of an order: specification, packing list, installation sheet and service sheet.</summary>
public static class OrderSheets
{
    /// <summary>Checks a rack and makes a document.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="checker">Checks it.</param>
    /// <param name="kind">The document.</param>
    /// <param name="offered">The products on offer; null if they cannot be had.</param>
    /// <param name="cancellation">Stops the check.</param>
    /// <returns>The document and the report of the check.</returns>
    public static (Sheet Sheet, CheckReport Report) Of(
        ResolvedRack rack, RackChecker checker, SheetKind kind, IReadOnlyList<Product>? offered, CancellationToken cancellation = default)
    {
        var drawn = DrawnRack.Of(rack, checker, cancellation);
        cancellation.ThrowIfCancellationRequested();
        return (Of(rack, drawn, kind, offered), drawn.Report);
    }

    /// <summary>Makes a document of a rack that was checked.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="drawn">The same, with its report.</param>
    /// <param name="kind">The document.</param>
    /// <param name="offered">The products on offer; null if they cannot be had.</param>
    /// <returns>The document: the same for the same rack.</returns>
    public static Sheet Of(ResolvedRack rack, DrawnRack drawn, SheetKind kind, IReadOnlyList<Product>? offered)
    {
        var report = drawn.Report;
        IReadOnlyList<Block> blocks;
        if (drawn.Survey is not { } survey)
        {
            blocks = IncompleteSheet.Make(drawn);
        }
        else
        {
            var context = new SheetContext(drawn, survey, PartsLists.Of(rack, report, survey, offered), (offered ?? []).Order(OfferOrder.Instance));
            context.Blocks.AddRange(CommonBlocks.Opening(drawn, kind));
            switch (kind)
            {
                case SheetKind.PackingList:
                    PackingSheet.Fill(context);
                    break;
                case SheetKind.Installation:
                    InstallationSheet.Fill(context);
                    break;
                case SheetKind.Service:
                    ServiceSheet.Fill(context);
                    break;
                default:
                    SpecificationSheet.Fill(context);
                    break;
            }

            blocks = context.Blocks;
        }

        var reference = drawn.Posted.Reference is { Length: > 0 } given ? SheetContext.Name(given) : null;
        return new Sheet(
            CommonBlocks.TitleOf(kind), reference, report.DescriptionDigest, report.Ruleset.Version, CommonBlocks.DateOf(drawn.Posted),
            CommonBlocks.Head(drawn), blocks);
    }
}
