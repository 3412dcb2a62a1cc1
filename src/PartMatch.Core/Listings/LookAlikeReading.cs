using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Listings;

/// <summary>When a stretch of text may be read as a number that it only looks like. Ours, no source.</summary>
internal static class LookAlikeReading
{
    /// <summary>
    /// It has a digit, so no word is read as a number; white space breaks it only where the number has a separator; and what is read
    /// otherwise stands beside a digit, so "…-1147-C I have two" holds no C1.
    /// </summary>
    public static bool MayStand(KeyText keys, int from, PartNumber number)
    {
        var to = from + number.Key.Length;
        return keys.HasDigit(from, to) && (!keys.HasBlank(from, to) || Grouping.BlanksStandAtSeparators(keys, from, number))
            && EachDifferenceHasADigitBeside(keys, from, number.Key);
    }

    private static bool EachDifferenceHasADigitBeside(KeyText keys, int from, string key)
    {
        var to = from + key.Length;
        for (var chunk = from; chunk < to; chunk = keys.ChunkEnd(chunk))
        {
            var end = Math.Min(to, keys.ChunkEnd(chunk));
            if (!keys.HasDigit(chunk, end) && !keys.Key[chunk..end].SequenceEqual(key.AsSpan(chunk - from, end - chunk)))
            {
                return false;
            }
        }

        return true;
    }
}
