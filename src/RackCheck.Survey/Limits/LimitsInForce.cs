using RackCheck.Engineering;
using RackCheck.Model;

namespace RackCheck.Survey.Limits;

/// <summary>
/// The limits that apply outside their own rule: assignment, planning and remedies keep to the share that the rule checks. They are read once
/// from the policy of a request.
/// </summary>
public sealed class LimitsInForce
{
    /// <summary>Id of the rule on the loading of PDUs.</summary>
    public const string PduLoading = "power.pdu-loading";

    /// <summary>Id of the rule on the loading of supplies.</summary>
    public const string SupplyLoading = "power.supply-loading";

    /// <summary>Id of the rule on the cabinet's rated load.</summary>
    public const string RackRating = "load.rack-rating";

    /// <summary>Reads the limits.</summary>
    /// <param name="policy">The caller's policy; null for the defaults.</param>
    public LimitsInForce(Policy? policy)
    {
        var reader = new RulePolicyReader(policy);
        PduDesignShare = reader.ValueOf(PduLoading, DesignSharePercent) / 100;
        PduContinuousShare = reader.ValueOf(PduLoading, ContinuousSharePercent) / 100;
        SupplyDesignShare = reader.ValueOf(SupplyLoading, DesignSharePercent) / 100;
        SupplyContinuousShare = reader.ValueOf(SupplyLoading, ContinuousSharePercent) / 100;
        RackPlannedShare = reader.ValueOf(RackRating, RackPlannedPercent) / 100;
    }

    /// <summary>Design share of the rating of a PDU or supply. Common practice, no source.</summary>
    public static RuleLimit DesignSharePercent { get; } = new(
        "designSharePercent", "design share of the rating; above it a warning", 80, "%", 10, 100, Stricter.Lower);

    /// <summary>Share of a breaker that a continuous load may take in North America: NEC 210.20(A).</summary>
    public static RuleLimit ContinuousSharePercent { get; } = new(
        "continuousSharePercent",
        "share of a breaker that a continuous load may take in North America",
        Breakers.ContinuousSharePercent,
        "%",
        10,
        100,
        Stricter.Lower);

    /// <summary>Design share of the rated load of a cabinet. Common practice, no source.</summary>
    public static RuleLimit RackPlannedPercent { get; } = new(
        "warningPercent", "design share of the cabinet's rated load; above it a warning", 80, "%", 10, 100, Stricter.Lower);

    /// <summary>Design share of a PDU and its outlet groups, 0.1 to 1.</summary>
    public double PduDesignShare { get; }

    /// <summary>Continuous share of the breaker of a PDU, and of a group, in North America, 0.1 to 1.</summary>
    public double PduContinuousShare { get; }

    /// <summary>Design share of a supply, 0.1 to 1.</summary>
    public double SupplyDesignShare { get; }

    /// <summary>Continuous share of a supply's breaker in North America, 0.1 to 1.</summary>
    public double SupplyContinuousShare { get; }

    /// <summary>Design share of a cabinet's rated load, 0.1 to 1.</summary>
    public double RackPlannedShare { get; }
}
