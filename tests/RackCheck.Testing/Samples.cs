using System.Globalization;

namespace RackCheck.Testing;

/// <summary>How many samples a property runs on: its full number, times a share that is small on a developer's machine and at least 1 each night.</summary>
public static class Samples
{
    /// <summary>The environment variable with the share of the full numbers to run: 1 for all, more for a longer search.</summary>
    public const string Variable = "RACKCHECK_SAMPLES";

    private const double UsualShare = 0.1;

    /// <summary>The share in this run.</summary>
    public static double Share { get; } = ShareOf(Environment.GetEnvironmentVariable(Variable));

    /// <summary>Samples to run of a full number.</summary>
    /// <param name="full">The number with a share of 1.</param>
    /// <param name="least">The number that no share goes below, so that a property never passes unseen.</param>
    public static int Of(int full, int least = 20) => Of(full, least, Share);

    /// <summary>The same with a given share.</summary>
    public static int Of(int full, int least, double share) => Math.Max(Math.Min(least, full), (int)Math.Round(full * share));

    /// <summary>The share that the variable's value asks for.</summary>
    public static double ShareOf(string? value) => string.IsNullOrEmpty(value)
        ? UsualShare
        : double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out var share) && share is > 0 and <= 1000
            ? share
            : throw new InvalidOperationException($"{Variable} is '{value}', not a share over 0 and up to 1000.");
}
