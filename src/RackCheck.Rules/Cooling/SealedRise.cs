using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds closed cabinets whose surface cannot dissipate their heat load.</summary>
public sealed class SealedRise : Rule
{
    /// <summary>Heat transfer coefficient of the cabinet surface: painted sheet steel, stirred air inside.</summary>
    public static RuleLimit HeatTransferWM2K { get; } = new(
        "heatTransferWM2K", "heat transfer coefficient of the cabinet surface: painted sheet steel, stirred air inside", Enclosures.StirredWM2K, "W/(m2 K)", 1,
            20, Stricter.Lower);

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.sealed-rise",
        Title = "Closed cabinet too hot",
        Severity = Severity.Error,
        What =
            "Finds closed cabinets in which the room temperature plus the temperature rise is above the lowest inlet limit of the items. A cabinet that is "
            + "open at one end only, or whose fans only stir the air, counts as closed.",
        Why = "Equipment above its inlet limit fails early or switches off.",
        Formula =
            "ambientMaxC + Q/(heatTransferWM2K A) <= lowest maxInletC, less 1 K for each 300 m above 900 m; A with face factors 0.9 free, 0.5 covered, 1.4 "
            + "roof, 0.7 covered roof",
        Sources = [Sources.Iec60890, Sources.SheetSteel, Sources.StillCabinet, Sources.AshraeTc99],
        Limits = [HeatTransferWM2K],
        Needs =
        [
            "/items/*/heatW", "/items/*/power/ratedW", "/items/*/maxInletC", "/cabinet/frontDoor/style", "/cabinet/rearDoor/style", "/cabinet/heightMm",
            "/cabinet/placement", "/site/ambientMaxC", "/site/altitudeM",
        ],
        Notes =
        [
            "Heat is asked for of equipment that by its kind runs on power, even where no item states any.",
        ],
        Remedies = ["Fit perforated doors.", "Fit fans in the roof.", "Fit an air conditioner.", "Move equipment to another rack."],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        const string Message =
            "Style of the doors, heat loads of items or inlet limits are missing, "
            + "so the temperature of the closed cabinet cannot be checked.";
        var heat = context.Survey.Heat;
        if (!heat.HasHeat || MissingHeatData.ReportDoors(context, Message) || heat.AirPath.Mode != CoolingMode.Closed)
        {
            return;
        }

        MissingHeatData.ReportHeat(context, Message);
        if (heat.LeastInletC is not { } limit)
        {
            ReportMissingLimits(context, Message);
            return;
        }

        var transfer = context.Limit(HeatTransferWM2K);
        var rise = heat.KnownW > 0 ? heat.ClosedRiseK(transfer) : 0;
        var hottest = Quantities.Round(heat.AmbientC + rise);
        if (heat.KnownW > 0 && hottest > limit)
        {
            Report(context, transfer, rise, hottest, limit);
        }
    }

    private static void ReportMissingLimits(RuleContext context, string message)
    {
        foreach (var item in context.Survey.Items)
        {
            if (HeatSurvey.HeatOf(item) is not 0)
            {
                context.ReportMissing(Pointers.ItemMaxInlet[item.Index], message);
            }
        }
    }

    private static void Report(RuleContext context, double transfer, double rise, double hottest, double limit)
    {
        var survey = context.Survey;
        var heat = survey.Heat;
        var item = heat.LeastInletItem!;
        var stillRise = Enclosures.StillTopFactor * heat.KnownW / (Enclosures.StillWM2K * heat.SurfaceM2);
        context.Report(new FindingDraft
        {
            Message = "A heat load of {heatW} W raises the air in the closed cabinet to {hottestC} C when stirred, "
                + "and to about {stillC} C at the top when still; "
                + "the inlet limit of {item} is {limitC} C.",
            Data =
            [
                ("hottestC", hottest), ("heatW", heat.KnownW), ("item", item.Id), ("limitC", limit),
                ("stillC", heat.AmbientC + Math.Round(stillRise, 2, MidpointRounding.AwayFromZero)),
            ],
            Subject = "closed cabinet",
            Identity = ["closed"],
            Pointers = ["/cabinet", Pointers.ItemMaxInlet[item.Index]],
            Actual = Quantities.Of(hottest, "C"),
            Limit = Quantities.Of(limit, "C"),
            Calculation =
                Invariant($"{heat.KnownW:0.###} / ({transfer:0.###} x {heat.SurfaceM2:0.###}) = ")
                + Invariant($"{Enclosures.RiseK(heat.KnownW, heat.SurfaceM2, transfer):0.###}; ")
                + Invariant($"{heat.AmbientC:0.###} + {rise:0.##} = {hottest:0.###} > {limit:0.###}; ")
                + Invariant($"still, at the top: {Enclosures.StillTopFactor} x {heat.KnownW:0.###} / ({Enclosures.StillWM2K} x {heat.SurfaceM2:0.###}) = ")
                + Invariant($"{stillRise:0.###}"),
            Candidates = CoolingRemedies.Improve(survey),
        });
    }
}
