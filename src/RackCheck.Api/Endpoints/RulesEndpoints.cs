using System.Collections.Frozen;
using RackCheck.Api.Http;
using RackCheck.Documents;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Rules;

namespace RackCheck.Api.Endpoints;

/// <summary>GET /v1/rules, /v1/rules/{id} and /v1/rulesets. The responses do not change at run time, so they are made once.</summary>
internal static class RulesEndpoints
{
    /// <summary>Name of the operation in the contract.</summary>
    public const string GetRule = "getRule";

    /// <summary>Maps the group.</summary>
    public static void MapRules(this IEndpointRouteBuilder routes)
    {
        // Made when they are first asked for, so that no start waits for them.
        var catalogue = new Lazy<RuleCatalogue>(() => new RuleCatalogue(RuleSet.Default));
        var list = new Lazy<StaticAnswer>(() => new StaticAnswer(JsonAnswer.Bytes(catalogue.Value.List, ContractJson.Default.RuleList)));
        var history = new Lazy<StaticAnswer>(() => new StaticAnswer(JsonAnswer.Bytes(catalogue.Value.History, ContractJson.Default.RulesetHistory)));
        var pages = new Lazy<FrozenDictionary<string, StaticAnswer>>(() => catalogue.Value.Pages.ToFrozenDictionary(
            p => p.Id,
            p => new StaticAnswer(JsonAnswer.Bytes(p, ContractJson.Default.RulePage)),
            StringComparer.Ordinal));

        routes.MapGet("/v1/rules", (Delegate)((HttpContext context) => list.Value.WriteAsync(context)))
            .WithName("listRules")
            .WithTags("Rules")
            .WithSummary("List the rules")
            .WithDescription("Summaries of all rules that a check applies.")
            .AnswersWith<RuleList>()
            .Produces(StatusCodes.Status304NotModified);

        routes.MapGet("/v1/rulesets", (Delegate)((HttpContext context) => history.Value.WriteAsync(context)))
            .WithName("listRulesets")
            .WithTags("Rules")
            .WithSummary("List the rulesets")
            .WithDescription(
                "What each version of the ruleset changed, and which rules. A version is added when the same description can get another answer. "
                + "The header Ruleset-Version of every response has the current one.")
            .AnswersWith<RulesetHistory>()
            .Produces(StatusCodes.Status304NotModified);

        routes.MapGet("/v1/rules/{id}", (HttpContext context, string id) => pages.Value.TryGetValue(id, out var page)
                ? page.WriteAsync(context)
                : Problems.WriteAsync(context, StatusCodes.Status404NotFound, "There is no such rule; GET /v1/rules lists them."))
            .WithName(GetRule)
            .WithTags("Rules")
            .WithSummary("Read a rule")
            .WithDescription("Meaning, formula, limits and sources of a rule, with a rack that breaks the rule and one at the limit that passes.")
            .AnswersWith<RulePage>()
            .Produces(StatusCodes.Status304NotModified)
            .Produces<Problem>(StatusCodes.Status404NotFound, Problems.MediaType);
    }
}
