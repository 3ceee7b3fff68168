using System.Runtime.ExceptionServices;

namespace RackCheck.Api.Hosting;

/// <summary>
/// Ends the process at the first failed allocation, before any handler sees the exception. State of the service, the server and the pools may be
/// inconsistent at that moment, and a process that continues could send one caller the data of another. The supervisor restarts the service.
/// </summary>
internal static class MemoryGuard
{
    /// <summary>Starts watching this process.</summary>
    public static void Watch() => AppDomain.CurrentDomain.FirstChanceException += static (_, thrown) => EndWhenExhausted(thrown, Environment.FailFast);

    /// <summary>Ends the process if the exception means out of memory.</summary>
    internal static void EndWhenExhausted(FirstChanceExceptionEventArgs thrown, Action<string> end)
    {
        if (thrown.Exception is OutOfMemoryException)
        {
            end("Out of memory. The process ends because its state may be inconsistent.");
        }
    }
}
