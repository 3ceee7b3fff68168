using CsCheck;
using RackCheck.Model;
using RackCheck.Model.Canonical;
using RackCheck.Remedies.Patches;
using RackCheck.Survey;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.Wiring;

namespace RackCheck.Remedies.Tests.Patches;

public sealed class DescriptionDiffTests
{
    private static readonly RackDescription Rack = Wired(Mains()).Units(Pdu("strip", "A", 16, Outlets("g", 16)))
        .With(Load("wave-pc", 400), Load("gauge-amp", 60));

    [Fact]
    public void It_says_no_more_than_what_changes()
    {
        Assert.Equal(
            [("replace", "/pdus/0/groups/0/outlets/0/count")], Patch(Rack.EditGroup(0, 0, g => g with { Outlets = [g.Outlets[0] with { Count = 14 }] })));
        Assert.Equal([("add", "/items/1/power/voltageV")], Patch(Rack.EditItem(1, i => i with { Power = i.Power! with { VoltageV = 230 } })));
        Assert.Equal([("remove", "/supplies/0/breaker")], Patch(Rack.EditSupply(0, s => s with { Breaker = null })));
        Assert.Equal([("add", "/pdus/-")], Patch(Rack.Add(Pdu("strip-2", "A", 16, Outlets("g", 16)))));
        Assert.Equal([("add", "/earthing")], Patch(Rack with { Earthing = new Model.Earthing { SecondaryEarth = true } }));
        Assert.Equal([("remove", "/items/0")], Patch(Rack.WithoutItems(["wave-pc"])));
        Assert.Empty(Patch(Rack with { Items = [.. Rack.Items] }));
    }

    [Fact]
    [Trait("Kind", "property")]
    public void Applied_it_makes_the_one_of_the_other() =>
        Gen.Select(RackGenerator.AllRacks, RackGenerator.AllRacks).Sample(
            (one, other) =>
            {
                // Reference, numbering and policy belong to the caller; no remedy changes them.
                var wanted = other with { Reference = one.Reference, UnitNumbering = one.UnitNumbering, Policy = one.Policy };
                var patch = DescriptionDiff.Patch(one, wanted);
                Assert.Equal(DescriptionDigest.Of(wanted), DescriptionDigest.Of(RackPatch.Apply(one, patch)));
            },
            iter: Samples.Of(800));

    [Fact]
    public void What_is_taken_out_goes_with_its_connections_and_acceptances_and_the_rest_keeps_its_own()
    {
        var rack = EmptyRack().With(Unit("a", 1).At(1).Plugs(1), Unit("b", 1).At(2).Plugs(2), Unit("c", 1).At(3).Plugs(1), Unit("d", 1).At(4))
            .With(Strip("strip", PduMounting.Vertical)) with
        {
            Connections = [.. new[] { "b", "a", "b", "c" }.Select(i => new Connection { Item = i, Pdu = "strip", Group = "g1" })],
        };
        rack = rack
            .Accept("layout.overlap", pointer: "/items/0/position")
            .Accept("layout.overlap", pointer: "/items/1/position")
            .Accept("layout.overlap", pointer: "/items/2/position")
            .Accept("layout.no-support", pointer: "/items/3")
            .Accept("layout.no-support", fingerprint: "0123456789abcdef")
            .Accept("layout.reserve", pointer: "/cabinet/heightU")
            .Accept("layout.blanking", pointer: "/items");
        var patched = rack.WithoutItems(["b", "c"]);
        Assert.Equal(["a", "d"], patched.Items.Select(i => i.Id));
        Assert.Equal(["a"], patched.Connections!.Select(c => c.Item));
        Assert.Equal(["/items/0/position", "/items/1", null, "/cabinet/heightU", "/items"], patched.Acceptances!.Select(a => a.Pointer));
    }

    [Fact]
    public void Taken_out_an_item_takes_its_things_cords_and_acceptances_along_and_others_keep_theirs()
    {
        var rack = Rack.With(Shelf("tray", 4), ShelfItem("mouse", "tray"))
            .Connect("wave-pc", "strip", "g").Connect("gauge-amp", "strip", "g")
            .Accept("layout.reserve", pointer: "/items/0").Accept("layout.reserve", pointer: "/items/1/position").Accept("layout.reserve", pointer: "/cabinet");
        var left = rack.WithoutItems(["wave-pc", "tray"]);
        Assert.Equal(["gauge-amp"], left.Items.Select(i => i.Id));
        Assert.Equal("gauge-amp", Assert.Single(left.Connections!).Item);
        Assert.Equal(["/items/0/position", "/cabinet"], left.Acceptances!.Select(a => a.Pointer));
        Assert.Equal(DescriptionDigest.Of(left), DescriptionDigest.Of(RackPatch.Apply(rack, DescriptionDiff.Patch(rack, left))));
    }

    [Theory]
    [InlineData("strip", "strip-2")]
    [InlineData("strip-2", "strip-2")]
    [InlineData("new", "new")]
    public void A_free_id_is_found(string wanted, string id) => Assert.Equal(id, Names.FreeId(wanted, ["strip", "tray"]));

    [Fact]
    public void A_free_id_is_no_longer_than_the_contract_allows() =>
        Assert.True(Names.FreeId(new string('x', 64), [new string('x', 64)]).Length <= 64);

    private static IEnumerable<(string, string)> Patch(RackDescription after) => DescriptionDiff.Patch(Rack, after).Select(o => (o.Op, o.Path));
}
