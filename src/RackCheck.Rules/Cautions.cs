namespace RackCheck.Rules;

/// <summary>What has to be minded by whoever acts on a report.</summary>
public static class Cautions
{
    /// <summary>Stands in every report.</summary>
    public const string General =
        "This report is worked out from the data given and advises only: local codes and regulations and a qualified person's judgement decide.";

    /// <summary>With findings whose cure moves equipment.</summary>
    public const string Handling =
        "Before equipment is moved: isolate its supply and prove it dead, keep the rack from tipping, and lift with two people or a lift aid what is heavy or above shoulder height.";
}
