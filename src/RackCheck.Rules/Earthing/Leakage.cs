using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Model.Converters;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Earthing;

/// <summary>Finds supplies and PDUs with high protective conductor current and insufficient earthing.</summary>
public sealed class Leakage : Rule
{
    /// <summary>Protective conductor current above which a secured connection is required.</summary>
    public static RuleLimit LeakageMa { get; } = new(
        "leakageMa", "protective conductor current above which a secured connection is required", EarthConductors.SecuredFromMa, "mA", 0.1, 1000,
        Stricter.Lower);

    /// <summary>Protective conductor current above which high-integrity earthing is required.</summary>
    public static RuleLimit HighLeakageMa { get; } = new(
        "highLeakageMa", "protective conductor current above which high-integrity earthing is required", EarthConductors.HighIntegrityFromMa, "mA", 0.1, 1000,
        Stricter.Lower);

    private static readonly WordingChoice Defect = new(
        "earthing.leakage",
        "The protective conductor of {kind} {id} carries {leakageMa} mA; above {limitMa} mA it needs [both:a second or larger earth "
            + "conductor and an industrial plug or hard wiring; {connector} is neither.|connection:an industrial plug or a hard-wired "
            + "connection; {connector} is neither.|a second or larger earth conductor.]");

    private static readonly MissingData Missing = new(
        "earthing.leakage.missing",
        "The leakage requires a secured connection, but the plug or socket is missing.");

    private static readonly MissingData MissingCable = new(
        "earthing.leakage.missing-cable",
        "The leakage requires high-integrity earthing, but the cross-sectional area of the supply cable is missing.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "earthing.leakage",
        Title = "High leakage with insufficient earthing",
        Severity = Severity.Error,
        Safety = true,
        What =
            "Finds PDUs and supplies with a protective conductor current above 3.5 mA through a plug that is not industrial and without a hard-wired "
            + "connection, or above 10 mA without high-integrity earthing: a main earth conductor of 10 mm2, a second earth through an earth bar, a supply "
            + "cable with an earth conductor of 10 mm2, or an IEC 60309 connection with one of 2.5 mm2 up to 16 A and 4 mm2 above. Earthing that is not given "
            + "counts as absent.",
        Why = "When that single protective conductor breaks, the whole leakage current flows through anyone who touches the equipment.",
        Formula = "sum of leakageMa over the connected cords; above leakageMa a secured connection and a label, above highLeakageMa high-integrity earthing",
        Sources = [Sources.Bs7671ProtectiveCurrent],
        Limits = [LeakageMa, HighLeakageMa],
        Notes =
        [
            "For the UK and the EU. In North America a current above 3.5 mA needs the warning label alone.",
            "The earth conductor of a supply cable is taken as large as its line conductors up to 16 mm2 (IEC 60364-5-54 table 54.2; value from memory), and "
                + "that of the cord of a PDU as large as that of the cable. A flat cable with a reduced earth conductor is stated by that one. Behind a UPS "
                + "the cable of the supply does not count.",
        ],
        Needs =
        [
            "/items/*/power/leakageMa", "/items/*/power/plugs", "/pdus/*/plug", "/supplies/*/socket", "/supplies/*/cable/crossSectionMm2",
            "/connections", "/earthing/mainConductorMm2",
            "/earthing/secondaryEarth", "/cabinet/earthBar", "/site/region", "/items/*/power/ratedW",
        ],
        SharesWordingsOf = [typeof(MissingLeakageData)],
        Remedies =
        [
            "Connect through industrial plugs and sockets, or hard-wire the connection, and fit a warning label.",
            "Run a main earth conductor of 10 mm2 to an earth bar.", "Use a cable with a larger earth conductor behind an IEC 60309 connection.",
            "Add a supply with a PDU.", "Move equipment to another rack.",
        ],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var tree = context.Survey.Power;
        if (tree.IsNorthAmerica)
        {
            // There the label of the installation sheet is all that is asked for.
            return;
        }

        MissingLeakageData.ReportUnits(context);
        MissingLeakageData.Report(context, static _ => true);
        foreach (var unit in tree.Units)
        {
            Judge(context, new Node("PDU", unit.Id, Pointers.Pdu[unit.Index], "plug", unit.LeakageMa, unit.Source.Plug, unit.Supply, unit));
        }

        foreach (var supply in tree.Supplies)
        {
            Judge(context, new Node("supply", supply.Id, Pointers.Supply[supply.Index], "socket", supply.LeakageMa, supply.Source.Socket, supply, null));
        }
    }

