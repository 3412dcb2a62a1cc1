using CsCheck;
using PartMatch.Core.Catalogue;
using Xunit;

namespace PartMatch.Core.Tests.Catalogue;

public sealed class NumberKeyTests
{
    [Theory]
    [InlineData("QX412075A")]
    [InlineData("qx41-2075-a")]
    [InlineData(" QX41 2075 A ")]
    [InlineData("QX41.2075/A")]
    [InlineData("QX41_2075\\A")]
    [InlineData("QX41\u20132075\u2014A")] // en dash, em dash
    [InlineData("QX41\u22122075\u2011A")] // minus sign, non-breaking hyphen
    [InlineData("QX41\u00A02075\u202FA")] // no-break spaces
    [InlineData("QX\u00AD41\u200B2075\uFEFFA")] // soft hyphen, zero-width space, byte order mark
    [InlineData("QX41\t2075\r\nA")]
    [InlineData("\uFF31\uFF38\uFF14\uFF11\uFF0D\uFF12\uFF10\uFF17\uFF15\uFF0D\uFF21")] // full width
    public void Another_way_of_writing_gives_the_same_key(string written) => Assert.Equal("QX412075A", NumberKey.Of(written));

    // The separators are those of the definition: white space, the dash, dot, slashes, underscore, and what is not printed.
    [Fact]
    public void Every_sign_of_ascii_is_a_separator_or_stays()
    {
        for (var sign = '\0'; sign <= '\u007F'; sign++)
        {
            var expected = sign is <= ' ' or '\u007F' || "-./\\_".Contains(sign, StringComparison.Ordinal) ? "AB" : $"A{char.ToUpperInvariant(sign)}B";
            Assert.Equal(expected, NumberKey.Of($"a{sign}B"));
        }
    }

    [Theory]
    [InlineData(128)] // one letter more than is worked on without asking for memory, and one less
    [InlineData(129)]
    public void Long_numbers_keep_every_letter(int letters) => Assert.Equal(new string('Q', letters), NumberKey.Of("-" + new string('q', letters - 1) + "-Q"));

    [Theory]
    [InlineData("marl:B-12", "marl:B12")]
    [InlineData("marl:B12", "marl:B12")]
    [InlineData("marl:b12", "marl:B12")]
    [InlineData("marl:B:1", "marl:B:1")]
    [InlineData("marl:\u0412\u0045", "marl:BE")]
    [InlineData("marl:", null)]
    [InlineData("marl:-", null)]
    [InlineData(":B12", null)]
    [InlineData("B12", null)]
    [InlineData("", null)]
    public void Key_of_a_part_is_found_without_its_parts(string text, string? key)
    {
        Assert.Equal(key, PartId.FindKey(text));
        Assert.Equal(key, PartId.Find(text)?.Key);
    }

    [Fact]
    public void A_slash_is_a_separator_in_all_its_shapes()
    {
        Assert.Equal("1234", NumberKey.Of("12/34"));
        Assert.Equal("1234", NumberKey.Of("12\u204434")); // fraction slash, which NFKC also makes of a written fraction
        Assert.Equal("1234", NumberKey.Of("12\u221534")); // division slash
    }

    // Source: Unicode Technical Standard 39, confusables.txt 14.0.0.
    [Theory]
    [InlineData("\u0410\u0412\u0421\u0415\u041D\u041A\u041C\u041E\u0420\u0422\u0423\u0425", "ABCEHKMOPTYX")] // Cyrillic
    [InlineData("\u0430\u0435\u043E\u0440\u0441\u0443\u0445", "AEOPCYX")] // Cyrillic, lower case
    [InlineData("\u0405\u0406\u0408\u0417", "SIJ3")]
    [InlineData("\u0391\u0392\u0395\u0396\u0397\u0399\u039A\u039C\u039D\u039F\u03A1\u03A4\u03A5\u03A7", "ABEZHIKMNOPTYX")] // Greek
    [InlineData("\u054D\u054F\u0555", "USO")] // Armenian
    [InlineData("M8\u00D71", "M8X1")]
    [InlineData("\u0131", "I")] // dotless i
    public void Foreign_letters_that_look_Latin_are_read_as_Latin(string written, string key) => Assert.Equal(key, NumberKey.Of(written));

    [Fact]
    public void Letters_that_look_like_nothing_Latin_stay() => Assert.Equal("\u0416\u03A912\u00C5", NumberKey.Of("\u0436\u03C9-12-\u00E5"));

    // Source: the ASCII rows of confusables.txt 14.0.0 are 1 and I to l, 0 to O and m to rn. A key makes none of them, and none of 5/S, 8/B, 2/Z, 6/G, 1/7.
    [Fact]
    public void Letters_and_digits_of_ASCII_stay_what_they_are()
    {
        const string Everything = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";
        Assert.Equal(Everything, NumberKey.Of(Everything));
    }

    [Theory]
    [InlineData("")]
    [InlineData(" - / . ")]
    public void Separators_only_give_an_empty_key(string written) => Assert.Equal("", NumberKey.Of(written));

    [Fact]
    public void Half_a_surrogate_pair_is_no_failure() => Assert.Equal("A\uFFFD1", NumberKey.Of("a\uD800-1"));

    [Fact]
    public void Byte_order_mark_turned_round_is_no_failure() => Assert.Equal("A\uFFFD1", NumberKey.Of("a\uFFFE-1"));

    [Fact]
    public void An_accent_that_a_separator_kept_apart_is_joined() => Assert.Equal(NumberKey.Of("\u00C11"), NumberKey.Of("A-\u03011"));

    [Fact]
    public void The_key_of_a_key_is_itself() =>
        Gen.String[Gen.Char, 0, 12].Sample(written => NumberKey.Of(NumberKey.Of(written)) == NumberKey.Of(written), iter: 20_000);

    [Fact]
    public void Case_and_separators_of_plain_numbers_do_not_count() =>
        Gen.Select(Gen.String[Gen.Char["0123456789abcdefghijklmnopqrstuvwxyz"], 0, 12], Gen.OneOf("-", " ", ".", "/", " - "), Gen.Int[0, 12])
            .Sample((plain, separator, place) =>
                string.Equals(NumberKey.Of(plain.Insert(Math.Min(place, plain.Length), separator)), plain.ToUpperInvariant(), StringComparison.Ordinal));
}
