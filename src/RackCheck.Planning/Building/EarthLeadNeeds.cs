using RackCheck.Model;
using RackCheck.Rules.Earthing;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Planning.Building;

/// <summary>An earth lead that an item with an earth stud needs.</summary>
/// <param name="Item">The item.</param>
/// <param name="Route">Its route to the earth bar; null if the item is not placed.</param>
/// <param name="SlackMm">Slack, mm.</param>
/// <param name="LengthM">Minimum length with slack, m; 0 where the route is not known.</param>
/// <param name="SectionMm2">Minimum cross-sectional area, mm2.</param>
public sealed record EarthLeadNeed(MountedItem Item, EarthRoute? Route, double SlackMm, double LengthM, double SectionMm2);

/// <summary>The earth leads of a rack, by the limits of the rules that check them.</summary>
public static class EarthLeadNeeds
{
    /// <summary>A lead for each earth stud, the longest first, then the largest cross-sectional area.</summary>
    /// <param name="survey">The rack.</param>
    /// <param name="policy">The limits of the caller.</param>
    /// <returns>The leads.</returns>
    public static IReadOnlyList<EarthLeadNeed> Of(RackSurvey survey, Policy? policy)
    {
        var slackMm = new RuleChecks(policy).Limit<LeadLength>(LeadLength.SlackMm);
        List<EarthLeadNeed> needs = [];
        foreach (var stud in survey.Earth.Studs)
        {
            var section = ConductorNeed.Of(survey.Earth.FeedersOf(stud), StrengthMm2(survey, policy), isMain: false).SectionMm2;
            var route = EarthRoute.Of(survey.Cabinet, stud);
            var length = route is null ? 0 : (route.LengthMm + slackMm) / 1000;
            needs.Add(new EarthLeadNeed(stud, route, slackMm, Quantities.Round(length), Quantities.Round(section)));
        }

        needs.Sort((x, y) => y.LengthM.CompareTo(x.LengthM) is var length && length != 0 ? length
            : y.SectionMm2.CompareTo(x.SectionMm2) is var section && section != 0 ? section : IdOrder.Instance.Compare(x.Item.Id, y.Item.Id));
        return needs;
    }

    /// <summary>The minimum cross-sectional area of a protective conductor for strength, mm2.</summary>
    /// <param name="survey">The rack.</param>
    /// <param name="policy">The limits of the caller.</param>
    public static double StrengthMm2(RackSurvey survey, Policy? policy) =>
        new RuleChecks(policy).Limit<ConductorSize>(survey.Earth.IsEnclosed ? ConductorSize.ProtectedMm2 : ConductorSize.UnprotectedMm2);

    /// <summary>The shortest lead that is long enough, then the smallest sufficient cross-sectional area.</summary>
    /// <param name="lengthM">Minimum length, m.</param>
    /// <param name="sectionMm2">Minimum cross-sectional area, mm2.</param>
    /// <param name="leads">Leads to choose from, the preferred first.</param>
    /// <returns>The product; null if none suits.</returns>
    public static Product? Best(double lengthM, double sectionMm2, IEnumerable<Product> leads) => leads
        .Where(p => p.EarthLead is { LengthM: { } length, CrossSectionMm2: { } section } && length >= lengthM && section >= sectionMm2)
        .OrderBy(p => p.EarthLead!.LengthM)
        .ThenBy(p => p.EarthLead!.CrossSectionMm2)
        .ThenBy(Stock.PiecesOf)
        .FirstOrDefault();
}
