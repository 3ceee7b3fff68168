namespace RackCheck.Api.Http;

/// <summary>What is thrown for a body that is not valid HTTP.</summary>
internal static class ClientFaults
{
    /// <summary>What callers are told.</summary>
    public const string Detail = "The request body is incomplete or not valid HTTP.";

    /// <summary>Whether a fault of reading a body is the client's.</summary>
    /// <param name="fault">What the server threw.</param>
    public static bool IsBadBody(Exception? fault) => fault is BadHttpRequestException || IsBadChunkSize(fault);

    /// <summary>Whether the size of a chunk is beyond what the server counts to. It has no exception of its own for that.</summary>
    /// <param name="fault">What the server threw.</param>
    public static bool IsBadChunkSize(Exception? fault) => fault is IOException { InnerException: OverflowException };
}
