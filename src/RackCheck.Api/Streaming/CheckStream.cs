using System.Buffers;
using System.IO.Pipelines;
using System.Text.Json;
using System.Threading.Channels;
using RackCheck.Api.Admission;
using RackCheck.Api.Catalogue;
using RackCheck.Api.Endpoints;
using RackCheck.Api.Http;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Api.Streaming;

/// <summary>
/// Checks the lines of one request and answers them in their order. So many lines are in work that all threads are busy; no more are read before the client
/// takes answers, so that a request of any length takes the same memory.
/// </summary>
/// <param name="judge">Reads and checks racks.</param>
/// <param name="pools">Where racks are checked.</param>
/// <param name="memory">Memory of all requests.</param>
/// <param name="mostAhead">Lines in work at a time.</param>
/// <param name="fields">The members of reports that are asked for.</param>
/// <param name="onFault">Takes a fault of the service.</param>
internal sealed class CheckStream(
    RackJudge judge, ComputePools pools, MemoryBudget memory, int mostAhead, ReportFields fields, Action<Exception> onFault)
{
    private const int BytesToFlush = 32 * 1024;

    /// <summary>Answers all lines. A fault that ends the stream is its last answer.</summary>
    /// <param name="lines">The lines.</param>
    /// <param name="answers">Takes the answers.</param>
    /// <param name="stopping">Cancelled when the service stops: what was read is answered, and the client is told where to go on.</param>
    /// <param name="aborted">Cancelled when the client has left.</param>
    /// <returns>Completes when all answers were taken and nothing is in work any more.</returns>
    public async Task RunAsync(LineReader lines, PipeWriter answers, CancellationToken stopping, CancellationToken aborted)
    {
        // One place more than lines in work: for the last word.
        using var end = CancellationTokenSource.CreateLinkedTokenSource(aborted);
        var inWork = Channel.CreateBounded<Task<AnswerLease>>(new BoundedChannelOptions(mostAhead + 1) { SingleReader = true, SingleWriter = true });
        using var places = new SemaphoreSlim(mostAhead);
        var reading = ReadAsync(lines, inWork.Writer, places, stopping, end.Token);
        try
        {
            await WriteAsync(inWork.Reader, answers, places, end.Token);
            await reading;
        }
        finally
        {
            // After a failure of writing nothing more is read, and what is in work ends before its buffers and places go.
            await end.CancelAsync();
            await Settled(reading);
            while (inWork.Reader.TryRead(out var left))
            {
                await Settled(left);
            }
        }
    }

    private async Task ReadAsync(
        LineReader lines, ChannelWriter<Task<AnswerLease>> inWork, SemaphoreSlim places, CancellationToken stopping, CancellationToken end)
    {
        using var either = CancellationTokenSource.CreateLinkedTokenSource(stopping, end);
        try
        {
            await places.WaitAsync(either.Token);
            while (await lines.NextAsync(either.Token) is { } line)
            {
                await inWork.WriteAsync(AnswerAsync(line, lines.MostBytes, end), CancellationToken.None);
                await places.WaitAsync(either.Token);
            }
        }
        catch (Exception fault) when (!end.IsCancellationRequested && LastWord(fault) is { } problem)
        {
            await inWork.WriteAsync(Task.FromResult(Answer(lines.Number + 1, problem)), CancellationToken.None);
        }
        finally
        {
            inWork.Complete();
        }
    }

    private static Problem? LastWord(Exception fault) => fault switch
    {
        OperationCanceledException => Problems.Of(ProblemKind.Unavailable, "The service is stopping. Send this line and those after it again."),
        TimeoutException => Problems.Of(ProblemKind.Timeout, fault.Message + " Send this line and those after it again."),
        _ when ClientFaults.IsBadBody(fault) => Problems.Of(ProblemKind.NotJson, ClientFaults.Detail + " Send this line and those after it again."),
        _ when ClientFaults.IsBadCompression(fault) =>
            Problems.Of(ProblemKind.NotJson, ClientFaults.CompressionDetail + " Send this line and those after it again."),
        _ => null,
    };

    private static async Task WriteAsync(
        ChannelReader<Task<AnswerLease>> inWork, PipeWriter answers, SemaphoreSlim places, CancellationToken end)
    {
        // The head of the response first, so that the client knows that the stream is accepted. What is written is sent before a wait.
        var unsent = 0;
        while (inWork.TryPeek(out var next) || await SendAndWaitAsync())
        {
            if (next is null)
            {
                continue;
            }

            if (!next.IsCompleted)
            {
                await FlushAsync();
            }

            var answer = await next;
            inWork.TryRead(out _);
            answers.Write(answer.Written.Span);
            unsent += answer.Written.Length;
            answer.GiveBack();
            if (unsent >= BytesToFlush)
            {
                await FlushAsync();
            }

            places.Release();
        }

        async ValueTask<bool> SendAndWaitAsync()
        {
            await answers.FlushAsync(end);
            unsent = 0;
            return await inWork.WaitToReadAsync(end);
        }

        async ValueTask FlushAsync()
        {
            if (unsent > 0)
            {
                await answers.FlushAsync(end);
                unsent = 0;
            }
        }
    }

    private async Task<AnswerLease> AnswerAsync(StreamedLine line, int mostBytes, CancellationToken end)
    {
        if (line.IsTooLong)
        {
            return Answer(line.Number, Problems.Of(ProblemKind.TooLarge, FormattableString.Invariant($"The maximum length of a line is {mostBytes} bytes.")));
        }

        memory.Take(line.Length);
        try
        {
            var answer = await JudgeAsync(line, end);
            line.GiveBack();
            return answer;
        }
        catch (OverloadedException busy)
        {
            return Answer(line.Number, Problems.Of(ProblemKind.Overloaded, busy.Message));
        }
        catch (CatalogueUnavailableException)
        {
            return Answer(line.Number, Problems.Of(ProblemKind.Unavailable, "The product catalogue is unavailable."));
        }
#pragma warning disable CA1031 // A fault of the service in one line is no reason to lose the others.
        catch (Exception fault) when (fault is not OperationCanceledException and not OutOfMemoryException)
#pragma warning restore CA1031
        {
            onFault(fault);
            return Answer(line.Number, Problems.Of(ProblemKind.Of(StatusCodes.Status500InternalServerError), "The error is logged under the trace id."));
        }
        finally
        {
            memory.GiveBack(line.Length);
        }
    }

    private async Task<AnswerLease> JudgeAsync(StreamedLine line, CancellationToken end)
    {
        var read = await pools.Streams.Run(
            cancellation => Written(line.Number, judge.Read(line.Bytes, rack => judge.Check(rack, fields, cancellation), end)), end);
        if (read.Resolving is { } resolving)
        {
            var rack = await resolving;
            read = await pools.Streams.Run(
                cancellation => Written(line.Number, judge.Resolved(rack, own => judge.Check(own, fields, cancellation))), end);
        }

        return read.Answer!;
    }

    private (AnswerLease? Answer, Task<ResolvedRack>? Resolving) Written(long line, ReadRack read) =>
        read.Report is { } report ? (Answer(line, report), null)
        : read.Refusal is { } refusal ? (Answer(line, Problems.Of(refusal.Refusal!, refusal.Detail, refusal.Faults)), null)
        : (null, read.Resolving);

    private AnswerLease Answer(long line, CheckReport report) => WithEnd(JsonAnswer.Prepare(
        report,
        (writer, own) =>
        {
            Begin(writer, line, "report"u8);
            fields.Write(writer, own);
            writer.WriteEndObject();
        },
        ReportLength.Shorten));

    private static AnswerLease Answer(long line, Problem problem) => WithEnd(JsonAnswer.Prepare(
        problem,
        (writer, own) =>
        {
            Begin(writer, line, "problem"u8);
            JsonSerializer.Serialize(writer, own, ContractJson.Default.Problem);
            writer.WriteEndObject();
        },
        shorten: null));

    private static void Begin(Utf8JsonWriter writer, long line, ReadOnlySpan<byte> member)
    {
        writer.WriteStartObject();
        writer.WriteNumber("line"u8, line);
        writer.WritePropertyName(member);
    }

    private static AnswerLease WithEnd(AnswerLease answer)
    {
        answer.Append("\n"u8);
        return answer;
    }

    // Whatever became of it: the stream has ended, and its end has a reason of its own.
    private static async Task Settled(Task task) => await task.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
}
