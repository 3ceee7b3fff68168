using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds closed cabinets whose surface cannot dissipate their heat load.</summary>
public sealed class SealedRise : Rule
{
    /// <summary>Heat transfer coefficient of the cabinet surface: painted sheet steel, stirred air inside.</summary>
    public static RuleLimit HeatTransferWM2K { get; } = new(
        "heatTransferWM2K", "heat transfer coefficient of the cabinet surface: painted sheet steel, stirred air inside", Enclosures.StirredWM2K, "W/(m2 K)", 1,
            20, Stricter.Lower);

    /// <summary>Heat transfer coefficient of the cabinet surface where nothing stirs the air inside.</summary>
    public static RuleLimit StillHeatTransferWM2K { get; } = new(
        "stillHeatTransferWM2K", "heat transfer coefficient of the cabinet surface where nothing stirs the air inside", Enclosures.StillWM2K, "W/(m2 K)", 1,
            20, Stricter.Lower);

    private static readonly WordingChoice Stirred = new(
        "cooling.sealed-rise.stirred",
        "A heat load of [least:at least ]{heatW} W raises the air in the closed cabinet to [least:at least ]{hottestC} C; "
            + "the inlet limit of {item} is {limitC} C.");

    private static readonly WordingChoice Still = new(
        "cooling.sealed-rise.still",
        "Nothing stirs the air in the closed cabinet: [least:at least ]{heatW} W raise it to [least:at least ]{hottestC} C at {item}, whose inlet limit is "
            + "{limitC} C.");

    private static readonly MissingData Missing = new(
        "cooling.sealed-rise.missing",
        "Style of the doors, heat loads of items or inlet limits are missing, so the temperature of the closed cabinet cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.sealed-rise",
        Title = "Closed cabinet too hot",
        Severity = Severity.Error,
        MilderSeverity = Severity.Warning,
        What =
            "Finds closed cabinets in which the room temperature plus the temperature rise is above the inlet limit of an item. Where nothing stirs the air "
            + "the surface dissipates less, and the upper half is hotter. A cabinet that is open at one end only, or whose fans only stir the air, counts as "
            + "closed.",
        Why = "Equipment above its inlet limit fails early or switches off.",
        Formula =
            "ambientMaxC + f Q/(k A) <= maxInletC, derated for altitude as in cooling.inlet-limit; stirred: k heatTransferWM2K, f 1; still: k "
            + "stillHeatTransferWM2K, f 1.44 in the upper half; A with face factors 0.9 free, 0.5 covered, 1.4 roof, 0.7 covered roof",
        Sources = [Sources.Iec60890, Sources.SheetSteel, Sources.StillCabinet, Sources.AshraeTc99],
        Limits = [HeatTransferWM2K, StillHeatTransferWM2K],
        Needs =
        [
            "/items/*/heatW", "/items/*/power/ratedW", "/items/*/airflow/flowM3h", "/items/*/maxInletC", "/items/*/position", "/cabinet/frontDoor/style",
            "/cabinet/rearDoor/style", "/cabinet/heightMm", "/cabinet/placement", "/cooling/fanTrays", "/site/ambientMaxC", "/site/altitudeM",
        ],
        Notes =
        [
            "Heat is asked for of equipment that by its kind runs on power, even where no item states any.",
            "A fan tray, roof fans or an item with an airflow of its own stir the air; one that blows from face to face or to the side has "
                + "fans. The upper half is above the middle of the mounting space; an item that is not yet placed counts as in the lower half.",
        ],
        SharesWordingsOf = [typeof(MissingHeatData)],
        Remedies =
        [
            "Fit a fan tray that stirs the air.", "Fit perforated doors.", "Fit fans in the roof.", "Fit an air conditioner.",
            "Move equipment to another rack.",
        ],
        Cautions = [Cautions.Handling],
    };

    /// <summary>Whether the policy switches this rule off, so that another one cannot leave its defect to it.</summary>
    /// <param name="survey">The facts.</param>
    public static bool IsOff(RackSurvey survey) => new RulePolicyReader(survey.Description.Policy).IsOff(Facts.Id);

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var heat = context.Survey.Heat;
        if (!heat.HasHeat || MissingHeatData.ReportDoors(context, Missing) || heat.AirPath.Mode != CoolingMode.Closed)
        {
            return;
        }

