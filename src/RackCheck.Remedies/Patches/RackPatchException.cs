namespace RackCheck.Remedies.Patches;

/// <summary>A patch that cannot be applied to this description.</summary>
public sealed class RackPatchException : Exception
{
    /// <summary>A patch that cannot be applied.</summary>
    /// <param name="operation">Index of the failed operation; the number of operations if the result as a whole is invalid.</param>
    /// <param name="inner">The inner exception.</param>
    public RackPatchException(int operation, string message, Exception? inner = null)
        : base(message, inner) => Operation = operation;

    /// <summary>Index of the failed operation; the number of operations if the result as a whole is invalid.</summary>
    public int Operation { get; }
}
