using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using System.Text.Unicode;
using FluentValidation;
using RackCheck.Model;

namespace RackCheck.Api.Reading;

/// <summary>Reads a document from a request body. The result is the document or all of its faults.</summary>
/// <typeparam name="T">The record type.</typeparam>
/// <param name="type">The serializer's metadata of the type.</param>
/// <param name="quick">Reads a document whose ranges are valid, without boxing; null where the serializer has to decide.</param>
/// <param name="validator">Checks the relations between members.</param>
public abstract class RequestReader<T>(JsonTypeInfo<T> type, Func<ReadOnlySpan<byte>, T?> quick, IValidator<T> validator)
    where T : class
{
    /// <summary>Reads a document.</summary>
    /// <param name="body">The body, UTF-8, with or without a byte order mark.</param>
    /// <returns>The document, or the faults.</returns>
    public ReadResult<T> Read(ReadOnlyMemory<byte> body)
    {
        body = body.Span.StartsWith("\uFEFF"u8) ? body[3..] : body;
        if (!Utf8.IsValid(body.Span))
        {
            return ReadResult<T>.NotJson(new Fault { Pointer = "", Code = FaultCodes.NotJson, Detail = "The request body is not UTF-8." });
        }

        var document = quick(body.Span);
        if (document is not null)
        {
            return HasSoundRelations(document) ? ReadResult<T>.Sound(document) : FindFaults(body, document);
        }

        document = TryRead(body.Span);
        return document is not null && RangeValidation<T>.Instance.Hold(document) && HasSoundRelations(document)
            ? ReadResult<T>.Sound(document)
            : FindFaults(body, document);
    }

    /// <summary>Whether the relations between members are valid. Separate from <see cref="Read"/> so that its run time can be measured.</summary>
    /// <param name="document">A document whose members are valid.</param>
    /// <returns>True if the document is valid.</returns>
    public bool HasSoundRelations(T document) => validator.Validate(document).IsValid;

    /// <summary>Adds the faults in the relations between members.</summary>
    private protected void AddRelations(T document, FaultList faults)
    {
        foreach (var failure in validator.Validate(document).Errors)
        {
            faults.Add(failure.PropertyName, failure.ErrorCode, failure.ErrorMessage);
        }
    }

    private T? TryRead(ReadOnlySpan<byte> body)
    {
        try
        {
            return JsonSerializer.Deserialize(body, type);
        }
        catch (Exception fault) when (fault is JsonException or InvalidOperationException or FormatException)
        {
            return null;
        }
    }

    private ReadResult<T> FindFaults(ReadOnlyMemory<byte> body, T? document)
    {
        var faults = new FaultList();
        if (document is null)
        {
            if (!RequestDiagnostics.IsJson(body.Span, faults))
            {
                return ReadResult<T>.NotJson(faults.ToList());
            }

            if (!faults.IsEmpty)
            {
                return ReadResult<T>.Invalid(faults.ToList());
            }

            document = RequestDiagnostics.Find(body, type, faults);
        }

        if (document is not null)
        {
            RangeValidation<T>.Instance.Report(document, "", faults);
            if (!faults.HasTooLongList)
            {
                AddRelations(document, faults);
            }
        }

        if (faults.IsEmpty)
        {
            // The serializer refused a document in which no fault was found. One fault without a pointer is better than a wrong answer.
            faults.Add("", FaultCodes.WrongForm, "The document could not be read.");
        }

        return ReadResult<T>.Invalid(faults.ToList());
    }
}

/// <summary>A document, or the reasons why there is none.</summary>
/// <typeparam name="T">The record type.</typeparam>
/// <param name="Document">The document; null if there are faults.</param>
/// <param name="IsJson">Whether the body was valid JSON.</param>
/// <param name="Faults">The faults.</param>
public sealed record ReadResult<T>(T? Document, bool IsJson, IReadOnlyList<Fault> Faults)
    where T : class
{
    internal static ReadResult<T> Sound(T document) => new(document, true, []);

    internal static ReadResult<T> NotJson(params IReadOnlyList<Fault> faults) => new(null, false, faults);

    internal static ReadResult<T> Invalid(IReadOnlyList<Fault> faults) => new(null, true, faults);
}
