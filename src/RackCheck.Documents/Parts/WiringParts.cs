using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Planning.Building;
using RackCheck.Rules.Earthing;
using RackCheck.Rules.Power;
using RackCheck.Rules.Service;
using RackCheck.Survey;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Documents.Parts;

/// <summary>Cords, earth leads and KVM leads.</summary>
internal static class WiringParts
{
    // What a workshop fits where nothing larger is needed: to the earth bar, and to doors and panels. Common practice, no source.
    private const double UsualMainMm2 = 16;
    private const double UsualBondMm2 = 6;

    private const string LeadsDescribed = "From earth stud to earth bar, as described.";
    private const string LeadsByRules = "From earth stud to earth bar; length and area by the rules.";
    private const string LeadsTooSmall = "From earth stud to earth bar; the lead described is too short or too thin, so length and area are by the rules.";

    /// <summary>Adds the lines.</summary>
    public static void List(PartsContext context)
    {
        Cords(context);
        LeadsOfPlugs(context);
        EarthLeads(context);
        Bonds(context);
        KvmLeads(context);
    }

    /// <summary>A length without a product on offer, m: rounded up to half metres; null if the route is not known.</summary>
    /// <param name="lengthM">Length of the route, m; 0 if it is not known.</param>
    public static double? Rounded(double lengthM) => lengthM > 0 ? Math.Ceiling(2 * lengthM) / 2 : null;

    private static void Cords(PartsContext context)
    {
        var offered = context.Offered(ProductKind.Cord).ToArray();
        var needs = CordNeeds.Of(context.Survey, _ => false).Select(n => (
            Need: n,
            Included: context.ProductOf(n.Cord.Item)?.CordIncluded == true,
            Product: CordNeeds.Best(n.Inlet, n.Cord.Code, n.LengthM, offered))).ToArray();
        foreach (var alike in needs.GroupBy(n => (n.Need.Cord.Code, n.Included, LengthM: n.Product?.Cord!.LengthM ?? Rounded(n.Need.LengthM)))
            .OrderBy(g => g.Key.Code).ThenBy(g => g.Key.LengthM).ThenBy(g => g.Key.Included))
        {
            var (code, included, length) = alike.Key;
            var longest = alike.Max(n => n.Need.LengthM);
            var socket = PlugFit.SocketFor(code);
            context.Add(
                new PartLine
                {
                    Kind = PartKind.Cord,
                    Description = CordName(code, socket),
                    Quantity = alike.Count(),
                    Unit = PartUnit.Piece,
                    Why = (included ? "In the box of the equipment. " : "") + (longest > 0
                        ? Invariant($"From the assigned outlets; the longest route takes {longest:0.###} m with slack.")
                        : "From the assigned outlets; a length of the route is missing."),
                    Items = PartsContext.Ids(alike.Select(n => n.Need.Cord.Item)),
                    Pdus = [.. alike.Select(n => n.Need.Cord.Group!.Unit.Id).Distinct().Order(IdOrder.Instance)],
                    Included = included,
                    Data = new PartData { Plug = code, Connector = socket, LengthM = included ? null : length, RequiredLengthM = Known(longest) },
                },
                alike.First().Product is { } best ? offered.Where(p => p.Cord == best.Cord) : []);
        }

        foreach (var alike in context.Survey.Power.Cords.Where(c => PlugFit.IsInlet(c.Code) && c.Group is null).GroupBy(c => c.Code).OrderBy(g => g.Key))
        {
            context.Add(new PartLine
            {
                Kind = PartKind.Cord, Description = CordName(alike.Key, PlugFit.SocketFor(alike.Key)), Quantity = alike.Count(), Unit = PartUnit.Piece,
                Why = "These inlets have no outlet, so the length is not known.", Rule = PartsContext.Rule<PlugMismatch>(),
                Items = PartsContext.Ids(alike.Select(c => c.Item)), Included = false,
                Data = new PartData { Plug = alike.Key, Connector = PlugFit.SocketFor(alike.Key) },
            });
        }
    }

    private static void LeadsOfPlugs(PartsContext context)
    {
        foreach (var alike in context.Survey.Power.Cords.Where(c => !PlugFit.IsInlet(c.Code) && c.Code != ConnectorCode.Hardwired)
            .GroupBy(c => c.Code).OrderBy(g => g.Key))
        {
            context.Add(new PartLine
            {
                Kind = PartKind.Cord, Description = $"Mains lead with plug {PlugFit.Of(alike.Key).Code}", Quantity = alike.Count(), Unit = PartUnit.Piece,
                Why = "These leads are fixed to the equipment.", Items = PartsContext.Ids(alike.Select(c => c.Item)), Included = true,
                Data = new PartData { Plug = alike.Key },
            });
        }
    }

