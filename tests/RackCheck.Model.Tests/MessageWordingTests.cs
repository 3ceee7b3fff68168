using System.Text.Json;

namespace RackCheck.Model.Tests;

/// <summary>Sentences from templates and data.</summary>
public sealed class MessageWordingTests
{
    [Theory]
    [InlineData("a", 1)]
    [InlineData("a and b", 2)]
    [InlineData("a, b, c and d", 4)]
    [InlineData("a, b, c and 2 more", 5)]
    public void A_list_is_rendered_as_a_phrase(string phrase, int count)
    {
        var ids = Scalar.Ids(new[] { "a", "b", "c", "d", "e" }.Take(count));
        Assert.Equal($"With {phrase}.", new MessageWording("k", "With {items}.").Render([("items", ids)]));
    }

    [Fact]
    public void A_list_is_named_whole_where_the_template_says_so() =>
        Assert.Equal("a, b, c, d and e", new MessageWording("k", "{items:all}").Render([("items", Scalar.Ids(["a", "b", "c", "d", "e"]))]));

    [Theory]
    [InlineData(4, 4, "U4")]
    [InlineData(10, 13, "U10-U13")]
    [InlineData(-2, 1, "U-2 to U1")]
    public void A_range_of_U_positions_is_rendered(int from, int to, string text) =>
        Assert.Equal(text, new MessageWording("k", "{units:units}").Render([("units", Scalar.Range(from, to))]));

    [Fact]
    public void A_code_is_rendered_in_words_and_an_id_as_it_is() =>
        Assert.Equal("The front door of front-door.", new MessageWording("k", "The {part:words} of {item}.")
            .Render([("part", Scalar.CodeOf("front door")), ("item", "front-door")]));

    [Fact]
    public void An_id_that_looks_like_a_name_in_braces_is_not_rendered_again() =>
        Assert.Equal("{other} and b", new MessageWording("k", "{item} and {other}").Render([("item", "{other}"), ("other", "b")]));

    [Fact]
    public void A_value_that_is_missing_is_refused() => Assert.Throws<ArgumentException>(() => new MessageWording("k", "{item}").Render([]));

    [Fact]
    public void Every_combination_of_parts_is_a_wording_of_its_own()
    {
        var choice = new WordingChoice("k", "The rack [pallet:on its pallet ]needs {mm} mm in [width:width|depth:depth|height].");
        Assert.Equal(
            ["k", "k.depth", "k.pallet", "k.pallet.depth", "k.pallet.width", "k.width"], choice.All.Select(w => w.Key).Order(StringComparer.Ordinal));
        Assert.Equal("The rack on its pallet needs {mm} mm in depth.", choice.With("pallet", "depth").Template);
        Assert.Equal("The rack needs {mm} mm in width.", choice.With("", "width").Template);
        Assert.Equal("The rack needs {mm} mm in height.", choice.With(null, "").Template);
        Assert.All(choice.All, w => Assert.Same(w, choice.With([.. w.Key.Split('.')])));
    }

    [Fact]
    public void A_list_is_an_array_in_JSON()
    {
        var data = new Dictionary<string, Scalar> { ["items"] = Scalar.Ids(["a", "b"]), ["units"] = Scalar.Range(3, 4) };
        var json = JsonSerializer.Serialize(data);
        Assert.Equal("""{"items":["a","b"],"units":[3,4]}""", json);
        var read = JsonSerializer.Deserialize<Dictionary<string, Scalar>>(json)!;
        Assert.Equal("a, b", read["items"].ToString());
        Assert.Equal(4, read["units"].List![1].Number);
    }
}
