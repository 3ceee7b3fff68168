using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace RackCheck.Model.Converters;

/// <summary>Reads the cabinet of a basket: the text <c>none</c>, or an object with the existing cabinet.</summary>
public sealed class BasketCabinetConverter : JsonConverter<BasketCabinet>
{
    /// <inheritdoc/>
    public override BasketCabinet Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType == JsonTokenType.String)
        {
            return reader.ValueTextEquals(BasketCabinet.NoCabinet) ? new BasketCabinet() : throw new JsonException();
        }

        return new BasketCabinet { Existing = JsonSerializer.Deserialize(ref reader, Object(options))?.Existing ?? throw new JsonException() };
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, BasketCabinet value, JsonSerializerOptions options)
    {
        if (value.Existing is { } existing)
        {
            JsonSerializer.Serialize(writer, new ExistingCabinet { Existing = existing }, Object(options));
        }
        else
        {
            writer.WriteStringValue(BasketCabinet.NoCabinet);
        }
    }

    private static JsonTypeInfo<ExistingCabinet> Object(JsonSerializerOptions options) =>
        (JsonTypeInfo<ExistingCabinet>)options.GetTypeInfo(typeof(ExistingCabinet));
}
