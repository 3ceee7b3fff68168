using RackCheck.Api.Catalogue;
using RackCheck.Api.Http;
using RackCheck.Api.Reading;
using RackCheck.Api.Telemetry;
using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Api.Endpoints;

/// <summary>Reads and checks racks: for a single request and for the lines of a stream.</summary>
/// <param name="reader">Reads descriptions.</param>
/// <param name="parts">Looks part numbers up.</param>
/// <param name="checker">Checks racks.</param>
/// <param name="metrics">Counts findings.</param>
internal sealed class RackJudge(DescriptionReader reader, PartLookUp parts, RackChecker checker, CheckMetrics metrics)
{
    /// <summary>Reads a description. It is checked in one go where its products are known already.</summary>
    /// <param name="body">The description as JSON.</param>
    /// <param name="check">Checks a rack.</param>
    /// <param name="aborted">Cancelled when the client has left: ends the look-up.</param>
    /// <returns>What came of it.</returns>
    public ReadRack Read(ReadOnlyMemory<byte> body, Func<ResolvedRack, CheckReport> check, CancellationToken aborted)
    {
        var read = reader.Read(body);
        if (read.Document is not { } description)
        {
            return new ReadRack(null, null, read.Refuse());
        }

        ResolvedRack? rack = null;
        var resolving = ResolveAsync();
        return rack is not null ? Resolved(rack, check) : new ReadRack(null, resolving, null);

        // Ends at once where all products are in the cache.
        async Task<ResolvedRack> ResolveAsync() => rack = await parts.ResolveAsync(description, aborted);
    }

    /// <summary>Checks a rack whose part numbers were looked up.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="check">Checks it.</param>
    /// <returns>What came of it.</returns>
    public ReadRack Resolved(ResolvedRack rack, Func<ResolvedRack, CheckReport> check) => reader.FaultsOf(rack) is { Count: > 0 } faults
        ? new ReadRack(null, null, new Reply(null, ProblemKind.Invalid, Problems.Contradiction, faults))
        : new ReadRack(Counted(check(rack)), null, null);

    /// <summary>Checks a rack as far as the members asked for need it.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="fields">The members.</param>
    /// <param name="cancellation">Stops the check between two rules.</param>
    /// <returns>The report.</returns>
    public CheckReport Check(ResolvedRack rack, ReportFields fields, CancellationToken cancellation) =>
        fields.NeedRemedies ? checker.Check(rack, cancellation) : checker.Recheck(rack, cancellation);

    private CheckReport Counted(CheckReport report)
    {
        metrics.Count(report);
        return report;
    }
}

/// <summary>A rack as read: its report, or the look-up of its part numbers that the catalogue has to be asked for, or a refusal.</summary>
/// <param name="Report">The report.</param>
/// <param name="Resolving">The look-up.</param>
/// <param name="Refusal">The problem.</param>
internal sealed record ReadRack(CheckReport? Report, Task<ResolvedRack>? Resolving, Reply? Refusal);
