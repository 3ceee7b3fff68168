using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Limits;
using static System.FormattableString;

namespace RackCheck.Rules.Power;

/// <summary>Finds sites above the altitude for which switchgear is rated.</summary>
public sealed class Altitude : Rule
{
    /// <summary>Maximum altitude without a confirmation by the manufacturer.</summary>
    public static RuleLimit AltitudeM { get; } = new(
        "altitudeM", "maximum altitude without a confirmation by the manufacturer", 2000, "m", 0, 2000, Stricter.Lower);

    private static readonly MessageWording Defect = new(
        "power.altitude",
        "The site is {actualM} m above sea level; breakers and PDUs are rated for up to {limitM} m without a confirmation by their manufacturer.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "power.altitude",
        Title = "Site above the rated altitude of switchgear",
        Severity = Severity.Warning,
        Concern = Concern.Site,
        Safety = true,
        What = "Finds racks with PDUs at a site above 2000 m.",
        Why = "Thin air insulates less and breakers break less. Clearances that are safe at sea level can flash over.",
        Formula = "altitude <= altitudeM",
        Sources = [Sources.Iec60947Altitude],
        Limits = [AltitudeM],
        Needs = ["/site/altitudeM", "/pdus"],
        Remedies = ["Obtain the manufacturer's confirmation for breakers, PDUs and equipment at this altitude, and record it as a sign-off."],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var limit = context.Limit(AltitudeM);
        if (context.Survey.Power.Units.Length > 0 && context.Survey.Description.Site?.AltitudeM is { } altitude && Comparison.IsOver(altitude, limit))
        {
            context.Report(new FindingDraft
            {
                Message = Defect,
                Data = [("actualM", altitude), ("limitM", limit)],
                Subject = Subjects.Site,
                Identity = [],
                Pointers = ["/site/altitudeM", "/pdus"],
                Actual = Quantities.Of(altitude, "m"),
                Limit = Quantities.Of(limit, "m"),
                UtilisationPercent = limit > 0 ? 100 * altitude / limit : null,
                Calculation = Invariant($"{altitude:0.###} > {limit:0.###}"),
                Candidates = [],
            });
        }
    }
}
