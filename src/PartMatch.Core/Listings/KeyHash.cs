namespace PartMatch.Core.Listings;

/// <summary>
/// A hash of folded key characters that can be had for any stretch of a text at once. A number is never taken for found by its hash: the
/// characters are compared.
/// </summary>
/// <remarks>Polynomial, modulo 2^64, with a finisher. Source: R. M. Karp and M. O. Rabin, IBM J. Res. Dev. 31(2):249–260, 1987 (from memory).</remarks>
internal static class KeyHash
{
    /// <summary>The longest stretch that is hashed; <see cref="Catalogue.NumberKey.MaxLength"/> is 40.</summary>
    public const int MaxLength = 63;

    private const ulong Multiplier = 0x9E3779B97F4A7C15;

    private static readonly ulong[] _powers = Powers();

    /// <summary>Of the whole.</summary>
    public static ulong Of(ReadOnlySpan<char> folded)
    {
        var hash = 0UL;
        foreach (var letter in folded)
        {
            hash = Next(hash, letter);
        }

        return Finish(hash);
    }

    /// <summary>Of every beginning of a text, the empty one first.</summary>
    public static ulong[] Beginnings(ReadOnlySpan<char> folded)
    {
        var hashes = new ulong[folded.Length + 1];
        for (var index = 0; index < folded.Length; index++)
        {
            hashes[index + 1] = Next(hashes[index], folded[index]);
        }

        return hashes;
    }

    /// <summary>Of a stretch of at most <see cref="MaxLength"/> characters.</summary>
    public static ulong Of(ulong[] beginnings, int start, int length) => Finish(beginnings[start + length] - (beginnings[start] * _powers[length]));

    private static ulong Next(ulong hash, char letter) => unchecked((hash * Multiplier) + letter + 1);

    // The upper bits choose the place in a table, so all must depend on all. Source: D. Stafford, "Better bit mixing", 2011, variant 13 (from memory).
    private static ulong Finish(ulong hash)
    {
        hash = (hash ^ (hash >> 30)) * 0xBF58476D1CE4E5B9;
        hash = (hash ^ (hash >> 27)) * 0x94D049BB133111EB;
        return hash ^ (hash >> 31);
    }

    private static ulong[] Powers()
    {
        var powers = new ulong[MaxLength + 1];
        powers[0] = 1;
        for (var length = 1; length < powers.Length; length++)
        {
            powers[length] = unchecked(powers[length - 1] * Multiplier);
        }

        return powers;
    }
}
