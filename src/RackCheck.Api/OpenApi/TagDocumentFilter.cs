using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace RackCheck.Api.OpenApi;

/// <summary>Says what each group of operations is for, in the order in which a newcomer needs them.</summary>
internal sealed class TagDocumentFilter : IDocumentFilter
{
    /// <inheritdoc/>
    public void Apply(OpenApiDocument swaggerDoc, DocumentFilterContext context) => swaggerDoc.Tags = new HashSet<OpenApiTag>
    {
        new() { Name = "Checks", Description = "Whether a rack can be built, closed, powered, cooled, earthed, delivered and serviced." },
        new() { Name = "Baskets", Description = "From part numbers and quantities to a checked rack, and what is missing from the basket." },
        new() { Name = "Rules", Description = "What the findings mean." },
        new() { Name = "Reference", Description = "The tables that the rules compute with." },
        new() { Name = "Health", Description = "For probes and load balancers." },
    };
}
