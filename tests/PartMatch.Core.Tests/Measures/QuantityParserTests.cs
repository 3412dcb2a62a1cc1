using CsCheck;
using PartMatch.Core.Measures;
using Xunit;

namespace PartMatch.Core.Tests.Measures;

public sealed class QuantityParserTests
{
    [Theory]
    [InlineData("9.0:1", 9.0)]
    [InlineData("9.5 to 1", 9.5)]
    [InlineData("11 : 1", 11)]
    public void Ratio_may_be_written_to_one(string text, decimal expected) =>
        Assert.Equal(expected, Assert.IsType<QuantityRead>(QuantityParser.Parse(text, Dimension.Ratio)).Quantity.Value);

    [Theory]
    [InlineData("9.0:2", Dimension.Ratio)]
    [InlineData("9:11", Dimension.Ratio)]
    [InlineData("9.0:1", Dimension.Length)]
    public void Only_a_ratio_and_only_to_one_is_read_so(string text, Dimension dimension) =>
        Assert.IsType<QuantityRefused>(QuantityParser.Parse(text, dimension));

    [Theory]
    [InlineData("44.60 mm", Dimension.Length, 0.0446, "m", "44.60 mm")]
    [InlineData("6800/min", Dimension.Speed, 6800, "1/min", "6800/min")]
    [InlineData("6801/min", Dimension.Speed, 6801, "1/min", "6801/min")]
    [InlineData("6800 1/min", Dimension.Speed, 6800, "1/min", "6800/min")]
    [InlineData("1/min", Dimension.Speed, 1, "1/min", "1/min")]
    [InlineData("6800 rpm", Dimension.Speed, 6800, "1/min", "6800/min")]
    [InlineData("85 %", Dimension.Ratio, 0.85, "1", "85 %")]
    [InlineData("85%", Dimension.Ratio, 0.85, "1", "85 %")]
    [InlineData("0.85", Dimension.Ratio, 0.85, "1", "0.85")]
    [InlineData("1.1 bar", Dimension.Pressure, 110000, "Pa", "1.1 bar")]
    [InlineData("  1.1bar ", Dimension.Pressure, 110000, "Pa", "1.1 bar")]
    [InlineData("-0.6 bar", Dimension.Pressure, -60000, "Pa", "-0.6 bar")]
    [InlineData("180 kW", Dimension.Power, 180000, "W", "180 kW")]
    [InlineData("240 hp(I)", Dimension.Power, 178967.96917974485, "W", "240 hp(I)")]
    [InlineData("0.75 in", Dimension.Length, 0.01905, "m", "0.75 in")]
    [InlineData("16 in³", Dimension.Volume, 0.000262193024, "m3", "16 in³")]
    [InlineData("1600 cm3", Dimension.Volume, 0.0016, "m3", "1600 cm³")]
    [InlineData("4.7 k\u2126", Dimension.Resistance, 4700, "ohm", "4.7 kohm")]
    [InlineData("20 °C", Dimension.Temperature, 293.15, "K", "20 degC")]
    [InlineData("330 g/kWh", Dimension.SpecificConsumption, 9.166666666666667e-8, "kg/J", "330 g/(kW·h)")]
    public void A_plain_number_with_a_unit_is_read(string text, Dimension dimension, double value, string unit, string shown)
    {
        var read = Assert.IsType<QuantityRead>(QuantityParser.Parse(text, dimension)).Quantity;
        Assert.Equal(value, (double)read.Value, Math.Abs(value) * 1e-14);
        Assert.Equal((unit, shown), (read.Unit, read.Text));
    }

    // 240 × 745.6998715823 W = 178.96797 kW; 240 × 735.49875 W = 176.5197 kW.
    [Fact]
    public void Bare_horsepower_is_asked_about()
    {
        var refused = Assert.IsType<QuantityRefused>(QuantityParser.Parse("240 hp", Dimension.Power));
        Assert.Equal(
            new QuantityRefused(
                "quantity-needs-unit", "Which horsepower?", "240 hp", "kW, W, PS (metric) or hp(I) (mechanical)", "write the one that is meant: 240 hp(I) is 178.97 kW; 240 PS is 176.52 kW"),
            refused);
    }

    // 10 × 3.785411784 L and 10 × 4.54609 L.
    [Fact]
    public void Bare_gallons_are_asked_about()
    {
        var refused = Assert.IsType<QuantityRefused>(QuantityParser.Parse("10 gal", Dimension.Volume));
        Assert.Equal(
            new QuantityRefused("quantity-needs-unit", "Which gallon?", "10 gal", "L, gal(US) or gal(UK)", "write the one that is meant: 10 gal(US) is 37.854 L; 10 gal(UK) is 45.461 L"), refused);
        Assert.Equal("Which gallon?", Assert.IsType<QuantityRefused>(QuantityParser.Parse("60 gal/h", Dimension.VolumeFlow)).Title);
    }

