using System.Collections.Immutable;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Text;

namespace RackCheck.ContractGenerator;

/// <summary>
/// Writes code from the records of the contract while they are compiled: readers from JSON and writers of the canonical form. A class marked with
/// <c>ReadsAttribute</c> or <c>WritesCanonicallyAttribute</c> gets a method for each type named there. The records stay the only home of the contract.
/// </summary>
/// <remarks>
/// The serializer sets members that are set once through a list of boxed arguments. The readers keep members in variables and make the record at the end,
/// which takes less than half of the time and of the memory.
/// </remarks>
[Generator(LanguageNames.CSharp)]
public sealed class ContractGenerator : IIncrementalGenerator
{
    private const string Reads = "RackCheck.Model.Json.ReadsAttribute";
    private const string Writes = "RackCheck.Model.Canonical.WritesCanonicallyAttribute";

    /// <inheritdoc/>
    public void Initialize(IncrementalGeneratorInitializationContext context)
    {
        Register(context, Reads, static (home, types) => new ContractReaderWriter(home).Write(types));
        Register(context, Writes, static (home, types) => new CanonicalFormWriter(home).Write(types));
    }

    private static void Register(
        IncrementalGeneratorInitializationContext context, string marker, Func<INamedTypeSymbol, ImmutableArray<INamedTypeSymbol>, string> write) =>
        context.RegisterSourceOutput(
            context.SyntaxProvider.ForAttributeWithMetadataName(
                marker,
                static (_, _) => true,
                (found, _) => new SourceFile(
                    $"{found.TargetSymbol.Name}.g.cs",
                    write((INamedTypeSymbol)found.TargetSymbol, [.. found.Attributes.Select(a => (INamedTypeSymbol)a.ConstructorArguments[0].Value!)]))),
            static (output, file) => output.AddSource(file.Name, SourceText.From(file.Text, Encoding.UTF8)));

    // Compared by its text, so that nothing is written again after a change elsewhere.
    private readonly struct SourceFile(string name, string text) : IEquatable<SourceFile>
    {
        public string Name { get; } = name;

        public string Text { get; } = text;

        public bool Equals(SourceFile other) => Name == other.Name && Text == other.Text;

        public override bool Equals(object? obj) => obj is SourceFile other && Equals(other);

        public override int GetHashCode() => Text.GetHashCode();
    }
}
