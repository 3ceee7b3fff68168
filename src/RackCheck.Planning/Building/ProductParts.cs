using RackCheck.Model;

namespace RackCheck.Planning.Building;

/// <summary>Makes parts of a rack from products.</summary>
public static class ProductParts
{
    /// <summary>One piece of a product as an item, with all data of the product.</summary>
    /// <param name="product">A product with item data.</param>
    /// <param name="id">Id of the item.</param>
    /// <returns>The item, without a position.</returns>
    /// <exception cref="ArgumentException">The product has no item data.</exception>
    public static Item ItemOf(Product product, string id)
    {
        var facts = product.Item ?? throw new ArgumentException("The product has no item data.", nameof(product));
        return new Item
        {
            Id = id,
            PartNumber = product.PartNumber,
            Description = facts.Description,
            Category = facts.Category,
            HeightU = facts.HeightU,
            Body = facts.Body,
            FrontProjectionMm = facts.FrontProjectionMm,
            RearProjectionMm = facts.RearProjectionMm,
            MassKg = facts.MassKg,
            Support = facts.Support,
            Fixing = facts.Fixing,
            Power = facts.Power,
            HeatW = facts.HeatW,
            Airflow = facts.Airflow,
            MaxInletC = facts.MaxInletC,
            MinInletC = facts.MinInletC,
            EarthStud = facts.EarthStud,
            Cables = facts.Cables,
            Console = facts.Console,
            KvmPorts = facts.KvmPorts,
            RemotePowerCycle = facts.RemotePowerCycle,
            RemoteAccess = facts.RemoteAccess,
            Battery = facts.Battery,
            Ups = facts.Ups,
        };
    }

    /// <summary>One piece of a product as a PDU, with all data of the product.</summary>
    /// <param name="product">A product with PDU data.</param>
    /// <param name="id">Id of the PDU.</param>
    /// <param name="supply">Id of its supply.</param>
    /// <returns>The PDU, without a position.</returns>
    /// <exception cref="ArgumentException">The product has no PDU data.</exception>
    public static Pdu UnitOf(Product product, string id, string supply)
    {
        var facts = product.Pdu ?? throw new ArgumentException("The product has no PDU data.", nameof(product));
        return new Pdu
        {
            Id = id,
            Supply = supply,
            PartNumber = product.PartNumber,
            RatedA = facts.RatedA,
            Plug = facts.Plug,
            Mounting = facts.Mounting,
            Groups = facts.Groups,
            RemoteSwitched = facts.RemoteSwitched,
            LengthMm = facts.LengthMm,
            MaxAmbientC = facts.MaxAmbientC,
        };
    }
}
