using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace RackCheck.Api.OpenApi;

/// <summary>Describes each group of operations, in the order in which a new user needs them.</summary>
internal sealed class TagDocumentFilter : IDocumentFilter
{
    /// <inheritdoc/>
    public void Apply(OpenApiDocument swaggerDoc, DocumentFilterContext context) => swaggerDoc.Tags = new HashSet<OpenApiTag>
    {
        new() { Name = "Checks", Description = "Whether a rack can be built, closed, powered, cooled, earthed, delivered and serviced." },
        new() { Name = "Baskets", Description = "Turns part numbers and quantities into a checked rack and lists what is missing from the basket." },
        new() { Name = "Proposals", Description = "Chooses cabinet, positions and parts for a list of equipment." },
        new() { Name = "Comparisons", Description = "What a change alters, or how two options differ." },
        new() { Name = "Documents", Description = "Drawings and parts lists, for the workshop, the buyer and the site." },
        new() { Name = "Rules", Description = "The rules behind the findings." },
        new() { Name = "Reference", Description = "Tables that the rules calculate with." },
        new() { Name = "Health", Description = "For probes and load balancers." },
    };
}
