using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Remedies;

/// <summary>
/// Remedies for a delivery route that is too tight: no pallet, a smaller cabinet, separate equipment, lifting equipment; last another route.
/// </summary>
public static class DeliveryRemedies
{
    private static readonly WordedText WithoutPallet = new("remedy.off-pallet", "Deliver the rack off the pallet");
    private static readonly WordingChoice OnSite = new("remedy.mount-on-site", "Remove {items} for transport and mount [one:it|them] on site");
    private static readonly WordedText DeliverEmpty = new("remedy.deliver-empty", "Deliver the cabinet empty and mount the equipment on site");
    private static readonly MessageWording Equipment = new("remedy.lifting", "Use lifting equipment for {ratedKg:exact} kg");


    // Usual rating step of lifting equipment; common practice, no source.
    private const double LiftingStepKg = 100;

    /// <summary>Makes the rack pass: without its pallet, else in a smaller cabinet with or without it.</summary>
    /// <param name="survey">The facts, with a delivery route.</param>
    /// <param name="passes">Whether a size passes.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> Smaller(RackSurvey survey, Func<TransportSize, bool> passes)
    {
        var route = survey.Route!;
        var bare = route.HasPallet && passes(route.Bare);
        if (bare)
        {
            yield return new RemedyCandidate(WithoutPallet, OffPallet(survey.Description));
        }

        foreach (var (title, after, kind) in Lower(survey).Concat(Narrower(survey)).Concat(Shallower(survey)))
        {
            var cabinet = after.Cabinet!;
            var (width, depth, height) = (cabinet.WidthMm!.Value, cabinet.DepthMm!.Value, cabinet.HeightMm is null ? 0 : CabinetHeights.Of(cabinet).OverallMm);
            if (passes(route.OnPalletOf(width, depth, height)))
            {
                yield return new RemedyCandidate(title(null), after, kind);
            }
            else if (route.HasPallet && !bare && passes(RouteSurvey.BareOf(width, depth, height)))
            {
                yield return new RemedyCandidate(title("off-pallet"), OffPallet(after), kind);
            }
        }
    }

    /// <summary>The cabinet delivered empty; its equipment is mounted on site.</summary>
    /// <param name="survey">The facts, with a delivery route.</param>
    public static RemedyCandidate Empty(RackSurvey survey) => new(DeliverEmpty, survey.Description.EditDelivery(d => d with { Loaded = false }));

    /// <summary>The cabinet delivered empty, or else equipment removed for transport, heaviest first, until the rest is light enough.</summary>
    /// <param name="survey">The facts, with a delivery route.</param>
    /// <param name="limitKg">Maximum mass of the rack on the route, kg.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> Lighter(RackSurvey survey, double limitKg)
    {
        if (!survey.Route!.IsLoaded)
        {
            yield break;
        }

        yield return Empty(survey);

        // Items on which others depend stay: a shelf carries items, and a KVM switch has the ports of the hosts.
        var heavy = survey.Items.Where(i => i.Item!.MassKg > 0 && i.Category != ItemCategory.Shelf && i.Item.KvmPorts is not > 0)
            .OrderByDescending(i => i.Item!.MassKg).ThenBy(i => i.Id, StringComparer.Ordinal).ToArray();
        var left = survey.Route.KnownKg;
        for (var count = 1; count <= heavy.Length; count++)
        {
            left -= heavy[count - 1].Item!.MassKg!.Value;
            if (Quantities.Round(left) <= limitKg)
            {
                string[] ids = [.. heavy.Take(count).Select(i => i.Id).Order(StringComparer.Ordinal)];
                yield return new RemedyCandidate(
                    new(OnSite.With(count == 1 ? "one" : null), ("items", Names.Ids(ids))), survey.Description.WithoutItems(ids));
                break;
            }
        }
    }

