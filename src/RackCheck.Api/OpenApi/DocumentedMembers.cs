using System.Collections.Frozen;
using System.Reflection;
using System.Xml.Linq;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace RackCheck.Api.OpenApi;

/// <summary>Summaries of enum members and constants, from the XML documentation beside an assembly, so that nothing is said twice.</summary>
internal static class DocumentedMembers
{
    private const string FieldPrefix = "F:";

    private static readonly FrozenDictionary<string, string> Summaries =
        new[] { typeof(Model.RackDescription).Assembly, typeof(DocumentedMembers).Assembly }.SelectMany(Read).ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The summary of an enum member or a constant.</summary>
    /// <param name="owner">The type that declares it.</param>
    /// <param name="name">Its name.</param>
    /// <returns>The text, on one line.</returns>
    /// <exception cref="KeyNotFoundException">It has no summary.</exception>
    public static string Of(Type owner, string name) => Summaries[$"{FieldPrefix}{owner.FullName}.{name}"];

    private static IEnumerable<KeyValuePair<string, string>> Read(Assembly assembly) =>
        from member in XDocument.Load(Path.Combine(AppContext.BaseDirectory, assembly.GetName().Name + ".xml")).Descendants("member")
        let name = member.Attribute("name")!.Value
        where name.StartsWith(FieldPrefix, StringComparison.Ordinal) && member.Element("summary") is not null
        let text = XmlCommentsTextHelper.Humanize(string.Concat(member.Element("summary")!.Nodes()))
        select KeyValuePair.Create(name, string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)));
}