    private static void Judge(RuleContext context, Node node)
    {
        var earth = context.Survey.Earth;
        var (secured, high) = (context.Limit(LeakageMa), context.Limit(HighLeakageMa));
        var isOver = Comparison.IsOver(node.LeakageMa, secured);
        var isEnough = Comparison.IsOver(node.LeakageMa, high) ? earth.IsHighIntegrityAt(node.Supply, node.Unit) : true;
        if (node.Connector is null && (isOver || isEnough is null))
        {
            context.ReportMissing($"{node.Pointer}/{node.Member}", Missing);
        }

        if (isEnough is null && node.Supply.Source.Cable?.CrossSectionMm2 is null)
        {
            context.ReportMissing($"{Pointers.Supply[node.Supply.Index]}/cable/crossSectionMm2", MissingCable);
        }

        var isLoose = isOver && node.Connector is { } code && !PlugFit.Of(code).Secured;
        var isWeak = isEnough == false;
        if (!isLoose && !isWeak)
        {
            return;
        }

        var limit = isWeak ? high : secured;
        context.Report(new FindingDraft
        {
            Message = Defect.With((isLoose, isWeak) switch { (true, true) => "both", (true, false) => "connection", _ => "" }),
            Data =
            [
                ("kind", node.Kind), ("id", node.Id), ("leakageMa", node.LeakageMa), ("limitMa", limit),
                .. isLoose ? [("connector", NamedEnumConverter<ConnectorCode>.Name(node.Connector!.Value))] : Array.Empty<(string, Scalar)>(),
            ],
            Subject = node.Kind == "PDU" ? Subjects.Pdu(node.Id) : Subjects.Supply(node.Id),
            Identity = [node.Kind, node.Id],
            Pointers =
            [
                node.Pointer, .. isLoose ? [$"{node.Pointer}/{node.Member}"] : Array.Empty<string>(),
                .. isWeak && context.Survey.Description.Earthing is not null ? [Pointers.MainConductor] : Array.Empty<string>(),
            ],
            Actual = Quantities.Of(node.LeakageMa, "mA"),
            Limit = Quantities.Of(limit, "mA"),
            UtilisationPercent = 100 * node.LeakageMa / limit,
            Calculation = Invariant($"{LeakageText.Sum(node.CordsOf(context.Survey.Power), node.LeakageMa)} > {limit:0.###}"),
            Candidates = Candidates(context.Survey, node, isLoose, isWeak, isLoose ? Math.Min(secured, isWeak ? high : secured) : high),
        });
    }

    private static IEnumerable<RemedyCandidate> Candidates(RackSurvey survey, Node node, bool isLoose, bool isWeak, double limit)
    {
        var (section, strong) = EarthRemedies.StrongMain(survey);
        var main = new WordedText(RemedyTitles.RunMainConductor, ("sectionMm2", section));
        var behindUps = node.Unit is { IsBehindUps: true } unit ? unit : null;
        bool IsEnough(double? cableMm2, ConnectorCode? connector) =>
            behindUps is null && EarthSurvey.CableIsHighIntegrity(cableMm2, connector) == true;

        if (isLoose)
        {
            var secured = EarthRemedies.Secured(survey, node.Supply, behindUps, survey.Description)
                .Zip(EarthRemedies.Secured(survey, node.Supply, behindUps, strong));
            foreach (var (plain, also) in secured)
            {
                yield return isWeak && !IsEnough(node.Supply.Source.Cable?.CrossSectionMm2, plain.After.Supplies![node.Supply.Index].Socket)
                    ? new RemedyCandidate(also.Title.Then(main), also.After)
                    : new RemedyCandidate(plain.Title, plain.After);
            }
        }
        else
        {
            yield return new RemedyCandidate(main, strong);
            foreach (var thicker in SupplyRemedies.Thicken(survey, node.Supply, mm2 => IsEnough(mm2, node.Connector)))
            {
                yield return thicker;
            }
        }

        var cords = node.CordsOf(survey.Power);
        foreach (var candidate in PowerRemedies.AddSupplies(survey, node.Supply, node.Unit, cords).Concat(EarthRemedies.TakeOutLeaking(survey, cords, limit)))
        {
            yield return candidate;
        }
    }

    /// <summary>A supply or PDU whose protective conductor carries the leakage.</summary>
    private sealed record Node(string Kind, string Id, string Pointer, string Member, double LeakageMa, ConnectorCode? Connector, SupplyNode Supply,
        PduNode? Unit)
    {
        public Cord[] CordsOf(PowerTree tree) => Array.FindAll(
            tree.Cords,
            c => c.Group is { } group && (Unit is null ? ReferenceEquals(group.Unit.Supply, Supply) : ReferenceEquals(group.Unit, Unit)));
    }
}
