using RackCheck.Api.Hosting;

// Hosting composes the service. This file only starts it, so that tests start the same service.
MemoryGuard.Watch();
return await Startup.RunAsync(args);
