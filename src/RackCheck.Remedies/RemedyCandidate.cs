using RackCheck.Model;

namespace RackCheck.Remedies;

/// <summary>
/// A change of the rack that might cure a finding. The pipeline tries it before it offers it: only what clears the finding and brings no
/// error becomes a remedy. A rule writes what the trade would do, best first, and need not know what other rules say of it.
/// </summary>
/// <param name="Title">What is done, in the customer's words.</param>
/// <param name="After">The description as it would be.</param>
/// <param name="Kind">Cures of one kind are the same means in growing measure: only the first that holds is offered. Null for one of its own kind.</param>
/// <param name="IsLastResort">Whether it is dear or roundabout, so that it is tried only where nothing before it holds.</param>
public sealed record RemedyCandidate(string Title, RackDescription After, string? Kind = null, bool IsLastResort = false);
