using PartMatch.Core.Listings;
using Xunit;

namespace PartMatch.Core.Tests.Listings;

public sealed class NumberFinderShapeTests
{
    [Theory]
    [InlineData("RB-6PK-1500 belt", "?RB6PK1500")]
    [InlineData("UJ8824", "?UJ8824")]
    [InlineData("pump ZX41-3075-A, ZX41-3076-A", "?ZX413075A ?ZX413076A")]
    [InlineData("ZX41-3075-A/ZX41-3076-A", "?ZX413075A ?ZX413076A")]
    [InlineData("ZX41-3075/2", "?ZX4130752")]
    [InlineData("ZX41 3075 A", "?ZX413075A")] // three groups
    [InlineData("part no ZX41 3075", "?ZX413075")] // two, but told
    [InlineData("8812345 works", "?8812345")]
    [InlineData("old-pump-ZX41-3075-A.jpg", "?ZX413075A")]
    [InlineData("zx41-3075-a", "?ZX413075A")]
    public void Words_with_the_shape_of_a_number_are_found(string text, string numbers) => Assert.Equal(numbers, FinderExamples.Named(FinderExamples.In(text)));

    [Theory]
    [InlineData("129900 EUR, \u20AC129900, 129900 kr, 129.900,00")]
    [InlineData("26.11.2026 2026-11-26 11/26/2026 11/2026 2004-2008 2026-11-26T10:15:00Z")]
    [InlineData("10:15:30 and 12.30.45")]
    [InlineData("Tel. 0171/1234567, +49 171 1234567, 0041123456789")]
    [InlineData("phone 555-123456")]
    [InlineData("9.6 mm 9.6mm 1.6 l 1600ccm 10x1.25 M8x1.25 M10x1.25x45 12V 440cm3/min 100000km 120000 km 195x50x15 225/45R17 120kW 5W-30 10W40 150-200bar")]
    [InlineData("16-valve, 4-cylinder, 25pcs, 100-teilig, 2.0TDI")]
    [InlineData("100000%")]
    [InlineData("mail ab12345@shop.example or https://shop.example/ab12345 or www.shop.example/p/ab12345")]
    [InlineData("D-12345 Neustadt, SE-12345 Nystad")]
    [InlineData("DIN912 ISO9001 EN10025 SAE-5W")]
    [InlineData("2012345678903")] // a GTIN with the right check digit (CHECKS I08)
    [InlineData("VIN WVQZX41A2B3123456")]
    [InlineData("in stock, used, TS 16, 8 pieces")]
    [InlineData("4 5 6 7 8")]
    public void What_is_something_else_is_left_out(string text) => Assert.Equal("", FinderExamples.Named(FinderExamples.In(text)));

    [Fact]
    public void Gtin_is_a_number_where_it_is_stated() =>
        Assert.Equal("?2012345678903", FinderExamples.Named(FinderExamples.In(FinderExamples.Stated(NumberProperty.Gtin, "2012345678903"))));

    [Fact]
    public void Thirteen_digits_that_are_no_gtin_are_a_number() => Assert.Equal("?2012345678904", FinderExamples.Named(FinderExamples.In("2012345678904")));

    // 5 to 25 characters; six digits without a letter.
    [Theory]
    [InlineData("A123", 0)]
    [InlineData("A1234", 1)]
    [InlineData("12345", 0)]
    [InlineData("123456", 1)]
    [InlineData("ZX12345678901234567890123", 1)]
    [InlineData("ZX123456789012345678901234", 0)]
    public void Shape_has_its_bounds(string text, int found) => Assert.Equal(found, FinderExamples.In(text).Count);

    [Fact]
    public void More_than_two_hundred_unknown_numbers_are_counted()
    {
        var found = FinderExamples.Base.Find([FinderExamples.Text(string.Join(", ", Enumerable.Range(1000, 203).Select(number => $"ZX-{number}-A")) + ", P-26-1147-C")]);
        Assert.Equal((201, 3), (found.Numbers.Count, found.UnknownLeftOut));
        Assert.Equal("P261147C", found.Numbers[^1].Key);
    }
}
