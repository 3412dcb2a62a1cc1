using System.Text;
using Xunit;

namespace PartMatch.Core.Tests.Listings;

/// <summary>Text that is made to be slow or to break. Nothing here is timed: a quadratic step would not come back.</summary>
public sealed class NumberFinderHostileTests
{
    private const int Million = 1_000_000;

    [Fact]
    public void A_million_digits_are_no_number() => Assert.Empty(FinderExamples.In(new string('1', Million)));

    [Fact]
    public void A_million_times_one_letter_is_no_number() => Assert.Empty(FinderExamples.In(new string('P', Million)));

    [Theory]
    [InlineData("-")]
    [InlineData(" ")]
    [InlineData("\n")]
    [InlineData("\u200B")]
    [InlineData(", ")]
    [InlineData("(")]
    [InlineData("fits ")]
    [InlineData("\u0301")]
    public void Number_behind_two_hundred_thousand_of_anything_is_found(string filling)
    {
        var text = new StringBuilder().Insert(0, filling, 200_000).Append(" P-26-1147-C").ToString();
        Assert.Equal((text.Length - 11, "P-26-1147-C"), FinderExamples.In(text).Select(number => (number.Start, number.Written)).Single());
    }

    [Fact]
    public void Number_broken_by_two_hundred_thousand_separators_is_found() =>
        Assert.Equal("P261147C", Assert.Single(FinderExamples.In("P-26" + new string('-', 100_000) + new string(' ', 100_000) + "1147-C")).Key);

    [Fact]
    public void Two_hundred_thousand_numbers_are_found() =>
        Assert.Equal(200_000, FinderExamples.In(new StringBuilder().Insert(0, "P-26-1147-C, ", 200_000).ToString()).Count);

    [Fact]
    public void Two_hundred_thousand_ends_behind_one_number_are_found() =>
        Assert.Equal(200_001, FinderExamples.In("P-26-1147-C" + new StringBuilder().Insert(0, "/B", 200_000)).Count);

    // Keys A1A1A1, A1A1A1A1 and so on, each the beginning of the next, up to 40 characters: the text holds the longest 2,500 times.
    [Fact]
    public void Keys_that_begin_one_another_give_the_longest()
    {
        string[] keys = [.. Enumerable.Range(3, 18).Select(pairs => new StringBuilder().Insert(0, "A1", pairs).ToString())];
        var found = FinderExamples.Of(keys).Find([FinderExamples.Text(new StringBuilder().Insert(0, "A1", 50_000).ToString())]).Numbers;
        Assert.Equal(2_500, found.Count);
        Assert.All(found, number => Assert.Equal(40, number.Length));
    }

    // NFKC makes several characters, with a stroke between them, of these one.
    [Theory]
    [InlineData('\u00BD')] // one half
    [InlineData('\u2153')] // one third
    [InlineData('\u2105')] // care of
    [InlineData('\u33AF')] // radian per second squared
    public void Character_that_is_several_breaks_nothing(char letter) => Assert.NotEmpty(FinderExamples.In($"QX4120{letter}5678AB P-26-1147-C{letter}12 P-26-1147-C"));

    [Theory]
    [InlineData("\uD800P-26-1147-C\uDC00")]
    [InlineData("\uFFFE P-26-1147-C \uFFFF")]
    [InlineData("\uD83D\uDE00P-26-1147-C\uD83D\uDE00")] // an emoji at both sides
    public void Halves_of_characters_and_no_characters_beside_a_number_do_not_hide_it(string text) => Assert.Equal("P261147C", Assert.Single(FinderExamples.In(text)).Key);

    [Fact]
    public void Empty_base_and_empty_text_give_nothing()
    {
        Assert.Empty(FinderExamples.Of().Find([FinderExamples.Text("P C")]).Numbers);
        Assert.Empty(FinderExamples.In(""));
        Assert.Empty(FinderExamples.Base.Find([]).Numbers);
    }

    [Fact]
    public void Many_at_once_get_the_same_answer()
    {
        var passage = FinderExamples.Title("Pump fits P-26-1147-A; part no P261147C and ZX41-3075-A");
        var alone = FinderExamples.Roles(passage);
        Parallel.For(0, 200, _ => Assert.Equal(alone, FinderExamples.Roles(passage)));
    }
}
