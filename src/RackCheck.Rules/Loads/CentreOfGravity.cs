using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Loads;

/// <summary>Finds racks with their centre of gravity in the upper half.</summary>
public sealed class CentreOfGravity : Rule
{
    /// <summary>Maximum height of the centre of gravity as a share of the overall height of the cabinet.</summary>
    public static RuleLimit HeightPercent { get; } = new(
        "heightPercent", "maximum height of the centre of gravity as a share of the overall height of the cabinet", 50, "%", 10, 100, Stricter.Lower);

    private static readonly MessageWording Defect = new(
        "load.centre-of-gravity",
        "The centre of gravity is {heightMm} mm above the floor; the limit is {limitMm} mm. {item} raises it most.");

    private static readonly MissingData Missing = new(
        "load.centre-of-gravity.missing",
        "Without every mass and its position, the centre of gravity cannot be calculated.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "load.centre-of-gravity",
        Title = "Centre of gravity in the upper half",
        Severity = Severity.Advice,
        What = "Finds racks whose centre of gravity is above half their height. The mass of the empty cabinet acts at its "
            + "geometric centre. A rack that is bolted to the floor or hung on a wall is not checked.",
        Why = "A top-heavy rack sways and tips more easily, especially while it is moved.",
        Formula = "z = sum(m z) / sum(m) <= H/2",
        Sources = [Sources.Statics, Sources.HeavyLowPractice, Sources.CabinetHeightPractice],
        Limits = [HeightPercent],
        Needs =
        [
            "/cabinet/massKg", "/cabinet/heightMm", "/cabinet/base/style", "/cabinet/base/heightMm", "/items/*/massKg", "/items/*/position",
            "/items/*/body/depthMm", "/items/*/body/heightMm", "/items/*/frontProjectionMm", "/items/*/rearProjectionMm",
            "/cabinet/uprights/frontSetbackMm",
        ],
        Remedies = ["Mount heavy equipment lower.", "Swap heavy equipment and lighter equipment below it.", "Bolt the rack to the floor."],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var mass = context.Survey.Mass;
        if (!mass.Stand.CanTip)
        {
            return;
        }

        if (mass.Balance is not { } balance)
        {
            if (context.Survey.Items.Length > 0)
            {
                MissingLoadData.ReportBalance(context, Missing);
            }

            return;
        }

        var percent = context.Limit(HeightPercent);
        var limit = mass.Stand.Heights.OverallMm * percent / 100;
        if (Comparison.IsOver(balance.Centre.ZMm, limit) && Highest(context.Survey, balance, limit) is { } culprit)
        {
            Report(context, balance, limit, culprit);
        }
    }

    // The item that raises it most: mass times height above the limit.
    private static MountedItem? Highest(RackSurvey survey, Balance balance, double limit)
    {
        var (found, most) = (default(MountedItem), 0.0);
        foreach (var item in survey.Items)
        {
            var place = balance.PlaceOf(item);
            var lift = Quantities.Round(place.Kg * (place.ZMm - limit));
            if (lift > most || (lift > 0 && lift == most && string.CompareOrdinal(item.Id, found!.Id) < 0))
            {
                (found, most) = (item, lift);
            }
        }

        return found;
    }

    private static void Report(RuleContext context, Balance balance, double limit, MountedItem culprit)
    {
        var survey = context.Survey;
        var (height, kilograms) = (balance.Centre.ZMm, balance.Centre.Kg);
        context.Report(new FindingDraft
        {
            Message = Defect,
            Data = [("heightMm", height), ("limitMm", limit), ("item", culprit.Id)],
            Subject = Subjects.Rack,
            Identity = [],
            Pointers = [culprit.Pointer, Pointers.CabinetHeight],
            Actual = Quantities.Millimetres(height),
            Limit = Quantities.Millimetres(limit),
            UtilisationPercent = 100 * height / limit,
            Calculation = Invariant($"{kilograms * height:0.###} / {kilograms:0.###} = {height:0.###} > {limit:0.###}"),
            Candidates = LoadRemedies.LowerCentre(survey),
        });
    }
}
