using RackCheck.Model;
using RackCheck.Model.Converters;
using RackCheck.Rules;

namespace RackCheck.Documents.Pages;

/// <summary>The index of the rules. Without a script it is a list by theme; the script adds filters.</summary>
internal static class RuleIndex
{
    /// <summary>Writes the page.</summary>
    /// <param name="rules">The rules, by id.</param>
    public static Html Write(IReadOnlyList<RuleDescriptor> rules)
    {
        var themes = rules.GroupBy(r => r.Theme).ToArray();
        return Html.Of($"""
            <h1>Rules</h1>
            <p class="lead">{rules.Count} rules. Each has a page with its formula, limits and sources, a rack that breaks it and a rack at the limit that
            passes.</p>
            <form class="filters" data-filters hidden>
            <label>Text<input type="search" name="text" autocomplete="off"></label>
            <label>Theme<select name="theme"><option value="">all</option>{themes.Select(t => Html.Of($"<option>{t.Key}</option>"))}</select></label>
            <label>Severity<select name="severity"><option value="">all</option><option>error</option>
            <option>warning</option><option>advice</option></select></label>
            <label>Counts for<select name="concern"><option value="">all</option><option>product</option><option>site</option></select></label>
            <label>Safety<select name="safety"><option value="">all</option><option value="yes">safety rules</option></select></label>
            <output aria-live="polite"></output>
            </form>
            {themes.Select(Theme)}
            <h2 id="changes">Changes of the ruleset</h2>
            {RuleSet.Changes.Select(c => Html.Of($"<h3 id=\"{c.Version}\">{c.Version}</h3>{Html.List(c.Changes)}"))}
            """);
    }

    private static Html Theme(IGrouping<string, RuleDescriptor> theme) => Html.Of($"""
        <section data-group><h2 id="{theme.Key}">{Words.Capital(theme.Key)}</h2>
        <ul class="rules">{theme.Select(Entry)}</ul></section>

        """);

    private static Html Entry(RuleDescriptor rule)
    {
        var milder = rule.MilderSeverity is { } second ? " " + NamedEnumConverter<Severity>.Name(second) : "";
        return Html.Of($"""
            <li id="{rule.Id}" data-theme="{rule.Theme}" data-severity="{NamedEnumConverter<Severity>.Name(rule.Severity)}{milder}" data-concern="{
                NamedEnumConverter<Concern>.Name(rule.Concern)}" data-safety="{(rule.Safety ? "yes" : "no")}">
            <p><a href="{Paths.RootOf(Paths.Rules)}{Paths.Rule(rule.Id)}">{rule.Title}</a> <code>{rule.Id}</code></p>
            <p>{Signs.Of(rule)}{(rule.Concern == Concern.Site ? "site" : "")}</p>
            <p class="small">{rule.What}</p></li>

            """);
    }
}
