using RackCheck.Model;
using static System.FormattableString;

namespace RackCheck.Remedies;

/// <summary>Changes to a description for remedies. Each returns a new description that shares the rest with the old one.</summary>
public static class DescriptionEdits
{
    /// <summary>Changes an item.</summary>
    public static RackDescription EditItem(this RackDescription description, int index, Func<Item, Item> change) =>
        description with { Items = Changed(description.Items, index, change) };

    /// <summary>Changes a supply.</summary>
    public static RackDescription EditSupply(this RackDescription description, int index, Func<Supply, Supply> change) =>
        description with { Supplies = Changed(description.Supplies!, index, change) };

    /// <summary>Changes a PDU.</summary>
    public static RackDescription EditUnit(this RackDescription description, int index, Func<Pdu, Pdu> change) =>
        description with { Pdus = Changed(description.Pdus!, index, change) };

    /// <summary>Changes an outlet group of a PDU.</summary>
    public static RackDescription EditGroup(this RackDescription description, int unit, int group, Func<OutletGroup, OutletGroup> change) =>
        description.EditUnit(unit, u => u with { Groups = Changed(u.Groups!, group, change) });

    /// <summary>Changes the cabinet.</summary>
    public static RackDescription EditCabinet(this RackDescription description, Func<Cabinet, Cabinet> change) =>
        description with { Cabinet = change(description.Cabinet!) };

    /// <summary>Changes the earthing data; creates them if they are absent.</summary>
    public static RackDescription EditEarthing(this RackDescription description, Func<Model.Earthing, Model.Earthing> change) =>
        description with { Earthing = change(description.Earthing ?? new Model.Earthing()) };

    /// <summary>Changes the site data; creates them if they are absent.</summary>
    public static RackDescription EditSite(this RackDescription description, Func<Site, Site> change) =>
        description with { Site = change(description.Site ?? new Site()) };

    /// <summary>Changes the delivery data; creates them if they are absent.</summary>
    public static RackDescription EditDelivery(this RackDescription description, Func<Model.Delivery, Model.Delivery> change) =>
        description.EditSite(s => s with { Delivery = change(s.Delivery ?? new Model.Delivery()) });

    /// <summary>Adds a supply.</summary>
    public static RackDescription Add(this RackDescription description, Supply supply) =>
        description with { Supplies = [.. description.Supplies ?? [], supply] };

    /// <summary>Adds a PDU.</summary>
    public static RackDescription Add(this RackDescription description, Pdu unit) =>
        description with { Pdus = [.. description.Pdus ?? [], unit] };

    /// <summary>Removes connections that meet a condition, so that the service finds outlets for those cords.</summary>
    public static RackDescription WithoutConnections(this RackDescription description, Func<Connection, bool> go) =>
        description.Connections is not { } connections || !connections.Any(go) ? description
        : description with { Connections = connections.All(go) ? null : [.. connections.Where(c => !go(c))] };

    /// <summary>
    /// Removes items from the rack, with the items on them, their connections, and the acceptances that point to them;
    /// other acceptances follow their items.
    /// </summary>
    public static RackDescription WithoutItems(this RackDescription description, IEnumerable<string> ids)
    {
        var gone = new HashSet<string>(ids, StringComparer.Ordinal);
        while (description.Items.FirstOrDefault(i => i.OnShelf is { } shelf && gone.Contains(shelf) && !gone.Contains(i.Id)) is { } thing)
        {
            gone.Add(thing.Id);
        }

        var acceptances = description.Acceptances?.Select(a => Follow(a, description.Items, gone)).OfType<Acceptance>().ToArray();
        return description.WithoutConnections(c => gone.Contains(c.Item)) with
        {
            Items = [.. description.Items.Where(i => !gone.Contains(i.Id))],
            Acceptances = acceptances is null || acceptances.SequenceEqual(description.Acceptances!) ? description.Acceptances : acceptances,
        };
    }

    private static Acceptance? Follow(Acceptance acceptance, IReadOnlyList<Item> items, HashSet<string> gone)
    {
        if (acceptance.Item is { } accepted && gone.Contains(accepted))
        {
            return null;
        }

        if (acceptance.Pointer?.Split('/') is not ["", "items", var token, ..] tokens
            || !int.TryParse(token, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var index)
            || index >= items.Count)
        {
            return acceptance;
        }

        if (gone.Contains(items[index].Id))
        {
            return null;
        }

        var before = items.Take(index).Count(i => gone.Contains(i.Id));
        tokens[2] = Invariant($"{index - before}");
        return before == 0 ? acceptance : acceptance with { Pointer = string.Join('/', tokens) };
    }

    private static T[] Changed<T>(IReadOnlyList<T> list, int index, Func<T, T> change)
    {
        T[] copy = [.. list];
        copy[index] = change(copy[index]);
        return copy;
    }
}
