using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Rules.Cooling;

/// <summary>Reports missing data for the rules on cooling.</summary>
internal static class MissingHeatData
{
    private static readonly MissingData MissingAirflowDirection = new(
        "missing.airflow-direction",
        "The airflow direction of an item is missing, so its airflow path and conflicts with neighbours cannot be checked.");

    private static readonly MissingData MissingAltitude = new(
        "missing.altitude",
        "Above 3050 m the inlet classes give no limits, so inlet limits are not checked: ask the manufacturer for the limits at this altitude.");

    private static readonly MissingData MissingMaxInlet = new(
        "missing.max-inlet",
        "The inlet limit of an item is missing, so its supply air cannot be checked.");

    /// <summary>Reports items without heat data.</summary>
    public static void ReportHeat(RuleContext context, MissingData message)
    {
        foreach (var item in context.Survey.Heat.Unknown)
        {
            context.ReportMissing(Pointers.ItemHeat[item.Index], message);
        }
    }

    /// <summary>Reports a site above the altitude that the inlet classes cover, where items have inlet limits.</summary>
    public static void ReportAltitude(RuleContext context)
    {
        if (context.Survey.Heat.LeastInletItem is not null)
        {
            context.ReportNotAssessed(MissingAltitude);
        }
    }

    /// <summary>Reports doors without a description, where the airflow path depends on them.</summary>
    /// <returns>Whether the airflow path is unknown.</returns>
    public static bool ReportDoors(RuleContext context, MissingData message)
    {
        if (context.Survey.Heat.AirPath.Mode != CoolingMode.Unknown)
        {
            return false;
        }

        var cabinet = context.Survey.Cabinet.Source;
        if (cabinet.FrontDoor is null)
        {
            context.ReportMissing(Pointers.FrontDoor + "/style", message);
        }

        if (cabinet.RearDoor is null)
        {
            context.ReportMissing(Pointers.RearDoor + "/style", message);
        }

        return true;
    }

    /// <summary>Reports an item with an airflow, but without its direction.</summary>
    public static void ReportDirection(RuleContext context, MountedItem item)
    {
        if (item.Item!.Airflow is { FlowM3h: > 0, Direction: null })
        {
            context.ReportMissing(Pointers.ItemAirflowDirection[item.Index], MissingAirflowDirection);
        }
    }

    /// <summary>Reports items with a heat load, but without an inlet limit.</summary>
    public static void ReportInletLimits(RuleContext context)
    {
        if (!context.Survey.Heat.HasHeat)
        {
            return;
        }

        foreach (var item in context.Survey.Items)
        {
            if (item.Item!.MaxInletC is null && HeatSurvey.HeatOf(item) is null or > 0)
            {
                context.ReportMissing(Pointers.ItemMaxInlet[item.Index], MissingMaxInlet);
            }
        }
    }
}
