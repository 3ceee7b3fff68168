using RackCheck.Documents.Drawings.Elevations;
using static RackCheck.Documents.Sheets.SheetContext;
using static System.FormattableString;

namespace RackCheck.Documents.Sheets;

/// <summary>The content of every document of a rack without its essential data: what is missing, and what was posted.</summary>
internal static class IncompleteSheet
{
    /// <summary>The content.</summary>
    public static IReadOnlyList<Block> Make(DrawnRack rack)
    {
        List<Block> blocks =
        [
            new Notice(
                "On hold",
                ["Size of the cabinet or height of an item is missing. Nothing can be drawn, built or packed by this document.", .. rack.Missing]),
        ];
        if (Table(
            "Items as posted",
            [new("Item", 40), new("Part number", 30), new("U", 10, true), new("Mass kg", 15, true)],
            rack.Posted.Items.Select(i => (IReadOnlyList<string>)
            [
                Name(i.Id), i.PartNumber is { } number ? Name(number) : "", i.Position is { } position ? Invariant($"{position.U}") : "",
                i.MassKg is { } mass ? Number(mass) : "",
            ])) is { } items)
        {
            blocks.AddRange([new Heading("Equipment"), items]);
        }

        FindingBlocks.Add(rack.Report, rack.Posted, blocks);
        blocks.AddRange(CommonBlocks.CautionsOf(rack.Report));
        return blocks;
    }
}
