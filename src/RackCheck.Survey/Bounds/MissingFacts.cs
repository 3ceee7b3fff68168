using RackCheck.Model;
using RackCheck.Survey.Catalogue;
using RackCheck.Survey.Layout;

namespace RackCheck.Survey.Bounds;

/// <summary>The values that a description does not give and that have a plausible range, and the rack with them at the ends of their ranges.</summary>
public sealed class MissingFacts
{
    private readonly ResolvedRack rack;
    private readonly RackSurvey? given;
    private readonly MissingFacts? like;
    private readonly Sections changed;
    private readonly List<Gap> gaps = [];
    private readonly Dictionary<int, string[]> pointers = [];
    private readonly Dictionary<(End End, int Turned), RackSurvey> surveys = [];

    /// <summary>Finds them.</summary>
    /// <param name="rack">A rack with all essential data.</param>
    /// <param name="given">Its survey as described. Where nothing missing moves a cord, all ends have its outlets.</param>
    public MissingFacts(ResolvedRack rack, RackSurvey given)
    {
        (this.rack, this.given) = (rack, given);
        foreach (var fact in FactTable.Bounded)
        {
            fact.Find(rack.Description, gaps);
        }

        SetFacts();
    }

    /// <summary>
    /// Finds them in a rack with the cabinet and the items of another, whose missing values are the same, and so are those of every section that is not
    /// changed.
    /// </summary>
    /// <param name="rack">The rack.</param>
    /// <param name="like">The missing values of the other rack.</param>
    /// <param name="changed">The sections in which the rack differs; neither cabinet nor items, nor what sets the loads of supplies and PDUs.</param>
    public MissingFacts(ResolvedRack rack, MissingFacts like, Sections changed)
    {
        (this.rack, this.like, this.changed) = (rack, like, changed);
        foreach (var gap in like.gaps)
        {
            if (gap.Fact.IsOfCabinetOrItems)
            {
                gaps.Add(gap);
            }
        }

        foreach (var fact in FactTable.Bounded)
        {
            if (!fact.IsOfCabinetOrItems)
            {
                fact.Find(rack.Description, gaps);
            }
        }

        SetFacts();
    }

    private void SetFacts()
    {
        foreach (var gap in gaps)
        {
            Set = Set.With(gap.Number);
        }
    }

    /// <summary>The facts of which at least one value is missing.</summary>
    public FactSet Set { get; private set; }

    /// <summary>The survey of the rack with its missing values at an end of their ranges. Each is made once.</summary>
    /// <param name="end">The ends.</param>
    /// <param name="turned">A fact whose values are at the opposite ends; -1 for none.</param>
    /// <returns>The survey, whose parts are worked out when they are read.</returns>
    public RackSurvey At(End end, int turned = -1)
    {
        if (!surveys.TryGetValue((end, turned), out var survey))
        {
            surveys[(end, turned)] = survey = turned >= 0 ? Turn(At(end), end, turned)
                : end is End.Crossed or End.CrossedBack ? Cross(At(End.Adverse), end)
                : like is not null ? Edit(like.At(end), end)
                : RackSurvey.Lazily(rack.Completed(Complete(end)), gaps.Exists(MovesCords) ? null : given);
        }

        return survey;
    }

    /// <summary>The survey of the rack at an end, with the values of several facts at the opposite ends. It is made anew each time.</summary>
    /// <param name="end">The ends.</param>
    /// <param name="turned">The facts whose values are at the opposite ends.</param>
    /// <returns>The survey, whose parts are worked out when they are read.</returns>
    public RackSurvey At(End end, FactSet turned)
    {
        var draft = new RackDraft(At(end).Description);
        foreach (var gap in gaps)
        {
            if (turned.Has(gap.Number))
            {
                gap.Fact.Fill(draft, gap.Owner, ValueAt(gap, end, isTurned: true));
            }
        }

        return RackSurvey.Lazily(rack.Completed(draft.Finish()), null);
    }

    // The other rack at the same end, with what is changed.
    private RackSurvey Edit(RackSurvey other, End end)
    {
        var replaced = SectionTable.Records(changed);
        var draft = new RackDraft(SectionTable.Replace(other.Description, rack.Description, replaced));
        foreach (var gap in gaps)
        {
            if (!gap.Fact.IsOfCabinetOrItems && (gap.Fact.Section & replaced) != 0)
            {
                gap.Fact.Fill(draft, gap.Owner, ValueAt(gap, end, isTurned: false));
            }
        }

        return other.Changed(rack.Completed(draft.Finish()), changed);
    }

