namespace RackCheck.Api.Tests.Docs;

/// <summary>A test that drives a browser. It is skipped if Debian's Chromium is not installed; CI installs it.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class BrowserFactAttribute : FactAttribute
{
    public const string Browser = "/usr/bin/chromium";

    public BrowserFactAttribute()
    {
        if (!File.Exists(Browser))
        {
            Skip = $"needs a browser at {Browser}; CI installs it";
        }
    }
}
