using RackCheck.Model;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Delivery;

/// <summary>The gross mass of cabinet, equipment and pallet in the delivery rules.</summary>
internal static class GrossMass
{
    private static readonly MissingData MissingMass = new("missing.mass", "Without this mass, the gross mass of the delivery cannot be calculated.");

    /// <summary>Reports missing masses.</summary>
    internal static void ReportMissing(RuleContext context)
    {
        foreach (var pointer in context.Survey.Route!.MissingMasses())
        {
            context.ReportMissing(pointer, MissingMass);
        }
    }

    /// <summary>Pointer to the mass of the heaviest part on the route: the cabinet, or an item that is delivered in it.</summary>
    internal static string Heaviest(RackSurvey survey)
    {
        // Of equals the first by id: the answer does not depend on the order of the items.
        var item = survey.Route!.IsLoaded
            ? survey.Items.OrderByDescending(i => i.Item!.MassKg ?? 0).ThenBy(i => i.Id, StringComparer.Ordinal).FirstOrDefault()
            : null;
        return item?.Item!.MassKg > (survey.Cabinet.Source.MassKg ?? 0) ? Pointers.ItemMass[item.Index] : Pointers.CabinetMass;
    }

    /// <summary>The gross mass as a sum, compared with the limit that it exceeds.</summary>
    internal static string Text(RackSurvey survey, double limitKg)
    {
        var route = survey.Route!;
        var cabinet = survey.Cabinet.Source.MassKg ?? 0;
        return Invariant($"{cabinet:0.###} + {(route.IsLoaded ? Equipment() : "")}{route.PalletKg:0.###}")
            + Invariant($" = {route.KnownKg:0.###} > {limitKg:0.###}");

        string Equipment() => Invariant($"{Quantities.Round(route.RackKg - cabinet):0.###} + ");
    }
}
