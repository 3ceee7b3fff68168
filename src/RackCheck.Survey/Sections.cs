using RackCheck.Model;

namespace RackCheck.Survey;

/// <summary>The parts of a description by which two racks are compared, and by which it is known which rules have to judge the changed one.</summary>
[Flags]
public enum Sections
{
    /// <summary>Nothing.</summary>
    None = 0,

    /// <summary>The cabinet.</summary>
    Cabinet = 1,

    /// <summary>The items.</summary>
    Items = 1 << 1,

    /// <summary>The supplies, but what belongs to <see cref="Faults"/> and <see cref="Cables"/>.</summary>
    Supplies = 1 << 2,

    /// <summary>The PDUs.</summary>
    Pdus = 1 << 3,

    /// <summary>The given outlets of cords.</summary>
    Connections = 1 << 4,

    /// <summary>Fans, filters, intakes and the air conditioner.</summary>
    Cooling = 1 << 5,

    /// <summary>Protective earth.</summary>
    Earthing = 1 << 6,

    /// <summary>The site, but what belongs to <see cref="Access"/>.</summary>
    Site = 1 << 7,

    /// <summary>What acts on a fault of a supply and not on its load: RCD, trip curve, breaking capacity, fault current, disconnection time.</summary>
    Faults = 1 << 8,

    /// <summary>The cables of supplies.</summary>
    Cables = 1 << 9,

    /// <summary>What brings the rack to its place and carries it there: delivery, floor, aisles, handling.</summary>
    Access = 1 << 10,

    /// <summary>What every rule reads: the numbering of U positions and the policy; also what no rule about the rack reads.</summary>
    Other = 1 << 11,

    /// <summary>Cords find their outlets, and supplies have their loads, by all of these; fans and air conditioners have inputs.</summary>
    Power = Supplies | Pdus | Connections | Items | Cooling | Site,

    /// <summary>Everything.</summary>
    All = (1 << 12) - 1,
}

/// <summary>Finds the sections that differ, and those that a rule reads.</summary>
public static class SectionTable
{
    /// <summary>The sections in which two descriptions differ. Records are the same where they are the same object, as in an edited copy.</summary>
    /// <param name="one">A description.</param>
    /// <param name="other">Another.</param>
    /// <returns>The sections.</returns>
    public static Sections Changed(RackDescription one, RackDescription other) =>
        (ReferenceEquals(one.Cabinet, other.Cabinet) ? 0 : Sections.Cabinet)
        | (IsSame(one.Items, other.Items) ? 0 : Sections.Items)
        | ChangedSupplies(one.Supplies, other.Supplies)
        | (IsSame(one.Pdus, other.Pdus) ? 0 : Sections.Pdus)
        | (IsSame(one.Connections, other.Connections) ? 0 : Sections.Connections)
        | (ReferenceEquals(one.Cooling, other.Cooling) ? 0 : Sections.Cooling)
        | (ReferenceEquals(one.Earthing, other.Earthing) ? 0 : Sections.Earthing)
        | ChangedSite(one.Site, other.Site)
        | (one.UnitNumbering == other.UnitNumbering && ReferenceEquals(one.Policy, other.Policy) && ReferenceEquals(one.Acceptances, other.Acceptances)
            && ReferenceEquals(one.SignOffs, other.SignOffs) && one.Reference == other.Reference && one.AsOf == other.AsOf ? 0 : Sections.Other);

    /// <summary>The sections that a rule reads.</summary>
    /// <param name="needs">The members that it names, with * for an index.</param>
    /// <returns>The sections, with those from which what it reads is made.</returns>
    public static Sections ReadBy(IReadOnlyList<string> needs)
    {
        var read = Sections.Other;
        foreach (var need in needs)
        {
            read |= Of(need);
        }

        return read;
    }

    /// <summary>The section that a member belongs to.</summary>
    /// <param name="member">The member, with * for an index.</param>
    /// <returns>The section; several for a record that stands for its members.</returns>
    public static Sections Holding(string member) => member.Split('/') switch
    {
        [_, "cabinet", ..] => Sections.Cabinet,
        [_, "items", ..] => Sections.Items,
        [_, "supplies"] => Sections.Supplies | Sections.Faults | Sections.Cables,
        [_, "supplies", _, "breaker"] => Sections.Supplies | Sections.Faults,
        [_, "supplies", _, "breaker", "curve" or "breakingKa"] or [_, "supplies", _, "rcdMa" or "faultCurrentA" or "disconnectionTimeS"] => Sections.Faults,
        [_, "supplies", _, "cable", ..] => Sections.Cables,
        [_, "supplies", ..] => Sections.Supplies,
        [_, "pdus", ..] => Sections.Pdus,
        [_, "connections", ..] => Sections.Connections,
        [_, "cooling", ..] => Sections.Cooling,
        [_, "earthing", ..] => Sections.Earthing,
        [_, "site"] => Sections.Site | Sections.Access,
        [_, "site", "delivery" or "floor" or "handling" or "aisleFrontMm" or "aisleRearMm", ..] => Sections.Access,
        [_, "site", ..] => Sections.Site,
        _ => Sections.All,
    };

