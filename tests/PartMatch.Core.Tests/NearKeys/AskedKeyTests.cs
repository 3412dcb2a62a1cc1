using CsCheck;
using PartMatch.Core.LookAlikes;
using PartMatch.Core.NearKeys;
using Xunit;

namespace PartMatch.Core.Tests.NearKeys;

public sealed class AskedKeyTests
{
    // Two figures only: many ways to the same key, so every mix of edits comes up.
    private static readonly Gen<(string Stored, string Asked)> _pair =
        from letters in Gen.OneOf("01", "012", "0123456789AC")
        from stored in Gen.String[Gen.Char[letters], 0, ByteKey.MaxLength]
        from unrelated in Gen.String[Gen.Char[letters], 0, AskedKey.MaxLength]
        from changes in EditedKey.Changes(letters, most: 4)
        from far in Gen.Int[0, 9]
        select (stored, far == 0 ? unrelated : EditedKey.Of(stored, changes));

    [Fact]
    public void Edits_within_the_limit_are_those_of_the_full_distance() =>
        _pair.Where(pair => pair.Asked.Length <= AskedKey.MaxLength).Sample(
            pair =>
            {
                var edits = NumberDistance.OptimalStringAlignment(pair.Asked, pair.Stored);
                return Enumerable.Range(0, 3).All(limit => EditsTo(pair.Asked, pair.Stored, limit) is var found && (edits <= limit ? found == edits : found > limit));
            },
            iter: 200_000);

    [Theory]
    [InlineData("", "", 0)]
    [InlineData("", "A", 1)]
    [InlineData("AB", "", 2)]
    [InlineData("1234567890ABCDEF", "1234567890ABCDEF", 0)] // all sixteen characters
    [InlineData("1234567890ABCDEFGH", "1234567890ABCDEF", 2)] // two more than a stored key can have
    [InlineData("12XX34567890ABCDEF", "1234567890ABCDEF", 2)]
    [InlineData("2134567890ABCDFE", "1234567890ABCDEF", 2)] // both ends swapped
    [InlineData("CA", "ABC", 3)] // no part is edited twice
    public void Edits_at_the_ends_of_the_register_are_counted(string asked, string stored, int edits) => Assert.Equal(edits, EditsTo(asked, stored, 2));

    [Theory]
    [InlineData("12\u041634", "12\u041734")] // two characters that take more than a byte
    [InlineData("12\u00FE34", "12\u00FF34")]
    public void A_key_of_characters_beyond_a_byte_is_not_stored_so(string one, string other)
    {
        Assert.False(ByteKey.Fits(one));
        Assert.False(ByteKey.Fits(other));
    }

    private static int EditsTo(string asked, string stored, int limit)
    {
        var bytes = new byte[asked.Length];
        ByteKey.Write(asked, bytes);
        return new AskedKey(bytes).EditsTo(ByteKey.Of(stored), limit);
    }
}
