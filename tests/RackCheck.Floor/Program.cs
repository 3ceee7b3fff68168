using System.Globalization;
using System.Text.Json;
using RackCheck.Model.Json;

// The floor under a check: the bare web server reads the same document with the same serializer and answers as many bytes, which it has ready.
// Usage: RackCheck.Floor --urls http://127.0.0.1:5098 --bytes 7000
var builder = WebApplication.CreateSlimBuilder(args);
builder.Logging.ClearProviders();
var app = builder.Build();
var answer = new byte[int.Parse(app.Configuration["bytes"] ?? "1", CultureInfo.InvariantCulture)];
answer.AsSpan().Fill((byte)' ');
app.MapGet("/health/ready", static () => Results.Ok());
app.MapPost("/floor", async (HttpContext context) =>
{
    var rack = await JsonSerializer.DeserializeAsync(context.Request.BodyReader, ContractJson.Default.RackDescription, context.RequestAborted);
    context.Response.StatusCode = rack is { Items.Count: > 0 } ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest;
    context.Response.ContentType = "application/json";
    context.Response.ContentLength = answer.Length;
    await context.Response.BodyWriter.WriteAsync(answer, context.RequestAborted);
});
await app.RunAsync();
