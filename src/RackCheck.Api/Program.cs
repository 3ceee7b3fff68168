using RackCheck.Api.Hosting;

// Hosting composes the service. This file only starts it, so that tests start the same service.
MemoryGuard.Watch();
var builder = WebApplication.CreateBuilder(args);
builder.AddRackCheck();
var app = builder.Build();
app.UseRackCheck();
await app.RunAsync();
