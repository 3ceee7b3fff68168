namespace RackCheck.Model.Canonical;

/// <summary>Asks for the writer of a record's canonical form, which is written when the contract is compiled.</summary>
/// <param name="type">The record.</param>
[AttributeUsage(AttributeTargets.Class, AllowMultiple = true)]
internal sealed class WritesCanonicallyAttribute(Type type) : Attribute
{
    /// <summary>The record.</summary>
    public Type Type { get; } = type;
}
