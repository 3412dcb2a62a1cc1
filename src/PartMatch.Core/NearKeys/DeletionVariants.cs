using System.Runtime.Intrinsics;

namespace PartMatch.Core.NearKeys;

/// <summary>What is left of a key when up to two of its characters are taken away, as hashes.</summary>
/// <remarks>
/// Two keys within k edits have such a rest in common, k characters or fewer taken from each: a substitution takes one from both, an insertion or a deletion
/// one from one of them, and of two swapped neighbours the same one goes from both. T. Bocek, E. Hunt, B. Stiller, Fast Similarity Search in Large
/// Dictionaries, University of Zurich, 2007. The hash is a sum over places, so each rest costs one addition: what stands behind one or two lost
/// characters is summed beforehand as moved up by one or two places.
/// </remarks>
internal static class DeletionVariants
{
    /// <summary>Room enough for the variants of a key of so many characters.</summary>
    public static int Most(int length) => 1 + length + (length * (length - 1) / 2);

    private static readonly ulong[] _weights = Weights();

    /// <summary>The rests of a stored key with up to two characters taken away.</summary>
    public static int Write(Vector128<byte> key, Span<DeletionVariant> variants)
    {
        Span<byte> bytes = stackalloc byte[ByteKey.MaxLength];
        key.CopyTo(bytes);
        return Write(bytes[..ByteKey.LengthOf(key)], 2, variants);
    }

    /// <summary>All rests: the key itself, then what one character taken away leaves, then two.</summary>
    /// <param name="most">Characters that are taken away at most, 1 or 2.</param>
    /// <returns>How many there are.</returns>
    public static int Write(ReadOnlySpan<byte> key, int most, Span<DeletionVariant> variants)
    {
        var length = key.Length;
        Span<ulong> kept = stackalloc ulong[AskedKey.MaxLength + 1];
        Span<ulong> movedOnce = stackalloc ulong[AskedKey.MaxLength + 1];
        Span<ulong> movedTwice = stackalloc ulong[AskedKey.MaxLength + 1];
        (kept[0], movedOnce[0], movedTwice[0]) = (0, 0, 0);
        for (var place = 0; place < length; place++)
        {
            kept[place + 1] = kept[place] + (key[place] * _weights[place + 2]);
            movedOnce[place + 1] = movedOnce[place] + (key[place] * _weights[place + 1]);
            movedTwice[place + 1] = movedTwice[place] + (key[place] * _weights[place]);
        }

        var count = 0;
        variants[count++] = new DeletionVariant(Mixed(kept[length]));
        for (var lost = 0; lost < length; lost++)
        {
            // Of a run of equal characters it does not matter which is taken.
            if (lost == 0 || key[lost] != key[lost - 1])
            {
                variants[count++] = new DeletionVariant(Mixed(kept[lost] + movedOnce[length] - movedOnce[lost + 1]));
            }
        }

        for (var first = 0; most > 1 && first < length; first++)
        {
            for (var second = first + 1; second < length; second++)
            {
                var sum = kept[first] + movedOnce[second] - movedOnce[first + 1] + movedTwice[length] - movedTwice[second + 1];
                variants[count++] = new DeletionVariant(Mixed(sum), first, second);
            }
        }

        return count;
    }

    // The sum alone would put keys that count on into a pattern.
    private static ulong Mixed(ulong sum)
    {
        sum ^= sum >> 32;
        sum *= 0x9E3779B97F4A7C15;
        return sum ^ (sum >> 29);
    }

    // Odd numbers from the generator SplitMix64: G. L. Steele, D. Lea, C. H. Flood, OOPSLA 2014.
    private static ulong[] Weights()
    {
        var weights = new ulong[AskedKey.MaxLength + 2];
        for (var place = 0; place < weights.Length; place++)
        {
            var mixed = (ulong)(place + 1) * 0x9E3779B97F4A7C15;
            mixed = (mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9;
            mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EB;
            weights[place] = (mixed ^ (mixed >> 31)) | 1;
        }

        return weights;
    }
}
