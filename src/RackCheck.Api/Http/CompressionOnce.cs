using Microsoft.AspNetCore.ResponseCompression;
using Microsoft.Extensions.Options;

namespace RackCheck.Api.Http;

/// <summary>Compresses answers that are not compressed yet; a <see cref="StaticAnswer"/> is kept in compressed form.</summary>
internal sealed class CompressionOnce(IServiceProvider services, IOptions<ResponseCompressionOptions> options)
    : ResponseCompressionProvider(services, options)
{
    /// <inheritdoc/>
    public override bool ShouldCompressResponse(HttpContext context) =>
        context.Response.Headers.ContentEncoding.Count == 0 && base.ShouldCompressResponse(context);
}
