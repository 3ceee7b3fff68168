using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Remedies;

/// <summary>Builds the changed rack of a remedy step by step, in the terms of the survey.</summary>
public sealed class RemedyBuilder(RackSurvey survey)
{
    private RackDescription after = survey.Description;

    /// <summary>Changes the cabinet.</summary>
    /// <param name="change">The change to the present cabinet.</param>
    public RemedyBuilder SetCabinet(Func<Cabinet, Cabinet> change)
    {
        after = after.EditCabinet(change);
        return this;
    }

    /// <summary>Changes the uprights.</summary>
    /// <param name="change">The change to the present uprights.</param>
    public RemedyBuilder SetUprights(Func<Uprights, Uprights> change) => SetCabinet(c => c with { Uprights = change(c.Uprights ?? new Uprights()) });

    /// <summary>Changes an item.</summary>
    /// <param name="change">The change to the present item.</param>
    public RemedyBuilder SetItem(MountedItem item, Func<Item, Item> change)
    {
        after = after.EditItem(item.Index, change);
        return this;
    }

    /// <summary>Sets the support of an item.</summary>
    public RemedyBuilder SetSupport(MountedItem item, Support support) => SetItem(item, i => i with { Support = support });

    /// <summary>Mounts an item at a U position on its own face.</summary>
    /// <param name="bottom">Lowest U position, counted from the bottom.</param>
    /// <param name="roofU">Height of the rack, U, if the remedy makes it higher.</param>
    public RemedyBuilder Place(MountedItem what, int bottom, int? roofU = null)
    {
        var unit = survey.Cabinet.TopDown ? (roofU ?? survey.Cabinet.HeightU) + 1 - bottom : bottom;
        return SetPosition(what, new Position { U = unit, Face = what.Face });
    }

    /// <summary>Removes the position of an item.</summary>
    /// <param name="what">The item, which has a position.</param>
    public RemedyBuilder Unplace(MountedItem what) => SetPosition(what, null);

    /// <summary>Adds an item at the end of the list.</summary>
    public RemedyBuilder AddItem(Item item)
    {
        after = after with { Items = [.. after.Items, item] };
        return this;
    }

    /// <summary>Makes the cabinet higher by whole U at its top; with numbering from the top every other position changes.</summary>
    /// <param name="roofU">New height, U.</param>
    /// <param name="moved">Items that this remedy places itself.</param>
    public RemedyBuilder Raise(int roofU, params ReadOnlySpan<MountedItem> moved)
    {
        var cabinet = survey.Cabinet;
        SetCabinet(c => c with
        {
            HeightU = roofU,
            HeightMm = c.HeightMm is { } heightMm ? Quantities.Round(heightMm + RackGeometry.ApertureMm(roofU - cabinet.HeightU)) : null,
        });
        if (cabinet.TopDown)
        {
            foreach (var other in survey.Occupancy.ByPlace)
            {
                if (!moved.Contains(other))
                {
                    Place(other, other.Bottom!.Value, roofU);
                }
            }
        }

        return this;
    }

    /// <summary>The description after the changes.</summary>
    public RackDescription After => after;

    /// <summary>Returns the remedy.</summary>
    /// <param name="title">Title of the change.</param>
    /// <returns>The remedy candidate.</returns>
    public RemedyCandidate Titled(WordedText title) => new(title, after);

    private RemedyBuilder SetPosition(MountedItem what, Position? position)
    {
        after = what.Item is null
            ? after.EditUnit(what.Index, u => u with { Position = position })
            : after.EditItem(what.Index, i => i with { Position = position });
        return this;
    }
}
