using System.Text;
using Serilog.Core;
using Serilog.Events;
using Serilog.Formatting;

namespace RackCheck.Api.Telemetry;

/// <summary>Writes log lines to standard output, a batch at a time: one call of the system for all lines of a moment in place of one each.</summary>
/// <param name="formatter">Writes a line.</param>
internal sealed class ConsoleBatches(ITextFormatter formatter) : IBatchedLogEventSink, IDisposable
{
    private readonly Stream output = Console.OpenStandardOutput();
    private readonly MemoryStream lines = new();

    /// <inheritdoc/>
    public async Task EmitBatchAsync(IReadOnlyCollection<LogEvent> batch)
    {
        lines.SetLength(0);
        await using (var writer = new StreamWriter(lines, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), leaveOpen: true))
        {
            foreach (var line in batch)
            {
                formatter.Format(line, writer);
            }
        }

        lines.Position = 0;
        await lines.CopyToAsync(output);
        await output.FlushAsync();
    }

    /// <inheritdoc/>
    public Task OnEmptyBatchAsync() => Task.CompletedTask;

    /// <inheritdoc/>
    public void Dispose()
    {
        lines.Dispose();
        output.Dispose();
    }
}
