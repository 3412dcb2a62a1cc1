using PartMatch.Core.Listings;
using Xunit;

namespace PartMatch.Core.Tests.Listings;

public sealed class NumberFinderReadingTests
{
    [Theory]
    [InlineData("P-26-1147-C")]
    [InlineData("p-26-1147-c")]
    [InlineData("P261147C")]
    [InlineData("P.26.1147/C")]
    [InlineData("P_26_1147_C")]
    [InlineData("P\u201326\u22121147\u2011C")] // en dash, minus, non-breaking hyphen
    [InlineData("P-26\u00AD-11\u200B47-C")] // soft hyphen, zero-width space
    public void Number_in_another_case_or_with_other_signs_reads_as_written(string written) => Read(written, "P-26-1147-C", NumberReading.AsWritten);

    [Theory]
    [InlineData("P 26 1147 C")]
    [InlineData("P-26-1147 C")]
    [InlineData("P - 26 - 1147 - C")]
    [InlineData("P\u00A026\u202F1147\u2009C")] // no-break, narrow and thin space
    [InlineData("P-26-\r\n1147-C")]
    [InlineData("p261 147c")]
    public void Number_with_blanks_that_the_base_has_not_reads_as_broken(string written) => Read(written, "P-26-1147-C", NumberReading.Broken);

    [Theory]
    [InlineData("\u0420-26-1147-\u0421")] // Cyrillic Er and Es
    [InlineData("\u03A1-26-1147-C")] // Greek Rho
    [InlineData("\uFF30\uFF0D\uFF12\uFF16\uFF0D1147-C")] // full width
    public void Number_in_foreign_or_full_width_letters_reads_so(string written) => Read(written, "P-26-1147-C", NumberReading.ForeignLetters);

    // Folding classes: 1IL, 0OQD, 6G.
    [Theory]
    [InlineData("P-26-ll47-C", "P-26-1147-C")]
    [InlineData("P-2G-1I47-C", "P-26-1147-C")]
    [InlineData("M8-4410-0", "M8-4410-O")]
    [InlineData("M8-44I0-O", "M8-4410-O")]
    [InlineData("1-1801", "I-1801")] // I for 1, but only where a number is told
    public void Number_with_look_alike_characters_reads_so(string written, string known)
    {
        var number = Assert.Single(FinderExamples.In("part no " + written));
        Assert.Equal((known, NumberReading.LookAlikeCharacters), (number.Known[0].Written, number.Read));
    }

    [Fact]
    public void Number_known_exactly_is_not_read_as_another_that_looks_like_it()
    {
        var finder = FinderExamples.Of("P-26-11O7", "P-26-1107");
        var exact = Assert.Single(finder.Find([FinderExamples.Text("P-26-1107")]).Numbers);
        Assert.Equal(("P261107", NumberReading.AsWritten), (exact.Key, exact.Read));
        Assert.Equal(["P261107", "P2611O7"], finder.Find([FinderExamples.Text("P-26-11Q7")]).Numbers.Select(number => number.Key));
    }

    [Fact]
    public void Number_that_the_base_writes_with_blanks_is_not_broken_by_them() =>
        Assert.Equal(NumberReading.AsWritten, Assert.Single(FinderExamples.Of("HS2 4410 X").Find([FinderExamples.Text("hs2 4410 x")]).Numbers).Read);

    [Fact]
    public void Number_of_two_makers_comes_once_with_both()
    {
        var one = FinderExamples.Number("P-26-1147-C");
        var number = Assert.Single(new NumberFinder([one, one with { Maker = "kestlow", Part = "kestlow:P26-1147C", Written = "P26-1147C" }]).Find([FinderExamples.Text("P261147C")]).Numbers);
        Assert.Equal(["kestlow", "pellworth"], number.Known.Select(known => known.Maker));
    }

