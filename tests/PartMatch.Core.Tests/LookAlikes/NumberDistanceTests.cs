using CsCheck;
using PartMatch.Core.LookAlikes;
using Xunit;

namespace PartMatch.Core.Tests.LookAlikes;

public sealed class NumberDistanceTests
{
    // Few letters, so that repeats and swaps are common.
    private static readonly Gen<string> _text = Gen.String[Gen.Char["ABC"], 0, 9];
    private static readonly Gen<string> _key = Gen.String[Gen.Char["0123456789ABO"], 0, 40];
    private static readonly Gen<(string, string)> _pair = Gen.Select(_text, _text);

    // Source: V. I. Levenshtein 1966; the pairs stand in the test data of many libraries.
    [Theory]
    [InlineData("kitten", "sitting", 3)]
    [InlineData("Saturday", "Sunday", 3)]
    [InlineData("", "abc", 3)]
    [InlineData("", "", 0)]
    public void Levenshtein_distance_is_as_published(string left, string right, int edits) => Assert.Equal(edits, NumberDistance.Levenshtein(left, right));

    // Source: F. J. Damerau, CACM 7(3):171–176, 1964; R. Lowrance and R. A. Wagner, J. ACM 22:177–183, 1975. The unrestricted distance of CA and ABC would be 2.
    [Theory]
    [InlineData("fuor", "four", 1)]
    [InlineData("abcd", "acb", 2)]
    [InlineData("jellyifhs", "jellyfish", 2)]
    [InlineData("CA", "ABC", 3)]
    public void Optimal_string_alignment_is_as_published(string left, string right, int edits) =>
        Assert.Equal(edits, NumberDistance.OptimalStringAlignment(left, right));

    [Fact]
    public void A_swap_of_neighbours_is_two_edits_to_one_distance_and_one_to_the_other()
    {
        Assert.Equal(2, NumberDistance.Levenshtein("QX412075A", "QX412705A"));
        Assert.Equal(1, NumberDistance.OptimalStringAlignment("QX412075A", "QX412705A"));
    }

    [Fact]
    public void Both_distances_are_what_their_definitions_say() =>
        _pair.Sample(
            (left, right) => NumberDistance.OptimalStringAlignment(left, right) == EditDistanceByDefinition.OptimalStringAlignment(left, right)
                && NumberDistance.Levenshtein(left, right) == EditDistanceByDefinition.Levenshtein(left, right),
            iter: 5_000);

    // A general-purpose library as a second opinion, over longer texts than the definitions can be followed on.
    [Fact]
    public void Both_distances_agree_with_a_general_purpose_library()
    {
        var (alignment, levenshtein) = (new F23.StringSimilarity.OptimalStringAlignment(), new F23.StringSimilarity.Levenshtein());
        Gen.Select(_key, _key).Sample(
            (left, right) => NumberDistance.OptimalStringAlignment(left, right) == (int)alignment.Distance(left, right)
                && NumberDistance.Levenshtein(left, right) == (int)levenshtein.Distance(left, right),
            iter: 20_000);
    }

    [Fact]
    public void Within_a_limit_is_the_distance_and_beyond_it_one_more_than_the_limit() =>
        Gen.Select(_text, _text, Gen.Int[0, 4]).Sample(
            (left, right, limit) => NumberDistance.OptimalStringAlignmentWithin(left, right, limit)
                == Math.Min(EditDistanceByDefinition.OptimalStringAlignment(left, right), limit + 1),
            iter: 5_000);

    [Fact]
    public void A_distance_is_the_same_from_either_side_and_from_either_end() =>
        _pair.Sample((left, right) =>
        {
            var edits = NumberDistance.OptimalStringAlignment(left, right);
            return edits == NumberDistance.OptimalStringAlignment(right, left)
                && edits == NumberDistance.OptimalStringAlignment(Reversed(left), Reversed(right));
        });

    [Fact]
    public void No_distance_means_equal_and_the_lengths_bound_it() =>
        _pair.Sample((left, right) =>
        {
            var edits = NumberDistance.OptimalStringAlignment(left, right);
            return edits == 0 == (left == right) && edits >= Math.Abs(left.Length - right.Length) && edits <= Math.Max(left.Length, right.Length);
        });

    [Fact]
    public void A_swap_counts_one_instead_of_two_and_nothing_else_changes() =>
        _pair.Sample((left, right) =>
        {
            var (swaps, plain) = (NumberDistance.OptimalStringAlignment(left, right), NumberDistance.Levenshtein(left, right));
            return swaps <= plain && plain <= 2 * swaps;
        });

    [Fact]
    public void Levenshtein_distance_obeys_the_triangle_inequality_and_the_alignment_does_not()
    {
        Gen.Select(_text, _text, _text).Sample((a, b, c) => NumberDistance.Levenshtein(a, c) <= NumberDistance.Levenshtein(a, b) + NumberDistance.Levenshtein(b, c));

        // By hand: CA → AC is one swap, AC → ABC one insertion, yet CA → ABC is 3. An index that prunes by the triangle would lose numbers.
        Assert.Equal(1, NumberDistance.OptimalStringAlignment("CA", "AC"));
        Assert.Equal(1, NumberDistance.OptimalStringAlignment("AC", "ABC"));
        Assert.Equal(3, NumberDistance.OptimalStringAlignment("CA", "ABC"));
    }

    [Fact]
    public void Texts_longer_than_any_key_are_compared_too()
    {
        var longText = new string('A', 300);
        Assert.Equal(301, NumberDistance.OptimalStringAlignment(longText, new string('B', 301)));
        Assert.Equal(3, NumberDistance.OptimalStringAlignmentWithin(longText, "B" + longText[..^2] + "BB", 2));
    }

    private static string Reversed(string text) => string.Concat(text.Reverse());
}
