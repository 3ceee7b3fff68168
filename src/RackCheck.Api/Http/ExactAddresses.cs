using Microsoft.AspNetCore.Routing.Patterns;

namespace RackCheck.Api.Http;

/// <summary>Refuses addresses that an operation does not have: other letter case, a slash at the end, unknown query parameters.</summary>
internal static class ExactAddresses
{
    /// <summary>Adds the check, behind routing.</summary>
    public static void UseExactAddresses(this IApplicationBuilder app) => app.Use(static (context, next) =>
    {
        if (context.GetEndpoint() is not RouteEndpoint endpoint)
        {
            return next(context);
        }

        if (!IsAsWritten(endpoint.RoutePattern, context.Request.Path.Value))
        {
            context.SetEndpoint(null);
            return Problems.WriteAsync(context, ProblemKind.NotFound, "Paths are case-sensitive and do not end with a slash.");
        }

        return UnknownName(endpoint, context.Request) is { } unknown
            ? Problems.WriteQueryAsync(context, ShownText.Of(unknown), $"There is no query parameter '{ShownText.Of(unknown)}' here.")
            : next(context);
    });

    private static string? UnknownName(RouteEndpoint endpoint, HttpRequest request)
    {
        if (!request.QueryString.HasValue)
        {
            return null;
        }

        var known = endpoint.Metadata.GetMetadata<QueryNames>()?.Names ?? [];
        return request.Query.Keys.FirstOrDefault(k => !known.Contains(k, StringComparer.Ordinal));
    }

    // The framework compares paths without regard to case, and ignores a slash at the end.
    private static bool IsAsWritten(RoutePattern pattern, ReadOnlySpan<char> path)
    {
        if (pattern.PathSegments.Count == 0)
        {
            return path is "/";
        }

        foreach (var segment in pattern.PathSegments)
        {
            if (path is not ['/', .. var rest])
            {
                return false;
            }

            var end = rest.IndexOf('/');
            var part = end < 0 ? rest : rest[..end];
            path = end < 0 ? [] : rest[end..];
            if (segment.Parts is [RoutePatternLiteralPart literal] && !part.SequenceEqual(literal.Content))
            {
                return false;
            }
        }

        return path.IsEmpty;
    }
}
