using RackCheck.Model;

namespace RackCheck.Planning.Building;

/// <summary>A need that nothing on offer meets, while it is not written out.</summary>
/// <param name="What">What is needed.</param>
/// <param name="Reason">Why it is needed, and the property that no product has.</param>
/// <param name="Proven">Whether it is proven that nothing meets it.</param>
internal sealed record OpenNeed(WordedText What, WordedText Reason, bool Proven = false)
{
    /// <summary>The entry of the report.</summary>
    public UnmetNeed Written() => new()
    {
        What = What.Text, WhatKey = What.Key, WhatData = What.Values, Reason = Reason.Text, MessageKey = Reason.Key, MessageData = Reason.Values,
        Proven = Proven,
    };
}
