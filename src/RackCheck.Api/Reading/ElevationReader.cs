using System.Text.Json;
using FluentValidation;
using RackCheck.Model;
using RackCheck.Model.Json;

namespace RackCheck.Api.Reading;

/// <summary>Reads what is to be drawn: one rack as a check takes it, or a request with several.</summary>
/// <param name="validator">Checks the relations between members.</param>
/// <param name="descriptions">Reads one rack.</param>
public sealed class ElevationReader(IValidator<ElevationRequest> validator, DescriptionReader descriptions)
{
    private readonly SeveralReader several = new(validator);

    /// <summary>Reads a document.</summary>
    /// <param name="body">The body, UTF-8, with or without a byte order mark.</param>
    /// <param name="isOneRack">Whether the document is one description, so that its pointers start there.</param>
    /// <returns>The racks, or the faults.</returns>
    public ReadResult<ElevationRequest> Read(ReadOnlyMemory<byte> body, out bool isOneRack)
    {
        isOneRack = !HasSeveral(body.Span);
        if (!isOneRack)
        {
            return several.Read(body);
        }

        var one = descriptions.Read(body);
        return new ReadResult<ElevationRequest>(one.Document is { } rack ? new ElevationRequest { Racks = [rack] } : null, one.IsJson, one.Faults);
    }

    // Whether a member of the top level is one that only a request with several racks has.
    private static bool HasSeveral(ReadOnlySpan<byte> body)
    {
        var json = new Utf8JsonReader(body.StartsWith("\uFEFF"u8) ? body[3..] : body);
        try
        {
            if (!json.Read() || json.TokenType != JsonTokenType.StartObject)
            {
                return false;
            }

            while (json.Read() && json.TokenType == JsonTokenType.PropertyName)
            {
                if (json.ValueTextEquals("racks"u8) || json.ValueTextEquals("before"u8) || json.ValueTextEquals("after"u8))
                {
                    return true;
                }

                json.Skip();
            }
        }
        catch (JsonException)
        {
            // The reader of descriptions says what is wrong.
        }

        return false;
    }

    private sealed class SeveralReader(IValidator<ElevationRequest> validator)
        : RequestReader<ElevationRequest>(ContractJson.Default.ElevationRequest, ContractReader.ElevationRequest, validator);
}
