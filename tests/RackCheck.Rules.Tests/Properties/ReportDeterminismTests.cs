using System.Globalization;
using System.Text.Json;
using CsCheck;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Properties;

public sealed class ReportDeterminismTests
{
    // The process knows the invariant culture only, so one with other signs is made by hand.
    private static readonly CultureInfo CommaCulture = MakeCommaCulture();

    [Fact]
    [Trait("Kind", "property")]
    public void The_same_rack_gives_the_same_bytes_at_every_repetition_on_every_thread_and_in_every_culture() =>
        RackGenerator.RacksWithPolicy.Sample(
            rack =>
            {
                var first = BytesOf(rack, CultureInfo.InvariantCulture);
                var others = new byte[6][];
                Parallel.For(0, others.Length, i => others[i] = BytesOf(rack, i % 2 == 0 ? CommaCulture : CultureInfo.InvariantCulture));
                Assert.All(others, bytes => Assert.Equal(first, bytes));
            },
            iter: Samples.Of(600),
            print: Wording.Of);

    [Fact]
    [Trait("Kind", "property")]
    public void A_rack_read_back_from_its_own_json_gives_the_same_bytes() =>
        RackGenerator.RacksWithPolicy.Sample(
            rack =>
            {
                var json = JsonSerializer.SerializeToUtf8Bytes(rack, ContractJson.Default.RackDescription);
                var readBack = JsonSerializer.Deserialize(json, ContractJson.Default.RackDescription)!;
                Assert.Equal(BytesOf(rack, CultureInfo.InvariantCulture), BytesOf(readBack, CultureInfo.InvariantCulture));
            },
            iter: Samples.Of(800),
            print: Wording.Of);

    [Fact]
    public void The_comma_culture_does_write_otherwise() =>
        Assert.Equal("\u22121,5", (-1.5).ToString(CommaCulture));

    private static byte[] BytesOf(RackDescription rack, CultureInfo culture)
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = culture;
        try
        {
            return JsonSerializer.SerializeToUtf8Bytes(Judge.Checker.Check(rack), ContractJson.Default.CheckReport);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static CultureInfo MakeCommaCulture()
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        culture.NumberFormat.NumberGroupSeparator = ".";
        culture.NumberFormat.NegativeSign = "\u2212";
        culture.NumberFormat.PositiveInfinitySymbol = "endless";
        culture.DateTimeFormat.DateSeparator = ".";
        return culture;
    }
}
