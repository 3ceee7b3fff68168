using RackCheck.Model;

namespace RackCheck.Planning.Baskets;

/// <summary>A line to exchange for another product, while its reason is not written out.</summary>
/// <param name="Line">Pointer to the line.</param>
/// <param name="Product">The product to order instead.</param>
/// <param name="Quantity">Quantity to exchange.</param>
/// <param name="Why">Reason.</param>
internal sealed record Exchange(string Line, Product Product, int Quantity, WordedText Why)
{
    /// <summary>The line of the report.</summary>
    public ReplaceLine Written() => new()
    {
        Line = Line, PartNumber = Product.PartNumber, Name = Product.Name, Quantity = Quantity, Price = Product.Price, Currency = Product.Currency,
        Reason = Why.Text, MessageKey = Why.Key, MessageData = Why.Values,
    };
}

/// <summary>A surplus line, while its reason is not written out.</summary>
/// <param name="Line">Pointer to the line.</param>
/// <param name="PartNumber">Part number of the line.</param>
/// <param name="Quantity">Surplus quantity.</param>
/// <param name="Why">Reason.</param>
internal sealed record Surplus(string Line, string PartNumber, int Quantity, WordedText Why)
{
    /// <summary>The line of the report.</summary>
    public ExcessLine Written() => new()
    {
        Line = Line, PartNumber = PartNumber, Quantity = Quantity, Reason = Why.Text, MessageKey = Why.Key, MessageData = Why.Values,
    };
}
