using RackCheck.Model;
using RackCheck.Survey.Assumed;
using RackCheck.Survey.Catalogue;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Limits;
using RackCheck.Survey.Power;

namespace RackCheck.Survey;

/// <summary>The facts of a rack, each calculated once. Rules read nothing else.</summary>
public sealed class RackSurvey
{
    private readonly List<AssumedValue>? assumptions;
    private readonly RackSurvey? wiredAlike;
    private readonly RackSurvey? builtAlike;
    private Occupancy? occupancy;
    private DepthSurvey? depth;
    private PowerTree? power;
    private EarthSurvey? earth;
    private MassSurvey? mass;
    private CableSurvey? cables;
    private RouteSurvey? route;
    private HeatSurvey? heat;
    private bool hasRoute;

    /// <summary>Maximum number of items in a request.</summary>
    public const int MostItems = 200;

    /// <summary>Calculates the facts.</summary>
    /// <param name="description">A validated description with a cabinet and all heights.</param>
    /// <exception cref="ArgumentException">The cabinet, its height, width or depth, or the height of an item is missing.</exception>
    public RackSurvey(RackDescription description)
        : this(ResolvedRack.Plain(description))
    {
    }

    /// <summary>Calculates the facts.</summary>
    /// <param name="rack">A rack with all required data.</param>
    /// <exception cref="ArgumentException">The cabinet, its height, width or depth, or the height of an item is missing.</exception>
    public RackSurvey(ResolvedRack rack)
        : this(rack, Filled(rack))
    {
        var list = assumptions!;
        _ = (Occupancy, Depth, Power, Earth, Mass, Cables, Route, Heat);
        if (Mass.NeedsHeight || Heat.NeedsSurface || Route is { IsHigherThanGiven: true }
            || Array.Exists(Items, i => i.Category is ItemCategory.KeyboardDrawer or ItemCategory.Display))
        {
            Cabinet.Heights.Assume(Cabinet.Source, list);
        }

        AssumeSetback(list);
        AssumeExtensions(list);
        list.Sort(static (x, y) => PointerOrder.Instance.Compare(x.Pointer, y.Pointer));
        Assumptions = list;
    }

    private static List<AssumedValue> Filled(ResolvedRack rack)
    {
        var list = new List<AssumedValue>((2 * rack.Description.Items.Count) + rack.Filled.Count);
        list.AddRange(rack.Filled);
        return list;
    }

    private RackSurvey(RackSurvey like, ResolvedRack rack, bool isWiredAlike)
    {
        (Description, Limits) = (rack.Description, like.Limits);
        (Cabinet, Items, Units) = (like.Cabinet, like.Items, like.Units);
        (builtAlike, wiredAlike) = (like, isWiredAlike ? like : null);
    }

    private RackSurvey(ResolvedRack rack, List<AssumedValue>? assumptions, RackSurvey? wiredAlike = null)
    {
        (Description, this.assumptions, this.wiredAlike) = (rack.Description, assumptions, wiredAlike);
        Limits = new LimitsInForce(Description.Policy);
        (Cabinet, Items, Units) = Resolver.Resolve(Description, assumptions);
    }

    /// <summary>
    /// A survey whose parts are calculated when they are read, and which lists no assumptions: for racks that are compared, and for a rule that is asked
    /// again with other values.
    /// </summary>
    /// <param name="rack">A rack with all required data.</param>
    /// <param name="wiredAlike">A survey of the rack with other values that move no cord, so that outlets are not searched again; null for none.</param>
    /// <returns>The survey.</returns>
    public static RackSurvey Lazily(ResolvedRack rack, RackSurvey? wiredAlike = null) => new(rack, null, wiredAlike);

    /// <summary>The same for a description without part numbers.</summary>
    /// <param name="description">A validated description with a cabinet and all heights.</param>
    /// <returns>The survey.</returns>
    /// <exception cref="ArgumentException">The cabinet, its height, width or depth, or the height of an item is missing.</exception>
    public static RackSurvey Lazily(RackDescription description) => Lazily(ResolvedRack.Plain(description));

    /// <summary>The same for a rack with the cabinet, the items and the cords of this one, and other supplies, PDUs, cooling or site.</summary>
    /// <param name="rack">The other rack.</param>
    /// <returns>Its survey, which shares what depends on cabinet and items alone.</returns>
    public RackSurvey Elsewhere(ResolvedRack rack) => new(this, rack, isWiredAlike: true);

