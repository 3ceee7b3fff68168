using RackCheck.Model;
using RackCheck.Survey.Catalogue;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Limits;
using RackCheck.Survey.Power;

namespace RackCheck.Survey;

/// <summary>The facts of a rack, each calculated once. Rules read nothing else.</summary>
public sealed class RackSurvey
{
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
    {
        var description = rack.Description;
        Description = description;
        var assumptions = new List<Assumption>((2 * description.Items.Count) + rack.Filled.Count);
        assumptions.AddRange(rack.Filled);
        (Cabinet, Items, Units) = Resolver.Resolve(description, assumptions);
        Occupancy = new Occupancy(Cabinet, Items, Units);
        Depth = new DepthSurvey(Cabinet, Items);
        Limits = new LimitsInForce(description.Policy);
        Power = new PowerTree(description, Items, Limits, assumptions);
        Earth = new EarthSurvey(description, Cabinet, Items, Power, assumptions);
        Mass = new MassSurvey(Cabinet, Items, Depth.SetbackMm, assumptions);
        Cables = new CableSurvey(Cabinet, Items, Depth);
        Route = RouteSurvey.Of(description, Cabinet, Items, Mass, assumptions);
        Heat = new HeatSurvey(description, Items, assumptions);
        if (Mass.NeedsHeight || Heat.NeedsSurface || Array.Exists(Items, i => i.Category is ItemCategory.KeyboardDrawer or ItemCategory.Display))
        {
            Cabinet.Heights.Assume(Cabinet.Source, assumptions);
        }

        AssumeSetback(assumptions);
        AssumeExtensions(assumptions);
        assumptions.Sort((x, y) => PointerOrder.Instance.Compare(x.Pointer, y.Pointer));
        Assumptions = assumptions;
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
    public Occupancy Occupancy { get; }

    /// <summary>Depths.</summary>
    public DepthSurvey Depth { get; }

    /// <summary>Supplies, PDUs and cords.</summary>
    public PowerTree Power { get; }

    /// <summary>Protective earth.</summary>
    public EarthSurvey Earth { get; }

    /// <summary>Masses and stability.</summary>
    public MassSurvey Mass { get; }

    /// <summary>Cables.</summary>
    public CableSurvey Cables { get; }

    /// <summary>The delivery route; null without delivery data.</summary>
    public RouteSurvey? Route { get; }

    /// <summary>Heat and airflow.</summary>
    public HeatSurvey Heat { get; }

    /// <summary>Assumed values, by pointer.</summary>
    public IReadOnlyList<Assumption> Assumptions { get; }

    /// <summary>Whether a request can have this many more items.</summary>
    /// <param name="more">Number of additional items.</param>
    public bool HasRoomFor(int more) => Items.Length + more <= MostItems;

    /// <summary>An item id that is not used yet.</summary>
    /// <param name="wanted">The preferred id.</param>
    /// <returns>The preferred id, or the id with the first free number.</returns>
    public string FreeItemId(string wanted) => Names.FreeId(wanted, Items.Select(i => i.Id));

    private void AssumeSetback(List<Assumption> assumptions)
    {
        if (Cabinet.SetbackMm is null && Depth.SetbackMm is { } setback
            && (Mass.NeedsSetback || Cables.NeedsSetback || Array.Exists(Items, i => i.Item?.Support?.UsedExtended == true)))
        {
            assumptions.Add(new Assumption
            {
                Pointer = Pointers.FrontSetback,
                Value = setback,
                Unit = "mm",
                Basis = "the uprights are movable: the minimum setback on their hole pitch that suits every item",
            });
        }
    }

    private void AssumeExtensions(List<Assumption> assumptions)
    {
        if (Description.Site?.AisleFrontMm is null)
        {
            return;
        }

        foreach (var item in Items)
        {
            if (item is { SupportStyle: SupportStyle.Slides, Face: Face.Front, BodyDepthMm: { } depth } && item.Item!.Support!.ExtensionMm is null
                && !assumptions.Exists(a => a.Pointer == Pointers.ItemExtension[item.Index]))
            {
                assumptions.Add(new Assumption
                {
                    Pointer = Pointers.ItemExtension[item.Index], Value = depth, Unit = "mm",
                    Basis = "slides extend the body by its full depth; common practice, no source",
                });
            }
        }
    }
}
