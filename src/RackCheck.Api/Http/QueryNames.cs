namespace RackCheck.Api.Http;

/// <summary>The query parameters of an operation.</summary>
/// <param name="Names">Their names.</param>
internal sealed record QueryNames(IReadOnlyList<string> Names);
