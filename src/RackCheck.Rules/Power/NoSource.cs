using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Power;

/// <summary>Finds cords without an outlet.</summary>
public sealed class NoSource : Rule
{
    private static readonly WordingChoice Unknown = new(
        "power.no-source.unknown-plug",
        "{item} has a cord with plug {plug}, which fits no known socket;[none: no {plug} cord has an outlet.| only {found} of {needed} "
            + "{plug} cords have an outlet.]");

    private static readonly WordingChoice Voltage = new(
        "power.no-source.voltage",
        "{item} is rated for {voltageV} V, and no outlet supplies that voltage;[none: no {plug} cord has an outlet.| only {found} of "
            + "{needed} {plug} cords have an outlet.]");

    private static readonly WordingChoice One = new(
        "power.no-source.one",
        "One {socket} outlet[three-phase: on a three-phase supply] is missing for {item};[none: no {plug} cord has an outlet.| only {found} "
            + "of {needed} {plug} cords have an outlet.]");

    private static readonly WordingChoice Several = new(
        "power.no-source.several",
        "{missing} {socket} outlets[three-phase: on a three-phase supply] are missing, the first for {item};[none: no {plug} cord has an "
            + "outlet.| only {found} of {needed} {plug} cords have an outlet.]");

    private static readonly MissingData MissingPdus = new(
        "power.no-source.missing-pdus",
        "The PDUs are missing, so the outlets of the cords cannot be checked; an empty list means no PDUs.");

    private static readonly MissingData MissingPlugs = new(
        "power.no-source.missing-plugs",
        "The plugs of an item that draws power are missing, so its outlets cannot be checked; an empty list means no plugs.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "power.no-source",
        Title = "No outlet for a cord",
        Severity = Severity.Error,
        What = "Finds cords without an outlet, for every possible assignment of cords to outlets: too few outlets, none of the type, or none at the voltage.",
        Why = "Equipment is delivered that cannot be switched on, or is connected with unplanned adaptors and extension leads.",
        Formula =
            "largest number of cords with an outlet of their own >= number of cords (maximum matching of cords and outlets); item voltage / outlet voltage "
            + "from 0.8 to 1.25",
        Sources = [Sources.Iec60320, Sources.Bs1363, Sources.Cee7, Sources.NemaWd6, Sources.Iec60309, Sources.VoltagePractice],
        Needs =
        [
            "/items/*/power/plugs", "/items/*/power/voltageV", "/items/*/power/redundant", "/supplies/*/voltageV", "/supplies/*/phases",
            "/pdus/*/groups/*/outlets", "/connections",
        ],
        Notes =
        [
            "The assignment of cords is exact for few cords and bounded for many. It is part of the survey, so every rule and the figures use the same one.",
        ],
        Remedies =
        [
            "Fit the usual cord, from C15 to C14, to a C16 inlet.", "Fit a PDU with more outlets.", "Add a PDU.", "Add a supply with a PDU.",
            "Move equipment to another rack.",
        ],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        ReportMissing(context);
        var tree = context.Survey.Power;
        if (!tree.IsDescribed)
        {
            return;
        }

        foreach (var alike in tree.Cords.GroupBy(c => c.Code).OrderBy(g => g.Key))
        {
            Cord[] left = [.. alike.Where(c => c.Group is null)];
            if (left.Length > 0)
            {
                Report(context, left, alike.Count());
            }
        }
    }

    // A description without power data gets one entry; a description with power data gets one entry an item.
    private static void ReportMissing(RuleContext context)
    {
        var survey = context.Survey;
        var (described, drawing) = (survey.Power.IsDescribed, false);
        var spoken = described || survey.Description.Supplies is not null || Array.Exists(survey.Items, i => i.Item!.Power is not null);
        foreach (var item in survey.Items)
        {
            var power = item.Item!.Power;
            drawing |= power is { Plugs: { Count: > 0 } } || HasUnknownCords(item);
            if (spoken && HasUnknownCords(item))
            {
                context.ReportMissing(power is null ? $"{item.Pointer}/power" : Pointers.ItemPlugs[item.Index], MissingPlugs);
            }
        }

        if (drawing && !described)
        {
            context.ReportMissing("/pdus", MissingPdus);
        }
    }

    private static bool HasUnknownCords(MountedItem item) => item.Item!.Power is { } power
        ? power.Plugs is null && power.RatedW != 0
        : !PassiveEquipment.IsPassive(item.Item)
            && (item.Item.Ups is not null || item.Category is ItemCategory.Computer or ItemCategory.Server or ItemCategory.Instrument or ItemCategory.Network
                or ItemCategory.Display or ItemCategory.KvmSwitch or ItemCategory.Ups or ItemCategory.FanTray or ItemCategory.AirConditioner);

    private static void Report(RuleContext context, Cord[] left, int needed)
    {
        var survey = context.Survey;
        var plug = PlugFit.Of(left[0].Code).Code;
        var found = needed - left.Length;
        context.Report(new FindingDraft
        {
            Message = MessageOf(survey.Power, left, needed),
            Data =
            [
                ("item", left[0].Item.Id), ("plug", plug), ("socket", PlugFit.Of(PlugFit.SocketFor(left[0].Code)).Code),
                ("needed", needed), ("found", found), ("missing", left.Length),
                .. left[0].Item.Item!.Power!.VoltageV is { } voltage ? [("voltageV", (Scalar)voltage)] : Array.Empty<(string, Scalar)>(),
            ],
            Subject = Subjects.Cords(plug),
            Identity = [plug],
            Pointers = [.. left.Select(c => c.Item.Pointer).Distinct()],
            Actual = Quantities.Of(found, "outlets"),
            Limit = Quantities.Of(needed, "outlets"),
            Calculation = Invariant($"{needed} - {left.Length} = {found} < {needed}"),
            Candidates = CandidatesOf(survey, left),
        });
    }

    private static MessageWording MessageOf(PowerTree tree, Cord[] left, int needed)
    {
        var found = left.Length == needed ? "none" : "";
        if (!PlugFit.Fits(left[0].Code, PlugFit.SocketFor(left[0].Code)))
        {
            return Unknown.With(found);
        }

        if (tree.Units.Length > 0 && left.All(c => !Array.Exists(tree.Units, u => c.SuitsVoltage(u.Supply.Source.VoltageV))))
        {
            return Voltage.With(found);
        }

        var where = left[0].IsThreePhase ? "three-phase" : "";
        return (left.Length == 1 ? One : Several).With(where, found);
    }

    // Last, the items without an outlet go to another rack. Where plugs of several types compete for the same outlets, all items without an outlet do.
    private static IEnumerable<RemedyCandidate> CandidatesOf(RackSurvey survey, Cord[] left)
    {
        var plugs = PlugRemedies.UsualCord(survey, left).Concat(PlugRemedies.Counterpart(survey, left));
        foreach (var candidate in plugs.Concat(OutletRemedies.Provide(survey, left)))
        {
            yield return candidate;
        }

        yield return OutletRemedies.TakeOut(survey, left);
        yield return OutletRemedies.TakeOut(survey, survey.Power.Cords.Where(c => c.Group is null));
    }
}
