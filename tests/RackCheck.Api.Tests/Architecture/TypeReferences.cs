using System.Collections.Immutable;
using System.Reflection.Emit;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;
using System.Text;
using System.Text.RegularExpressions;

namespace RackCheck.Api.Tests.Architecture;

/// <summary>A type by its namespace and name. A nested type, written or compiler-generated, counts as its outermost type.</summary>
internal readonly record struct TypeName(string Namespace, string Name)
{
    public override string ToString() => $"{Namespace}.{Name}";
}

/// <summary>
/// Which types the types of a compiled assembly refer to: in base types, interfaces, constraints, fields, signatures, attributes with their type arguments,
/// local variables and method bodies. A constant is not visible in the compiled code.
/// </summary>
internal sealed partial class TypeReferences : ISignatureTypeProvider<bool, object?>
{
    private static readonly Dictionary<int, OperandType> Operands = typeof(OpCodes).GetFields()
        .Select(f => (OpCode)f.GetValue(null)!).ToDictionary(o => o.Value & 0xFFFF, o => o.OperandType);

    private readonly MetadataReader metadata;
    private readonly PEReader file;
    private readonly HashSet<TypeName> found = [];

    private TypeReferences(PEReader file) => (this.file, metadata) = (file, file.GetMetadataReader());

    /// <summary>The references of an assembly from type to type, without references of a type to itself.</summary>
    public static IReadOnlyList<(TypeName From, TypeName To)> Of(string assemblyPath)
    {
        using var file = new PEReader(File.OpenRead(assemblyPath));
        var references = new TypeReferences(file);
        return [.. references.metadata.TypeDefinitions.SelectMany(references.From).Distinct()];
    }

    private IEnumerable<(TypeName From, TypeName To)> From(TypeDefinitionHandle handle)
    {
        found.Clear();
        var from = NameOf(handle);
        Read(metadata.GetTypeDefinition(handle));
        return found.Where(to => to != from).Select(to => (from, to)).ToArray();
    }

    private void Read(TypeDefinition type)
    {
        Read(type.BaseType);
        ReadAttributes(type.GetCustomAttributes());
        ReadConstraints(type.GetGenericParameters());
        foreach (var implementation in type.GetInterfaceImplementations())
        {
            Read(metadata.GetInterfaceImplementation(implementation).Interface);
        }

        foreach (var handle in type.GetFields())
        {
            Read(handle);
            ReadAttributes(metadata.GetFieldDefinition(handle).GetCustomAttributes());
        }

        foreach (var property in type.GetProperties())
        {
            ReadAttributes(metadata.GetPropertyDefinition(property).GetCustomAttributes());
        }

        foreach (var handle in type.GetMethods())
        {
            Read(handle);
            var method = metadata.GetMethodDefinition(handle);
            ReadAttributes(method.GetCustomAttributes());
            ReadConstraints(method.GetGenericParameters());
            foreach (var parameter in method.GetParameters())
            {
                ReadAttributes(metadata.GetParameter(parameter).GetCustomAttributes());
            }

            if (method.RelativeVirtualAddress != 0)
            {
                Read(file.GetMethodBody(method.RelativeVirtualAddress));
            }
        }
    }

    private void ReadConstraints(GenericParameterHandleCollection parameters)
    {
        foreach (var constraint in parameters.SelectMany(p => metadata.GetGenericParameter(p).GetConstraints()))
        {
            Read(metadata.GetGenericParameterConstraint(constraint).Type);
        }
    }

    // A type argument is text with its namespace in the value of an attribute.
    private void ReadAttributes(CustomAttributeHandleCollection attributes)
    {
        foreach (var attribute in attributes.Select(metadata.GetCustomAttribute))
        {
            Read(attribute.Constructor);
            foreach (Match type in QualifiedName().Matches(Encoding.UTF8.GetString(metadata.GetBlobBytes(attribute.Value))))
            {
                found.Add(new TypeName(type.Groups[1].Value, type.Groups[2].Value));
            }
        }
    }

    private void Read(MethodBodyBlock body)
    {
        Read(body.LocalSignature);
        foreach (var region in body.ExceptionRegions)
        {
            Read(region.CatchType);
        }

        for (var code = body.GetILReader(); code.RemainingBytes > 0;)
        {
            int opcode = code.ReadByte();
            switch (Operands[opcode == 0xFE ? 0xFE00 | code.ReadByte() : opcode])
            {
                case OperandType.InlineField or OperandType.InlineMethod or OperandType.InlineTok or OperandType.InlineType or OperandType.InlineSig:
                    Read(MetadataTokens.EntityHandle(code.ReadInt32()));
                    break;
                case OperandType.InlineSwitch:
                    var targets = code.ReadInt32();
                    code.Offset += 4 * targets;
                    break;
                case OperandType.InlineBrTarget or OperandType.InlineI or OperandType.InlineString or OperandType.ShortInlineR:
                    code.Offset += 4;
                    break;
                case OperandType.InlineI8 or OperandType.InlineR:
                    code.Offset += 8;
                    break;
                case OperandType.InlineVar:
                    code.Offset += 2;
                    break;
                case OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar:
                    code.Offset += 1;
                    break;
                default:
                    break;
            }
        }
    }

