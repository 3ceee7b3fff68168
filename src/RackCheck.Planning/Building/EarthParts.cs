using RackCheck.Model;
using RackCheck.Rules.Earthing;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Planning.Building;

/// <summary>Fits the earth bar and gives each item with an earth stud a lead of sufficient length and cross-sectional area.</summary>
internal static class EarthParts
{

    /// <summary>Fits the earth bar and the leads and reports missing ones. The rack is mounted and wired.</summary>
    public static void Join(BasketContext context, RackBuild build)
    {
        var survey = build.Wired;
        FitBar(context, build, survey.Earth);
        List<Need> needs = [];
        foreach (var stud in survey.Earth.Studs)
        {
            var strength = context.Rules.Limit<ConductorSize>(survey.Earth.IsEnclosed ? ConductorSize.ProtectedMm2 : ConductorSize.UnprotectedMm2);
            var section = ConductorNeed.Of(survey.Earth.FeedersOf(stud), strength, isMain: false).SectionMm2;
            var slackMm = context.Rules.Limit<LeadLength>(LeadLength.SlackMm);
            var length = EarthRoute.Of(survey.Cabinet, stud) is { } route ? (route.LengthMm + slackMm) / 1000 : 0;
            needs.Add(new Need(build.Items[stud.Index], Quantities.Round(length), Quantities.Round(section)));
        }

        needs.Sort((x, y) => y.LengthM.CompareTo(x.LengthM) is var length && length != 0 ? length
            : y.SectionMm2.CompareTo(x.SectionMm2) is var section && section != 0 ? section : Words.ById.Compare(x.Item.Id, y.Item.Id));
        GiveLeads(context, build, needs);
    }

    private static void FitBar(BasketContext context, RackBuild build, EarthSurvey earth)
    {
        var needed = earth.TerminalsNeeded;
        var desired = needed + (int)Math.Ceiling(context.Rules.Limit<BarTerminals>(BarTerminals.SpareTerminals));
        if (build.Cabinet.EarthBar is not { } own || own.Terminals < needed)
        {
            // The smallest bar with spare terminals, otherwise the largest.
            StockEntry[] bars = [.. build.Stock.LeftOf(ProductKind.EarthBar).OrderBy(e => e.Product.EarthBar!.Terminals ?? 0)];
            if ((Array.Find(bars, b => b.Product.EarthBar!.Terminals >= desired) ?? bars.LastOrDefault()) is { } bar
                && !(bar.Product.EarthBar!.Terminals <= build.Cabinet.EarthBar?.Terminals))
            {
                build.CabinetParts["/cabinet/earthBar"] = bar.Take();
                build.Cabinet = build.Cabinet with { EarthBar = bar.Product.EarthBar with { PartNumber = bar.Product.PartNumber } };
            }
        }

        var fitted = build.Cabinet.EarthBar;
        if (fitted is null ? !earth.NeedsBar(context.Rules.Limit<BarMissing>(BarMissing.HighLeakageMa)) : !(fitted.Terminals < needed))
        {
            return;
        }

        var offered = context.Offered(ProductKind.EarthBar).OrderBy(p => p.EarthBar!.Terminals ?? 0).ToArray();
        if ((Array.Find(offered, p => p.EarthBar!.Terminals >= desired) ?? Array.FindLast(offered, p => p.EarthBar!.Terminals >= needed)) is { } product)
        {
            build.MissingPieces.Add(new MissingPiece(
                Stage.Earth,
                product,
                1,
                new LineText(
                    LineWordings.EarthBar.With(
                        earth.Studs.Count switch { 0 => null, 1 => "one-lead", _ => "leads" },
                        earth.Studs.Count > 0 && earth.Parts.Count > 0 ? "comma" : null,
                        earth.Parts.Count switch { 0 => null, 1 => "one-part", _ => "parts" },
                        earth.Studs.Count + earth.Parts.Count > 0 ? "and" : null,
                        fitted is null ? "none" : null),
                    ("needed", needed), ("leads", earth.Studs.Count), ("parts", earth.Parts.Count), ("terminals", fitted?.Terminals ?? 0))));
        }
        else
        {
            build.Unmet.Add(new UnmetNeed
            {
                What = Invariant($"An earth bar with {needed} terminals"),
                Reason = "Earth leads and bonded cabinet parts terminate on it; no earth bar on offer has enough terminals.",
            });
        }
    }

    private static void GiveLeads(BasketContext context, RackBuild build, List<Need> needs)
    {
        List<(Need Need, Product Lead)> toAdd = [];
        foreach (var need in needs)
        {
            if (Best(need, build.Stock.LeftOf(ProductKind.EarthLead).Select(e => e.Product)) is { } own)
            {
                need.Item.Lead = build.Stock.Find(own.PartNumber)!.Take();
                need.Item.Item = need.Item.Item with { EarthLead = own.EarthLead };
            }
            else if (Best(need, context.Offered(ProductKind.EarthLead)) is { } offered)
            {
                toAdd.Add((need, offered));
            }
            else
            {
                build.Unmet.Add(new UnmetNeed
                {
                    What = $"An earth lead for {need.Item.Id}",
                    Reason = Invariant($"The route to the earth bar needs a lead of {need.LengthM:0.##} m and {need.SectionMm2:0.##} mm2; ")
                        + "no earth lead on offer suits.",
                });
            }
        }

        foreach (var alike in toAdd.GroupBy(l => l.Lead.EarthLead).OrderBy(g => g.First().Lead.PartNumber, StringComparer.Ordinal))
        {
            foreach (var (product, units) in Packs.Choose(context.Offered(ProductKind.EarthLead).Where(p => p.EarthLead == alike.Key), alike.Count()))
            {
                build.MissingPieces.Add(new MissingPiece(
                    Stage.Earth,
                    product,
                    units,
                    LineText.Of(
                        LineWordings.EarthLeads,
                        alike.Count() == 1,
                        ("items", LineText.Ids(alike.Select(a => a.Need.Item.Id))),
                        ("lengthM", alike.Max(a => a.Need.LengthM)))));
            }
        }
    }

    // The shortest lead that is long enough, then the smallest sufficient cross-sectional area.
    private static Product? Best(Need need, IEnumerable<Product> leads) => leads
        .Where(p => p.EarthLead is { LengthM: { } length, CrossSectionMm2: { } section } && length >= need.LengthM && section >= need.SectionMm2)
        .OrderBy(p => p.EarthLead!.LengthM)
        .ThenBy(p => p.EarthLead!.CrossSectionMm2)
        .ThenBy(Stock.PiecesOf)
        .FirstOrDefault();

    private sealed record Need(BuildItem Item, double LengthM, double SectionMm2);
}
