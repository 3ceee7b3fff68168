using CsCheck;
using RackCheck.Testing;

namespace RackCheck.Model.Tests;

public sealed class IdOrderTests
{
    private static readonly Gen<string> Ids = Gen.Char["ab-019"].Array[0, 5].Select(c => new string(c));

    [Theory]
    [InlineData("srv-2", "srv-10")]
    [InlineData("u2", "u10")]
    [InlineData("srv", "srv-1")]
    [InlineData("amp-10", "srv-2")]
    [InlineData("srv-1-2", "srv-1-10")]
    [InlineData("srv-01", "srv-1")]
    [InlineData("srv-12345678901", "srv-2345678901")]
    [InlineData("Amp-10", "amp-2")]
    public void Earlier_comes_before_later(string earlier, string later)
    {
        Assert.True(IdOrder.Instance.Compare(earlier, later) < 0);
        Assert.True(IdOrder.Instance.Compare(later, earlier) > 0);
    }

    [Fact]
    [Trait("Kind", "property")]
    public void Order_of_ids_does_not_depend_on_how_they_are_listed() => Ids.Array[2, 8].Sample(
        ids => ids.Order(IdOrder.Instance).SequenceEqual(ids.Reverse().Order(IdOrder.Instance)), iter: Samples.Of(1000));
}
