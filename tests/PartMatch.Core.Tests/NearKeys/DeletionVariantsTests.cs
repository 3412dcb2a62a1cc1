using CsCheck;
using PartMatch.Core.LookAlikes;
using PartMatch.Core.NearKeys;
using Xunit;

namespace PartMatch.Core.Tests.NearKeys;

public sealed class DeletionVariantsTests
{
    [Theory]
    [InlineData("", 1)]
    [InlineData("ABC", 7)] // ABC, BC, AC, AB, C, B, A
    [InlineData("AAB", 5)] // AAB, AB, AA, B, A: either A leaves the same
    [InlineData("1234567890", 56)] // 1 + 10 + 45
    public void Each_rest_has_one_hash_and_equal_neighbours_leave_one_rest(string key, int rests)
    {
        var hashes = HashesOf(key, 2);
        Assert.Equal(rests, hashes.Length);
        Assert.Equal(rests, hashes.Distinct().Count());
    }

    [Fact]
    public void Room_is_enough_for_a_key_without_equal_neighbours() => Assert.Equal(DeletionVariants.Most(10), HashesOf("1234567890", 2).Length);

    [Fact]
    public void Keys_within_the_limit_have_a_rest_in_common() =>
        (from letters in Gen.OneOf("01", "0123456789AC")
         from key in Gen.String[Gen.Char[letters], 0, ByteKey.MaxLength]
         from limit in Gen.Int[1, 2]
         from changes in EditedKey.Changes(letters, limit)
         select (key, other: EditedKey.Of(key, changes), limit))
        .Where(pair => pair.other.Length <= AskedKey.MaxLength && NumberDistance.OptimalStringAlignment(pair.key, pair.other) <= pair.limit)
        .Sample(pair => HashesOf(pair.key, 2).Intersect(HashesOf(pair.other, pair.limit)).Any(), iter: 50_000);

    [Fact]
    public void What_moved_up_hashes_as_if_it_had_stood_there() => Assert.Equal(HashesOf("ACE", 1)[0], HashesOf("ABCDE", 2).Intersect(HashesOf("ACE", 1)).Single());

    private static ulong[] HashesOf(string key, int most)
    {
        var bytes = new byte[key.Length];
        ByteKey.Write(key, bytes);
        var hashes = new ulong[DeletionVariants.Most(key.Length)];
        return hashes[..DeletionVariants.Write(bytes, most, hashes)];
    }
}