    [Theory]
    [InlineData("43,5 psi", Dimension.Pressure, "quantity-decimal-comma", "write 43.5 psi")]
    [InlineData("1,000 kW", Dimension.Power, "quantity-decimal-comma", "write 1.000 kW or 1000 kW")]
    [InlineData("1,234.5 W", Dimension.Power, "quantity-decimal-comma", "write 1234.5 W")]
    [InlineData("1.234,5 W", Dimension.Power, "quantity-decimal-comma", "write 1234.5 W")]
    [InlineData("1,234,567 W", Dimension.Power, "quantity-decimal-comma", "write 1234567 W")]
    [InlineData("6'800/min", Dimension.Speed, "quantity-unreadable", "write 6800/min")]
    [InlineData("6 800/min", Dimension.Speed, "quantity-unreadable", "write 6800/min")]
    [InlineData("6\u00A0800/min", Dimension.Speed, "quantity-unreadable", "write 6800/min")]
    [InlineData("6\u202F800 rpm", Dimension.Speed, "quantity-unreadable", "write 6800 rpm")]
    [InlineData("1.2.3 mm", Dimension.Length, "quantity-unreadable", "write digits and one decimal point, without separators or a plus sign")]
    [InlineData("+5 mm", Dimension.Length, "quantity-unreadable", "write digits and one decimal point, without separators or a plus sign")]
    [InlineData("5. mm", Dimension.Length, "quantity-unreadable", "write digits and one decimal point, without separators or a plus sign")]
    [InlineData("\u22125 mm", Dimension.Length, "quantity-unreadable", "write digits and one decimal point, without separators or a plus sign")]
    [InlineData(".5 mm", Dimension.Length, "quantity-unreadable", "for example 44.60 mm")]
    [InlineData("\u0664\u0665 mm", Dimension.Length, "quantity-unreadable", "for example 44.60 mm")] // Arabic-Indic digits
    [InlineData("mm", Dimension.Length, "quantity-unreadable", "for example 44.60 mm")]
    [InlineData("", Dimension.Length, "quantity-unreadable", "for example 44.60 mm")]
    [InlineData("5 mm\n6 mm", Dimension.Length, "quantity-unreadable", "for example 44.60 mm")]
    [InlineData("3/4 in", Dimension.Length, "quantity-unreadable", "write the fraction as a decimal number: 0.75 in, not 3/4 in")]
    [InlineData("1 3/4 in", Dimension.Length, "quantity-unreadable", "write the fraction as a decimal number: 0.75 in, not 3/4 in")]
    [InlineData("1e3 W", Dimension.Power, "quantity-unreadable", "write the number out, or take a larger or smaller unit")]
    [InlineData("1.8E+5W", Dimension.Power, "quantity-unreadable", "write the number out, or take a larger or smaller unit")]
    [InlineData("1.8×10^5 W", Dimension.Power, "quantity-unreadable", "write the number out, or take a larger or smaller unit")]
    [InlineData("1000000000001 W", Dimension.Power, "quantity-unreadable", "at most 28 characters and 1000000000000; take a larger unit")]
    [InlineData("99999999999999999999999999999 MPa", Dimension.Pressure, "quantity-unreadable", "at most 28 characters and 1000000000000; take a larger unit")]
    [InlineData("180", Dimension.Power, "quantity-needs-unit", "for example 180 kW, 240 hp(I) or 245 PS")]
    [InlineData("3.0 furlong", Dimension.Pressure, "quantity-wrong-unit", "for example 3.0 bar or 43.5 psi")]
    [InlineData("3.0 kW", Dimension.Pressure, "quantity-wrong-unit", "kW is a unit of power; for example 3.0 bar or 43.5 psi")]
    [InlineData("240 hp", Dimension.Length, "quantity-wrong-unit", "for example 44.60 mm")]
    [InlineData("40 lb/h", Dimension.VolumeFlow, "quantity-wrong-unit", "mass flow and volume flow differ by a density that has to be stated; for example 440 cm3/min")]
    [InlineData("440 cm3/min", Dimension.MassFlow, "quantity-wrong-unit", "mass flow and volume flow differ by a density that has to be stated; for example 220.6 g/min")]
    [InlineData("5 \uD800", Dimension.Length, "quantity-wrong-unit", "for example 44.60 mm")]
    public void What_is_not_a_plain_number_with_a_unit_is_refused_and_says_how_to_mend_it(string text, Dimension dimension, string code, string mend)
    {
        var refused = Assert.IsType<QuantityRefused>(QuantityParser.Parse(text, dimension));
        Assert.Equal((code, text, mend), (refused.Code, refused.Found, refused.Mend));
        Assert.NotEmpty(refused.Expected);
    }

