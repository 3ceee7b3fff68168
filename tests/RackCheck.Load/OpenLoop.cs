using System.Collections.Concurrent;
using System.Diagnostics;
using System.Net.Sockets;

namespace RackCheck.Load;

/// <summary>
/// Sends requests at a fixed rate, whatever the answers do. The time of an answer counts from the moment at which its request was due, so that waiting for a
/// connection or a busy generator is part of it.
/// </summary>
/// <param name="port">Port of the service on this machine.</param>
/// <param name="request">The request.</param>
internal sealed class OpenLoop(int port, byte[] request) : IDisposable
{
    private const int MostConnections = 4_000;
    private readonly ConcurrentStack<Connection> idle = new();
    private readonly ConcurrentDictionary<string, int> faults = new();
    private int connections;

    /// <summary>Why connections broke, and how many.</summary>
    public IReadOnlyDictionary<string, int> Faults => faults;

    /// <summary>Sends for a time.</summary>
    /// <param name="rate">Requests a second.</param>
    /// <param name="time">How long.</param>
    /// <returns>The answers.</returns>
    public async Task<Answers> RunAsync(double rate, TimeSpan time)
    {
        var answers = new ConcurrentBag<(int, double)>();
        var running = new ConcurrentDictionary<long, Task>();
        var clock = Stopwatch.StartNew();
        var count = (long)(rate * time.TotalSeconds);
        for (var number = 0L; number < count;)
        {
            var due = Math.Min(count, (long)(clock.Elapsed.TotalSeconds * rate) + 1);
            for (; number < due; number++)
            {
                var (own, at) = (number, number / rate);
                running[own] = Task.Run(async () =>
                {
                    answers.Add((await SendAsync(), (clock.Elapsed.TotalSeconds - at) * 1000));
                    running.TryRemove(own, out _);
                });
            }

            Thread.Sleep(1);
        }

        await Task.WhenAll(running.Values);
        return new Answers([.. answers]);
    }

    // 0 for a broken connection, -1 if there are no more connections.
    private async Task<int> SendAsync()
    {
        Connection? connection;
        while (idle.TryPop(out connection) && connection.IsStale)
        {
            Close(connection);
        }

        if (connection is null)
        {
            if (Interlocked.Increment(ref connections) > MostConnections)
            {
                Interlocked.Decrement(ref connections);
                return -1;
            }

            connection = await Connection.OpenAsync(port);
        }

        try
        {
            var (status, isOpen) = await connection.SendAsync(request);
            if (isOpen)
            {
                idle.Push(connection);
                return status;
            }

            Close(connection);
            return status;
        }
        catch (Exception fault) when (fault is IOException or SocketException)
        {
            Close(connection);
            faults.AddOrUpdate(fault.Message, 1, (_, count) => count + 1);
            return 0;
        }
    }

    private void Close(Connection connection)
    {
        Interlocked.Decrement(ref connections);
        connection.Dispose();
    }

    public void Dispose()
    {
        while (idle.TryPop(out var connection))
        {
            Close(connection);
        }
    }
}

/// <summary>Answers of a run.</summary>
/// <param name="All">Status and time in ms of each.</param>
internal sealed record Answers(IReadOnlyList<(int Status, double Ms)> All)
{
    public int Count(int status) => All.Count(a => a.Status == status);

    public double P99(int status) => Quantile([.. All.Where(a => a.Status == status).Select(a => a.Ms).Order()], 0.99);

    public double P50(int status) => Quantile([.. All.Where(a => a.Status == status).Select(a => a.Ms).Order()], 0.5);

    private static double Quantile(double[] sorted, double share) => sorted.Length == 0 ? double.NaN : sorted[(int)(share * (sorted.Length - 1))];
}
