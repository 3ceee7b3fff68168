using System.Collections.Concurrent;
using Serilog.Core;
using Serilog.Events;

namespace RackCheck.Api.Tests;

/// <summary>Keeps what the service logs.</summary>
internal sealed class LogSink : ILogEventSink
{
    public ConcurrentQueue<LogEvent> Events { get; } = new();

    public void Emit(LogEvent logEvent) => Events.Enqueue(logEvent);
}
