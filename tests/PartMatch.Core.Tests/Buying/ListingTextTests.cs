using CsCheck;
using PartMatch.Core.Buying;
using Xunit;

namespace PartMatch.Core.Tests.Buying;

public sealed class ListingTextTests
{
    [Theory]
    [InlineData(" a\r\nb\u2028c ", "a\nb\nc")]
    [InlineData("e\u0301", "é")]
    [InlineData("P\u202E12", "P12")] // would show the number backwards
    [InlineData("a\u0000b\tc", "ab\tc")]
    [InlineData(" \n ", "")]
    public void Text_is_kept_in_the_form_of_the_books(string text, string kept) => Assert.Equal(kept, ListingText.Keep(text).Text);

    // An attribute cannot hold half a pair of surrogates.
    [Fact]
    public void Half_a_pair_is_replaced() => Assert.Equal("a\uFFFDb", ListingText.Keep("a" + '\uD800' + "b").Text);

    // SHA-256 of "abc": FIPS 180-2, appendix B.1.
    [Fact]
    public void Digest_is_sha_256_of_the_text() =>
        Assert.Equal("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", ListingText.Keep("abc").Digest);

    [Theory]
    [InlineData(ListingText.MostCharacters, false)]
    [InlineData(ListingText.MostCharacters + 1, true)]
    public void Text_beyond_the_bound_is_cut_and_says_so(int length, bool isCut)
    {
        var kept = ListingText.Keep(new string('a', length));
        Assert.Equal((ListingText.MostCharacters, isCut), (kept.Text.Length, kept.IsCut));
    }

    [Fact]
    public void What_is_kept_is_kept_as_it_is() => Gen.String.Sample(text => ListingText.Keep(ListingText.Keep(text).Text).Text == ListingText.Keep(text).Text);
}
