using CsCheck;
using RackCheck.Model;
using RackCheck.Rules.Tests.Cooling;
using RackCheck.Rules.Tests.Delivery;
using RackCheck.Rules.Tests.Earthing;
using RackCheck.Rules.Tests.Loads;
using RackCheck.Rules.Tests.Power;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Properties;

/// <summary>A random rack of one theme's generator.</summary>
/// <param name="Rack">The rack.</param>
/// <param name="IsOwn">Whether a rule is of that theme. Its errors can all be put right on such racks.</param>
internal sealed record ThemedRack(RackDescription Rack, Func<string, bool> IsOwn);

/// <summary>Random racks of every theme's generator, so that a property meets each rule's findings in more than one shape.</summary>
internal static class AnyRack
{
    private static readonly Gen<ThemedRack> Specials = Gen.OneOf(
        Of(RandomCoolRacks.Racks, "cooling."),
        Of(RouteRackTests.Racks, "cabling.", "service.", "delivery."),
        Of(LoadRackTests.Racks, "load."),
        Of(RandomEarthRacks.Racks, "earthing."),
        Of(OutletPropertyTests.Racks, OutletPropertyTests.Rules),
        Of(CordRacks.Small));

    /// <summary>Racks of all themes without a policy.</summary>
    public static Gen<ThemedRack> Themed => Gen.Frequency((6, Of(RackGenerator.AllRacks)), (10, Specials));

    /// <summary>The same racks by themselves.</summary>
    public static Gen<RackDescription> All => Themed.Select(t => t.Rack);

    /// <summary>Racks of all themes, those for layout and power with a policy and acceptances.</summary>
    public static Gen<RackDescription> WithPolicy => Gen.Frequency((6, RackGenerator.RacksWithPolicy), (10, Specials.Select(t => t.Rack)));

    private static Gen<ThemedRack> Of(Gen<RackDescription> racks, params string[] prefixes) =>
        racks.Select(rack => new ThemedRack(rack, rule => prefixes.Any(p => rule.StartsWith(p, StringComparison.Ordinal))));
}
