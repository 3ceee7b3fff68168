using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Time.Testing;

namespace RackCheck.Api.Tests.Hosting;

/// <summary>The service told to stop.</summary>
public sealed class ShutdownTests
{
    private const string Rack = """{ "cabinet": { "heightU": 42, "widthMm": 600, "depthMm": 800 }, "items": [] }""";

    [Fact]
    public async Task Service_told_to_stop_answers_until_the_delay_is_over_and_finishes_running_requests()
    {
        var time = new FakeTimeProvider();
        await using var service = await KestrelService.StartAsync(s => s.Replace(ServiceDescriptor.Singleton<TimeProvider>(time)), "Shutdown:DelaySeconds=5");
        Assert.Equal(200, (await service.GetAsync("/health/ready")).Status);
        Assert.Null((await service.GetAsync("/health/ready")).Headers.ConnectionClose);

        // The first half of a request arrives before the service stops.
        using var slow = new SlowContent(Rack);
        var running = service.SendAsync(HttpMethod.Post, "/v1/checks", slow);
        await slow.HalfSent;

        service.App.Lifetime.StopApplication();
        var stopped = service.App.StopAsync();
        try
        {
            await AnswersWhileStoppingAsync(service);
        }
        finally
        {
            time.Advance(TimeSpan.FromSeconds(5));
            slow.SendRest();
        }

        Assert.Equal(200, (await running).Status);
        await stopped;
        await Assert.ThrowsAsync<HttpRequestException>(() => service.GetAsync("/health/live"));
    }

    private static async Task AnswersWhileStoppingAsync(KestrelService service)
    {
        var refused = await service.GetAsync("/health/ready");
        refused.IsProblem(503);
        Assert.Equal(TimeSpan.FromSeconds(1), refused.Headers.RetryAfter?.Delta);
        Assert.Equal(200, (await service.GetAsync("/health/live")).Status);
        var answer = await service.PostAsync("/v1/checks", Rack);
        Assert.Equal((200, true), (answer.Status, answer.Headers.ConnectionClose));
    }

    /// <summary>A body whose second half is sent on command.</summary>
    private sealed class SlowContent : HttpContent
    {
        private readonly byte[] body;
        private readonly TaskCompletionSource half = new(TaskCreationOptions.RunContinuationsAsynchronously);
        private readonly TaskCompletionSource rest = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public SlowContent(string body)
        {
            this.body = System.Text.Encoding.UTF8.GetBytes(body);
            Headers.ContentType = new("application/json");
        }

        public Task HalfSent => half.Task;

        public void SendRest() => rest.SetResult();

        protected override async Task SerializeToStreamAsync(Stream stream, System.Net.TransportContext? context)
        {
            await stream.WriteAsync(body.AsMemory(0, body.Length / 2));
            await stream.FlushAsync();
            half.SetResult();
            await rest.Task;
            await stream.WriteAsync(body.AsMemory(body.Length / 2));
        }

        protected override bool TryComputeLength(out long length)
        {
            length = body.Length;
            return true;
        }
    }
}
