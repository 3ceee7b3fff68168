using System.Runtime.InteropServices;

namespace RackCheck.Api.Admission;

/// <summary>Puts a thread behind others.</summary>
internal static partial class ThreadRank
{
    // A tenth of the processor where another thread wants it too: the weights of the scheduler are 110 and 1024.
    private const int Nice = 10;
    private const int OfThread = 0;

    /// <summary>Puts the calling thread behind others, for as long as it runs. Where the system does not allow it, the thread ranks with the others.</summary>
    /// <remarks>The framework's priority of a thread does nothing on Linux. There each thread has a nice value, which it can always raise.</remarks>
    public static void Lower()
    {
        Thread.CurrentThread.Priority = ThreadPriority.BelowNormal;
        if (OperatingSystem.IsLinux())
        {
            try
            {
                _ = SetPriority(OfThread, 0, Nice);
            }
            catch (Exception fault) when (fault is DllNotFoundException or EntryPointNotFoundException)
            {
                // A system without the usual C library.
            }
        }
    }

    [LibraryImport("libc", EntryPoint = "setpriority")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int SetPriority(int which, uint who, int value);
}
