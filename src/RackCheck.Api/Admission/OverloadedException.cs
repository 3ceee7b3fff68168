namespace RackCheck.Api.Admission;

/// <summary>An admitted request waited or computed for longer than its limit.</summary>
/// <param name="message">Explanation for the caller.</param>
public sealed class OverloadedException(string message) : Exception(message);
