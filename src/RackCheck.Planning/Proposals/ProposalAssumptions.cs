using RackCheck.Model;
using static System.FormattableString;

namespace RackCheck.Planning.Proposals;

/// <summary>What a proposed rack was chosen by besides what the request says.</summary>
internal static class ProposalAssumptions
{
    /// <summary>The assumptions made in building a rack, in its uprights and in its layout.</summary>
    /// <param name="trial">The rack.</param>
    public static IEnumerable<Assumption> Of(Trial trial) => trial.Completed.RackBuild.Assumptions.Concat(SetUprights(trial)).Concat(PatchFields(trial));

    // Where the uprights of a cabinet of the catalogue are not as it leaves the factory, whoever assembles it has to know.
    private static IEnumerable<Assumption> SetUprights(Trial trial)
    {
        if (trial is not { Rack.Cabinet: { PartNumber: not null, Uprights: { } now }, Offer.Product.Cabinet.Uprights: { } made })
        {
            yield break;
        }

        foreach (var (name, value, usual) in ((string, double?, double?)[])
            [("frontSetbackMm", now.FrontSetbackMm, made.FrontSetbackMm), ("spacingMm", now.SpacingMm, made.SpacingMm)])
        {
            if (value is { } set && usual is { } factory && set != factory)
            {
                var basis = new WordedText(ProposalWordings.SetUprights, ("value", factory));
                yield return new Assumption
                {
                    Pointers = ["/cabinet/uprights/" + name], Value = set, Unit = "mm", Basis = basis.Text, BasisKey = basis.Key, BasisData = basis.Values,
                };
            }
        }
    }

    // The lowest centre of gravity is one of the layouts with these positions next to each other. A remedy may have moved them apart.
    private static IEnumerable<Assumption> PatchFields(Trial trial)
    {
        if (trial.Problem is not { } problem)
        {
            yield break;
        }

        var bottoms = trial.BottomsU;
        var indices = trial.Rack.Items.Index().ToDictionary(i => i.Item.Id, i => i.Index, StringComparer.Ordinal);
        foreach (var stack in problem.Stacks.Select(s => s.Select(i => problem.Blocks[i]).ToArray()))
        {
            if (stack.Zip(stack.Skip(1)).Any(p => bottoms[p.First.Id] + p.First.HeightU != bottoms[p.Second.Id]))
            {
                continue;
            }

            var placed = stack.Select(b => (Index: indices[b.Id], trial.Rack.Items[indices[b.Id]].Position!.U, b.HeightU)).ToArray();
            var value = new WordedText(
                ProposalWordings.FieldPositions, ("fromU", placed.Min(p => p.U)), ("toU", placed.Max(p => p.U + p.HeightU - 1)));
            yield return new Assumption
            {
                Pointers = [.. placed.Select(p => p.Index).Order().Select(i => Invariant($"/items/{i}/position"))],
                Value = value.Text,
                ValueKey = value.Key,
                ValueData = value.Values,
                Basis = ProposalWordings.PatchField.Text,
                BasisKey = ProposalWordings.PatchField.Key,
                BasisData = ProposalWordings.PatchField.Values,
            };
        }
    }
}
