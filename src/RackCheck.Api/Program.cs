using RackCheck.Api.Hosting;

// Everything is put together in Hosting; this file only starts it, so that tests start the very same.
MemoryGuard.Watch();
var builder = WebApplication.CreateBuilder(args);
builder.AddRackCheck();
var app = builder.Build();
app.UseRackCheck();
await app.RunAsync();
