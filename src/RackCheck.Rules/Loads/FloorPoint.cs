using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Loads;

/// <summary>Finds racks whose most loaded foot presses harder than the floor bears at a point.</summary>
public sealed class FloorPoint : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "load.floor-point",
        Title = "Floor overloaded under a foot",
        Severity = Severity.Error,
        Safety = true,
        What = "Finds racks whose most loaded foot, by the centre of gravity, presses on the floor with more than its point load. A plinth counts as standing on its corners. Where places are not known a quarter of the mass is the least that one foot bears, and that is judged.",
        Why = "The foot goes through the panel of a raised floor.",
        Formula = "F = (W/4)(1 + 2 ex/a)(1 + 2 ey/b) <= pointKn, a and b between the feet, ex and ey from their middle",
        Sources = [Sources.Statics, Sources.En12825, Sources.FloorFactorPractice, Sources.CastorPractice],
        Needs = ["/items/*/massKg", "/items/*/position", "/items/*/body/depthMm", "/cabinet/massKg", "/cabinet/widthMm", "/cabinet/depthMm", "/cabinet/base/style", "/site/floor/pointKn"],
        Remedies = ["Take equipment out of the rack.", "Have a stronger floor, or plates that spread the load, judged by whoever answers for the building, and give the rating that comes of it."],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var mass = context.Survey.Mass;
        if (!mass.IsTold)
        {
            return;
        }

        if (context.Survey.Description.Site?.Floor?.PointKn is not { } limit)
        {
            context.Lacks(Pointers.FloorPoint, "The floor's point load is not given: it cannot be said whether it bears the feet.");
            return;
        }

        if (mass.Balance is null)
        {
            MissingLoadData.ReportBalance(context, "Without every mass and its place it cannot be said what the most loaded foot bears.");
        }

        var quarter = Gravity.WeightN(mass.KnownTotalKg) / 4000;
        var foot = mass.Balance?.Feet.GreatestKn ?? quarter;
        if (MassSurvey.Exceeds(foot, limit))
        {
            Report(context, mass, foot, limit);
        }
    }

    private static void Report(RuleContext context, MassSurvey mass, double foot, double limit)
    {
        var isKnown = mass.Balance is not null;
        context.Report(new FindingDraft
        {
            Message = isKnown
                ? "The foot that bears most presses with {footKn} kN of the {massKg} kg; the floor bears {limitKn} kN at a point."
                : "The foot that bears most presses with {footKn} kN at least, a quarter of {massKg} kg; the floor bears {limitKn} kN at a point.",
            Data = [("footKn", foot), ("massKg", mass.KnownTotalKg), ("limitKn", limit)],
            Subject = "floor",
            Identity = [],
            Pointers = [Pointers.FloorPoint],
            Actual = Quantities.Of(foot, "kN"),
            Limit = Quantities.Of(limit, "kN"),
            UtilisationPercent = limit > 0 ? 100 * foot / limit : null,
            Calculation = Invariant($"{mass.KnownTotalKg:0.###} x 9.80665 / 4000{Levers(mass)} = {foot:0.###} > {limit:0.###}"),
            Cures = LoadCures.Unburden(context.Survey, limit),
        });
    }

    // Everything lies in the middle of the width.
    private static string Levers(MassSurvey mass)
    {
        if (mass.Balance is not { } balance)
        {
            return "";
        }

        var feet = mass.Stand.Feet;
        return Invariant($" x (1 + 2 x {Math.Abs(balance.Centre.XMm - ((feet.FrontMm + feet.RearMm) / 2)):0.###} / {feet.DepthMm:0.###})");
    }
}
