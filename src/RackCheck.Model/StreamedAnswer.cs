namespace RackCheck.Model;

/// <summary>The answer to one line of a stream of checks: a report or a problem.</summary>
public sealed record StreamedAnswer
{
    /// <summary>Number of the line in the request, from 1; blank lines count.</summary>
    public required int Line { get; init; }

    /// <summary>The report; absent for a problem.</summary>
    public CheckReport? Report { get; init; }

    /// <summary>The problem that a check of the line alone would be refused with; absent for a report.</summary>
    public Problem? Problem { get; init; }
}
