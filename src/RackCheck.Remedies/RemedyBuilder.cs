using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Remedies;

/// <summary>Makes the rack as a cure would have it, step by step, in the terms of the survey.</summary>
public sealed class RemedyBuilder(RackSurvey survey)
{
    private RackDescription after = survey.Description;

    /// <summary>Changes the cabinet.</summary>
    /// <param name="change">The change, on the cabinet as it is.</param>
    /// <returns>This builder.</returns>
    public RemedyBuilder SetCabinet(Func<Cabinet, Cabinet> change)
    {
        after = after.EditCabinet(change);
        return this;
    }

    /// <summary>Changes the uprights.</summary>
    /// <param name="change">The change, on the uprights as they are.</param>
    /// <returns>This builder.</returns>
    public RemedyBuilder SetUprights(Func<Uprights, Uprights> change) => SetCabinet(c => c with { Uprights = change(c.Uprights ?? new Uprights()) });

    /// <summary>Changes an item.</summary>
    /// <param name="item">The item.</param>
    /// <param name="change">The change, on the item as it is.</param>
    /// <returns>This builder.</returns>
    public RemedyBuilder SetItem(MountedItem item, Func<Item, Item> change)
    {
        after = after.EditItem(item.Index, change);
        return this;
    }

    /// <summary>Sets the support of an item.</summary>
    /// <param name="item">The item.</param>
    /// <param name="support">The support.</param>
    /// <returns>This builder.</returns>
    public RemedyBuilder SetSupport(MountedItem item, Support support) => SetItem(item, i => i with { Support = support });

    /// <summary>Mounts something at a unit, on its own face.</summary>
    /// <param name="what">The thing.</param>
    /// <param name="bottom">Lowest unit, counted from below.</param>
    /// <param name="roofU">Units of the rack that it goes into, where the cure makes it a higher one.</param>
    /// <returns>This builder.</returns>
    public RemedyBuilder Place(MountedItem what, int bottom, int? roofU = null)
    {
        var unit = survey.Cabinet.TopDown ? (roofU ?? survey.Cabinet.HeightU) + 1 - bottom : bottom;
        return SetPosition(what, new Position { U = unit, Face = what.Face });
    }

    /// <summary>Takes the position of something away.</summary>
    /// <param name="what">The thing, which has one.</param>
    /// <returns>This builder.</returns>
    public RemedyBuilder Unplace(MountedItem what) => SetPosition(what, null);

    /// <summary>Adds an item at the end of the list.</summary>
    /// <param name="item">The item.</param>
    /// <returns>This builder.</returns>
    public RemedyBuilder AddItem(Item item)
    {
        after = after with { Items = [.. after.Items, item] };
        return this;
    }

    /// <summary>Makes the cabinet higher by whole units at its top; where units are counted from the top every other position follows.</summary>
    /// <param name="roofU">Units that it shall have.</param>
    /// <param name="moved">What this cure places itself.</param>
    /// <returns>This builder.</returns>
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

    /// <summary>The cure.</summary>
    /// <param name="title">What is done, in the customer's words.</param>
    /// <returns>The cure.</returns>
    public RemedyCandidate Titled(string title) => new(title, after);

    private RemedyBuilder SetPosition(MountedItem what, Position? position)
    {
        after = what.Item is null
            ? after.EditUnit(what.Index, u => u with { Position = position })
            : after.EditItem(what.Index, i => i with { Position = position });
        return this;
    }
}
