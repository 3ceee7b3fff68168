namespace RackCheck.Model.Tests;

public sealed class PointerOrderTests
{
    [Theory]
    [InlineData("/items/2", "/items/10")]
    [InlineData("/items/2/position", "/items/10")]
    [InlineData("/items/2", "/items/2/position")]
    [InlineData("/cabinet/depthMm", "/items")]
    [InlineData("/cabinet/depthMm", "/cabinet/widthMm")]
    [InlineData("/items/9/body/depthMm", "/items/9/body/heightMm")]
    [InlineData("/acceptances/1", "/cabinet")]
    [InlineData("", "/items")]
    public void The_first_comes_before_the_second(string first, string second)
    {
        Assert.True(PointerOrder.Instance.Compare(first, second) < 0);
        Assert.True(PointerOrder.Instance.Compare(second, first) > 0);
    }

    [Theory]
    [InlineData("")]
    [InlineData("/items/10/position")]
    public void A_pointer_equals_itself(string pointer) => Assert.Equal(0, PointerOrder.Instance.Compare(pointer, pointer));
}
