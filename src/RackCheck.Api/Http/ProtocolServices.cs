using Microsoft.AspNetCore.Cors.Infrastructure;
using Microsoft.AspNetCore.ResponseCompression;
using Microsoft.Extensions.Options;
using Microsoft.Net.Http.Headers;

namespace RackCheck.Api.Http;

/// <summary>Registers compression and cross-origin requests.</summary>
internal static class ProtocolServices
{
    /// <summary>Registers them.</summary>
    public static void AddProtocol(this IServiceCollection services)
    {
        services.AddOptions<CorsOptions>().BindConfiguration(CorsOptions.Section).ValidateDataAnnotations().ValidateOnStart();
        services.AddCors();
        services.AddOptions<Microsoft.AspNetCore.Cors.Infrastructure.CorsOptions>().Configure<IOptions<CorsOptions>>(static (cors, own) =>
            cors.AddDefaultPolicy(policy => Allow(policy, own.Value.Origins)));

        // gzip and br remain.
        services.AddRequestDecompression(options => options.DecompressionProviders.Remove("deflate"));

        // Problem documents are short and have to be cheap. Answers have no secret beside text that a caller chose.
        services.AddSingleton<IResponseCompressionProvider, CompressionOnce>();
        services.AddResponseCompression(options =>
        {
            options.EnableForHttps = true;
            options.MimeTypes = ["application/json", "text/html", "text/css", "text/javascript", "image/svg+xml", "text/csv"];
        });
        services.Configure<BrotliCompressionProviderOptions>(options => options.Level = System.IO.Compression.CompressionLevel.Fastest);
        services.Configure<GzipCompressionProviderOptions>(options => options.Level = System.IO.Compression.CompressionLevel.Fastest);
    }

    /// <summary>
    /// Answers pages of the named origins. A cache keeps an answer for the origin that it is for: one to another origin, or to none, has no leave for the page.
    /// </summary>
    /// <param name="app">The pipeline.</param>
    public static void UseOrigins(this WebApplication app)
    {
        if (app.Services.GetRequiredService<IOptions<CorsOptions>>().Value.Origins.Length > 0)
        {
            app.Use(static (context, next) =>
            {
                context.Response.OnStarting(
                    static state =>
                    {
                        // The framework adds it itself where there are several origins and the request has one of them.
                        var headers = ((HttpContext)state).Response.Headers;
                        if (!headers.Vary.Contains(HeaderNames.Origin, StringComparer.OrdinalIgnoreCase))
                        {
                            headers.Append(HeaderNames.Vary, HeaderNames.Origin);
                        }

                        return Task.CompletedTask;
                    },
                    context);
                return next(context);
            });
        }

        app.UseCors();
    }

    private static void Allow(CorsPolicyBuilder policy, string[] origins) => policy
        .WithOrigins(origins)
        .WithMethods(HttpMethods.Get, HttpMethods.Head, HttpMethods.Post)
        .AllowAnyHeader()
        .WithExposedHeaders(HeaderNames.ETag, HeaderNames.RetryAfter, "RateLimit", "RateLimit-Policy", CommonHeaders.Ruleset, CommonHeaders.TraceId)
        .SetPreflightMaxAge(TimeSpan.FromMinutes(10));
}
