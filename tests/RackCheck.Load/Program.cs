using System.Globalization;
using System.Text;
using RackCheck.Load;

// Finds the sustainable rate of a built service, sends half and four times as much, and compares with the targets of admission.
// Usage: RackCheck.Load PATH_OF_RackCheck.Api.dll RACK.json [SECONDS OF OVERLOAD, 60] [PORT, 5096]
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
var (dll, rack) = (args[0], args[1]);
var overload = TimeSpan.FromSeconds(args.Length > 2 ? int.Parse(args[2], CultureInfo.InvariantCulture) : 60);
var port = args.Length > 3 ? int.Parse(args[3], CultureInfo.InvariantCulture) : 5096;
var body = await File.ReadAllBytesAsync(rack);
byte[] check =
[
    .. Encoding.ASCII.GetBytes($"POST /v1/checks HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: {body.Length}\r\n\r\n"),
    .. body,
];
var live = Encoding.ASCII.GetBytes("GET /health/live HTTP/1.1\r\nHost: localhost\r\n\r\n");

using var service = new ServiceProcess(dll, port);
await service.WaitUntilReadyAsync(port);
using var checks = new OpenLoop(port, check);
using var probes = new OpenLoop(port, live);

// The compiler optimizes while the service is loaded.
for (var second = 0; second < 20; second++)
{
    await checks.RunAsync(400, TimeSpan.FromSeconds(1));
}

var idle = await checks.RunAsync(50, TimeSpan.FromSeconds(10));
var limit = Math.Max(3 * idle.P99(200), 30);
Console.WriteLine($"unloaded: 50/s, p50 {idle.P50(200):F1} ms, p99 {idle.P99(200):F1} ms; limit of accepted {limit:F0} ms");

// Sustainable: nothing refused or broken, and the p99 within the limit.
var sustainable = 0d;
for (var rate = 400d; rate < 100_000; rate *= 1.15)
{
    var stage = await checks.RunAsync(rate, TimeSpan.FromSeconds(4));
    if (stage.Count(200) < stage.All.Count || stage.P99(200) > limit)
    {
        Console.WriteLine($"{rate:F0}/s: {stage.All.Count - stage.Count(200)} not accepted, p99 {stage.P99(200):F0} ms");
        break;
    }

    sustainable = rate;
}

await Task.Delay(3000);
var half = await checks.RunAsync(sustainable / 2, TimeSpan.FromSeconds(20));
Console.WriteLine($"half of {sustainable:F0}/s: {half.All.Count - half.Count(200)} not accepted, p50 {half.P50(200):F1} ms, p99 {half.P99(200):F1} ms");
var before = service.ResidentMb;
var most = before;
using var watch = new Timer(_ => most = Math.Max(most, service.ResidentMb), null, 1000, 1000);
var probing = probes.RunAsync(20, overload);
var loaded = await checks.RunAsync(4 * sustainable, overload);
var live99 = (await probing).P99(200);
watch.Change(Timeout.Infinite, Timeout.Infinite);
var after = service.ResidentMb;
await Task.Delay(2000);
var recovered = await checks.RunAsync(50, TimeSpan.FromSeconds(5));

var others = loaded.All.Count - loaded.Count(200) - loaded.Count(503);
Console.WriteLine($"sustainable {sustainable:F0}/s; {4 * sustainable:F0}/s for {overload.TotalSeconds:F0} s");
Console.WriteLine($"{loaded.Count(200)} accepted, {loaded.Count(503)} refused, {others} other");
Console.WriteLine($"of the others {loaded.Count(0)} connections broke, {loaded.Count(-1)} requests found none free");
foreach (var (fault, count) in checks.Faults)
{
    Console.WriteLine($"{count} times: {fault}");
}

Console.WriteLine($"accepted p50 {loaded.P50(200):F1} ms, p99 {loaded.P99(200):F1} ms; refused p50 {loaded.P50(503):F1} ms, p99 {loaded.P99(503):F1} ms");
Console.WriteLine($"liveness p99 {live99:F1} ms; resident {before:F0} MB before, {most:F0} MB at most, {after:F0} MB after");
Console.WriteLine($"2 s later: {recovered.Count(200)} of {recovered.All.Count} accepted, p99 {recovered.P99(200):F1} ms");
(string Name, bool IsMet)[] targets =
[
    ("accepted p99", loaded.P99(200) <= limit),
    ("nothing but 200 and 503", others == 0),
    ("resident memory flat", after < before + 64),
    ("liveness p99 under 100 ms", live99 < 100),
    ("recovered", recovered.Count(200) == recovered.All.Count && recovered.P99(200) <= limit),
    ("still running", !service.HasEnded),
];
foreach (var (name, isMet) in targets)
{
    Console.WriteLine($"{(isMet ? "met" : "MISSED")}: {name}");
}

return targets.All(t => t.IsMet) ? 0 : 1;
