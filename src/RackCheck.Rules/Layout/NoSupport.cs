using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Limits;
using static System.FormattableString;

namespace RackCheck.Rules.Layout;

/// <summary>Finds large items that are front-panel mounted without a support.</summary>
public sealed class NoSupport : Rule
{
    /// <summary>Maximum height of a front-panel mounted item.</summary>
    public static RuleLimit PanelHeightU { get; } = new(
        "panelHeightU", "maximum height of a front-panel mounted item", 3, "U", 1, 60, Stricter.Lower);

    /// <summary>Maximum mass of a front-panel mounted item.</summary>
    public static RuleLimit PanelMassKg { get; } = new(
        "panelMassKg", "maximum mass of a front-panel mounted item", 12, "kg", 0.1, 1000, Stricter.Lower);

    /// <summary>Maximum body depth of a front-panel mounted item.</summary>
    public static RuleLimit PanelDepthMm { get; } = new(
        "panelDepthMm", "maximum body depth of a front-panel mounted item", 400, "mm", 1, 3000, Stricter.Lower);

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "layout.no-support",
        Title = "Front-panel mounted without a support",
        Severity = Severity.Warning,
        What = "Finds front-panel mounted items that are too high, too heavy or too deep to be used without a support.",
        Why = "The panel bends, the body sags onto the item below, and the screws tear out in transport.",
        Formula = "support style panel, and heightU > panelHeightU, or mass > panelMassKg, or body depth > panelDepthMm",
        Sources = [Sources.SupportPractice],
        Limits = [PanelHeightU, PanelMassKg, PanelDepthMm],
        Needs = ["/items/*/support/style", "/items/*/heightU", "/items/*/massKg", "/items/*/body/depthMm"],
        Remedies = ["Fit chassis runners or a shelf of its own."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var (mostU, mostKg, mostMm) = (context.Limit(PanelHeightU), context.Limit(PanelMassKg), context.Limit(PanelDepthMm));
        foreach (var item in context.Survey.Items)
        {
            // A blanking panel needs no support.
            if (item.HeightU == 0 || item.Item!.OnShelf is not null || item.Category == ItemCategory.BlankingPanel
                || item.SupportStyle is not (null or SupportStyle.Panel))
            {
                continue;
            }

            // The first of the three limits that is exceeded is reported. Each alone requires a support.
            var passed = item.HeightU > mostU ? Passed(item.HeightU, mostU, "U")
                : item.Item.MassKg is { } mass && mass > mostKg ? Passed(mass, mostKg, "kg")
                : item.BodyDepthMm is { } depth && depth > mostMm ? Passed(depth, mostMm, "mm body depth")
                : null;
            if (item.SupportStyle is null)
            {
                if (passed is not null || item.Item.MassKg is null || item.BodyDepthMm is null)
                {
                    context.ReportMissing(
                        Pointers.ItemSupportStyle[item.Index],
                        "The support style is not specified. Its height, mass or depth may require a support.");
                }
            }
            else if (passed is { } excess)
            {
                Report(context, item, excess);
            }
            else
            {
                ReportMissing(context, item);
            }
        }
    }

    private static (double Actual, double Limit, string Unit)? Passed(double actual, double limit, string unit) => (actual, limit, unit);

    private static void ReportMissing(RuleContext context, MountedItem item)
    {
        const string Message = "The item is front-panel mounted. Without this value, the need for a support cannot be checked.";
        if (item.Item!.MassKg is null)
        {
            context.ReportMissing(Pointers.ItemMass[item.Index], Message);
        }

        if (item.BodyDepthMm is null)
        {
            context.ReportMissing(Pointers.ItemBodyDepth[item.Index], Message);
        }
    }

    private static void Report(RuleContext context, MountedItem item, (double Actual, double Limit, string Unit) excess) =>
        context.Report(new FindingDraft
        {
            Message = "{item} is front-panel mounted without a support: {actual} {measure}, maximum {limit} {measure}.",
            Data = [("item", item.Id), ("limit", excess.Limit), ("actual", excess.Actual), ("measure", excess.Unit)],
            Subject = context.Survey.Cabinet.Place(item),
            Identity = [item.Id],
            Pointers = [Pointers.ItemSupportStyle[item.Index], Pointers.Item[item.Index]],
            Actual = Quantities.Of(excess.Actual, excess.Unit.Split(' ')[0]),
            Limit = Quantities.Of(excess.Limit, excess.Unit.Split(' ')[0]),
            UtilisationPercent = excess.Limit > 0 ? 100 * excess.Actual / excess.Limit : null,
            Calculation = Invariant($"{excess.Actual:0.###} > {excess.Limit:0.###}"),
            Candidates = [SupportRemedies.Fixed(context.Survey, item)],
        });
}
