using RackCheck.Model;
using RackCheck.Rules.Cooling;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.CoolRacks;

namespace RackCheck.Rules.Tests.Cooling;

// Practice: no source beyond it.
public sealed class AirflowConflictTests : RuleTests<AirflowConflict>
{
    private static Item Moving(string id, int unit, AirflowDirection direction, Face? face = null) => Unit(id, 4).At(unit, face).Airflow(direction);

    private static RackDescription Pair(int unit = 5, AirflowDirection other = AirflowDirection.RearToFront, Face? face = null) => Cool(Aired, Aired)
        .With(Moving("wave-pc", 1, AirflowDirection.FrontToRear), Moving("gauge-pc", unit, other, face));

    [Fact]
    public void Neighbours_with_opposite_airflow_are_warning()
    {
        var finding = Only(Pair());
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["/items/1", "/items/0"], finding.Pointers);
        Assert.Equal(("wave-pc", "gauge-pc"), (finding.MessageData["forward"].Text, finding.MessageData["backward"].Text));
    }

    [Fact]
    public void Gap_or_same_direction_passes()
    {
        Passes(Pair(6));
        Passes(Pair(other: AirflowDirection.FrontToRear));
        Passes(Pair(other: AirflowDirection.Upward));
        Passes(Pair(face: Face.Rear));
    }

    [Fact]
    public void One_of_them_moves_away()
    {
        var rack = Pair();
        Assert.Equal(6, Remedied(rack, Only(rack)).Items[1].Position!.U);
        var full = Pair() with { Cabinet = Pair().Cabinet! with { HeightU = 8, HeightMm = 500 } };
        Assert.Equal("wave-pc", Assert.Single(Remedied(full, Only(full)).Items).Id);
    }

    [Theory]
    [InlineData(800, 0)]
    [InlineData(799, 1)]
    [InlineData(600, 1)]
    public void Side_airflow_needs_wide_cabinet(double width, int count)
    {
        var rack = Cool(Aired, Aired).Cabinet(c => c with { WidthMm = width }).With(Moving("gauge-amp", 1, AirflowDirection.Side));
        var findings = Findings(rack);
        Assert.Equal(count, findings.Count);
        if (count > 0)
        {
            Numbers(findings[0], width, 800, "mm");
            Assert.Equal(["/items/0/airflow/direction", "/cabinet/widthMm"], findings[0].Pointers);
            Assert.Equal(800, Remedied(rack, findings[0]).Cabinet!.WidthMm);
            Passes(rack.Cabinet(c => c with { SidePanels = false }));
        }
    }

    [Fact]
    public void A_policy_sets_the_width()
    {
        var rack = Cool(Aired, Aired).Cabinet(c => c with { WidthMm = 800 }).With(Moving("gauge-amp", 1, AirflowDirection.Side)).Limit(Id, "widthMm", 900);
        Assert.Equal(900, Remedied(rack, Only(rack)).Cabinet!.WidthMm);
        Passes(Cool(Aired, Aired).With(Moving("gauge-amp", 1, AirflowDirection.Side)).Limit(Id, "widthMm", 600));
    }
}
