using System.Globalization;
using Microsoft.AspNetCore.WebUtilities;
using Microsoft.OpenApi;
using RackCheck.Api.Access;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace RackCheck.Api.OpenApi;

/// <summary>Describes every status that an operation can answer with: its headers, and for a refusal the shared response with its examples.</summary>
internal sealed class ResponseOperationFilter : IOperationFilter
{
    // Any address refuses query parameters that it does not have and methods that it does not take, and can fail.
    private static readonly int[] Everywhere =
        [StatusCodes.Status400BadRequest, StatusCodes.Status405MethodNotAllowed, StatusCodes.Status500InternalServerError];

    /// <summary>Name of the shared response of a status.</summary>
    public static string NameOf(int status) => ReasonPhrases.GetReasonPhrase(status).Replace(" ", "", StringComparison.Ordinal);

    /// <inheritdoc/>
    public void Apply(OpenApiOperation operation, OperationFilterContext context)
    {
        var responses = operation.Responses!;
        var isLimited = context.ApiDescription.ActionDescriptor.EndpointMetadata.OfType<ScopeRequirement>().Any();
        var isStatic = responses.ContainsKey("304");
        foreach (var status in responses.Keys.Select(s => int.Parse(s, CultureInfo.InvariantCulture)).Union(Everywhere).ToArray())
        {
            var key = status.ToString(CultureInfo.InvariantCulture);
            if (status < 400)
            {
                var own = (OpenApiResponse)responses[key];
                own.Description = status == StatusCodes.Status304NotModified ? "The client has the current version." : "The response.";
                own.Headers = Headers.For(context.Document, isLimited, isStatic);
            }
            else
            {
                responses[key] = new OpenApiResponseReference(NameOf(status), context.Document);
            }
        }

        var sorted = responses.OrderBy(r => r.Key, StringComparer.Ordinal).ToArray();
        responses.Clear();
        foreach (var (status, response) in sorted)
        {
            responses[status] = response;
        }
    }
}