    private void Read(EntityHandle handle)
    {
        if (handle.IsNil)
        {
            return;
        }

        switch (handle.Kind)
        {
            case HandleKind.TypeDefinition:
                found.Add(NameOf((TypeDefinitionHandle)handle));
                break;
            case HandleKind.TypeReference:
                found.Add(NameOf((TypeReferenceHandle)handle));
                break;
            case HandleKind.TypeSpecification:
                metadata.GetTypeSpecification((TypeSpecificationHandle)handle).DecodeSignature(this, null);
                break;
            case HandleKind.FieldDefinition:
                var field = metadata.GetFieldDefinition((FieldDefinitionHandle)handle);
                Read(field.GetDeclaringType());
                field.DecodeSignature(this, null);
                break;
            case HandleKind.MethodDefinition:
                var method = metadata.GetMethodDefinition((MethodDefinitionHandle)handle);
                Read(method.GetDeclaringType());
                method.DecodeSignature(this, null);
                break;
            case HandleKind.MemberReference:
                var member = metadata.GetMemberReference((MemberReferenceHandle)handle);
                Read(member.Parent);
                _ = member.GetKind() == MemberReferenceKind.Field
                    ? member.DecodeFieldSignature(this, null)
                    : member.DecodeMethodSignature(this, null).ReturnType;
                break;
            case HandleKind.MethodSpecification:
                var made = metadata.GetMethodSpecification((MethodSpecificationHandle)handle);
                Read(made.Method);
                made.DecodeSignature(this, null);
                break;
            case HandleKind.StandaloneSignature:
                var signature = metadata.GetStandaloneSignature((StandaloneSignatureHandle)handle);
                _ = signature.GetKind() == StandaloneSignatureKind.LocalVariables
                    ? signature.DecodeLocalSignature(this, null).IsEmpty
                    : signature.DecodeMethodSignature(this, null).ReturnType;
                break;
            default:
                break;
        }
    }

    private TypeName NameOf(TypeDefinitionHandle handle)
    {
        var type = metadata.GetTypeDefinition(handle);
        return type.GetDeclaringType() is { IsNil: false } outer ? NameOf(outer) : new TypeName(metadata.GetString(type.Namespace), Bare(type.Name));
    }

    private TypeName NameOf(TypeReferenceHandle handle)
    {
        var type = metadata.GetTypeReference(handle);
        return type.ResolutionScope.Kind == HandleKind.TypeReference
            ? NameOf((TypeReferenceHandle)type.ResolutionScope)
            : new TypeName(metadata.GetString(type.Namespace), Bare(type.Name));
    }

    private string Bare(StringHandle name) => metadata.GetString(name).Split('`')[0];

    // Parts of a signature. Every type in it is recorded; no result is built.
    bool ISimpleTypeProvider<bool>.GetTypeFromDefinition(MetadataReader reader, TypeDefinitionHandle handle, byte rawTypeKind) => found.Add(NameOf(handle));

    bool ISimpleTypeProvider<bool>.GetTypeFromReference(MetadataReader reader, TypeReferenceHandle handle, byte rawTypeKind) => found.Add(NameOf(handle));

    bool ISignatureTypeProvider<bool, object?>.GetTypeFromSpecification(
        MetadataReader reader, object? genericContext, TypeSpecificationHandle handle, byte rawTypeKind) =>
        reader.GetTypeSpecification(handle).DecodeSignature(this, genericContext);

    bool ISimpleTypeProvider<bool>.GetPrimitiveType(PrimitiveTypeCode typeCode) => true;

    bool ISZArrayTypeProvider<bool>.GetSZArrayType(bool elementType) => true;

    bool IConstructedTypeProvider<bool>.GetArrayType(bool elementType, ArrayShape shape) => true;

    bool IConstructedTypeProvider<bool>.GetByReferenceType(bool elementType) => true;

    bool IConstructedTypeProvider<bool>.GetGenericInstantiation(bool genericType, ImmutableArray<bool> typeArguments) => true;

    bool IConstructedTypeProvider<bool>.GetPointerType(bool elementType) => true;

    bool ISignatureTypeProvider<bool, object?>.GetFunctionPointerType(MethodSignature<bool> signature) => true;

    bool ISignatureTypeProvider<bool, object?>.GetGenericMethodParameter(object? genericContext, int index) => true;

    bool ISignatureTypeProvider<bool, object?>.GetGenericTypeParameter(object? genericContext, int index) => true;

    bool ISignatureTypeProvider<bool, object?>.GetModifiedType(bool modifier, bool unmodifiedType, bool isRequired) => true;

    bool ISignatureTypeProvider<bool, object?>.GetPinnedType(bool elementType) => true;

    [GeneratedRegex(@"\b((?:[A-Za-z_]\w*\.)*[A-Za-z_]\w*)\.([A-Za-z_]\w*)")]
    private static partial Regex QualifiedName();
}
