using RackCheck.Documents.Drawings;
using RackCheck.Engineering;
using static System.FormattableString;

namespace RackCheck.Documents.Pages;

/// <summary>A drawn dimension.</summary>
/// <param name="Id">Its anchor.</param>
/// <param name="Title">Its name.</param>
/// <param name="Text">What it is, and what applies where it is not given.</param>
/// <param name="Members">Members of the description that give it, with * for an index.</param>
/// <param name="Draw">Draws it.</param>
internal sealed record GlossaryEntry(string Id, string Title, string Text, string[] Members, Func<Drawing> Draw);

/// <summary>The dimensions that data sheets name differently, each with a drawing.</summary>
internal static class Glossary
{
    /// <summary>The entries.</summary>
    public static IReadOnlyList<GlossaryEntry> All { get; } =
    [
        new(
            "setback",
            "Front setback",
            "Distance from the outer face of the cabinet's front, with its door, to the front mounting plane: the face of the uprights on which front panels "
            + "sit. A data sheet that measures from the inner face of the door leaves out the depth of the door.",
            ["/cabinet/uprights/frontSetbackMm"],
            GlossaryDrawings.Setback),
        new(
            "upright-spacing",
            "Upright spacing",
            Invariant(
                $"""
                Distance from the front mounting plane to the rear mounting plane. Slides and runners fit a range of spacings. Uprights
                are adjusted in steps; the default pitch is {CabinetSizes.UprightPitchMm} mm.
                """),
            ["/cabinet/uprights/spacingMm", "/cabinet/uprights/pitchMm", "/items/*/support/minSpacingMm", "/items/*/support/maxSpacingMm"],
            GlossaryDrawings.Spacing),
        new(
            "projections",
            "Front and rear projection",
            Invariant(
                $"""
                The front projection is what stands in front of the mounting plane: handles, knobs and front cables. The rear projection
                is the space behind the body for plugs and the bend of cables. Defaults: {Allowances.FrontProjectionMm} mm at the front,
                {Allowances.RearProjectionCabledMm} mm at the rear, {Allowances.RearProjectionBareMm} mm behind a body without plugs and
                cables.
                """),
            ["/items/*/frontProjectionMm", "/items/*/rearProjectionMm", "/items/*/body/depthMm"],
            GlossaryDrawings.Projections),
        new(
            "usable-depth",
            "Usable depth",
            Invariant(
                $"""
                Depth between the doors: the overall depth of the cabinet less the depths of both doors. The default depth of a door is
                {CabinetSizes.DoorDepthMm} mm; no door takes 0 mm.
                """),
            ["/cabinet/depthMm", "/cabinet/frontDoor", "/cabinet/rearDoor", "/cabinet/frontDoor/depthMm", "/cabinet/rearDoor/depthMm"],
            GlossaryDrawings.UsableDepth),
        new(
            "panel-and-body",
            "Panel and body",
            "The panel is as wide as the rack is called: 482.6 mm, 19 inches. It covers both uprights. The body behind it has to pass the opening between the "
            + "uprights; slides take their thickness on both sides. The height of a panel is a whole number of U, 44.45 mm each; the body is a little lower.",
            ["/items/*/body/widthMm", "/items/*/body/heightMm", "/items/*/heightU", "/cabinet/uprights/openingMm"],
            GlossaryDrawings.PanelAndBody),
        new(
            "slide-extension",
            "Extension of slides",
            "How far an item travels out of the rack on its slides, from closed to the stop. Drawn out, its mass overhangs the front feet: pull out one item "
            + "at a time unless the rack is secured against tipping.",
            ["/items/*/support/extensionMm", "/items/*/support/usedExtended"],
            GlossaryDrawings.Extension),
        new(
            "inset",
            "Inset of the base",
            Invariant(
                $"""
                Distance from the face of the frame, behind the door, to the line of feet or castors. The rack tips about this line.
                Default {SupportArea.FootInsetMm} mm, 0 mm for a plinth; castors are taken as {SupportArea.CastorInsetMm} mm further in,
                because they swivel.
                """),
            ["/cabinet/base/insetMm"],
            GlossaryDrawings.Inset),
        new(
            "stabiliser",
            "Stabiliser",
            "Distance by which the edge of support reaches beyond the front of the cabinet, for example with a foot that is pulled out before equipment is.",
            ["/cabinet/base/stabiliserMm"],
            GlossaryDrawings.Stabiliser),
        new(
            "aisle",
            "Aisles",
            "Free distance in front of the cabinet and behind it. Doors have to open in it, and equipment has to be drawn out into it.",
            ["/site/aisleFrontMm", "/site/aisleRearMm"],
            GlossaryDrawings.Aisles),
    ];

    /// <summary>Writes the page.</summary>
    /// <param name="types">Types of the contract.</param>
    public static Html Write(ContractTypes types) => Html.Of($"""
        {PageFrame.Trail(Paths.Dimensions, (Paths.Reference, "Reference"))}
        <h1>Dimensions</h1>
        <p class="lead">Where each dimension starts and ends. Drawings are not to scale; the front of the cabinet is on the left.</p>
        {All.Select(e => Entry(e, types))}
        """);

    /// <summary>The drawing of an entry with its caption.</summary>
    /// <param name="entry">The entry.</param>
    public static Html Figure(GlossaryEntry entry)
    {
        var drawing = entry.Draw();
        return Html.Of($"<figure class=\"figure sketch\">{new Html(SvgWriter.Element(drawing))}<figcaption>{drawing.Description}</figcaption></figure>\n");
    }

    private static Html Entry(GlossaryEntry entry, ContractTypes types)
    {
        var members = entry.Members.Select(m => types.AddressOfMember(m) is { } address
            ? Html.Of($"<a href=\"{Paths.RootOf(Paths.Dimensions)}{address}\"><code>{m}</code></a>")
            : Html.Of($"<code>{m}</code>"));
        return Html.Of($"""
            <h2 id="{entry.Id}">{entry.Title}</h2>
            <p>{entry.Text}</p>
            {Figure(entry)}
            <p class="small">Given by {Html.Join(members, ", ")}.</p>
            """);
    }
}
