using System.Buffers.Text;
using System.Net;
using System.Net.Sockets;

namespace RackCheck.Load;

/// <summary>An HTTP/1.1 connection that sends prepared requests. It costs little, so that the load leaves the processor to the service.</summary>
internal sealed class Connection : IDisposable
{
    private readonly Socket socket = new(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
    private readonly byte[] buffer = new byte[64 * 1024];
    private long lastUsed = Environment.TickCount64;

    /// <summary>
    /// Whether it has been idle for so long that a server may be about to close it (Kestrel does so after 130 s), as clients with a pool judge it.
    /// </summary>
    public bool IsStale => Environment.TickCount64 - lastUsed > 60_000;

    public static async Task<Connection> OpenAsync(int port)
    {
        var connection = new Connection();
        await connection.socket.ConnectAsync(IPAddress.Loopback, port);
        return connection;
    }

    /// <summary>Sends a request and reads the answer.</summary>
    /// <returns>The status, and whether the connection serves again.</returns>
    public async ValueTask<(int Status, bool IsOpen)> SendAsync(ReadOnlyMemory<byte> request)
    {
        for (var sent = 0; sent < request.Length;)
        {
            sent += await socket.SendAsync(request[sent..]);
        }

        var length = 0;
        while (true)
        {
            var read = await socket.ReceiveAsync(buffer.AsMemory(length));
            if (read == 0)
            {
                throw new IOException("The connection was closed before an answer.");
            }

            length += read;
            var end = buffer.AsSpan(0, length).IndexOf("\r\n\r\n"u8);
            if (end >= 0)
            {
                return await FinishAsync(end + 4, length);
            }
        }
    }

    private async ValueTask<(int Status, bool IsOpen)> FinishAsync(int head, int length)
    {
        if (!Utf8Parser.TryParse(buffer.AsSpan(9, 3), out int status, out _))
        {
            throw new IOException("The answer has no status.");
        }

        lastUsed = Environment.TickCount64;
        var isOpen = buffer.AsSpan(0, head).IndexOf("Connection: close"u8) < 0;
        var left = head + Value(buffer.AsSpan(0, head)) - length;
        while (left > 0)
        {
            var read = await socket.ReceiveAsync(buffer.AsMemory(0, Math.Min(left, buffer.Length)));
            left = read == 0 ? throw new IOException("The connection was closed within an answer.") : left - read;
        }

        return (status, isOpen);
    }

    private static int Value(ReadOnlySpan<byte> head)
    {
        var name = "Content-Length: "u8;
        var start = head.IndexOf(name);
        return start >= 0 && Utf8Parser.TryParse(head[(start + name.Length)..], out int value, out _)
            ? value
            : throw new IOException("The answer has no Content-Length.");
    }

    public void Dispose() => socket.Dispose();
}
