using RackCheck.Planning.Building;
using System.Reflection;
using RackCheck.Model;
using RackCheck.Planning.Baskets;

namespace RackCheck.Planning.Tests.Baskets;

public sealed class ProductPartsTests
{
    private static readonly ProductItem Full = new()
    {
        Description = "wave generator",
        Category = ItemCategory.Computer,
        HeightU = 4,
        Body = new Body { DepthMm = 450 },
        FrontProjectionMm = 1,
        RearProjectionMm = 2,
        MassKg = 3,
        Support = new Support { Style = SupportStyle.Slides },
        Fixing = Fixing.Screw,
        Power = new ItemPower { RatedW = 4 },
        HeatW = 5,
        Airflow = new Airflow { FlowM3h = 6 },
        MaxInletC = 7,
        MinInletC = -5,
        EarthStud = true,
        Cables = [],
        Console = true,
        KvmPorts = 8,
        RemotePowerCycle = true,
        RemoteAccess = true,
        Battery = new Battery { Cells = 10 },
        Ups = new Ups { RatedW = 9 },
    };

    private static readonly ProductPdu FullUnit = new()
    {
        RatedA = 16,
        Plug = ConnectorCode.C20,
        Mounting = PduMounting.Vertical,
        Groups = [],
        RemoteSwitched = true,
        LengthMm = 10,
        MaxAmbientC = 11,
    };

    [Fact]
    public void Item_has_every_member_of_its_product()
    {
        var product = new Product { PartNumber = "QWL-T-1", Name = "wave generator", Kind = ProductKind.Equipment, Item = Full };
        AssertCopied(typeof(ItemFacts), Full, ProductParts.ItemOf(product, "wave"));
    }

    [Fact]
    public void Pdu_has_every_member_of_its_product()
    {
        var product = new Product { PartNumber = "QWL-T-2", Name = "PDU", Kind = ProductKind.Pdu, Pdu = FullUnit };
        AssertCopied(typeof(PduFacts), FullUnit, ProductParts.UnitOf(product, "pdu-a", "A"));
    }

    [Fact]
    public void Item_and_pdu_have_id_and_part_number()
    {
        var product = new Product { PartNumber = "QWL-T-1", Name = "both", Kind = ProductKind.Equipment, Item = Full, Pdu = FullUnit };
        var (item, unit) = (ProductParts.ItemOf(product, "wave"), ProductParts.UnitOf(product, "pdu-a", "A"));
        Assert.Equal(("wave", "QWL-T-1"), (item.Id, item.PartNumber));
        Assert.Equal(("pdu-a", "QWL-T-1", "A"), (unit.Id, unit.PartNumber, unit.Supply));
    }

    [Fact]
    public void Product_without_item_or_pdu_throws()
    {
        var product = new Product { PartNumber = "QWL-T-1", Name = "nothing", Kind = ProductKind.Cord };
        Assert.Throws<ArgumentException>(() => ProductParts.ItemOf(product, "x"));
        Assert.Throws<ArgumentException>(() => ProductParts.UnitOf(product, "x", "A"));
    }

    private static void AssertCopied(Type facts, object from, object to)
    {
        var members = facts.GetProperties(BindingFlags.Public | BindingFlags.Instance);
        Assert.NotEmpty(members);
        foreach (var member in members)
        {
            // A member that is not set here could be missed.
            Assert.True(member.GetValue(from) is not null, $"{member.Name} is not set in this test");
            Assert.Equal(member.GetValue(from), member.GetValue(to));
        }
    }
}
