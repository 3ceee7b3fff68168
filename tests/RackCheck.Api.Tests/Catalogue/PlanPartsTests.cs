using RackCheck.Api.Catalogue;
using RackCheck.Model;
using static RackCheck.Api.Tests.Catalogue.CatalogueRig;

namespace RackCheck.Api.Tests.Catalogue;

/// <summary>What a plan gets of the catalogue, and when it is refused without.</summary>
public sealed class PlanPartsTests
{
    private readonly ScriptedCatalogue catalogue = new() { Products = Packs(3) };

    [Fact]
    public async Task Plan_gets_its_parts_and_the_list()
    {
        var parts = await new PartLookUp(catalogue).ForPlanAsync([Pack(1), "QWL-NONE"], CancellationToken.None);
        Assert.Equal([Pack(1)], parts.Found.Keys);
        Assert.Equal(3, parts.Offered.Count);
        parts.Require(isWhole: false);
    }

    [Fact]
    public async Task Plan_without_part_numbers_is_refused_only_if_it_is_not_whole()
    {
        catalogue.Fails = true;
        var parts = await new PartLookUp(catalogue).ForPlanAsync([], CancellationToken.None);
        Assert.Equal([0], catalogue.Asked);
        Assert.Equal((0, 0), (parts.Found.Count, parts.Offered.Count));
        parts.Require(isWhole: true);
        Assert.Equal(TimeSpan.FromSeconds(7), Assert.Throws<CatalogueUnavailableException>(() => parts.Require(isWhole: false)).RetryAfter);
    }

    [Fact]
    public async Task Plan_with_part_numbers_is_refused()
    {
        catalogue.Fails = true;
        await Assert.ThrowsAsync<CatalogueUnavailableException>(() => new PartLookUp(catalogue).ForPlanAsync([Pack(1)], CancellationToken.None).AsTask());
    }

    [Fact]
    public async Task File_offers_the_same_list_each_time()
    {
        var file = new FileCatalogue(new ProductList { Products = Packs(3) });
        Assert.Same(await file.OfferedAsync(CancellationToken.None), await file.OfferedAsync(CancellationToken.None));
    }
}
