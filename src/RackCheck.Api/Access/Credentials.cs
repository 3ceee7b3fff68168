namespace RackCheck.Api.Access;

/// <summary>Where credentials are in a request.</summary>
internal static class Credentials
{
    /// <summary>Header with an API key.</summary>
    public const string KeyHeader = "X-API-Key";

    private const string BearerPrefix = "Bearer ";

    /// <summary>Whether a request has credentials, valid or not.</summary>
    public static bool ArePresented(HttpRequest request) => request.Headers.ContainsKey(KeyHeader) || request.Headers.Authorization.Count > 0;

    /// <summary>Whether a request has a bearer token.</summary>
    public static bool IsBearer(HttpRequest request) =>
        request.Headers.Authorization is [{ } value] && value.StartsWith(BearerPrefix, StringComparison.OrdinalIgnoreCase);
}
