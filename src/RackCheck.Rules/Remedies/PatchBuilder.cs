using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Rules.Survey;

namespace RackCheck.Rules.Remedies;

/// <summary>Writes a JSON Patch on the posted description. <c>add</c> serves for members, since RFC 6902 lets it replace one that stands.</summary>
public sealed class PatchBuilder(RackSurvey survey)
{
    private readonly List<PatchOperation> operations = [];

    /// <summary>Sets a number of a member whose parent stands.</summary>
    /// <param name="pointer">The member.</param>
    /// <param name="value">Its new value.</param>
    /// <returns>This builder.</returns>
    public PatchBuilder Set(string pointer, double value) => Add(pointer, value, ContractJson.Default.Double);

    /// <summary>Sets a whole number of a member whose parent stands.</summary>
    /// <param name="pointer">The member.</param>
    /// <param name="value">Its new value.</param>
    /// <returns>This builder.</returns>
    public PatchBuilder Set(string pointer, int value) => Add(pointer, value, ContractJson.Default.Int32);

    /// <summary>Sets a word of a member whose parent stands.</summary>
    /// <param name="pointer">The member.</param>
    /// <param name="value">Its new value.</param>
    /// <returns>This builder.</returns>
    public PatchBuilder Set(string pointer, string value) => Add(pointer, value, ContractJson.Default.String);

    /// <summary>Sets the front door.</summary>
    /// <param name="door">The door.</param>
    /// <returns>This builder.</returns>
    public PatchBuilder SetFrontDoor(Door door) => Add(Pointers.FrontDoor, door, ContractJson.Default.Door);

    /// <summary>Sets a member of the uprights, with the uprights where the description has none.</summary>
    /// <param name="change">The change, on the uprights as they are.</param>
    /// <returns>This builder.</returns>
    public PatchBuilder SetUprights(Func<Uprights, Uprights> change) =>
        Add("/cabinet/uprights", change(survey.Cabinet.Source.Uprights ?? new Uprights()), ContractJson.Default.Uprights);

    /// <summary>Sets the support of an item.</summary>
    /// <param name="item">The item.</param>
    /// <param name="support">The support.</param>
    /// <returns>This builder.</returns>
    public PatchBuilder SetSupport(Mounted item, Support support) =>
        Add(Pointers.ItemSupport[item.Index], support, ContractJson.Default.Support);

    /// <summary>Mounts something at a unit, on its own face.</summary>
    /// <param name="what">The thing.</param>
    /// <param name="bottom">Lowest unit, counted from below.</param>
    /// <param name="roofU">Units of the rack that it goes into, where the patch makes it a higher one.</param>
    /// <returns>This builder.</returns>
    public PatchBuilder Place(Mounted what, int bottom, int? roofU = null)
    {
        var unit = survey.Cabinet.TopDown ? (roofU ?? survey.Cabinet.HeightU) + 1 - bottom : bottom;
        return Add(what.PositionPointer, new Position { Unit = unit, Face = what.Face }, ContractJson.Default.Position);
    }

    /// <summary>Takes the position of something away.</summary>
    /// <param name="what">The thing, which has one.</param>
    /// <returns>This builder.</returns>
    public PatchBuilder Unplace(Mounted what) => Remove(what.PositionPointer);

    /// <summary>Adds an item at the end of the list.</summary>
    /// <param name="item">The item.</param>
    /// <returns>This builder.</returns>
    public PatchBuilder AddItem(Item item) => Add("/items/-", item, ContractJson.Default.Item);

    /// <summary>Makes the cabinet higher by whole units at its top; where units are counted from the top every other position follows.</summary>
    /// <param name="roofU">Units that it shall have.</param>
    /// <param name="moved">What this patch places itself.</param>
    /// <returns>This builder.</returns>
    public PatchBuilder Raise(int roofU, params ReadOnlySpan<Mounted> moved)
    {
        var cabinet = survey.Cabinet;
        Set(Pointers.CabinetHeightU, roofU);
        if (cabinet.Source.HeightMm is { } heightMm)
        {
            Set("/cabinet/heightMm", Quantities.Round(heightMm + Engineering.RackGeometry.ApertureMm(roofU - cabinet.HeightU)));
        }

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

    /// <summary>Takes items out of the rack, with the connections of their cords and the acceptances that point to them.</summary>
    /// <param name="items">The items; what is to stand on one of them only together with it.</param>
    /// <returns>This builder.</returns>
    public PatchBuilder TakeOut(IReadOnlyCollection<Mounted> items)
    {
        var connections = survey.Description.Connections;
        for (var i = (connections?.Count ?? 0) - 1; i >= 0; i--)
        {
            if (items.Any(item => item.Id == connections![i].Item))
            {
                Remove(string.Create(CultureInfo.InvariantCulture, $"/connections/{i}"));
            }
        }

        FollowWithAcceptances(items);
        foreach (var item in items.OrderByDescending(item => item.Index))
        {
            Remove(Pointers.Item[item.Index]);
        }

        return this;
    }

    // An acceptance by pointer goes with its item: left alone it would come to mean the item that takes the index.
    private void FollowWithAcceptances(IReadOnlyCollection<Mounted> items)
    {
        var acceptances = survey.Description.Acceptances;
        for (var i = (acceptances?.Count ?? 0) - 1; i >= 0; i--)
        {
            if (acceptances![i].Pointer?.Split('/') is not ["", "items", var token, ..] tokens || !int.TryParse(token, NumberStyles.None, CultureInfo.InvariantCulture, out var index))
            {
                continue;
            }

            var place = string.Create(CultureInfo.InvariantCulture, $"/acceptances/{i}");
            var before = items.Count(item => item.Index < index);
            if (items.Any(item => item.Index == index))
            {
                Remove(place);
            }
            else if (before > 0)
            {
                tokens[2] = (index - before).ToString(CultureInfo.InvariantCulture);
                Set(place + "/pointer", string.Join('/', tokens));
            }
        }
    }

    /// <summary>The remedy.</summary>
    /// <param name="title">What is done, in the customer's words.</param>
    /// <returns>The remedy.</returns>
    public Remedy Titled(string title) => new() { Title = title, Patch = operations };

    private PatchBuilder Remove(string pointer)
    {
        operations.Add(new PatchOperation { Op = "remove", Path = pointer });
        return this;
    }

    private PatchBuilder Add<T>(string pointer, T value, JsonTypeInfo<T> type)
    {
        operations.Add(new PatchOperation { Op = "add", Path = pointer, Value = JsonSerializer.SerializeToElement(value, type) });
        return this;
    }
}
