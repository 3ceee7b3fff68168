namespace RackCheck.Api.Http;

/// <summary>What is thrown for a body that is not valid HTTP, or not compressed as it says.</summary>
internal static class ClientFaults
{
    /// <summary>What callers are told.</summary>
    public const string Detail = "The request body is incomplete or not valid HTTP.";

    /// <summary>What callers are told about a body that cannot be decompressed.</summary>
    public const string CompressionDetail = "The request body is not compressed as its content encoding says, or it breaks off.";

    /// <summary>Whether a body could not be decompressed, to its end.</summary>
    /// <param name="fault">What the reader threw.</param>
    public static bool IsBadCompression(Exception fault) =>
        fault is InvalidDataException or InvalidOperationException { Source: "System.IO.Compression.Brotli" };

    /// <summary>Whether a fault of reading a body is the client's.</summary>
    /// <param name="fault">What the server threw.</param>
    public static bool IsBadBody(Exception? fault) => fault is BadHttpRequestException || IsBadChunkSize(fault);

    /// <summary>Whether the size of a chunk is beyond what the server counts to. It has no exception of its own for that.</summary>
    /// <param name="fault">What the server threw.</param>
    public static bool IsBadChunkSize(Exception? fault) => fault is IOException { InnerException: OverflowException };
}