    [Theory]
    [InlineData('1')]
    [InlineData(' ')]
    [InlineData(',')]
    [InlineData('\u00A0')]
    [InlineData('m')]
    public void A_very_long_text_is_refused_cut_short(char filling)
    {
        var refused = Assert.IsType<QuantityRefused>(QuantityParser.Parse("1" + new string(filling, 200_000) + "!", Dimension.Length));
        Assert.Equal("quantity-unreadable", refused.Code);
        Assert.True(refused.Found.Length < 100, refused.Found);
    }

    [Fact]
    public void A_text_at_the_length_limit_is_read_and_one_longer_is_not()
    {
        var atLimit = "5" + new string(' ', QuantityParser.MaxLength - 3) + "mm";
        Assert.IsType<QuantityRead>(QuantityParser.Parse(atLimit, Dimension.Length));
        Assert.IsType<QuantityRefused>(QuantityParser.Parse(atLimit.Insert(1, " "), Dimension.Length));
    }

    [Theory]
    [InlineData("1000000000000", true)]
    [InlineData("-1000000000000", true)]
    [InlineData("1000000000000.1", false)]
    [InlineData("5\n", false)]
    [InlineData("5 ", false)]
    [InlineData("--5", false)]
    public void A_bare_number_is_strict(string text, bool read) => Assert.Equal(read, QuantityParser.FindNumber(text) is not null);

    [Fact]
    public void What_a_quantity_shows_reads_back_as_itself_in_every_unit() =>
        Gen.Select(Units, Gen.Long[-1_000_000_000_000, 1_000_000_000_000], Gen.Int[0, 12]).Sample((unit, digits, places) =>
        {
            var value = new decimal(digits) / Power10(places);
            var quantity = Quantity.From(value, unit);
            var read = Assert.IsType<QuantityRead>(QuantityParser.Parse(quantity.Text, unit.Dimension));
            Assert.Equal(quantity, read.Quantity);
            Assert.Equal(unit, read.Unit);
        });

    [Fact]
    public void Converting_to_the_base_unit_and_back_gives_the_same_number() =>
        Gen.Select(Units, Gen.Long[1, 1_000_000_000], Gen.Int[0, 3]).Sample((unit, digits, places) =>
        {
            var value = new decimal(digits) / Power10(places);
            Assert.Equal((double)value, (double)unit.FromBase(unit.ToBase(value)), (double)value * 1e-12);
        });

    [Fact]
    public void No_text_whatever_makes_the_parser_fail() =>
        Gen.Select(Gen.String[Gen.Char["0123456789.,-+ /eE%'μ·²()mkWhpgalbr\uD800\u2212\n"], 0, 40], Gen.Enum<Dimension>())
            .Sample((text, dimension) => QuantityParser.Parse(text, dimension) is QuantityRead or QuantityRefused);

    private static readonly Gen<Unit> Units = Gen.Int[0, UnitTable.All.Count - 1].Select(index => UnitTable.All[index]);

    private static decimal Power10(int places) => (decimal)Math.Pow(10, places);

    // 0.5 lb/(hp·h): 0.5 × 453.59237 g ÷ 0.745699872 kW = 304.14, ÷ 0.73549875 kW = 308.36 g/(kW·h).
    [Theory]
    [InlineData("0.5 lb/(hp·h)")]
    [InlineData("0.5 lb/(hp*h)")]
    [InlineData("0.5 lb/hp/h")]
    [InlineData("0.5 lb/(hp·hr)")]
    public void Consumption_for_a_bare_horsepower_is_asked_about(string text)
    {
        var refused = Assert.IsType<QuantityRefused>(QuantityParser.Parse(text, Dimension.SpecificConsumption));
        Assert.Equal(("quantity-needs-unit", "Which horsepower?"), (refused.Code, refused.Title));
        Assert.Equal("write the one that is meant: 0.5 lb/(hp(I)·h) is 304.14 g/(kW·h); with the metric horsepower it is 308.36 g/(kW·h)", refused.Mend);
    }

    // A base that was written before it was asked about still opens.
    [Fact]
    public void Recorded_unit_of_a_bare_horsepower_is_the_mechanical_one() => Assert.Equal("lb/(hp(I)·h)", UnitTable.Get("lb/(hp·h)").Symbol);
}
