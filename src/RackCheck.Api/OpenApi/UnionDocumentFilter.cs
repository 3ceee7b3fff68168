using Microsoft.OpenApi;
using RackCheck.Model;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace RackCheck.Api.OpenApi;

/// <summary>Adds the schemas that only a union names, which the generator does not find by itself.</summary>
internal sealed class UnionDocumentFilter : IDocumentFilter
{
    /// <inheritdoc/>
    public void Apply(OpenApiDocument swaggerDoc, DocumentFilterContext context)
    {
        context.SchemaGenerator.GenerateSchema(typeof(ExistingCabinet), context.SchemaRepository);
        context.SchemaGenerator.GenerateSchema(typeof(ElevationRequest), context.SchemaRepository);
    }
}
