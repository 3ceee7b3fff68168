using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Assumed;
using RackCheck.Survey.Layout;

namespace RackCheck.Survey;

/// <summary>The rack on its delivery route: its size with and without pallet, and its mass.</summary>
public sealed class RouteSurvey
{
    private readonly CabinetFacts cabinet;
    private readonly MountedItem[] items;

    private RouteSurvey(Model.Delivery source, CabinetFacts cabinet, MountedItem[] items, MassSurvey mass)
    {
        (Source, this.cabinet, this.items) = (source, cabinet, items);
        PalletHeightMm = source.PalletHeightMm ?? DeliveryRoute.PalletHeightMm;
        PalletKg = source.PalletKg ?? (HasPallet ? DeliveryRoute.PalletKg : 0);
        (RackKg, MassIsKnown) = IsLoaded
            ? (mass.KnownTotalKg, mass.IsTotalKnown)
            : (Quantities.Round(cabinet.Source.MassKg ?? 0), cabinet.Source.MassKg is not null);
    }

    /// <summary>The delivery data of the description.</summary>
    public Model.Delivery Source { get; }

    /// <summary>Whether the equipment is in the rack on the route; so it counts where the description does not say.</summary>
    public bool IsLoaded => Source.Loaded != false;

    /// <summary>Height of the pallet, mm; 0 without one.</summary>
    public double PalletHeightMm { get; }

    /// <summary>Mass of the pallet, kg.</summary>
    public double PalletKg { get; }

    /// <summary>Whether the rack is delivered on a pallet.</summary>
    public bool HasPallet => PalletHeightMm > 0 || Source.PalletWidthMm > 0 || Source.PalletDepthMm > 0;

    /// <summary>The cabinet without pallet; a missing height counts as 0.</summary>
    public TransportSize Bare => BareOf(cabinet.WidthMm, cabinet.Depth.DepthMm, HeightMm);

    /// <summary>The cabinet on its pallet; with a missing height only the pallet counts.</summary>
    public TransportSize OnPallet => OnPalletOf(cabinet.WidthMm, cabinet.Depth.DepthMm, HeightMm);

    /// <summary>Whether the height of the cabinet is given.</summary>
    public bool HeightIsKnown => cabinet.Source.HeightMm is not null;

    /// <summary>Mass of the cabinet and, where it is delivered in it, of its equipment, kg, as far as given.</summary>
    public double RackKg { get; }

    /// <summary>Whether base and mounting space are higher than the height given, which is then not the one that has to pass.</summary>
    public bool IsHigherThanGiven => HeightIsKnown && Comparison.IsOver(cabinet.Heights.OverallMm, cabinet.Source.HeightMm!.Value);

    /// <summary>Gross mass on the route, kg, as far as given: the rack as it is delivered, with its pallet.</summary>
    public double KnownKg => Quantities.Round(RackKg + PalletKg);

    /// <summary>Whether all masses on the route are given.</summary>
    public bool MassIsKnown { get; }

    /// <summary>The delivery figures of the report.</summary>
    public DeliveryFigures Figures => MakeFigures();

    /// <summary>The delivery route of a rack, with the assumptions about its pallet.</summary>
    /// <param name="mass">Masses of cabinet and equipment.</param>
    /// <param name="assumptions">Receives the defaults; null if nobody reads them.</param>
    /// <returns>The route; null without delivery data.</returns>
    internal static RouteSurvey? Of(RackDescription description, CabinetFacts cabinet, MountedItem[] items, MassSurvey mass, List<AssumedValue>? assumptions)
    {
        if (description.Site?.Delivery is not { } source)
        {
            return null;
        }

        var route = new RouteSurvey(source, cabinet, items, mass);
        if (source.PalletHeightMm is null)
        {
            Assume("palletHeightMm", DeliveryRoute.PalletHeightMm, "mm", Bases.Practice);
        }

        if (route.HasPallet && source.PalletWidthMm is null)
        {
            Assume("palletWidthMm", cabinet.WidthMm, "mm", Bases.PalletSide);
        }

        if (route.HasPallet && source.PalletDepthMm is null)
        {
            Assume("palletDepthMm", cabinet.Depth.DepthMm, "mm", Bases.PalletSide);
        }

        if (route.HasPallet && source.PalletKg is null)
        {
            Assume("palletKg", DeliveryRoute.PalletKg, "kg", Bases.PalletMass);
        }

        return route;

        void Assume(string member, double value, string unit, WordedText basis) =>
            assumptions?.Add(new AssumedValue { Pointer = SitePointers.Delivery + "/" + member, Value = value, Unit = unit, Basis = basis });
    }

    /// <summary>The size of a body, with its sides in order of length. Unlike <see cref="TransportSize.Of"/> it accepts an unknown height.</summary>
    /// <returns>Its size.</returns>
    public static TransportSize BareOf(double widthMm, double depthMm, double heightMm) =>
        new(Math.Min(widthMm, depthMm), Math.Max(widthMm, depthMm), heightMm);

    /// <summary>The size of a cabinet on this pallet; a missing side of the pallet equals that of the cabinet.</summary>
    /// <returns>The size of both.</returns>
    public TransportSize OnPalletOf(double widthMm, double depthMm, double heightMm) =>
        BareOf(widthMm, depthMm, heightMm).OnPallet(BareOf(Source.PalletWidthMm ?? widthMm, Source.PalletDepthMm ?? depthMm, PalletHeightMm));

    /// <summary>The pointers of the missing masses.</summary>
    public IEnumerable<string> MissingMasses()
    {
        if (cabinet.Source.MassKg is null)
        {
            yield return Pointers.CabinetMass;
        }

        foreach (var item in IsLoaded ? items : [])
        {
            if (MassSurvey.IsToBeWeighed(item) && item.Item!.MassKg is null)
            {
                yield return Pointers.ItemMass[item.Index];
            }
        }
    }

    private double HeightMm => HeightIsKnown ? cabinet.Heights.OverallMm : 0;

    private DeliveryFigures MakeFigures()
    {
        var size = OnPallet;
        var shortAcross = cabinet.WidthMm <= cabinet.Depth.DepthMm;
        return new DeliveryFigures
        {
            GrossKg = MassIsKnown ? KnownKg : null,
            HeightOnPalletMm = HeightIsKnown ? Quantities.Round(size.HeightMm) : null,
            WidthMm = Quantities.Round(shortAcross ? size.ShortMm : size.LongMm),
            DepthMm = Quantities.Round(shortAcross ? size.LongMm : size.ShortMm),
        };
    }
}
