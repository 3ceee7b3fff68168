using System.Text.Json;
using System.Text.Json.Nodes;
using RackCheck.Model;
using RackCheck.Remedies.Patches;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Remedies.Tests.Patches;

public sealed class RackPatchTests
{
    [Theory]
    [InlineData("""{"a":{}}""", "add", "/a/b", "1", """{"a":{"b":1}}""")] // RFC 6902 appendix A.1
    [InlineData("""{"a":{"b":2}}""", "add", "/a/b", "1", """{"a":{"b":1}}""")] // section 4.1: replaces a member that stands
    [InlineData("""{"foo":["bar","baz"]}""", "add", "/foo/1", "\"qux\"", """{"foo":["bar","qux","baz"]}""")] // appendix A.2
    [InlineData("""{"foo":["bar"]}""", "add", "/foo/-", "[\"abc\",\"def\"]", """{"foo":["bar",["abc","def"]]}""")] // appendix A.16
    [InlineData("""{"foo":["bar"]}""", "add", "/foo/1", "2", """{"foo":["bar",2]}""")]
    [InlineData("""{"foo":[]}""", "add", "/foo/0", "2", """{"foo":[2]}""")]
    [InlineData("""{"baz":"qux","foo":"bar"}""", "remove", "/baz", null, """{"foo":"bar"}""")] // appendix A.3
    [InlineData("""{"foo":["bar","qux","baz"]}""", "remove", "/foo/1", null, """{"foo":["bar","baz"]}""")] // appendix A.4
    [InlineData("""{"baz":"qux","foo":"bar"}""", "replace", "/baz", "\"boo\"", """{"baz":"boo","foo":"bar"}""")] // appendix A.5
    [InlineData("""{"foo":[1,2]}""", "replace", "/foo/1", "3", """{"foo":[1,3]}""")]
    [InlineData("""{"a":1}""", "replace", "", "{\"b\":2}", """{"b":2}""")]
    [InlineData("""{"a":1}""", "add", "", "[]", "[]")]
    [InlineData("""{"a/b":{"m~n":1}}""", "replace", "/a~1b/m~0n", "2", """{"a/b":{"m~n":2}}""")]
    [InlineData("""{"/":9,"~1":10}""", "replace", "/~01", "2", """{"/":9,"~1":2}""")] // appendix A.14
    [InlineData("""{"":{"":1}}""", "replace", "//", "2", """{"":{"":2}}""")] // RFC 6901 section 5
    [InlineData("""{"o":{"5":1}}""", "remove", "/o/5", null, """{"o":{}}""")]
    [InlineData("""{"o":{"-":1}}""", "replace", "/o/-", "2", """{"o":{"-":2}}""")]
    [InlineData("""{"a":[{"b":1}]}""", "add", "/a/0/c", "2", """{"a":[{"b":1,"c":2}]}""")]
    [InlineData("""{"a":1}""", "test", "/a", "1.0", """{"a":1}""")] // section 4.6: numbers by value
    [InlineData("""{"a":{"x":1,"y":[2]}}""", "test", "/a", "{\"y\":[2],\"x\":1}", """{"a":{"x":1,"y":[2]}}""")]
    [InlineData("""["a"]""", "test", "", "[\"a\"]", """["a"]""")]
    [InlineData("""{"a":[null]}""", "test", "/a/0", "null", """{"a":[null]}""")]
    public void An_operation_does_what_rfc_6902_says(string document, string op, string path, string? value, string result) =>
        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(result), RackPatch.Apply(JsonNode.Parse(document), Operation(op, path, value), 0)));

    [Theory]
    [InlineData("""{"foo":"bar"}""", "add", "/baz/bat", "1")] // appendix A.12: the parent has to be there
    [InlineData("""{"foo":["bar"]}""", "add", "/foo/2", "1")] // past the end
    [InlineData("""{"foo":["bar"]}""", "add", "/foo/bar", "1")]
    [InlineData("""{"foo":["bar"]}""", "add", "/foo/00", "1")] // RFC 6901 section 4: no leading zero
    [InlineData("""{"foo":["bar"]}""", "add", "/foo/+0", "1")]
    [InlineData("""{"foo":["bar"]}""", "remove", "/foo/-", null)] // what "-" names is not there
    [InlineData("""{"foo":["bar"]}""", "remove", "/foo/1", null)]
    [InlineData("""{"foo":["bar"]}""", "replace", "/foo/1", "1")]
    [InlineData("""{"foo":"bar"}""", "remove", "/Foo", null)] // names are compared exactly
    [InlineData("""{"foo":"bar"}""", "replace", "/baz", "1")]
    [InlineData("""{"foo":"bar"}""", "add", "/foo/x", "1")] // a string has no members
    [InlineData("""{"foo":null}""", "add", "/foo/x", "1")]
    [InlineData("""{"foo":"bar"}""", "add", "foo", "1")] // no pointer
    [InlineData("""{"foo":"bar"}""", "test", "/foo", "\"baz\"")] // appendix A.9
    [InlineData("""{"/":9}""", "test", "/~1", "\"9\"")] // appendix A.15
    [InlineData("""{"foo":"bar"}""", "test", "/baz", "\"bar\"")]
    [InlineData("""{"foo":"bar"}""", "frob", "/foo", "1")]
    [InlineData("""{"foo":"bar"}""", "Add", "/baz", "1")]
    [InlineData("""{"foo":"bar"}""", "add", "/baz", null)]
    public void What_it_cannot_do_it_says(string document, string op, string path, string? value)
    {
        var node = JsonNode.Parse(document)!;
        var fault = Assert.Throws<RackPatchException>(() => RackPatch.Apply(node, Operation(op, path, value), 3));
        Assert.Equal(3, fault.Operation);
        Assert.Equal(document, node.ToJsonString());
    }

    [Fact]
    public void Removing_the_whole_document_leaves_null() => Assert.Null(RackPatch.Apply(JsonNode.Parse("{}"), Operation("remove", "", null), 0));

    [Fact]
    public void Operations_follow_each_other_and_the_description_given_stays_as_it_is()
    {
        var rack = EmptyRack().With(Unit("a", 1), Unit("b", 1), Unit("c", 1));
        var before = Wording.Of(rack);
        var patched = RackPatch.Apply(
            rack,
            [
                Operation("remove", "/items/2", null), Operation("remove", "/items/0", null), Operation("add", "/items/-", "{\"id\":\"d\"}"),
                Operation("test", "/items/0/id", "\"b\""),
            ]);
        Assert.Equal(["b", "d"], patched.Items.Select(i => i.Id));
        Assert.Equal(before, Wording.Of(rack));
    }

    [Fact]
    public void A_fault_names_the_operation()
    {
        var rack = EmptyRack();
        Assert.Equal(
            1,
            Assert.Throws<RackPatchException>(() =>
                RackPatch.Apply(rack, [Operation("add", "/reference", "\"x\""), Operation("remove", "/site", null)])).Operation);
        Assert.Null(rack.Reference);
    }

    [Theory]
    [InlineData("remove", "/items", null)] // a member that has to be there
    [InlineData("add", "/colour", "\"grey\"")] // one that is none
    [InlineData("replace", "/cabinet/heightU", "\"tall\"")]
    [InlineData("remove", "", null)]
    [InlineData("replace", "", "[]")]
    public void What_comes_out_has_to_be_a_description(string op, string path, string? value) =>
        Assert.Equal(1, Assert.Throws<RackPatchException>(() => RackPatch.Apply(EmptyRack(), [Operation(op, path, value)])).Operation);

    [Fact]
    public void A_patch_of_nothing_changes_nothing()
    {
        var rack = EmptyRack().With(Unit("a", 1).At(3).Body(440, 300, 43).On(SupportStyle.Slides));
        var nothing = new Remedy { Title = "nothing", TitleKey = "nothing", TitleData = new Dictionary<string, Scalar>(), Patch = [], RemovesItems = [] };
        Assert.Equal(Wording.Of(rack), Wording.Of(RackPatch.Apply(rack, nothing)));
    }

    private static PatchOperation Operation(string op, string path, string? value) =>
        new() { Op = op, Path = path, Value = value is null ? null : JsonDocument.Parse(value).RootElement };
}
