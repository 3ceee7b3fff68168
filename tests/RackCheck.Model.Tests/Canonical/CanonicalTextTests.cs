using System.Globalization;
using System.Text;
using System.Text.Json;
using CsCheck;
using RackCheck.Model.Canonical;
using RackCheck.Testing;

namespace RackCheck.Model.Tests.Canonical;

/// <summary>RFC 8785, the JSON Canonicalization Scheme, with the sample values of its appendix B.</summary>
public sealed class CanonicalTextTests
{
    [Theory]
    [InlineData(0x0000000000000000, "0")]
    [InlineData(0x8000000000000000, "0")]
    [InlineData(0x0000000000000001, "5e-324")]
    [InlineData(0x8000000000000001, "-5e-324")]
    [InlineData(0x7fefffffffffffff, "1.7976931348623157e+308")]
    [InlineData(0xffefffffffffffff, "-1.7976931348623157e+308")]
    [InlineData(0x4340000000000000, "9007199254740992")]
    [InlineData(0xc340000000000000, "-9007199254740992")]
    [InlineData(0x4430000000000000, "295147905179352830000")]
    [InlineData(0x44b52d02c7e14af5, "9.999999999999997e+22")]
    [InlineData(0x44b52d02c7e14af6, "1e+23")]
    [InlineData(0x44b52d02c7e14af7, "1.0000000000000001e+23")]
    [InlineData(0x444b1ae4d6e2ef4e, "999999999999999700000")]
    [InlineData(0x444b1ae4d6e2ef4f, "999999999999999900000")]
    [InlineData(0x444b1ae4d6e2ef50, "1e+21")]
    [InlineData(0x3eb0c6f7a0b5ed8c, "9.999999999999997e-7")]
    [InlineData(0x3eb0c6f7a0b5ed8d, "0.000001")]
    [InlineData(0x41b3de4355555553, "333333333.3333332")]
    [InlineData(0x41b3de4355555554, "333333333.33333325")]
    [InlineData(0x41b3de4355555555, "333333333.3333333")]
    [InlineData(0x41b3de4355555556, "333333333.3333334")]
    [InlineData(0x41b3de4355555557, "333333333.33333343")]
    [InlineData(0xbecbf647612f3696, "-0.0000033333333333333333")]
    [InlineData(0x43143ff3c1cb0959, "1424953923781206.2")]
    public void Numbers_of_appendix_b_are_written_as_ecmascript_writes_them(ulong bits, string text) =>
        Assert.Equal(text, Number(BitConverter.UInt64BitsToDouble(bits)));

    [Theory]
    [InlineData(0x000fffffffffffff, "2.225073858507201e-308")] // the greatest subnormal number
    [InlineData(0x800fffffffffffff, "-2.225073858507201e-308")]
    [InlineData(0x0010000000000000, "2.2250738585072014e-308")] // the least normal number
    [InlineData(0x433fffffffffffff, "9007199254740991")] // 2^53 - 1
    [InlineData(0x4340000000000001, "9007199254740994")]
    [InlineData(0x432fffffffffffff, "4503599627370495.5")]
    [InlineData(0x430c6bf526340001, "1000000000000000.1")]
    [InlineData(0x430c6bf52633ffff, "999999999999999.9")]
    [InlineData(0xc3d0000000000000, "-4611686018427388000")] // -2^62
    [InlineData(0x43e0000000000000, "9223372036854776000")] // 2^63, past a whole number of 64 bits
    public void Numbers_at_bounds_of_a_format_are_written_as_ecmascript_does(ulong bits, string text) =>
        Assert.Equal(text, Number(BitConverter.UInt64BitsToDouble(bits)));

    [Theory]
    [InlineData("333333333.33333329", "333333333.3333333")] // section 3.2.2
    [InlineData("1E30", "1e+30")]
    [InlineData("4.50", "4.5")]
    [InlineData("2e-3", "0.002")]
    [InlineData("0.000000000000000000000000001", "1e-27")]
    public void Numbers_of_section_3_2_2_come_out_as_shown(string read, string text) =>
        Assert.Equal(text, Number(double.Parse(read, CultureInfo.InvariantCulture)));

