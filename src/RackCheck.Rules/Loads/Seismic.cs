using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;

namespace RackCheck.Rules.Loads;

/// <summary>Finds racks in a seismic zone that are not bolted to the building.</summary>
public sealed class Seismic : Rule
{
    private static readonly WordingChoice Defect = new(
        "load.seismic",
        "The site is in a seismic zone, and the rack stands on [castors:castors|plinth:a plinth|feet] and is not bolted.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "load.seismic",
        Title = "Rack in a seismic zone not bolted",
        Severity = Severity.Warning,
        Concern = Concern.Site,
        Safety = true,
        What = "Finds racks in a seismic zone that are neither bolted to the floor nor hung on a wall. The anchorage itself is for a structural engineer.",
        Why = "In an earthquake the rack walks, tips and blocks the escape route.",
        Formula = "seismic, and base style neither bolted nor wall",
        Sources = [Sources.AnchoragePractice],
        Needs = ["/site/seismic", "/cabinet/base/style"],
        Remedies = ["Bolt it to the floor."],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var stand = context.Survey.Mass.Stand;
        if (context.Survey.Description.Site?.Seismic == true && stand.CanTip)
        {
            context.Report(new FindingDraft
            {
                Message = Defect.With(Text(stand)),
                Data = [("base", Text(stand))],
                Subject = Subjects.Base,
                Identity = [],
                Pointers = [Pointers.BaseStyle, SitePointers.Seismic],
                Candidates = [TipRemedies.OnBase(context.Survey, BaseStyle.Bolted, RemedyTitles.BoltRack)],
            });
        }
    }

    private static string Text(CabinetStand stand) => stand.Style switch
    {
        BaseStyle.Castors => "castors",
        BaseStyle.Plinth => "plinth",
        _ => "feet",
    };
}
