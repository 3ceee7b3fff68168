using System.Globalization;
using RackCheck.Model;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Remedies;

/// <summary>Changes to objects with a part number.</summary>
public static class PartEdits
{
    /// <summary>The description without a part number; the resolved values stay.</summary>
    public static RackDescription Without(RackDescription description, Part part) => Edit(
        description,
        part,
        c => part.Pointer switch
        {
            "/cabinet/frontDoor" => c with { FrontDoor = c.FrontDoor! with { PartNumber = null } },
            "/cabinet/rearDoor" => c with { RearDoor = c.RearDoor! with { PartNumber = null } },
            "/cabinet/earthBar" => c with { EarthBar = c.EarthBar! with { PartNumber = null } },
            _ => c with { PartNumber = null },
        },
        i => i with { PartNumber = null },
        u => u with { PartNumber = null });

    /// <summary>The description with the values of the product.</summary>
    public static RackDescription AsTold(RackDescription description, Part part) => Edit(
        description,
        part,
        c => part.Pointer switch
        {
            "/cabinet/frontDoor" => c with { FrontDoor = (Door)part.Facts! with { PartNumber = part.Number } },
            "/cabinet/rearDoor" => c with { RearDoor = (Door)part.Facts! with { PartNumber = part.Number } },
            "/cabinet/earthBar" => c with { EarthBar = (EarthBar)part.Facts! with { PartNumber = part.Number } },
            _ => PartPlan<Cabinet>.Instance.Fill(
                new Cabinet
                {
                    PartNumber = c.PartNumber, Placement = c.Placement,
                    FrontDoor = c.FrontDoor?.PartNumber is null ? null : c.FrontDoor, RearDoor = c.RearDoor?.PartNumber is null ? null : c.RearDoor,
                    EarthBar = c.EarthBar?.PartNumber is null ? null : c.EarthBar,
                },
                (Cabinet)part.Facts!,
                null),
        },
        i => (Item)PartPlan<ItemFacts>.Instance.Fill(
            new Item
            {
                Id = i.Id, PartNumber = i.PartNumber, Position = i.Position, OnShelf = i.OnShelf, EarthLead = i.EarthLead, Spare = i.Spare,
                Quantity = i.Quantity,
                Description = i.Description, Console = i.Console, RemotePowerCycle = i.RemotePowerCycle, Fixing = i.Fixing, Cables = i.Cables,
            },
            (ItemFacts)part.Facts!,
            null),
        u => (Pdu)PartPlan<PduFacts>.Instance.Fill(
            new Pdu { Id = u.Id, PartNumber = u.PartNumber, Position = u.Position, Supply = u.Supply }, (PduFacts)part.Facts!, null));

    private static RackDescription Edit(RackDescription description, Part part, Func<Cabinet, Cabinet> cabinet, Func<Item, Item> item, Func<Pdu, Pdu> unit)
    {
        var tokens = part.Pointer.Split('/');
        return tokens[1] switch
        {
            "cabinet" => description.EditCabinet(cabinet),
            "items" => description.EditItem(int.Parse(tokens[2], CultureInfo.InvariantCulture), item),
            _ => description.EditUnit(int.Parse(tokens[2], CultureInfo.InvariantCulture), unit),
        };
    }
}
