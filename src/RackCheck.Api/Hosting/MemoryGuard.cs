using System.Runtime.ExceptionServices;

namespace RackCheck.Api.Hosting;

/// <summary>
/// Ends the process at the first allocation that fails, before any handler sees the exception: state that was being changed at that moment, the
/// server's and the pools' included, may be half changed, and a process that goes on could send one caller what belongs to another.
/// Whoever runs the service starts it anew.
/// </summary>
internal static class MemoryGuard
{
    /// <summary>Watches this process from now on.</summary>
    public static void Watch() => AppDomain.CurrentDomain.FirstChanceException += static (_, thrown) => EndWhenExhausted(thrown, Environment.FailFast);

    /// <summary>Ends the process where the exception says that memory ran out.</summary>
    /// <param name="thrown">What was thrown.</param>
    /// <param name="end">Ends the process, with a message.</param>
    internal static void EndWhenExhausted(FirstChanceExceptionEventArgs thrown, Action<string> end)
    {
        if (thrown.Exception is OutOfMemoryException)
        {
            end("Memory ran out; the process ends rather than go on with state that may be half changed.");
        }
    }
}
