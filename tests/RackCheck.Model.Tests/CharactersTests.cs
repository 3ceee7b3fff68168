namespace RackCheck.Model.Tests;

public sealed class CharactersTests
{
    // Against the runes of the framework, which are the scalar values of Unicode; a half of a pair by itself is one replacement rune there.
    [Theory]
    [InlineData("")]
    [InlineData("server-1")]
    [InlineData("écluse")]
    [InlineData("\U0001F30A")]
    [InlineData("a\U0001F30Ab\U0001F30A\U0001F30A")]
    [InlineData("\uD83C")]
    [InlineData("\uDF0A\uD83C")]
    [InlineData("\uD83C\uD83C\uDF0A")]
    public void Characters_are_counted_as_Unicode_has_them(string text)
    {
        var count = text.EnumerateRunes().Count();
        Assert.Equal(count, Characters.Count(text));
        Assert.True(Characters.IsAtMost(text, count));
        Assert.False(Characters.IsAtMost(text, count - 1));
    }
}