    /// <summary>Lifting equipment for the mass.</summary>
    /// <param name="survey">The facts, with a delivery route.</param>
    public static RemedyCandidate Lifting(RackSurvey survey)
    {
        var rated = LiftingStepKg * Math.Max(1, Math.Ceiling(survey.Route!.KnownKg / LiftingStepKg));
        return new RemedyCandidate(new(Equipment, ("ratedKg", rated)), survey.Description.EditDelivery(d => d with { LiftingKg = rated }));
    }

    /// <summary>A delivery route without an opening, corner or lift.</summary>
    /// <param name="survey">The facts, with a delivery route.</param>
    /// <param name="title">Title, with the obstacle that it avoids.</param>
    /// <param name="change">Removes the obstacle from the route.</param>
    public static RemedyCandidate OtherRoute(RackSurvey survey, WordedText title, Func<Model.Delivery, Model.Delivery> change) =>
        new(title, survey.Description.EditDelivery(change));

    private static RackDescription OffPallet(RackDescription description) =>
        description.EditDelivery(static d => d with { PalletHeightMm = 0, PalletWidthMm = null, PalletDepthMm = null, PalletKg = null });

    private static IEnumerable<(Func<string?, WordedText> Title, RackDescription After, string Kind)> Narrower(RackSurvey survey) => CabinetSizes.WidthsMm
        .Where(w => w < survey.Cabinet.WidthMm).OrderDescending()
        .Select(w => (Titled(RemedyTitles.CabinetWidth, ("widthMm", w)), survey.Description.EditCabinet(c => c with { WidthMm = w }), nameof(Narrower)));

    private static IEnumerable<(Func<string?, WordedText> Title, RackDescription After, string Kind)> Shallower(RackSurvey survey) => CabinetSizes.DepthsMm
        .Where(d => d < survey.Cabinet.Depth.DepthMm).OrderDescending()
        .Select(d => (Titled(RemedyTitles.CabinetDepth, ("depthMm", d)), survey.Description.EditCabinet(c => c with { DepthMm = d }), nameof(Shallower)));

    // From the next lower cabinet down to the lowest: items above its roof move to another rack.
    private static IEnumerable<(Func<string?, WordedText> Title, RackDescription After, string Kind)> Lower(RackSurvey survey)
    {
        var now = survey.Cabinet.HeightU;
        if (survey.Cabinet.Source.HeightMm is null)
        {
            yield break;
        }

        var heightMm = survey.Cabinet.Heights.OverallMm;

        foreach (var roof in CabinetSizes.HeightsU.Where(u => u < now).OrderDescending())
        {
            var above = survey.Occupancy.ByPlace.Where(m => m.ClaimTop > roof).ToArray();
            var height = Quantities.Round(heightMm - RackGeometry.ApertureMm(now - roof));
            if (height < RackGeometry.ApertureMm(roof) || Array.Exists(above, m => m.Item is null))
            {
                // The outlets of a horizontal PDU are in use.
                continue;
            }

            string[] equipment = [.. above.Where(m => m.Category != ItemCategory.BlankingPanel).Select(m => m.Id).Order(StringComparer.Ordinal)];
            var after = Lowered(survey, roof, height).WithoutItems(above.Select(m => m.Id));
            yield return equipment.Length == 0
                ? (Titled(RemedyTitles.CabinetHeight, ("heightU", roof)), after, nameof(Lower))
                : (off => new(RemedyTitles.CabinetHeight.With("move", off), ("heightU", roof), ("items", Names.Ids(equipment))), after, nameof(Lower));
        }
    }

    private static Func<string?, WordedText> Titled(WordingChoice wordings, params (string Name, Scalar Value)[] data) => off => new(wordings.With(off), data);

    private static RackDescription Lowered(RackSurvey survey, int roof, double heightMm)
    {
        var builder = new RemedyBuilder(survey).SetCabinet(c => c with { HeightU = roof, HeightMm = heightMm });
        if (survey.Cabinet.TopDown)
        {
            foreach (var other in survey.Occupancy.ByPlace)
            {
                builder.Place(other, other.Bottom!.Value, roof);
            }
        }

        return builder.After;
    }

}