    [Theory]
    [InlineData(1, "1")]
    [InlineData(-7, "-7")]
    [InlineData(44.45, "44.45")]
    [InlineData(1866.9, "1866.9")]
    [InlineData(9999, "9999")]
    [InlineData(10000, "10000")]
    [InlineData(0.1 + 0.2, "0.30000000000000004")]
    [InlineData(1e14, "100000000000000")]
    [InlineData(1e15, "1000000000000000")]
    [InlineData(123456789012345680000d, "123456789012345680000")]
    [InlineData(0.0001, "0.0001")]
    [InlineData(0.00001, "0.00001")]
    [InlineData(0.00001234, "0.00001234")]
    [InlineData(-0.00001234, "-0.00001234")]
    [InlineData(1e-7, "1e-7")]
    [InlineData(-1e-7, "-1e-7")]
    [InlineData(1.5e-9, "1.5e-9")]
    [InlineData(-0.0, "0")]
    [InlineData(1e20, "100000000000000000000")]
    [InlineData(-1.25e20, "-125000000000000000000")]
    [InlineData(-1e21, "-1e+21")]
    [InlineData(1e100, "1e+100")]
    [InlineData(-1.5e-300, "-1.5e-300")]
    public void Numbers_of_a_rack_keep_their_digits(double value, string text) => Assert.Equal(text, Number(value));

    [Fact]
    public void Whole_numbers_about_the_short_form_are_written_in_full()
    {
        for (var value = -1_000; value <= 11_000; value++)
        {
            Assert.Equal(value.ToString(CultureInfo.InvariantCulture), Number(value));
        }
    }

    [Fact]
    public void Numbers_with_up_to_three_decimals_are_written_as_decimals()
    {
        // A decimal number has these digits exactly, so it is another way of working them out.
        for (var thousandths = 1; thousandths < 3_000_000; thousandths += 7)
        {
            foreach (var value in new[] { thousandths / 1000m, -thousandths / 1000m, 1_000_000 + (thousandths / 1000m) })
            {
                Assert.Equal(value.ToString("0.###", CultureInfo.InvariantCulture), Number((double)value));
            }
        }
    }

    [Fact]
    [Trait("Kind", "property")]
    public void Every_number_reads_back_as_itself_and_has_the_layout_of_ecmascript() =>
        Gen.OneOf(Gen.Double, Gen.ULong.Select(BitConverter.UInt64BitsToDouble)).Where(double.IsFinite).Sample(
            value =>
            {
                var text = Number(value);
                Assert.Equal(value, double.Parse(text, CultureInfo.InvariantCulture));
                var size = Math.Abs(value);
                Assert.Equal(size is not 0 and (>= 1e21 or < 1e-6), text.Contains('e', StringComparison.Ordinal));
                Assert.Matches("^-?(0|[1-9][0-9]*)([.][0-9]*[1-9])?(e[+-][1-9][0-9]*)?$", text);
                Assert.True(text.Count(char.IsAsciiDigit) <= 25 && Digits(text) <= Digits(value.ToString("R", CultureInfo.InvariantCulture)));
            },
            iter: Samples.Of(100_000));

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void What_json_cannot_say_throws(double value) => Assert.Throws<ArgumentOutOfRangeException>(() => Number(value));

    [Theory]
    [InlineData("\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"/", "\"\u20ac$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"")] // section 3.2.2
    [InlineData("\b\t\n\f\r", "\"\\b\\t\\n\\f\\r\"")]
    [InlineData("\u0000\u001f\u0020", "\"\\u0000\\u001f \"")]
    [InlineData("\u007f\u0080\u2028<>&+", "\"\u007f\u0080\u2028<>&+\"")]
    [InlineData("\U0001F30A", "\"\U0001F30A\"")]
    [InlineData("", "\"\"")]
    public void Strings_escape_quotes_backslashes_and_control_characters_only(string value, string text) => Assert.Equal(text, String(value));

    [Fact]
    [Trait("Kind", "property")]
    public void Every_string_reads_back_as_itself() =>
        Gen.String.Where(s => s == Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(s))).Sample(
            value => Assert.Equal(value, JsonSerializer.Deserialize<string>(String(value))), iter: Samples.Of(10_000));

    [Fact]
    public void Text_longer_than_its_first_room_is_kept_whole()
    {
        var text = new CanonicalText();
        var expected = new StringBuilder();
        for (var i = 0; i < 5_000; i++)
        {
            text.Number(i + 0.5);
            text.String("\u00e9cluse");
            expected.Append(CultureInfo.InvariantCulture, $"{i}.5\"\u00e9cluse\"");
        }

        Assert.Equal(expected.ToString(), Encoding.UTF8.GetString(text.Written));
        text.Clear();
        Assert.Equal(0, text.Written.Length);
    }

    private static int Digits(string number) => number.Split('e', 'E')[0].Trim('-').Replace(".", "", StringComparison.Ordinal).Trim('0').Length;

    private static string Number(double value)
    {
        var text = new CanonicalText();
        text.Number(value);
        return Encoding.UTF8.GetString(text.Written);
    }

    private static string String(string value)
    {
        var text = new CanonicalText();
        text.String(value);
        return Encoding.UTF8.GetString(text.Written);
    }
}
