using RackCheck.Documents.Drawings;

namespace RackCheck.Documents.Sheets;

/// <summary>Documents of an order.</summary>
public enum SheetKind
{
    /// <summary>What is built and why it may be released.</summary>
    Specification,

    /// <summary>Packing list and delivery note.</summary>
    PackingList,

    /// <summary>Order of work for the workshop and the site.</summary>
    Installation,

    /// <summary>What service staff need at the rack.</summary>
    Service,
}

/// <summary>A document, the same for every form that it is written in.</summary>
/// <param name="Title">Its title.</param>
/// <param name="Reference">The caller's reference; null without one.</param>
/// <param name="Digest">Digest of the description.</param>
/// <param name="Ruleset">Version of the ruleset.</param>
/// <param name="Date">The date of the request; null without one. No clock is read.</param>
/// <param name="Head">The title block: names and values.</param>
/// <param name="Blocks">The content, in order.</param>
public sealed record Sheet(
    string Title, string? Reference, string Digest, string Ruleset, DateTime? Date, IReadOnlyList<(string Name, string Value)> Head,
    IReadOnlyList<Block> Blocks);

/// <summary>A piece of a document.</summary>
public abstract record Block;

/// <summary>The heading of a section.</summary>
/// <param name="Words">The heading.</param>
public sealed record Heading(string Words) : Block;

/// <summary>A paragraph.</summary>
/// <param name="Words">The text.</param>
public sealed record Paragraph(string Words) : Block;

/// <summary>A box that nobody overlooks: the verdict, cautions.</summary>
/// <param name="Head">Its heading.</param>
/// <param name="Lines">Its paragraphs.</param>
public sealed record Notice(string Head, IReadOnlyList<string> Lines) : Block;

/// <summary>A list.</summary>
/// <param name="Lines">Its entries, at least one.</param>
/// <param name="Mark">What stands in front of an entry.</param>
public sealed record Bullets(IReadOnlyList<string> Lines, BulletMark Mark = BulletMark.Dot) : Block;

/// <summary>Marks of list entries.</summary>
public enum BulletMark
{
    /// <summary>A dot.</summary>
    Dot,

    /// <summary>A number, from 1.</summary>
    Number,

    /// <summary>A box to tick.</summary>
    Box,
}

/// <summary>Names with their values.</summary>
/// <param name="Entries">The entries, at least one.</param>
public sealed record Pairs(IReadOnlyList<(string Name, string Value)> Entries) : Block;

/// <summary>A table.</summary>
/// <param name="Caption">What it lists.</param>
/// <param name="Columns">Its columns.</param>
/// <param name="Rows">Its rows, at least one, as wide as the columns. A box to tick is <see cref="Box"/>.</param>
public sealed record Grid(string Caption, IReadOnlyList<Column> Columns, IReadOnlyList<IReadOnlyList<string>> Rows) : Block
{
    /// <summary>A cell with a box to tick.</summary>
    public const string Box = "\u2610";
}

/// <summary>A column of a table.</summary>
/// <param name="Head">Its heading.</param>
/// <param name="Share">Its share of the width, in relation to those of the others.</param>
/// <param name="IsNumber">Whether it has numbers, which stand at its right edge.</param>
public sealed record Column(string Head, double Share, bool IsNumber = false);

/// <summary>A drawing.</summary>
/// <param name="Drawing">The drawing.</param>
/// <param name="Caption">What it shows.</param>
public sealed record Figure(Drawing Drawing, string Caption) : Block;

/// <summary>Fields to sign.</summary>
/// <param name="Roles">What each signs for.</param>
public sealed record Signatures(IReadOnlyList<string> Roles) : Block;
