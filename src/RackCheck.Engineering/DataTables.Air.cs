namespace RackCheck.Engineering;

/// <content>Air, cooling and degrees of protection.</content>
public static partial class DataTables
{
    private static DataTable AirTable => new(
        "air",
        "Dry air by altitude and temperature, and the airflow per watt for a rise of 1 K",
        [new("altitude", "m"), new("temperature", "C"), new("pressure", "Pa"), new("density", "kg/m3"), new("flow", "m3/h per W/K")],
        [
            .. from altitude in new double[] { 0, 500, 1000, 1500, 2000, 3000 }
               from temperature in new double[] { 20, 25, 30, 35, 40 }
               let density = Air.DensityKgM3(temperature, altitude)
               let flow = Air.FlowM3h(1, 1, density)
               select Row(altitude, temperature, Math.Round(Air.PressurePa(altitude)), Math.Round(density, 4), Math.Round(flow, 3)),
        ],
        [Sources.Iso2533, Sources.AshraeFundamentals]);

    private static DataTable EnclosureSurfaces => new(
        "enclosure-surfaces",
        "Effective surface of closed cabinets: factors of the faces, and the surface of a cabinet of 2000 x 600 x 500 mm",
        [new("placement"), new("front"), new("rear"), new("left"), new("right"), new("top"), new("example", "m2")],
        [
            .. from standing in Enclosures.Standings
               let factors = Enclosures.FactorsOf(standing)
               let example = Math.Round(Enclosures.SurfaceM2(standing, 2000, 600, 500), 3)
               select Row(NameOf(standing), factors.Front, factors.Rear, factors.Left, factors.Right, factors.Top, example),
        ],
        [Sources.Iec60890]);

    private static DataTable InletClasses => new(
        "inlet-classes",
        "Permitted inlet air of equipment, by class",
        [
            new("class"),
            new("least", "C"),
            new("greatest", "C"),
            new("greatestDewPoint", "C"),
            new("greatestHumidity", "%"),
            new("deratingFrom", "m"),
            new("derating", "m/K"),
            new("recommendedLeast", "C"),
            new("recommendedGreatest", "C"),
        ],
        [
            .. from c in InletLimits.Classes
               let derating = InletLimits.DeratingFromM
               select Row(
                   c.Name,
                   c.LeastC,
                   c.GreatestC,
                   c.GreatestDewPointC,
                   c.GreatestHumidityPercent,
                   derating,
                   c.MetresPerK,
                   InletLimits.RecommendedLeastC,
                   InletLimits.RecommendedGreatestC),
        ],
        [Sources.AshraeTc99]);

    private static DataTable IpOpenings => new(
        "ip-openings",
        "IP code: first digits determined by openings",
        [new("digit"), new("openingUnder", "mm"), new("keepsOut")],
        [.. IpCodes.Openings.Select(o => Row(o.Digit, o.HoleUnderMm, o.KeepsOut))],
        [Sources.Iec60529]);

    private static DataTable PlateLosses => new(
        "plate-losses",
        "Loss coefficient of thin perforated plates for the approach velocity, and pressure drop at 1 m/s and 1.2 kg/m3; accuracy +-30 % for cabinet doors",
        [new("open", "%"), new("zeta"), new("pressure", "Pa")],
        [
            .. from percent in Enumerable.Range(4, 15).Select(n => 5 * n)
               let zeta = Openings.PlateZeta(percent / 100.0)
               select Row(percent, Math.Round(zeta, 4), Math.Round(Openings.VelocityLossPa(zeta, Fans.CurveDensityKgM3, 1), 3)),
        ],
        [Sources.Idelchik, Sources.DoorLossPractice]);

    private static string NameOf(CabinetStanding standing) => standing switch
    {
        CabinetStanding.Free => "free",
        CabinetStanding.Wall => "wall",
        CabinetStanding.RowEnd => "row-end",
        CabinetStanding.RowEndWall => "row-end-wall",
        CabinetStanding.RowMiddle => "row-middle",
        CabinetStanding.RowMiddleWall => "row-middle-wall",
        _ => "row-middle-wall-covered",
    };
}
