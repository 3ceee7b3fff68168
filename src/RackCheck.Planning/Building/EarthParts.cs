using RackCheck.Model;
using RackCheck.Rules.Earthing;
using RackCheck.Survey;

namespace RackCheck.Planning.Building;

/// <summary>Fits the earth bar and gives each item with an earth stud a lead of sufficient length and cross-sectional area.</summary>
internal static class EarthParts
{
    /// <summary>Fits the earth bar and the leads and reports missing ones. The rack is mounted and wired.</summary>
    public static void Join(BasketContext context, RackBuild build)
    {
        var survey = build.Wired;
        FitBar(context, build, survey.Earth);
        GiveLeads(context, build, EarthLeadNeeds.Of(survey, context.Request.Policy));
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
                new WordedText(
                    LineWordings.EarthBar.With(NameOf(earth.Studs.Count, earth.Parts.Count), fitted is null ? "none" : null),
                    ("needed", needed), ("leads", earth.Studs.Count), ("parts", earth.Parts.Count), ("terminals", fitted?.Terminals ?? 0))));
        }
        else
        {
            build.Unmet.Add(new OpenNeed(new(LineWordings.EarthBarNeed, ("terminals", needed)), LineWordings.NoEarthBar));
        }
    }

    private static string? NameOf(int leads, int parts) => (leads, parts) switch
    {
        (0, 0) => null,
        (0, _) => parts == 1 ? "part" : "parts",
        (_, 0) => leads == 1 ? "lead" : "leads",
        _ => $"{(leads == 1 ? "lead" : "leads")}-{(parts == 1 ? "part" : "parts")}",
    };

    private static void GiveLeads(BasketContext context, RackBuild build, IReadOnlyList<EarthLeadNeed> needs)
    {
        List<(EarthLeadNeed Need, Product Lead)> toAdd = [];

        // An item that finds no position has no way to the bar.
        foreach (var need in needs.Where(n => build.Items[n.Item.Index].Item is not { Position: null, OnShelf: null }))
        {
            if (EarthLeadNeeds.Best(need.LengthM, need.SectionMm2, build.Stock.LeftOf(ProductKind.EarthLead).Select(e => e.Product)) is { } own)
            {
                var item = build.Items[need.Item.Index];
                item.Lead = build.Stock.Find(own.PartNumber)!.Take();
                item.Item = item.Item with { EarthLead = own.EarthLead };
            }
            else if (EarthLeadNeeds.Best(need.LengthM, need.SectionMm2, context.Offered(ProductKind.EarthLead)) is { } offered)
            {
                toAdd.Add((need, offered));
            }
            else
            {
                build.Unmet.Add(new OpenNeed(
                    new(LineWordings.EarthLeadNeed, ("item", need.Item.Id)),
                    new(LineWordings.NoEarthLead, ("lengthM", Quantities.RoundTo(need.LengthM, 2)), ("sectionMm2", Quantities.RoundTo(need.SectionMm2, 2)))));
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
                    LineWordings.Of(
                        LineWordings.EarthLeads,
                        alike.Count() == 1,
                        ("items", LineWordings.Ids(alike.Select(a => a.Need.Item.Id))),
                        ("lengthM", alike.Max(a => a.Need.LengthM)))));
            }
        }
    }
}