    /// <summary>All sections whose values stand in a record or a list with those of some sections.</summary>
    /// <param name="sections">Some sections.</param>
    public static Sections Records(Sections sections) => sections
        | ((sections & (Sections.Supplies | Sections.Faults | Sections.Cables)) == 0 ? 0 : Sections.Supplies | Sections.Faults | Sections.Cables)
        | ((sections & (Sections.Site | Sections.Access)) == 0 ? 0 : Sections.Site | Sections.Access);

    /// <summary>A description with some sections of another.</summary>
    /// <param name="description">The description.</param>
    /// <param name="other">The other.</param>
    /// <param name="sections">The sections, as <see cref="Records"/> gives them; neither cabinet nor items.</param>
    public static RackDescription Replace(RackDescription description, RackDescription other, Sections sections) => description with
    {
        Supplies = (sections & Sections.Supplies) == 0 ? description.Supplies : other.Supplies,
        Pdus = (sections & Sections.Pdus) == 0 ? description.Pdus : other.Pdus,
        Connections = (sections & Sections.Connections) == 0 ? description.Connections : other.Connections,
        Cooling = (sections & Sections.Cooling) == 0 ? description.Cooling : other.Cooling,
        Earthing = (sections & Sections.Earthing) == 0 ? description.Earthing : other.Earthing,
        Site = (sections & Sections.Site) == 0 ? description.Site : other.Site,
    };

    // What a rule reads is made from more than the member that it names: loads and outlets from all that has power, terminals from loads and the cabinet.
    private static Sections Of(string need) => need is "/pdus/*/mounting" or "/pdus/*/position" ? Sections.Pdus : Holding(need) switch
    {
        var own when (own & Sections.Earthing) != 0 => own | Sections.Power | Sections.Cabinet,
        var own when (own & (Sections.Supplies | Sections.Pdus | Sections.Connections)) != 0 => own | Sections.Power,
        var own => own,
    };

    private static Sections ChangedSupplies(IReadOnlyList<Supply>? one, IReadOnlyList<Supply>? other)
    {
        if (one is null || other is null || one.Count != other.Count)
        {
            return ReferenceEquals(one, other) ? Sections.None : Sections.Supplies | Sections.Faults | Sections.Cables;
        }

        var changed = Sections.None;
        for (var i = 0; i < one.Count; i++)
        {
            var (x, y) = (one[i], other[i]);
            if (!ReferenceEquals(x, y))
            {
                var (isCable, isBreaker) = (x.Cable == y.Cable, x.Breaker == y.Breaker);
                var isFault = isBreaker && x.RcdMa == y.RcdMa && x.FaultCurrentA == y.FaultCurrentA && x.DisconnectionTimeS == y.DisconnectionTimeS;
                var hasLoads = (x.Breaker is null) == (y.Breaker is null) && x.Breaker?.RatedA == y.Breaker?.RatedA && y == x with
                {
                    Cable = y.Cable, Breaker = y.Breaker, RcdMa = y.RcdMa, FaultCurrentA = y.FaultCurrentA, DisconnectionTimeS = y.DisconnectionTimeS,
                };
                changed |= (isCable ? 0 : Sections.Cables) | (isFault ? 0 : Sections.Faults) | (hasLoads ? 0 : Sections.Supplies);
            }
        }

        return changed;
    }

    private static Sections ChangedSite(Site? one, Site? other)
    {
        if (ReferenceEquals(one, other))
        {
            return Sections.None;
        }

        if (one is null || other is null)
        {
            return Sections.Site | Sections.Access;
        }

        var moved = one with
        {
            Delivery = other.Delivery, Floor = other.Floor, Handling = other.Handling, AisleFrontMm = other.AisleFrontMm, AisleRearMm = other.AisleRearMm,
        };
        return (moved == one ? 0 : Sections.Access) | (moved == other ? 0 : Sections.Site);
    }

    private static bool IsSame<T>(IReadOnlyList<T>? one, IReadOnlyList<T>? other)
        where T : class
    {
        if (ReferenceEquals(one, other))
        {
            return true;
        }

        if (one is null || other is null || one.Count != other.Count)
        {
            return false;
        }

        for (var i = 0; i < one.Count; i++)
        {
            if (!ReferenceEquals(one[i], other[i]))
            {
                return false;
            }
        }

        return true;
    }
}
