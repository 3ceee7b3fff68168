using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Threading.Channels;

namespace RackCheck.Api.Tests.Http;

/// <summary>A body that is sent line by line while the answer is read.</summary>
internal sealed class LineContent : HttpContent
{
    private readonly Channel<string> lines = Channel.CreateUnbounded<string>();

    public LineContent() => Headers.ContentType = new MediaTypeHeaderValue("application/x-ndjson");

    public void Send(string line) => lines.Writer.TryWrite(line);

    public void End() => lines.Writer.TryComplete();

    protected override async Task SerializeToStreamAsync(Stream stream, TransportContext? context)
    {
        await stream.FlushAsync();
        await foreach (var line in lines.Reader.ReadAllAsync())
        {
            await stream.WriteAsync(Encoding.UTF8.GetBytes(line + "\n"));
            await stream.FlushAsync();
        }
    }

    protected override bool TryComputeLength(out long length)
    {
        length = 0;
        return false;
    }
}
