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
    /// <summary>Maximum mass of a front-panel mounted item.</summary>
    public static RuleLimit PanelMassKg { get; } = new(
        "panelMassKg", "maximum mass of a front-panel mounted item", 12, "kg", 0.1, 1000, Stricter.Lower);

    /// <summary>Maximum mass of a deep front-panel mounted item.</summary>
    public static RuleLimit DeepMassKg { get; } = new(
        "deepMassKg", "maximum mass of a front-panel mounted item deeper than panelDepthMm", 6, "kg", 0.1, 1000, Stricter.Lower);

    /// <summary>Body depth above which a front-panel mounted item is deep.</summary>
    public static RuleLimit PanelDepthMm { get; } = new(
        "panelDepthMm", "body depth above which a front-panel mounted item is deep", 400, "mm", 1, 3000, Stricter.Lower);

    private static readonly MessageWording Mass = new(
        "layout.no-support.mass",
        "{item} is front-panel mounted without a support: {massKg} kg, maximum {limitKg} kg.");

    private static readonly MessageWording MassAndDepth = new(
        "layout.no-support.mass-and-depth",
        "{item} is front-panel mounted without a support: {massKg} kg and {depthMm} mm deep; above {deepMm} mm the maximum is {limitKg} kg.");

    private static readonly MissingData MissingMassOrDepth = new(
        "layout.no-support.missing-mass-or-depth",
        "The item is front-panel mounted. Without this value, the need for a support cannot be checked.");

    private static readonly MissingData MissingSupportStyle = new(
        "layout.no-support.missing-support-style",
        "The support style is not specified. The mass or depth of the item may require a support.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "layout.no-support",
        Title = "Front-panel mounted without a support",
        Severity = Severity.Warning,
        What = "Finds front-panel mounted items that are too heavy, or heavy and deep, to be used without a support.",
        Why = "The panel bends, the body sags onto the item below, and the screws tear out in transport.",
        Formula = "support style panel, and mass > panelMassKg, or mass > deepMassKg and body depth > panelDepthMm",
        Sources = [Sources.SupportPractice],
        Limits = [PanelMassKg, DeepMassKg, PanelDepthMm],
        Needs = ["/items/*/support/style", "/items/*/massKg", "/items/*/body/depthMm"],
        Remedies = ["Fit chassis runners or a shelf of its own."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var (mostKg, deepKg, deepMm) = (context.Limit(PanelMassKg), context.Limit(DeepMassKg), context.Limit(PanelDepthMm));
        foreach (var item in context.Survey.Items)
        {
            // A blanking panel needs no support.
            if (item.HeightU == 0 || item.Item!.OnShelf is not null || item.Category == ItemCategory.BlankingPanel
                || item.SupportStyle is not (null or SupportStyle.Panel))
            {
                continue;
            }

            // The depth counts only between the two masses.
            var isHeavy = item.Item.MassKg is { } mass && Comparison.IsOver(mass, mostKg);
            var mayBeDeep = !isHeavy && item.Item.MassKg is { } some && Comparison.IsOver(some, deepKg);
            var isDeep = mayBeDeep && item.BodyDepthMm is { } depth && Comparison.IsOver(depth, deepMm);
            var isOpen = item.Item.MassKg is null || (mayBeDeep && item.BodyDepthMm is null);
            if (item.SupportStyle is null)
            {
                if (isHeavy || isDeep || isOpen)
                {
                    context.ReportMissing(Pointers.ItemSupportStyle[item.Index], MissingSupportStyle);
                }
            }
            else if (isHeavy || isDeep)
            {
                Report(context, item, isHeavy ? mostKg : deepKg, isHeavy ? null : deepMm);
            }
            else if (isOpen)
            {
                context.ReportMissing(item.Item.MassKg is null ? Pointers.ItemMass[item.Index] : Pointers.ItemBodyDepth[item.Index], MissingMassOrDepth);
            }
        }
    }

    private static void Report(RuleContext context, MountedItem item, double limit, double? deepMm)
    {
        var kilograms = item.Item!.MassKg!.Value;
        context.Report(new FindingDraft
        {
            Message = deepMm is null ? Mass : MassAndDepth,
            Data = deepMm is { } deep
                ? [("item", item.Id), ("massKg", kilograms), ("limitKg", limit), ("depthMm", item.BodyDepthMm!.Value), ("deepMm", deep)]
                : [("item", item.Id), ("massKg", kilograms), ("limitKg", limit)],
            Subject = context.Survey.Cabinet.Place(item),
            Identity = [item.Id],
            Pointers = [Pointers.ItemSupportStyle[item.Index], Pointers.Item[item.Index]],
            Actual = Quantities.Of(kilograms, "kg"),
            Limit = Quantities.Of(limit, "kg"),
            UtilisationPercent = 100 * kilograms / limit,
            Calculation = Invariant($"{kilograms:0.###} > {limit:0.###}") + (deepMm is null ? "" : Invariant($"; {item.BodyDepthMm:0.###} > {deepMm:0.###}")),
            Candidates = SupportRemedies.Fixed(context.Survey, item),
        });
    }
}