    private static void EarthLeads(PartsContext context)
    {
        var offered = context.Offered(ProductKind.EarthLead).ToArray();
        var leads = EarthLeadNeeds.Of(context.Survey, context.Rack.Policy).Select(n =>
        {
            var (given, lead) = (n.Item.Item!.EarthLead, LeadOf(n));
            var product = EarthLeadNeeds.Best(lead.LengthM, lead.SectionMm2, offered);
            var isTooSmall = (!lead.IsLengthGiven && given?.LengthM is not null) || (!lead.IsSectionGiven && given?.CrossSectionMm2 is not null);
            return (Need: n, Why: given is null ? LeadsByRules : isTooSmall ? LeadsTooSmall : LeadsDescribed, Product: product,
                LengthM: product?.EarthLead!.LengthM ?? (lead.IsLengthGiven ? lead.LengthM : Rounded(lead.LengthM)),
                SectionMm2: product?.EarthLead!.CrossSectionMm2 ?? (lead.IsSectionGiven ? lead.SectionMm2 : Nominal(lead.SectionMm2)));
        });
        foreach (var alike in leads.GroupBy(l => (l.SectionMm2, l.LengthM, l.Why)).OrderBy(g => g.Key.SectionMm2).ThenBy(g => g.Key.LengthM)
            .ThenBy(g => g.Key.Why, StringComparer.Ordinal))
        {
            var longest = alike.MaxBy(l => l.Need.LengthM).Need;
            context.Add(
                new PartLine
                {
                    Kind = PartKind.EarthLead,
                    Description = Invariant($"Earth lead, {alike.Key.SectionMm2:0.###} mm2"),
                    Quantity = alike.Count(),
                    Unit = PartUnit.Piece,
                    Why = alike.Key.Why,
                    Rule = PartsContext.Rule<LeadLength>(),
                    Calculation = longest.Route is { } route
                        ? Invariant($"({route.Sum} + {longest.SlackMm:0.###}) / 1000 = {longest.LengthM:0.###}") : null,
                    Items = PartsContext.Ids(alike.Select(l => l.Need.Item)),
                    Included = false,
                    Data = new PartData
                    {
                        CrossSectionMm2 = alike.Key.SectionMm2, LengthM = alike.Key.LengthM, RequiredLengthM = Known(longest.LengthM),
                    },
                },
                alike.First().Product is { } best ? offered.Where(p => p.EarthLead == best.EarthLead) : []);
        }
    }

    /// <summary>Area of the main protective conductor, mm2: as described where the rules find that enough, else by the rules and common practice.</summary>
    public static double MainMm2(RackSurvey survey) =>
        survey.Earth.MainMm2 is { } given && !IsMainTooSmall(survey) ? given : Nominal(Math.Max(UsualMainMm2, LeastMainMm2(survey)));

    private static bool IsMainTooSmall(RackSurvey survey) => survey.Earth.MainMm2 is { } given && Comparison.IsOver(LeastMainMm2(survey), given);

    private static double LeastMainMm2(RackSurvey survey) =>
        ConductorNeed.Of(survey.Power.Supplies, EarthLeadNeeds.StrengthMm2(survey, survey.Description.Policy), isMain: true).SectionMm2;

    /// <summary>The lead of an earth stud: as described where the rules find that enough, else by the rules.</summary>
    /// <param name="need">What the rules ask for.</param>
    /// <returns>Length, m (0 where it is not known), and cross-sectional area, mm2, and whether each is the one described.</returns>
    public static (double LengthM, bool IsLengthGiven, double SectionMm2, bool IsSectionGiven) LeadOf(EarthLeadNeed need)
    {
        var (length, isLengthGiven) = Enough(need.Item.Item!.EarthLead?.LengthM, need.LengthM);
        var (section, isSectionGiven) = Enough(need.Item.Item.EarthLead?.CrossSectionMm2, need.SectionMm2);
        return (length, isLengthGiven, section, isSectionGiven);

        static (double Value, bool IsGiven) Enough(double? given, double needed) =>
            given is { } value && !Comparison.IsOver(needed, value) ? (value, true) : (needed, false);
    }