    [Fact]
    public void Number_stated_and_in_text_is_found_in_both_passages()
    {
        var found = FinderExamples.Base.Find([FinderExamples.Stated(NumberProperty.Mpn, "P-26-1147-C"), FinderExamples.Text("Pump P261147C")]).Numbers;
        Assert.Equal([(0, 0), (1, 5)], found.Select(number => (number.Passage, number.Start)));
    }

    [Theory]
    [InlineData("XP-26-1147-CX9", "XP-26-1147-CX9")]
    [InlineData("code P-26-1147-C-2!", "P-26-1147-C-2")]
    [InlineData("KX-P-26-1147-C", "KX-P-26-1147-C")]
    [InlineData("P-26-1147-C/2", "P-26-1147-C/2")]
    [InlineData("P-26-1147-C.", null)]
    [InlineData("(P-26-1147-C)", null)]
    [InlineData("water-pump-P-26-1147-C.jpg", null)]
    [InlineData("P-26-1147-C.It fits", null)]
    public void Number_inside_a_longer_code_says_so(string text, string? within)
    {
        var number = Assert.Single(FinderExamples.In(text));
        Assert.Equal(("P261147C", within), (number.Key, number.Within));
    }

    [Theory]
    [InlineData("P-26-11470")] // another number begins so
    [InlineData("P-26-1147")]
    [InlineData("pump 26-1147 covers")] // the p and the c of words
    [InlineData("P-26-1147 C-clip")]
    [InlineData("P-26-1147, C")]
    public void Part_of_other_words_or_digits_is_not_the_number(string text) =>
        Assert.DoesNotContain(FinderExamples.In(text), number => number.Known.Count > 0);

    [Theory]
    [InlineData("fits P-26-1147-A, P-26-1147-C", "P-26-1147-A P-26-1147-C")]
    [InlineData("P-26-1147-A/P-26-1147-C", "P-26-1147-A P-26-1147-C")]
    [InlineData("P-26-1147-A or QX41-2075-A", "P-26-1147-A QX41-2075-A")]
    [InlineData("P-26-1147-A/-C", "P-26-1147-A P-26-1147-C")]
    [InlineData("P-26-1147-A/B/C pump", "P-26-1147-A P-26-1147-B P-26-1147-C")]
    [InlineData("P-26-1147 A, C", "P-26-1147-A P-26-1147-C")]
    [InlineData("P-26-1147-A, B and C", "P-26-1147-A P-26-1147-B P-26-1147-C")]
    [InlineData("P-26-1147-B/-D", "P-26-1147-B")] // there is no D
    [InlineData("p-26-1147-b, a new one", "P-26-1147-B")] // a word
    [InlineData("P-26-1147-C, A NEW ONE", "P-26-1147-C")]
    [InlineData("P-26-1147-A to C", "P-26-1147-A")] // a range is left
    [InlineData("P-26-1147-C I have two", "P-26-1147-C")]
    public void Several_numbers_in_one_text_are_all_found(string text, string numbers) => Assert.Equal(numbers, FinderExamples.Named(FinderExamples.In(text)));

    [Fact]
    public void End_after_a_slash_stands_where_it_is_written()
    {
        var end = FinderExamples.In("pump P-26-1147-B/-C")[1]; // characters 18 to 19
        Assert.Equal((18, 1, "C", "P261147C", NumberReading.Broken), (end.Start, end.Length, end.Written, end.Key, end.Read));
    }

    [Fact]
    public void Longest_of_overlapping_numbers_wins()
    {
        var finder = FinderExamples.Of("AB-1234", "AB-1234-5C", "1234-5C-9");
        Assert.Equal("AB-1234-5C", FinderExamples.Named(finder.Find([FinderExamples.Text("AB-1234-5C-9")]).Numbers));
    }

    private static void Read(string written, string known, NumberReading reading)
    {
        var number = Assert.Single(FinderExamples.In($"A pump, {written}, like new"));
        Assert.Equal((8, written.Length, written), (number.Start, number.Length, number.Written));
        Assert.Equal((known, reading, null), (Assert.Single(number.Known).Written, number.Read, number.Within));
    }
}
