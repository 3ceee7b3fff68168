using CsCheck;
using RackCheck.Model;
using RackCheck.Rules.Tests.Cooling;
using RackCheck.Rules.Tests.Delivery;
using RackCheck.Rules.Tests.Earthing;
using RackCheck.Rules.Tests.Loads;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Guards;

/// <summary>Random racks of every theme's generator, so that a guard meets each rule's findings in more than one shape.</summary>
internal static class AnyRack
{
    public static Gen<RackDescription> All =>
        Gen.OneOf(RackGenerator.Racks, WiredRacks.All, CordRacks.Small, CoolRackTests.Racks, RouteRackTests.Racks, LoadRackTests.Racks, EarthRackTests.Racks);
}
