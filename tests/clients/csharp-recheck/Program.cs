// Checks a year's orders again, and goes on where it stopped: each line of the file of answers belongs to the same line of the file of orders.
// usage: csharp-recheck ADDRESS ORDERS ANSWERS [LINES_AT_A_TIME]
using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;

const string Fields = "verdict,verdicts,descriptionDigest";
var (address, orders, answers) = (new Uri(args[0]), args[1], args[2]);
var most = args.Length > 3 ? int.Parse(args[3], CultureInfo.InvariantCulture) : 200;
using var client = new HttpClient { BaseAddress = address, Timeout = TimeSpan.FromMinutes(10) };
var done = Recheck.KeepWholeLines(answers);
Console.WriteLine($"{done} orders have an answer.");
using var written = new StreamWriter(answers, append: true, new UTF8Encoding(false));
using var lines = File.ReadLines(orders).Skip(done).GetEnumerator();
List<string> batch = [];
while (Recheck.Fill(batch, lines, most))
{
    var answered = await Recheck.SendAsync(client, batch, Fields, written);
    done += answered;
    batch.RemoveRange(0, answered);
    if (batch.Count > 0)
    {
        // The service is busy, stopping, or waited for lines too long: what is left is sent again.
        await Task.Delay(TimeSpan.FromSeconds(1));
    }
}

Console.WriteLine($"{done} orders have an answer.");

internal static class Recheck
{
    // A line that was being written when the program ended is no answer.
    public static int KeepWholeLines(string answers)
    {
        using var file = new FileStream(answers, FileMode.OpenOrCreate);
        var (count, whole) = (0, 0L);
        for (int one = file.ReadByte(), at = 1; one >= 0; one = file.ReadByte(), at++)
        {
            (count, whole) = one == '\n' ? (count + 1, at) : (count, whole);
        }

        file.SetLength(whole);
        return count;
    }

    public static bool Fill(List<string> batch, IEnumerator<string> lines, int most)
    {
        while (batch.Count < most && lines.MoveNext())
        {
            // A blank line gets no answer of the service; it is no order either.
            batch.Add(lines.Current.Trim().Length == 0 ? "{}" : lines.Current);
        }

        return batch.Count > 0;
    }

    // The number of lines that were answered.
    public static async Task<int> SendAsync(HttpClient client, List<string> batch, string fields, StreamWriter written)
    {
        using var content = new StringContent(string.Join('\n', batch), Encoding.UTF8);
        content.Headers.ContentType = new MediaTypeHeaderValue("application/x-ndjson");
        using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/checks/stream?fields=" + fields) { Content = content };
        var answered = 0;
        try
        {
            using var response = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead);
            if (response.StatusCode is HttpStatusCode.ServiceUnavailable or HttpStatusCode.TooManyRequests)
            {
                return 0;
            }

            response.EnsureSuccessStatusCode();
            using var reader = new StreamReader(await response.Content.ReadAsStreamAsync());
            while (await reader.ReadLineAsync() is { } line && !IsToBeSentAgain(line))
            {
                await written.WriteAsync(line + "\n");
                answered++;
            }
        }
        catch (Exception fault) when (fault is IOException or HttpRequestException { StatusCode: null })
        {
            Console.WriteLine(fault.Message);
        }

        await written.FlushAsync();
        return answered;
    }

    private static bool IsToBeSentAgain(string line)
    {
        using var answer = JsonDocument.Parse(line);
        return answer.RootElement.TryGetProperty("problem", out var problem)
            && (HttpStatusCode)problem.GetProperty("status").GetInt32() is HttpStatusCode.RequestTimeout or HttpStatusCode.ServiceUnavailable;
    }
}
