using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;

namespace RackCheck.Api.Tests.Catalogue;

/// <summary>A log that keeps its lines.</summary>
internal sealed class LogLines : ILogger
{
    public ConcurrentQueue<string> Lines { get; } = [];

    public IDisposable? BeginScope<TState>(TState state)
        where TState : notnull => null;

    public bool IsEnabled(LogLevel logLevel) => true;

    public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
        Lines.Enqueue(formatter(state, exception) + exception);
}