    // The adverse end with other values where rules pull apart.
    private RackSurvey Cross(RackSurvey adverse, End end)
    {
        var draft = new RackDraft(adverse.Description);
        var (areElsewhere, moveCords) = (true, false);
        foreach (var gap in gaps)
        {
            if (gap.Fact.Pull != Pull.OneWay)
            {
                gap.Fact.Fill(draft, gap.Owner, ValueAt(gap, end, isTurned: false));
                areElsewhere &= !gap.Fact.IsOfCabinetOrItems;
                moveCords |= MovesCords(gap);
            }
        }

        var completed = rack.Completed(draft.Finish());
        return areElsewhere && !moveCords ? adverse.Elsewhere(completed) : RackSurvey.Lazily(completed, moveCords ? null : adverse);
    }

    private RackSurvey Turn(RackSurvey straight, End end, int turned)
    {
        var (draft, moveCords) = (new RackDraft(straight.Description), false);
        foreach (var gap in gaps)
        {
            if (gap.Number == turned)
            {
                moveCords |= MovesCords(gap);
                gap.Fact.Fill(draft, gap.Owner, ValueAt(gap, end, isTurned: true));
            }
        }

        var completed = rack.Completed(draft.Finish());
        return !FactTable.Bounded[turned].IsOfCabinetOrItems && !moveCords
            ? straight.Elsewhere(completed)
            : RackSurvey.Lazily(completed, moveCords ? null : straight);
    }

    private bool MovesCords(Gap gap) => gap.Fact.MovesCords(rack.Description, gap.Owner);

    /// <summary>The description with its missing values at an end of their ranges.</summary>
    /// <param name="end">The ends.</param>
    /// <returns>The description.</returns>
    public RackDescription Complete(End end)
    {
        var draft = new RackDraft(rack.Description);
        foreach (var gap in gaps)
        {
            gap.Fact.Fill(draft, gap.Owner, ValueAt(gap, end, isTurned: false));
        }

        return draft.Finish();
    }

    /// <summary>The pointers of the missing values of a fact.</summary>
    /// <param name="number">Its place among the bounded facts.</param>
    /// <returns>The pointers, in the order of the request.</returns>
    public IReadOnlyList<string> PointersOf(int number)
    {
        if (!pointers.TryGetValue(number, out var own))
        {
            pointers[number] = own = [.. gaps.Where(g => g.Number == number).Select(g => g.Fact.PointerOf(g.Owner))];
        }

        return own;
    }

    /// <summary>The range of a fact over all its missing values.</summary>
    /// <param name="number">Its place among the bounded facts.</param>
    /// <returns>From the lowest to the highest.</returns>
    public Bound RangeOf(int number)
    {
        var (low, high) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var gap in gaps)
        {
            (low, high) = gap.Number == number ? (Math.Min(low, gap.Bound.Low), Math.Max(high, gap.Bound.High)) : (low, high);
        }

        return new Bound(low, high);
    }

    private double ValueAt(in Gap gap, End end, bool isTurned)
    {
        if (end == End.Middle)
        {
            return (gap.Bound.Low + gap.Bound.High) / 2;
        }

        var isHigh = (end, gap.Fact.Pull) switch
        {
            (End.Favourable, _) => gap.Fact.LowIsAdverse,
            (End.Crossed, Pull.Apart) => gap.Fact.LowIsAdverse,
            (End.Crossed, Pull.ByHeight) => IsInUpperHalf(gap.Owner),
            (End.CrossedBack, Pull.ByHeight) => !IsInUpperHalf(gap.Owner),
            _ => !gap.Fact.LowIsAdverse,
        };
        return isHigh != isTurned ? gap.Bound.High : gap.Bound.Low;
    }

    private bool IsInUpperHalf(int item)
    {
        var description = rack.Description;
        var (units, own) = (description.Cabinet!.HeightU!.Value, description.Items[item]);
        return own.Position is { } at
            && (2 * UnitNumbers.FromBottom(at.U, units, description.UnitNumbering)) + own.HeightU!.Value > units + 1;
    }
}
