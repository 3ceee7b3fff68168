namespace RackCheck.Remedies.Patches;

/// <summary>A patch that cannot be applied to this description.</summary>
public sealed class RackPatchException : Exception
{
    /// <summary>A patch that cannot be applied.</summary>
    /// <param name="operation">Index of the operation that fails; the number of operations where what comes out of all fails.</param>
    /// <param name="message">Why.</param>
    /// <param name="inner">What was thrown below.</param>
    public RackPatchException(int operation, string message, Exception? inner = null)
        : base(message, inner) => Operation = operation;

    /// <summary>Index of the operation that fails; the number of operations where what comes out of all fails.</summary>
    public int Operation { get; }
}
