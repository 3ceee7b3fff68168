using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Options;

namespace RackCheck.Api.Admission;

/// <summary>Registers admission.</summary>
internal static class AdmissionServices
{
    /// <summary>Registers pools, memory budget and metrics.</summary>
    public static void AddAdmission(this IServiceCollection services)
    {
        services.AddOptions<AdmissionOptions>().BindConfiguration(AdmissionOptions.Section).ValidateDataAnnotations().ValidateOnStart();
        services.TryAddSingleton(TimeProvider.System);
        services.AddSingleton(provider => new MemoryBudget(1024L * 1024 * provider.GetRequiredService<IOptions<AdmissionOptions>>().Value.MemoryMiB));
        services.AddSingleton<AdmissionMetrics>();
        services.AddSingleton<Traffic>();
        services.AddSingleton<ComputePools>();
    }
}
