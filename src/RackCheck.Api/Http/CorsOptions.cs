using System.ComponentModel.DataAnnotations;

namespace RackCheck.Api.Http;

/// <summary>Settings of cross-origin requests, section <c>Cors</c>.</summary>
public sealed class CorsOptions : IValidatableObject
{
    /// <summary>Name of the section.</summary>
    public const string Section = "Cors";

    /// <summary>Origins of web pages that may call the service, as <c>https://shop.example</c>.</summary>
    public string[] Origins { get; init; } = [];

    /// <inheritdoc/>
    public IEnumerable<ValidationResult> Validate(ValidationContext validationContext) => Origins
        .Where(o => !Uri.TryCreate(o, UriKind.Absolute, out var uri) || uri.Scheme is not ("http" or "https") || uri.GetLeftPart(UriPartial.Authority) != o)
        .Select(o => new ValidationResult($"'{o}' is not an origin, such as https://shop.example.", [nameof(Origins)]));
}