    /// <summary>The same for a rack with the cabinet and the items of this one, in which some other sections differ. It lists no assumptions.</summary>
    /// <param name="rack">The other rack.</param>
    /// <param name="changed">The sections in which it differs.</param>
    /// <returns>Its survey, which shares what does not depend on them.</returns>
    public RackSurvey Changed(ResolvedRack rack, Sections changed)
    {
        if ((changed & (Sections.Cabinet | Sections.Items | Sections.Pdus | Sections.Other)) != 0)
        {
            return Lazily(rack);
        }

        var isWiredAlike = (changed & Sections.Power) == 0;
        var isFedAlike = isWiredAlike && (changed & (Sections.Faults | Sections.Cables)) == 0;
        var isReachedAlike = (changed & Sections.Access) == 0;
        return new RackSurvey(this, rack, isWiredAlike)
        {
            power = isFedAlike ? Power : null,
            earth = isFedAlike && (changed & Sections.Earthing) == 0 ? Earth : null,
            heat = (changed & (Sections.Cooling | Sections.Site)) == 0 ? Heat : null,
            route = isReachedAlike ? Route : null,
            hasRoute = isReachedAlike,
        };
    }

    /// <summary>The description.</summary>
    public RackDescription Description { get; }

    /// <summary>The limits from the policy that apply outside their own rule.</summary>
    public LimitsInForce Limits { get; }

    /// <summary>The cabinet.</summary>
    public CabinetFacts Cabinet { get; }

    /// <summary>All items, in the order of the request.</summary>
    public MountedItem[] Items { get; }

    /// <summary>The horizontal PDUs that are placed.</summary>
    public MountedItem[] Units { get; }

    /// <summary>Occupied U positions.</summary>
    public Occupancy Occupancy => occupancy ??= builtAlike?.Occupancy ?? new Occupancy(Cabinet, Items, Units);

    /// <summary>Depths.</summary>
    public DepthSurvey Depth => depth ??= builtAlike?.Depth ?? new DepthSurvey(Cabinet, Items);

    /// <summary>Supplies, PDUs and cords.</summary>
    public PowerTree Power => power ??= new PowerTree(Description, Items, Limits, assumptions, wiredAlike?.Power);

    /// <summary>Protective earth.</summary>
    public EarthSurvey Earth => earth ??= new EarthSurvey(Description, Cabinet, Items, Power, assumptions);

    /// <summary>Masses and stability.</summary>
    public MassSurvey Mass => mass ??= builtAlike?.Mass ?? new MassSurvey(Cabinet, Items, Depth.SetbackMm, assumptions);

    /// <summary>Cables.</summary>
    public CableSurvey Cables => cables ??= builtAlike?.Cables ?? new CableSurvey(Cabinet, Items, Depth);

    /// <summary>The delivery route; null without delivery data.</summary>
    public RouteSurvey? Route
    {
        get
        {
            if (!hasRoute)
            {
                (route, hasRoute) = (RouteSurvey.Of(Description, Cabinet, Items, Mass, assumptions), true);
            }

            return route;
        }
    }

    /// <summary>Heat and airflow.</summary>
    public HeatSurvey Heat => heat ??= new HeatSurvey(Description, Items, assumptions);

    /// <summary>Assumed values, by pointer.</summary>
    public IReadOnlyList<AssumedValue> Assumptions { get; } = [];

    /// <summary>Whether a request can have this many more items.</summary>
    /// <param name="more">Number of additional items.</param>
    public bool HasRoomFor(int more) => Items.Length + more <= MostItems;

    /// <summary>An item id that is not used yet.</summary>
    /// <param name="wanted">The preferred id.</param>
    /// <returns>The preferred id, or the id with the first free number.</returns>
    public string FreeItemId(string wanted) => Names.FreeId(wanted, Items.Select(i => i.Id));

    private void AssumeSetback(List<AssumedValue> list)
    {
        if (Cabinet.SetbackMm is null && Depth.SetbackMm is { } setback
            && (Mass.NeedsSetback || Cables.NeedsSetback || Array.Exists(Items, i => i.Item?.Support?.UsedExtended == true)))
        {
            list.Add(new AssumedValue
            {
                Pointer = Pointers.FrontSetback,
                Value = setback,
                Unit = "mm",
                Basis = Bases.MovableUprights,
            });
        }
    }

    private void AssumeExtensions(List<AssumedValue> list)
    {
        if (Description.Site?.AisleFrontMm is null)
        {
            return;
        }

        foreach (var item in Items)
        {
            if (item is { SupportStyle: SupportStyle.Slides, Face: Face.Front, BodyDepthMm: { } depth } && item.Item!.Support!.ExtensionMm is null
                && !list.Exists(a => a.Pointer == Pointers.ItemExtension[item.Index]))
            {
                list.Add(new AssumedValue
                {
                    Pointer = Pointers.ItemExtension[item.Index], Value = depth, Unit = "mm",
                    Basis = Bases.SlideLength,
                });
            }
        }
    }
}
