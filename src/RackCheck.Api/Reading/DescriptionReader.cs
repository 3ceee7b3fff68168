using System.Text.Json;
using System.Text.Unicode;
using FluentValidation;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Rules.Catalogue;

namespace RackCheck.Api.Reading;

/// <summary>Reads a description from the bytes of a request: the description, or every fault that it has.</summary>
/// <param name="validator">What members have to do with each other.</param>
public sealed class DescriptionReader(IValidator<RackDescription> validator)
{
    /// <summary>Reads a description for a check.</summary>
    /// <param name="body">The body, UTF-8, with or without a byte order mark.</param>
    /// <returns>The description, or the faults.</returns>
    public ReadResult Read(ReadOnlyMemory<byte> body)
    {
        body = body.Span.StartsWith("\uFEFF"u8) ? body[3..] : body;
        if (!Utf8.IsValid(body.Span))
        {
            return ReadResult.NotJson(new Fault { Pointer = "", Code = FaultCodes.NotJson, Detail = "The text is not UTF-8." });
        }

        var description = TryRead(body.Span);
        return description is not null && IsSound(description) ? ReadResult.Sound(description) : FindFaults(body, description);
    }

    /// <summary>Whether ranges and relations hold. Apart from <see cref="Read"/> so that its cost can be measured.</summary>
    /// <param name="description">A description as the serializer read it.</param>
    /// <returns>Whether they do.</returns>
    public bool IsSound(RackDescription description) =>
        MemberChecks<RackDescription>.Instance.Hold(description) && validator.Validate(description).IsValid;

    /// <summary>What is wrong with a description once its part numbers are filled in: what a product tells can be at odds with what is given.</summary>
    /// <param name="rack">The rack; as posted it is sound.</param>
    /// <returns>The faults; none where nothing was filled in.</returns>
    public IReadOnlyList<Fault> FaultsOf(ResolvedRack rack)
    {
        if (rack.Filled.Count == 0)
        {
            return [];
        }

        var faults = new FaultList();
        AddRelations(rack.Description, faults);
        return faults.IsEmpty ? [] : faults.ToList();
    }

    private static RackDescription? TryRead(ReadOnlySpan<byte> body)
    {
        try
        {
            return JsonSerializer.Deserialize(body, ContractJson.Default.RackDescription);
        }
        catch (Exception fault) when (fault is JsonException or InvalidOperationException or FormatException)
        {
            return null;
        }
    }

    private ReadResult FindFaults(ReadOnlyMemory<byte> body, RackDescription? description)
    {
        var faults = new FaultList();
        if (description is null)
        {
            if (!FaultFinder.IsJson(body.Span, faults))
            {
                return ReadResult.NotJson(faults.ToList());
            }

            if (!faults.IsEmpty)
            {
                return ReadResult.Invalid(faults.ToList());
            }

            description = FaultFinder.Find(body, ContractJson.Default.RackDescription, faults);
        }

        if (description is not null)
        {
            MemberChecks<RackDescription>.Instance.Report(description, "", faults);
            if (!faults.HasWrongCount)
            {
                AddRelations(description, faults);
            }
        }

        if (faults.IsEmpty)
        {
            // The serializer refused what the finder takes: better one fault without a place than a wrong answer.
            faults.Add("", FaultCodes.WrongForm, "The document could not be read.");
        }

        return ReadResult.Invalid(faults.ToList());
    }

    private void AddRelations(RackDescription description, FaultList faults)
    {
        foreach (var failure in validator.Validate(description).Errors)
        {
            faults.Add(failure.PropertyName, failure.ErrorCode, failure.ErrorMessage);
        }
    }
}

/// <summary>A description, or why there is none.</summary>
/// <param name="Description">The description; null where there are faults.</param>
/// <param name="IsJson">Whether the text was JSON.</param>
/// <param name="Faults">The faults.</param>
public sealed record ReadResult(RackDescription? Description, bool IsJson, IReadOnlyList<Fault> Faults)
{
    internal static ReadResult Sound(RackDescription description) => new(description, true, []);

    internal static ReadResult NotJson(params IReadOnlyList<Fault> faults) => new(null, false, faults);

    internal static ReadResult Invalid(IReadOnlyList<Fault> faults) => new(null, true, faults);
}
