using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Limits;
using static System.FormattableString;

namespace RackCheck.Rules.Loads;

/// <summary>Finds items that are too heavy to be lifted to their height by the people named.</summary>
public sealed class HeavyHigh : Rule
{
    /// <summary>Number of people who lift together where the description does not say.</summary>
    public const int DefaultPersons = 2;

    /// <summary>Maximum mass for one person, lower edge in the lowest zone.</summary>
    public static RuleLimit LowKg { get; } = new(
        "lowKg", "maximum mass for one person with the lower edge up to 1050 mm", ManualHandling.MountingZones[0].Kg, "kg", 1, 25, Stricter.Lower);

    /// <summary>Maximum mass for one person, lower edge in the middle zone.</summary>
    public static RuleLimit MiddleKg { get; } = new(
        "middleKg", "maximum mass for one person with the lower edge above 1050 and up to 1400 mm", ManualHandling.MountingZones[1].Kg, "kg", 1, 20,
        Stricter.Lower);

    /// <summary>Maximum mass for one person, lower edge in the highest zone.</summary>
    public static RuleLimit HighKg { get; } = new(
        "highKg", "maximum mass for one person with the lower edge above 1400 mm", ManualHandling.MountingZones[2].Kg, "kg", 1, 10, Stricter.Lower);

    private static readonly RuleLimit[] ByZone = [LowKg, MiddleKg, HighKg];

    private static readonly WordingChoice Defect = new(
        "load.heavy-high",
        "{item} weighs {massKg} kg and is lifted to {heightMm} mm. The limit there is {limitKg} kg for {persons} [one:person|people]; use a "
            + "lifting aid.");

    private static readonly MissingData MissingHeight = new(
        "load.heavy-high.missing-height",
        "Without this value, the lifting height of a heavy item cannot be calculated.");

    private static readonly MissingData MissingMass = new(
        "load.heavy-high.missing-mass",
        "Without the mass of the item, the lifting limit cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "load.heavy-high",
        Title = "Item too heavy to be lifted to its height",
        Severity = Severity.Warning,
        Concern = Concern.Site,
        Safety = true,
        What = "Finds items that are heavier than the people named may lift to their height, by the height of the lower edge. Two people lift two "
            + "thirds of the sum of both, three or more half of the sum of three. With a lifting aid nothing is found.",
        Why = "Lifting too much, and above shoulder height, strains the back and leads to dropped equipment.",
        Formula = "massKg <= k x limit of one person; limit lowKg up to 1050 mm, middleKg up to 1400 mm, highKg above; k = 1, 4/3 or 3/2 for 1, 2 or 3 "
            + "people; lower edge z = z0 + 44.45 (u - 1)",
        Sources = [Sources.HseL23, Sources.HeavyLowPractice, Sources.CabinetHeightPractice],
        Limits = ByZone,
        Needs =
        [
            "/items/*/massKg", "/items/*/position", "/items/*/onShelf", "/cabinet/heightMm", "/cabinet/base/heightMm", "/site/handling/persons",
            "/site/handling/liftAid",
        ],
        Notes = ["The lower values of the guideline below knuckle height are not used: equipment is set down there from a trolley."],
        Remedies = ["Use a lifting aid.", "Have two people lift it.", "Mount it lower.", "Swap it and a lighter item below.", "Move it to another rack."],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var handling = context.Survey.Description.Site?.Handling;
        if (handling?.LiftAid == true)
        {
            return;
        }

        var persons = handling?.Persons ?? DefaultPersons;
        foreach (var item in context.Survey.Items)
        {
            var edge = context.Survey.Mass.Stand.LowerEdgeMm(item);
            if (item.Item!.MassKg is not { } kilograms)
            {
                if (MassSurvey.IsToBeWeighed(item))
                {
                    context.ReportMissing(Pointers.ItemMass[item.Index], MissingMass);
                }
            }
            else if (edge is { } height)
            {
                Check(context, item, kilograms, height, persons);
            }
            else if (Comparison.IsOver(kilograms, LimitKg(context, ManualHandling.MountingZones.Length - 1, persons)))
            {
                context.ReportMissing(context.Survey.Mass.Stand.MissingForCentre(item)!, MissingHeight);
            }
        }
    }

    private static double LimitKg(RuleContext context, int zone, int persons)
    {
        var people = Math.Min(persons, ManualHandling.MostPeople);
        return ManualHandling.TeamLimitKg(people * context.Limit(ByZone[zone]), people);
    }

    private static void Check(RuleContext context, MountedItem item, double kilograms, double height, int persons)
    {
        var zone = ManualHandling.MountingZoneAt(height);
        var limit = LimitKg(context, zone, persons);
        if (!Comparison.IsOver(kilograms, limit))
        {
            return;
        }

        var (one, people) = (context.Limit(ByZone[zone]), Math.Min(persons, ManualHandling.MostPeople));
        var share = people switch
        {
            1 => "",
            2 => Invariant($"2 x {one:0.###} x 2 / 3 = {limit:0.###}; "),
            _ => Invariant($"3 x {one:0.###} / 2 = {limit:0.###}; "),
        };
        var edge = context.Survey.Mass.Stand.Heights.LowerEdgeMm;
        context.Report(new FindingDraft
        {
            Message = Defect.With(persons == 1 ? "one" : ""),
            Data = [("item", item.Id), ("massKg", kilograms), ("heightMm", height), ("limitKg", limit), ("persons", persons)],
            Subject = context.Survey.Cabinet.Place(item),
            Identity = [item.Id],
            Pointers = [item.Pointer],
            Actual = Quantities.Of(kilograms, "kg"),
            Limit = Quantities.Of(limit, "kg"),
            UtilisationPercent = 100 * kilograms / limit,
            Calculation = Invariant($"{edge:0.###} + {height - edge:0.###} = {height:0.###}; {share}{kilograms:0.###} > {limit:0.###}"),
            Candidates = LoadRemedies.Lift(context.Survey, item, persons),
        });
    }
}
