namespace RackCheck.Model.Json;

/// <summary>Asks for the reader of a record, which is written when the contract is compiled.</summary>
/// <param name="type">The record.</param>
[AttributeUsage(AttributeTargets.Class, AllowMultiple = true)]
internal sealed class ReadsAttribute(Type type) : Attribute
{
    /// <summary>The record.</summary>
    public Type Type { get; } = type;
}
