using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds sites that are too humid for the class of an item.</summary>
public sealed class Humidity : Rule
{
    private static readonly MessageWording Relative = new(
        "cooling.humidity.relative",
        "The room reaches {humidityPercent} % relative humidity; class {class}, to which {item} belongs, permits {limitPercent} %.");

    private static readonly MessageWording DewPoint = new(
        "cooling.humidity.dew-point",
        "The dew point of the room reaches {dewPointC} C; class {class}, to which {item} belongs, permits {limitC} C.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.humidity",
        Title = "Room too humid for an item",
        Severity = Severity.Warning,
        MilderSeverity = Severity.Advice,
        Concern = Concern.Site,
        What =
            "Finds sites whose relative humidity or dew point is above the limit of an item's class. The class follows the inlet limit of the item. Too high a "
            + "dew point alone is advice, because the highest temperature and the highest humidity seldom coincide.",
        Why = "Moisture corrodes contacts and boards and makes leakage currents.",
        Formula =
            "humidityMaxPercent <= 80 % (A1, A2), 85 % (A3), 90 % (A4); dew point <= 17 C (A1), 21 C (A2), 24 C (A3, A4); class by maxInletC: up to 32 A1, "
            + "35 A2, 40 A3, above A4",
        Sources = [Sources.AshraeTc99, Sources.Wmo8],
        Needs = ["/site/humidityMaxPercent", "/site/ambientMaxC", "/items/*/maxInletC", "/cooling/airConditioner"],
        Notes = ["With an air conditioner in the cabinet the items do not take in room air: the rule is not applied."],
        SharesWordingsOf = [typeof(MissingHeatData)],
        Remedies = ["Dehumidify the room.", "Use equipment of a wider class."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var heat = context.Survey.Heat;
        if (context.Survey.Description.Site?.HumidityMaxPercent is not { } humidity || heat.AirPath.Mode == CoolingMode.AirConditioner)
        {
            return;
        }

        var strictest = context.Survey.Items.Where(i => i.Item!.MaxInletC is not null)
            .OrderBy(i => i.Item!.MaxInletC).ThenBy(i => i.Id, StringComparer.Ordinal).FirstOrDefault();
        var classes = InletLimits.Classes;
        var dew = heat.DewPointC is { } exact ? Math.Round(exact, 2, MidpointRounding.AwayFromZero) : (double?)null;
        if (strictest is not null && InletLimits.ClassOf(strictest.Item!.MaxInletC!.Value) is var strict && IsOver(strict))
        {
            Report(context, strictest, strict, humidity, dew);
        }
        else if (IsOver(classes[0]) && (strictest is null || InletLimits.ClassOf(strictest.Item!.MaxInletC!.Value) != classes[0]))
        {
            MissingHeatData.ReportInletLimits(context);
        }

        bool IsOver(InletClass c) =>
            Comparison.IsOver(humidity, c.GreatestHumidityPercent) || (dew is { } point && Comparison.IsOver(point, c.GreatestDewPointC));
    }

    private static void Report(RuleContext context, MountedItem item, InletClass strict, double humidity, double? dew)
    {
        var heat = context.Survey.Heat;
        var isRelative = Comparison.IsOver(humidity, strict.GreatestHumidityPercent);
        var gamma = Math.Log(humidity / 100) + (17.62 * heat.AmbientC / (243.12 + heat.AmbientC));
        var (actual, limit, unit) = isRelative ? (humidity, strict.GreatestHumidityPercent, "%") : (dew!.Value, strict.GreatestDewPointC, "C");
        context.Report(new FindingDraft
        {
            Message = isRelative ? Relative : DewPoint,
            Data = isRelative
                ? [("humidityPercent", humidity), ("class", strict.Name), ("item", item.Id), ("limitPercent", limit)]
                : [("dewPointC", actual), ("class", strict.Name), ("item", item.Id), ("limitC", limit)],
            Severity = isRelative ? null : Severity.Advice,
            Subject = Subjects.HumidityOfTheRoom,
            Identity = ["humidity"],
            Pointers = [Pointers.Humidity, Pointers.ItemMaxInlet[item.Index]],
            Actual = Quantities.Of(actual, unit),
            Limit = Quantities.Of(limit, unit),
            UtilisationPercent = 100 * actual / limit,
            Calculation = isRelative
                ? Invariant($"{humidity:0.###} > {limit:0.###}")
                : Invariant($"ln({humidity:0.###} / 100) + 17.62 x {heat.AmbientC:0.###} / (243.12 + {heat.AmbientC:0.###}) = {gamma:0.######}; ")
                    + Invariant($"243.12 x {gamma:0.######} / (17.62 - {gamma:0.######}) = {heat.DewPointC:0.###}; {actual:0.##} > {limit:0.###}"),
            Candidates = RoomAirRemedies.Drier(context.Survey, strict.GreatestHumidityPercent, strict.GreatestDewPointC),
        });
    }
}
