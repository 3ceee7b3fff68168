using System.Globalization;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Architecture;

/// <summary>A test that is skipped where the properties run on fewer samples than they should, so that the results say so.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class FullSampleFactAttribute : FactAttribute
{
    public FullSampleFactAttribute()
    {
        if (Samples.Share < 1)
        {
            Skip = string.Create(
                CultureInfo.InvariantCulture, $"Properties ran on {Samples.Share:0.####} of their samples; {Samples.Variable}=1 runs all.");
        }
    }
}
