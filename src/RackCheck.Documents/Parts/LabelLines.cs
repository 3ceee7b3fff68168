using RackCheck.Model;
using static System.FormattableString;

namespace RackCheck.Documents.Parts;

/// <summary>Labels of items and PDUs, of both ends of each cord, and of outlets.</summary>
public static class LabelLines
{
    /// <summary>Maximum number of labels of outlets without a cord.</summary>
    public const int MostFreeOutlets = 1_000;

    /// <summary>Adds the lines: one for each text.</summary>
    internal static void List(PartsContext context)
    {
        var survey = context.Survey;
        foreach (var item in survey.Items)
        {
            Add(context, "Label of an item", survey.Cabinet.Place(item).Text, 1, "Name and place of the item.", [item.Id], null);
        }

        foreach (var unit in survey.Power.Units)
        {
            Add(context, "Label of a PDU", $"PDU {unit.Id}, supply {unit.Supply.Id}", 1, "Name of the PDU and its supply.", null, [unit.Id]);
        }

        var plan = new OutletPlan(survey.Power);
        foreach (var cord in survey.Power.Cords)
        {
            var name = OutletPlan.NameOf(cord);
            var pdus = cord.Group is { } fed ? new[] { fed.Unit.Id } : null;
            Add(context, "Label of a cord", $"{name} > {plan.EndOf(cord)}", 2, "One at each end of the cord.", [cord.Item.Id], pdus);
            if (plan.OutletOf(cord) is { } outlet)
            {
                Add(context, "Label of an outlet", $"{outlet} > {name}", 1, "Outlet with its cord.", [cord.Item.Id], pdus);
            }
        }

        FreeOutlets(context, plan);
    }

    private static void FreeOutlets(PartsContext context, OutletPlan plan)
    {
        var (left, omitted) = (MostFreeOutlets, 0);
        foreach (var outlets in plan.Sets)
        {
            var free = Math.Max(0, outlets.Set.Count - outlets.Cords.Count);
            var listed = Math.Min(free, left);
            for (var i = 0; i < listed; i++)
            {
                Add(
                    context, "Label of an outlet", outlets.NameOf(outlets.Cords.Count + i), 1, "Outlet without a cord.", null, [outlets.Group.Unit.Id]);
            }

            (left, omitted) = (left - listed, omitted + free - listed);
        }

        if (omitted > 0)
        {
            context.Notes.Add(Invariant($"{omitted} outlets without a cord have no label line; the list has at most {MostFreeOutlets} of them."));
        }
    }

    private static void Add(
        PartsContext context, string description, string text, int quantity, string why, IReadOnlyList<string>? items, IReadOnlyList<string>? pdus) =>
        context.Add(new PartLine
        {
            Kind = PartKind.Label, Description = description, Quantity = quantity, Unit = PartUnit.Piece, Why = why, Items = items, Pdus = pdus,
            Included = false, Data = new PartData { Text = text },
        });
}
