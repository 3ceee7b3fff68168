using System.Text;
using CsCheck;
using Microsoft.VisualBasic.FileIO;
using RackCheck.Documents.Parts;
using RackCheck.Model;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Documents.Tests.Parts;

/// <summary>The CSV, read back by a parser that is not ours.</summary>
public sealed class PartsCsvTests
{
    [Fact]
    public void File_has_a_header_row_and_ends_each_row_with_carriage_return_and_line_feed()
    {
        var bytes = PartsCsv.Of(Listed.Bare(EmptyRack().With(Unit("wave, \"probe\"", 1).At(1))));
        var text = Encoding.UTF8.GetString(bytes);
        Assert.StartsWith("kind,description,quantity,unit,", text, StringComparison.Ordinal);
        Assert.Equal(text.Count(c => c == '\n'), text.Split("\r\n").Length - 1);
        Assert.EndsWith("\r\n", text, StringComparison.Ordinal);
        Assert.Contains("\"wave, \"\"probe\"\"\"", text, StringComparison.Ordinal);
        Assert.NotEqual(0xEF, bytes[0]);
    }

    [Theory]
    [InlineData("=HYPERLINK(\"http://x\",\"y\")")]
    [InlineData("+1+1")]
    [InlineData("-2+3")]
    [InlineData("@SUM(A1)")]
    [InlineData("\t=1")]
    [InlineData("\r=1")]
    [InlineData("\n=1")]
    public void Text_that_a_spreadsheet_takes_for_a_formula_gets_an_apostrophe(string id)
    {
        var rows = Read(PartsCsv.Of(Listed.Bare(EmptyRack().With(Unit(id, 1).At(1), Unit("a", 1).At(3)))));
        Assert.All(rows.SelectMany(r => r.Values), IsHarmless);
        Assert.Contains(rows, r => r["text"].StartsWith("'" + id[0], StringComparison.Ordinal) || r["text"].StartsWith('\''));
        Assert.Contains(rows, r => r["kind"] == "fixing" && r["items"].Contains('\''));
    }

    [Fact]
    public void Ordinary_text_stays_as_it_is()
    {
        var rows = Read(PartsCsv.Of(Listed.Bare(EmptyRack().With(Unit("\u00e9cluse \U0001F30A 1=2", 1).At(1)))));
        Assert.Contains(rows, r => r["text"] == "\u00e9cluse \U0001F30A 1=2, U1, front");
    }

    [Fact]
    [Trait("Kind", "property")]
    public void Every_line_reads_back_with_its_values() =>
        RackGenerator.AllRacks.Sample(
            rack =>
            {
                var list = Listed.Offered(rack);
                var rows = Read(PartsCsv.Of(list));
                Assert.Equal(list.Lines.Count, rows.Count);
                foreach (var (line, row) in list.Lines.Zip(rows))
                {
                    Assert.Equal(line.Description, row["description"]);
                    Assert.Equal(line.Quantity, int.Parse(row["quantity"], System.Globalization.CultureInfo.InvariantCulture));
                    Assert.Equal(line.PartNumber ?? "", row["partNumber"]);
                    Assert.Equal(line.Why, row["why"]);
                    Assert.Equal(line.Data.Text ?? "", row["text"]);
                    Assert.Equal(string.Join("; ", line.Items ?? []), row["items"]);
                    Assert.Equal(line.Data.LengthM?.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture) ?? "", row["lengthM"]);
                    Assert.All(row.Values, IsHarmless);
                }
            },
            iter: Samples.Of(500),
            print: Wording.Of);

    private static void IsHarmless(string cell) => Assert.False(cell.Length > 0 && "=+-@\t\r\n".Contains(cell[0], StringComparison.Ordinal), cell);

    private static List<Dictionary<string, string>> Read(byte[] csv)
    {
        using var parser = new TextFieldParser(new MemoryStream(csv), Encoding.UTF8)
        {
            Delimiters = [","], HasFieldsEnclosedInQuotes = true, TrimWhiteSpace = false,
        };
        var header = parser.ReadFields()!;
        List<Dictionary<string, string>> rows = [];
        while (!parser.EndOfData)
        {
            var fields = parser.ReadFields()!;
            Assert.Equal(header.Length, fields.Length);
            rows.Add(header.Zip(fields).ToDictionary(c => c.First, c => c.Second, StringComparer.Ordinal));
        }

        return rows;
    }
}
