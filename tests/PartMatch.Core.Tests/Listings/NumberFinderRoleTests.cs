using PartMatch.Core.Listings;
using Xunit;

namespace PartMatch.Core.Tests.Listings;

public sealed class NumberFinderRoleTests
{
    [Theory]
    [InlineData("Pump P-26-1147-C new", "Sold P-26-1147-C")]
    [InlineData("Pump fits P-26-1147-A, P-26-1147-B; replaces P-26-1147-C", "Fits P-26-1147-A, Fits P-26-1147-B, Replaces P-26-1147-C")]
    [InlineData("Pump P-26-1147-C (replaces P-26-1147-B) with QX41-2075-A", "Sold P-26-1147-C, Replaces P-26-1147-B, Sold QX41-2075-A")]
    [InlineData("Pump for P-26-1147-C", "Fits P-26-1147-C")]
    [InlineData("Pump for Tern 16 TS, P-26-1147-C", "Sold P-26-1147-C")] // for an engine
    [InlineData("For sale P-26-1147-C", "Sold P-26-1147-C")]
    [InlineData("P-26-1147-C replaced by QX41-2075-A", "Sold P-26-1147-C, Mentioned QX41-2075-A")]
    [InlineData("P-26-1147-C replaced by part no QX41-2075-A", "Sold P-26-1147-C, Mentioned QX41-2075-A")]
    [InlineData("P-26-1147-C, not P-26-1147-B or P-26-1147-A", "Sold P-26-1147-C, NotThis P-26-1147-B, NotThis P-26-1147-A")]
    [InlineData("Fits Tern 16, part number P-26-1147-C", "Sold P-26-1147-C")]
    [InlineData("Replacement for part number P-26-1147-C", "Replaces P-26-1147-C")]
    [InlineData("Pump - fits P-26-1147-A - P-26-1147-B - new P-26-1147-C", "Fits P-26-1147-A, Fits P-26-1147-B, Sold P-26-1147-C")]
    public void Title_sells_its_numbers_unless_words_say_otherwise(string title, string roles) => Assert.Equal(roles, FinderExamples.Roles(FinderExamples.Title(title)));

    [Theory]
    [InlineData("like P-26-1147-C", "Mentioned P-26-1147-C")]
    [InlineData("OEM P-26-1147-C", "Sold P-26-1147-C")]
    [InlineData("Our ref: P-26-1147-C", "SellersOwn P-26-1147-C")]
    [InlineData("item no. P-26-1147-C", "SellersOwn P-26-1147-C")]
    [InlineData("It does not fit P-26-1147-A or P-26-1147-B. Casting P-26-1147-C", "NotThis P-26-1147-A, NotThis P-26-1147-B, Sold P-26-1147-C")]
    [InlineData("does not\nfit P-26-1147-A", "NotThis P-26-1147-A")]
    [InlineData("doesn't fit P-26-1147-A but fits P-26-1147-B", "NotThis P-26-1147-A, Fits P-26-1147-B")]
    [InlineData("not only fits P-26-1147-A", "Fits P-26-1147-A")]
    [InlineData("No returns. P-26-1147-C", "Mentioned P-26-1147-C")]
    [InlineData("Fits:\nP-26-1147-A\nP-26-1147-B\n\nP-26-1147-C", "Fits P-26-1147-A, Fits P-26-1147-B, Mentioned P-26-1147-C")]
    [InlineData("Fits many.\nP-26-1147-C", "Mentioned P-26-1147-C")]
    [InlineData("cross reference: P-26-1147-A, QX41-2075-A", "Replaces P-26-1147-A, Replaces QX41-2075-A")]
    // German
    [InlineData("passend f\u00FCr P-26-1147-A", "Fits P-26-1147-A")]
    [InlineData("Passt nicht f\u00FCr P-26-1147-A, P-26-1147-B", "NotThis P-26-1147-A, NotThis P-26-1147-B")]
    [InlineData("nicht P-26-1147-A, sondern P-26-1147-C", "NotThis P-26-1147-A, Mentioned P-26-1147-C")]
    [InlineData("ersetzt P-26-1147-B", "Replaces P-26-1147-B")]
    [InlineData("ersetzt durch P-26-1147-C", "Mentioned P-26-1147-C")]
    [InlineData("Teile-Nr.: P-26-1147-C", "Sold P-26-1147-C")]
    [InlineData("Teilenummer P-26-1147-C", "Sold P-26-1147-C")]
    // French
    [InlineData("convient pour P-26-1147-A", "Fits P-26-1147-A")]
    [InlineData("Ne convient pas pour P-26-1147-A", "NotThis P-26-1147-A")]
    [InlineData("remplace P-26-1147-B", "Replaces P-26-1147-B")]
    [InlineData("R\u00E9f\u00E9rence : P-26-1147-C", "Sold P-26-1147-C")]
    [InlineData("pour P-26-1147-A", "Fits P-26-1147-A")]
    // Swedish
    [InlineData("passar P-26-1147-A", "Fits P-26-1147-A")]
    [InlineData("passar inte P-26-1147-A", "NotThis P-26-1147-A")]
    [InlineData("ers\u00E4tter P-26-1147-B", "Replaces P-26-1147-B")]
    [InlineData("artikelnummer P-26-1147-C", "Sold P-26-1147-C")]
    // Spanish
    [InlineData("para P-26-1147-A", "Fits P-26-1147-A")]
    [InlineData("no sirve para P-26-1147-A", "NotThis P-26-1147-A")]
    [InlineData("reemplaza P-26-1147-B", "Replaces P-26-1147-B")]
    [InlineData("n\u00FAmero de pieza P-26-1147-C", "Sold P-26-1147-C")]
    public void Text_makes_of_a_number_what_the_words_before_it_say(string text, string roles) => Assert.Equal(roles, FinderExamples.Roles(FinderExamples.Text(text)));

    [Theory]
    [InlineData(NumberProperty.Mpn, NumberRole.Sold)]
    [InlineData(NumberProperty.Number, NumberRole.Sold)]
    [InlineData(NumberProperty.ProductId, NumberRole.Sold)]
    [InlineData(NumberProperty.Sku, NumberRole.SellersOwn)]
    [InlineData(NumberProperty.Gtin, NumberRole.Mentioned)]
    [InlineData(NumberProperty.Fits, NumberRole.Fits)]
    [InlineData(NumberProperty.Replaces, NumberRole.Replaces)]
    public void Property_says_the_role_outright(NumberProperty property, NumberRole role) =>
        Assert.Equal(role, Assert.Single(FinderExamples.In(FinderExamples.Stated(property, "P-26-1147-C"))).Role);

    [Fact]
    public void What_a_property_fits_is_fitted_to_whatever_words_stand_before() =>
        Assert.Equal("Fits P-26-1147-C", FinderExamples.Roles(FinderExamples.Stated(NumberProperty.Fits, "part number P-26-1147-C")));

    [Fact]
    public void What_a_column_of_numbers_says_is_replaced_is_replaced() =>
        Assert.Equal("Sold P-26-1147-C, Replaces P-26-1147-B", FinderExamples.Roles(FinderExamples.Stated(NumberProperty.Number, "P-26-1147-C, replaces P-26-1147-B")));
}
