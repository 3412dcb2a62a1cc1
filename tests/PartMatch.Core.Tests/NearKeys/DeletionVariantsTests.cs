using System.Runtime.Intrinsics;
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
    [InlineData("AAB", 5)] // AAB, AB, AA, B, A: either A leaves the same, which comes twice where two are taken
    [InlineData("1234567890", 56)] // 1 + 10 + 45
    public void Each_rest_has_a_hash_of_its_own(string key, int rests)
    {
        var hashes = HashesOf(key, 2);
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

    // 0x01 stands for an entry at place 1: the same rest with the same places taken is near, with far ones it is not; with one taken it always is.
    [Theory]
    [InlineData(2, 5, 2, 5, true)]
    [InlineData(2, 5, 1, 5, true)] // neighbours, for two that are swapped
    [InlineData(2, 5, 3, 6, true)]
    [InlineData(2, 5, 2, 8, false)]
    [InlineData(2, 5, 7, 8, false)]
    [InlineData(0, 1, 0, 1, true)]
    [InlineData(14, 15, 14, 15, true)]
    [InlineData(14, 15, 13, 14, true)]
    public void The_same_rest_counts_where_about_the_same_places_were_taken(int first, int second, int storedFirst, int storedSecond, bool near)
    {
        const ulong Hash = 0x123456789ABCDEF0;
        var stored = Vector256.Create(new DeletionVariant(Hash, storedFirst, storedSecond).EntryOf(1));
        Assert.Equal(near, new DeletionVariant(Hash, first, second).CanBeNear(stored) != 0);
        Assert.NotEqual(0u, new DeletionVariant(Hash).CanBeNear(stored));
        Assert.NotEqual(0u, new DeletionVariant(Hash, first, second).CanBeNear(Vector256.Create(new DeletionVariant(Hash).EntryOf(1))));
    }

    private static ulong[] HashesOf(string key, int most)
    {
        var bytes = new byte[key.Length];
        ByteKey.Write(key, bytes);
        var variants = new DeletionVariant[DeletionVariants.Most(key.Length)];
        return [.. variants[..DeletionVariants.Write(bytes, most, variants)].Select(variant => variant.Hash)];
    }
}
