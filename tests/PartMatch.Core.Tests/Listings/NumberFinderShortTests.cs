using PartMatch.Core.Listings;
using Xunit;

namespace PartMatch.Core.Tests.Listings;

public sealed class NumberFinderShortTests
{
    [Theory]
    [InlineData("grade T231 on the crown")]
    [InlineData("part no. T231-A")] // does not stand alone
    [InlineData("part no T2 31")] // never across blanks
    [InlineData("7514 pieces, casting clean")]
    [InlineData("casting 7,514.00")]
    [InlineData("part no. ok; see T231")] // another clause
    [InlineData("Tel 77 2041")]
    [InlineData("after 11801 km")] // looks like I-1801
    [InlineData("Tel 0930 150123 45")] // digits go on
    [InlineData("77 2041 8")]
    public void Short_number_that_nobody_tells_of_is_not_found(string text) => Assert.DoesNotContain(FinderExamples.In(text), number => number.Known.Count > 0);

    [Theory]
    [InlineData("casting T231", "T231")]
    [InlineData("part no. t231, grade A", "T231")]
    [InlineData("Gussnummer: 7514", "7514")]
    [InlineData("casting 7514.", "7514")]
    [InlineData("part no T231 or 7514", "T231 7514")]
    [InlineData("a 77-2041 pump", "77-2041")] // six digits, parted as in the base
    [InlineData("a 0930150123 pump", "0930150123")] // nine digits or more
    [InlineData("a 0 930 150 123 pump", "0930150123")]
    public void Short_number_that_is_told_of_is_found(string text, string known) => Assert.Equal(known, FinderExamples.Named(FinderExamples.In(text)));

    [Theory]
    [InlineData("T231", "T231")]
    [InlineData("T 231", "T231")]
    [InlineData("77 2041", "77-2041")]
    [InlineData("77 2041 x", "")] // something else stands there
    public void Short_number_stated_outright_is_found(string stated, string known) =>
        Assert.Equal(known, FinderExamples.Named(FinderExamples.In(FinderExamples.Stated(NumberProperty.Number, stated)).Where(number => number.Known.Count > 0)));

    [Fact]
    public void Six_digits_count_in_a_title_and_not_in_text()
    {
        Assert.Equal("4412087", FinderExamples.Named(FinderExamples.In(FinderExamples.Title("Pump 4412087 new"))));
        Assert.DoesNotContain(FinderExamples.In("Pump 4412087 new"), number => number.Known.Count > 0);
        Assert.Equal("", FinderExamples.Named(FinderExamples.In(FinderExamples.Title("Pump 7514 new"))));
    }
}
