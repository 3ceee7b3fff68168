using System.Text;

namespace RackCheck.Documents.Pages;

/// <summary>Addresses of the documentation below the service's own, without a slash in front.</summary>
public static class Paths
{
    /// <summary>The start page.</summary>
    public const string Start = "docs";

    /// <summary>Index of the rules; the page of a rule is below it.</summary>
    public const string Rules = "docs/rules";

    /// <summary>The reference.</summary>
    public const string Reference = "docs/reference";

    /// <summary>Drawn dimensions.</summary>
    public const string Dimensions = "docs/reference/dimensions";

    /// <summary>Members of requests and answers; a page for each document is below it.</summary>
    public const string Members = "docs/reference/members";

    /// <summary>Tables; a page and a CSV file for each table are below it.</summary>
    public const string Tables = "docs/reference/tables";

    /// <summary>Operations.</summary>
    public const string Operations = "docs/reference/operations";

    /// <summary>Examples with their answers, and how to test without the service.</summary>
    public const string Testing = "docs/reference/testing";

    /// <summary>Parts of the sample catalogue.</summary>
    public const string Parts = "docs/reference/parts";

    /// <summary>How a web shop uses the service.</summary>
    public const string Shop = "docs/shop";

    /// <summary>Recorded answers; each is a file below it.</summary>
    public const string Answers = "docs/examples/answers";

    /// <summary>Concepts.</summary>
    public const string Concepts = "docs/reference/concepts";

    /// <summary>Problem types; a page for each is below it.</summary>
    public const string Problems = "docs/problems";

    /// <summary>Search over all pages.</summary>
    public const string Search = "docs/search";

    /// <summary>Entries of the search.</summary>
    public const string SearchIndex = "docs/search.json";

    /// <summary>The explorer: every operation with a form to send it.</summary>
    public const string Explorer = "docs/explorer";

    /// <summary>The workbench; its assets are below it.</summary>
    public const string Workbench = "docs/workbench";

    /// <summary>Example requests; each is a file below it.</summary>
    public const string Examples = "docs/examples";

    /// <summary>Style sheet.</summary>
    public const string Style = "docs/site.css";

    /// <summary>Script.</summary>
    public const string Script = "docs/site.js";

    /// <summary>Icon.</summary>
    public const string Icon = "docs/icon.svg";

    /// <summary>Drawing of the start page.</summary>
    public const string Drawing = "docs/start.svg";

    /// <summary>The same rack from the side alone, for narrow windows.</summary>
    public const string SideDrawing = "docs/start-side.svg";

    /// <summary>The page of a rule.</summary>
    /// <param name="id">Id of the rule.</param>
    public static string Rule(string id) => $"{Rules}/{id}";

    /// <summary>The way from a page to the root of the service, to be put in front of an address.</summary>
    /// <param name="path">Address of the page.</param>
    public static string RootOf(string path) => path.Contains('/', StringComparison.Ordinal)
        ? new StringBuilder().Insert(0, "../", path.Count(c => c == '/')).ToString()
        : "./";
}