    // Conductors to the parts of the cabinet, and the main one. Their lengths are those of the maker and of the building.
    private static void Bonds(PartsContext context)
    {
        var (survey, earth) = (context.Survey, context.Survey.Earth);
        if (!earth.IsElectrical)
        {
            return;
        }

        var least = EarthLeadNeeds.StrengthMm2(survey, context.Rack.Policy);
        var section = Nominal(Math.Max(UsualBondMm2, least));
        EarthPart[] parts = [.. earth.Parts.Where(p => p.IsBonded != true)];
        if (parts.Length > 0)
        {
            context.Add(new PartLine
            {
                Kind = PartKind.EarthLead, Description = Invariant($"Bonding conductor, {section:0.###} mm2"), Quantity = parts.Length, Unit = PartUnit.Piece,
                Why = $"To {Names.And([.. parts.Select(p => p.Name)])}, not stated as bonded. At least "
                    + Invariant($"{UsualBondMm2} mm2, common practice; the length is that of the cabinet maker."),
                Rule = PartsContext.Rule<UnbondedPart>(), Included = false, Data = new PartData { CrossSectionMm2 = section },
            });
        }

        var main = MainMm2(survey);
        context.Add(new PartLine
        {
            Kind = PartKind.EarthLead, Description = Invariant($"Main protective conductor, {main:0.###} mm2"), Quantity = 1, Unit = PartUnit.Piece,
            Why = (IsMainTooSmall(survey) ? Invariant($"The {earth.MainMm2:0.###} mm2 described are too small; area by the rules")
                : earth.MainMm2 is null ? "Area by the rules" : "Area as described")
                + (earth.MainMm2 is null || IsMainTooSmall(survey) ? Invariant($", at least {UsualMainMm2} mm2, common practice") : "")
                + "; the length is that of the building's earth.",
            Rule = PartsContext.Rule<ConductorSize>(), Included = false, Data = new PartData { CrossSectionMm2 = main },
        });
        if (earth.Bar is { } bar)
        {
            context.Add(new PartLine
            {
                Kind = PartKind.EarthBar, Description = "Earth bar", Quantity = 1, Unit = PartUnit.Piece,
                Why = Invariant($"As described; {earth.TerminalsNeeded} terminals are needed."), Rule = PartsContext.Rule<BarTerminals>(),
                Calculation = Invariant($"{earth.Studs.Count} + {earth.Parts.Count} + 1 = {earth.TerminalsNeeded}"),
                PartNumber = bar.PartNumber, OrderQuantity = bar.PartNumber is null ? null : 1, Included = bar.PartNumber is null,
                Data = new PartData { CrossSectionMm2 = bar.CrossSectionMm2 },
            });
        }
    }

    private static void KvmLeads(PartsContext context)
    {
        var offered = context.Offered(ProductKind.KvmLead).ToArray();
        var needs = KvmLeadNeeds.Of(context.Survey);
        foreach (var alike in needs.Select(n => (Need: n, Product: KvmLeadNeeds.Best(n.LengthM, offered)))
            .GroupBy(n => n.Product?.KvmLead!.LengthM ?? Rounded(n.Need.LengthM)).OrderBy(g => g.Key))
        {
            var longest = alike.Max(n => n.Need.LengthM);
            context.Add(
                new PartLine
                {
                    Kind = PartKind.KvmLead, Description = "KVM lead", Quantity = alike.Count(), Unit = PartUnit.Piece,
                    Why = longest > 0 ? Invariant($"From each host to the nearest free port; the longest route takes {longest:0.###} m with slack.")
                        : "From each host to the nearest free port; a length of the route is missing.",
                    Rule = PartsContext.Rule<KvmPorts>(),
                    Items = PartsContext.Ids(alike.SelectMany(n => new[] { n.Need.Host, n.Need.Switch })), Included = false,
                    Data = new PartData { LengthM = alike.Key, RequiredLengthM = Known(longest) },
                },
                alike.First().Product is { } best ? offered.Where(p => p.KvmLead == best.KvmLead) : []);
        }

        var hosts = context.Survey.Items.Where(KvmLeadNeeds.IsHost).Except(needs.Select(n => n.Host)).ToArray();
        if (hosts.Length > 0)
        {
            context.Notes.Add($"No KVM lead for {Names.List(PartsContext.Ids(hosts))}: no port is free.");
        }
    }

    private static double Nominal(double sectionMm2) => EarthConductors.NextSectionMm2(Quantities.Round(sectionMm2)) ?? Quantities.Round(sectionMm2);

    private static double? Known(double lengthM) => lengthM > 0 ? lengthM : null;

    private static string CordName(ConnectorCode plug, ConnectorCode socket) => $"Mains cord {PlugFit.Of(plug).Code} to {PlugFit.Of(socket).Code}";
}
