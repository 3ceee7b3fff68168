using System.Diagnostics;
using System.Globalization;

namespace RackCheck.Load;

/// <summary>The built service as in production, on this machine only and without a rate limit.</summary>
internal sealed class ServiceProcess : IDisposable
{
    private readonly Process process;

    public ServiceProcess(string dll, int port)
    {
        var start = new ProcessStartInfo("dotnet", [Path.GetFullPath(dll), "--urls", $"http://127.0.0.1:{port}"])
        {
            WorkingDirectory = Path.GetDirectoryName(Path.GetFullPath(dll)),
            RedirectStandardOutput = true,
        };
        start.Environment["ASPNETCORE_ENVIRONMENT"] = "Production";
        start.Environment["RateLimit__PerMinute"] = "0";
        process = Process.Start(start)!;
        process.OutputDataReceived += static (_, _) => { };
        process.BeginOutputReadLine();
    }

    public bool HasEnded => process.HasExited;

    /// <summary>Resident memory, MB.</summary>
    public double ResidentMb
    {
        get
        {
            var line = File.ReadLines($"/proc/{process.Id}/status").First(l => l.StartsWith("VmRSS", StringComparison.Ordinal));
            return double.Parse(line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1], CultureInfo.InvariantCulture) / 1024;
        }
    }

    public async Task WaitUntilReadyAsync(int port)
    {
        using var client = new HttpClient();
        while (!process.HasExited)
        {
            try
            {
                if ((await client.GetAsync(new Uri($"http://127.0.0.1:{port}/health/ready"))).IsSuccessStatusCode)
                {
                    return;
                }
            }
            catch (HttpRequestException)
            {
                // Not listening yet.
            }

            await Task.Delay(100);
        }

        throw new InvalidOperationException("The service ended.");
    }

    public void Dispose()
    {
        if (!process.HasExited)
        {
            process.Kill();
            process.WaitForExit();
        }

        process.Dispose();
    }
}
