using CsCheck;
using RackCheck.Model;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Properties;

public sealed class ConflictTests
{
    [Fact]
    [Trait("Kind", "property")]
    public void Moving_an_item_off_a_conflict_to_a_free_place_never_adds_a_conflict() =>
        RackGenerator.Racks.Sample(
            rack =>
            {
                var before = Conflicts(rack);
                foreach (var index in before.SelectMany(f => f.Pointers).Where(p => p.StartsWith("/items/", StringComparison.Ordinal)).Select(IndexOf)
                    .Distinct())
                {
                    if (FreePlace(rack, index) is not { } unit)
                    {
                        continue;
                    }

                    var item = rack.Items[index];
                    var moved = rack with
                    {
                        Items = [.. rack.Items.Select((x, i) => i == index ? item with { Position = item.Position! with { U = unit } } : x)],
                    };
                    var after = Conflicts(moved);
                    Assert.DoesNotContain(after, f => f.Pointers.Contains($"/items/{index}/position"));
                    Assert.All(after, f => Assert.Contains(before, b => Judge.IsSame(b, f)));
                }
            },
            iter: Samples.Of(3_000),
            print: Wording.Of);

    [Fact]
    [Trait("Kind", "property")]
    public void Two_things_are_reported_exactly_where_they_share_a_unit_of_one_face() =>
        RackGenerator.Racks.Where(rack => !IsHeap(rack)).Sample(
            rack =>
            {
                var found = Conflicts(rack).Where(f => f.Actual!.Unit == "U").Select(f => string.Join(' ', f.Pointers.Order(StringComparer.Ordinal)));
                Assert.Equal(SharedUnits(rack).Order(StringComparer.Ordinal), found.Order(StringComparer.Ordinal));
            },
            iter: Samples.Of(3_000),
            print: Wording.Of);

    // Past 20 pairs at one U position the rule names the heap and not the pairs: seven items make 21.
    private static bool IsHeap(RackDescription rack) => Placed(rack).SelectMany(m => m.Units).GroupBy(u => u).Any(u => u.Count() > 6);

    private static Finding[] Conflicts(RackDescription rack) => [.. Judge.Checker.Check(rack).Findings.Where(f => f.Rule == "layout.overlap")];

    private static int IndexOf(string pointer) => int.Parse(pointer.Split('/')[2], System.Globalization.CultureInfo.InvariantCulture);

    // Worked out from the request alone, cell by cell: where every unit that the item would take is taken by nothing on either face.
    private static int? FreePlace(RackDescription rack, int index)
    {
        var height = rack.Items[index].HeightU!.Value;
        HashSet<int> taken = [.. Placed(rack).Where(m => m.Pointer != $"/items/{index}/position").SelectMany(m => m.Units)];
        var free = Enumerable.Range(1, rack.Cabinet!.HeightU!.Value)
            .Where(u => Enumerable.Range(u, height).All(n => n <= rack.Cabinet.HeightU && !taken.Contains(n)));
        return free.Select(bottom => rack.UnitNumbering == UnitNumbering.TopDown ? rack.Cabinet.HeightU.Value + 1 - bottom : bottom).Cast<int?>()
            .FirstOrDefault();
    }

    private static IEnumerable<string> SharedUnits(RackDescription rack)
    {
        var all = Placed(rack).ToArray();
        return from i in Enumerable.Range(0, all.Length)
               from j in Enumerable.Range(i + 1, all.Length - i - 1)
               where all[i].Face == all[j].Face && all[i].Units.Intersect(all[j].Units).Any()
               select string.Join(' ', new[] { all[i].Pointer, all[j].Pointer }.Order(StringComparer.Ordinal));
    }

    private static IEnumerable<(string Pointer, Face Face, int[] Units)> Placed(RackDescription rack)
    {
        for (var i = 0; i < rack.Items.Count; i++)
        {
            if (rack.Items[i] is { HeightU: { } height and > 0, Position: { } position, OnShelf: null })
            {
                yield return ($"/items/{i}/position", position.Face ?? Face.Front, Units(rack, position.U, height));
            }
        }

        for (var i = 0; i < rack.Pdus?.Count; i++)
        {
            if (rack.Pdus[i] is { Mounting: PduMounting.Horizontal, Position: { } position })
            {
                yield return ($"/pdus/{i}/position", position.Face ?? Face.Front, Units(rack, position.U, 1));
            }
        }
    }

    // Counted from below, the number of the lowest unit included: with top-down numbering that is the largest.
    private static int[] Units(RackDescription rack, int unit, int height) =>
        [.. Enumerable.Range(rack.UnitNumbering == UnitNumbering.TopDown ? rack.Cabinet!.HeightU!.Value + 1 - unit : unit, height)];
}
