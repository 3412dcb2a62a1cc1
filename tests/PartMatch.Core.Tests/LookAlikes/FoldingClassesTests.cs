using CsCheck;
using PartMatch.Core.Catalogue;
using PartMatch.Core.LookAlikes;
using Xunit;

namespace PartMatch.Core.Tests.LookAlikes;

public sealed class FoldingClassesTests
{
    [Theory]
    [InlineData("0OQD", "0000")]
    [InlineData("1IL", "111")]
    [InlineData("2Z", "22")]
    [InlineData("5S", "55")]
    [InlineData("8B", "88")]
    [InlineData("6G", "66")]
    public void A_class_folds_to_its_digit(string characters, string folded) => Assert.Equal(folded, FoldingClasses.Fold(characters));

    [Fact]
    public void Seven_and_every_character_of_no_class_stay() =>
        Assert.Equal("3479ACEFHJKMNPRTUVWXY\u00C5", FoldingClasses.Fold("3479ACEFHJKMNPRTUVWXY\u00C5"));

    // Source: ISO 3779 leaves I, O and Q out of vehicle identification numbers, because they are taken for digits.
    [Fact]
    public void Letters_that_vehicle_identification_numbers_avoid_fold_to_a_digit() =>
        Assert.All("IOQ", letter => Assert.True(char.IsAsciiDigit(FoldingClasses.Fold(letter))));

    // Source: Unicode Technical Standard 39, confusables.txt 14.0.0: 1, I and l share a skeleton, so do 0 and O; 5/S, 8/B, 2/Z and 6/G do not.
    [Fact]
    public void What_is_confusable_by_Unicode_folds_together_and_so_do_the_pairs_it_lacks()
    {
        Assert.Equal(FoldingClasses.Fold("10"), FoldingClasses.Fold("IO"));
        Assert.Equal(FoldingClasses.Fold("10"), FoldingClasses.Fold("LO"));
        Assert.Equal(FoldingClasses.Fold("5826"), FoldingClasses.Fold("SBZG"));
        Assert.NotEqual(FoldingClasses.Fold("1"), FoldingClasses.Fold("7"));
    }

    // Source: D. Crockford, Base 32: o and O read as 0; i, I, l and L as 1; hyphens ignored.
    [Theory]
    [InlineData("o", "0")]
    [InlineData("iIlL", "1111")]
    [InlineData("1-A-o", "1A0")]
    public void Reads_what_Base_32_reads(string written, string folded) => Assert.Equal(folded, FoldingClasses.Fold(NumberKey.Of(written)));

    [Fact]
    public void Every_class_names_its_source_or_says_that_it_has_none() =>
        Assert.All(FoldingClasses.All, foldingClass => Assert.Matches("ISMP|ISO 3779|common practice, no source", foldingClass.Source));

    [Fact]
    public void Folding_twice_changes_nothing_and_keeps_the_length() =>
        Gen.String[Gen.Char['!', '~'], 0, 20].Sample(key =>
            FoldingClasses.Fold(FoldingClasses.Fold(key)) == FoldingClasses.Fold(key) && FoldingClasses.Fold(key).Length == key.Length);
}