        MissingHeatData.ReportHeat(context, Missing);
        if (!heat.IsAltitudeCovered)
        {
            MissingHeatData.ReportAltitude(context);
            return;
        }

        if (heat.LeastInletC is null)
        {
            ReportMissingLimits(context, Missing);
            return;
        }

        var transfer = context.Limit(heat.IsStirred ? HeatTransferWM2K : StillHeatTransferWM2K);
        if (heat.KnownW > 0 && Hottest(context.Survey, heat.ClosedRiseK(transfer)) is { } worst && Comparison.IsOver(worst.InletC, worst.LimitC))
        {
            Report(context, transfer, worst);
        }
    }

    // The item that is the most over its limit, or the nearest to it.
    private static (MountedItem Item, double InletC, double LimitC)? Hottest(RackSurvey survey, double rise)
    {
        (MountedItem Item, double InletC, double LimitC)? worst = null;
        foreach (var item in survey.Items)
        {
            if (item.Item!.MaxInletC is not { } own)
            {
                continue;
            }

            var limit = survey.Heat.LimitAtSiteC(own);
            var inlet = Quantities.Round(survey.Heat.AmbientC + (survey.Heat.RiseFactor(item) * rise));
            var over = Quantities.Round(inlet - limit);
            var most = worst is { } known ? Quantities.Round(known.InletC - known.LimitC) : double.NegativeInfinity;
            if (over > most || (over == most && string.CompareOrdinal(item.Id, worst!.Value.Item.Id) < 0))
            {
                worst = (item, inlet, limit);
            }
        }

        return worst;
    }

    private static void ReportMissingLimits(RuleContext context, MissingData message)
    {
        foreach (var item in context.Survey.Items)
        {
            if (HeatSurvey.HeatOf(item) is not 0)
            {
                context.ReportMissing(Pointers.ItemMaxInlet[item.Index], message);
            }
        }
    }

    private static void Report(RuleContext context, double transfer, (MountedItem Item, double InletC, double LimitC) worst)
    {
        var survey = context.Survey;
        var heat = survey.Heat;
        var (item, hottest, limit) = worst;
        var own = item.Item!.MaxInletC!.Value;
        var (rise, factor) = (heat.ClosedRiseK(transfer), heat.RiseFactor(item));
        var share = factor > 1 ? Invariant($"{factor} x ") : "";
        var stirred = context.Limit(HeatTransferWM2K);
        context.Report(new FindingDraft
        {
            Message = (heat.IsStirred ? Stirred : Still).With(heat.IsHeatKnown ? null : "least"),
            Data = [("hottestC", hottest), ("heatW", heat.KnownW), ("item", item.Id), ("limitC", limit)],
            Severity = own > InletLimits.GreatestClassC && !Comparison.IsOver(hottest, own) ? Severity.Warning : null,
            Subject = Subjects.ClosedCabinet,
            Identity = ["closed"],
            Pointers = ["/cabinet", Pointers.ItemMaxInlet[item.Index]],
            Actual = Quantities.Of(hottest, "C"),
            Limit = Quantities.Of(limit, "C"),
            Calculation =
                Invariant($"{heat.KnownW:0.###} / ({transfer:0.###} x {heat.SurfaceM2:0.###}) = ")
                + Invariant($"{Enclosures.RiseK(heat.KnownW, heat.SurfaceM2, transfer):0.###}; ")
                + Invariant($"{heat.AmbientC:0.###} + {share}{rise:0.##} = {hottest:0.###} > {limit:0.###}")
                + (heat.IsStirred ? "" : Invariant($"; stirred: {heat.KnownW:0.###} / ({stirred:0.###} x {heat.SurfaceM2:0.###}) = ")
                    + Invariant($"{Enclosures.RiseK(heat.KnownW, heat.SurfaceM2, stirred):0.###}")),
            Candidates = AirPathRemedies.Stir(survey).Concat(CoolingRemedies.Improve(survey)),
        });
    }
}
