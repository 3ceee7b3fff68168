namespace RackCheck.Documents.Pages;

/// <summary>The quick start in four languages. Each fetches an example, posts it and prints verdict and findings, with the standard library alone.</summary>
public static class SampleCode
{
    /// <summary>Address of a service on the developer's machine. The script of the page puts the service's own in its place.</summary>
    public const string Base = "http://localhost:5080/";

    /// <summary>The example that the samples post.</summary>
    public const string Example = "rack-doors-do-not-close";

    /// <summary>Language, name for machines, and code.</summary>
    public static IReadOnlyList<(string Language, string Name, string Code)> All { get; } =
    [
        ("curl", "shell", $"""
            curl -O {Base}{Paths.Examples}/{Example}.json
            curl -H 'Content-Type: application/json' --data @{Example}.json {Base}v1/checks
            """),
        ("C#", "csharp", $$"""
            using System.Text;
            using System.Text.Json.Nodes;

            using var http = new HttpClient { BaseAddress = new Uri("{{Base}}") };
            var rack = await http.GetStringAsync("{{Paths.Examples}}/{{Example}}.json");
            using var answer = await http.PostAsync("v1/checks", new StringContent(rack, Encoding.UTF8, "application/json"));
            answer.EnsureSuccessStatusCode();
            var report = JsonNode.Parse(await answer.Content.ReadAsStringAsync())!;
            Console.WriteLine(report["verdict"]);
            foreach (var finding in report["findings"]!.AsArray())
            {
                Console.WriteLine($"{finding!["severity"]} {finding["rule"]}: {finding["message"]}");
            }
            """),
        ("TypeScript", "typescript", $$"""
            const base = "{{Base}}";
            const rack = await (await fetch(base + "{{Paths.Examples}}/{{Example}}.json")).json();
            const answer = await fetch(base + "v1/checks", {
              method: "POST",
              headers: { "Content-Type": "application/json" },
              body: JSON.stringify(rack),
            });
            if (!answer.ok) throw new Error(await answer.text());
            const report = await answer.json();
            console.log(report.verdict);
            for (const finding of report.findings) {
              console.log(finding.severity, finding.rule, finding.message);
            }
            """),
        ("Python", "python", $$"""
            import json
            from urllib.request import Request, urlopen

            base = "{{Base}}"
            rack = urlopen(base + "{{Paths.Examples}}/{{Example}}.json").read()
            request = Request(base + "v1/checks", rack, {"Content-Type": "application/json"})
            report = json.load(urlopen(request))
            print(report["verdict"])
            for finding in report["findings"]:
                print(finding["severity"], finding["rule"], finding["message"])
            """),
    ];
}
