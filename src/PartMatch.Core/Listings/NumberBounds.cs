namespace PartMatch.Core.Listings;

/// <summary>Where a known number may be cut out of a text.</summary>
internal static class NumberBounds
{
    // Ours, no source: cut out of a longer code, fewer characters are coincidence once the base has a million numbers.
    private const int ShortestInsideACode = 6;

    private const int ShortestWord = 3;

    /// <summary>
    /// Never through a run of digits: those are other digits' neighbours by chance. Through letters only where the piece of the word that is
    /// taken has a digit, so that the p of "pump" begins no number.
    /// </summary>
    public static bool Allow(KeyText keys, int from, int to)
    {
        if (keys.CutsDigits(from) || keys.CutsDigits(to) || (to - from < ShortestInsideACode && (keys.IsGlued(from) || keys.IsGlued(to))))
        {
            return false;
        }

        return (!keys.CutsLetters(from) || keys.HasDigit(from, Math.Min(to, keys.ChunkEnd(from))))
            && ((!keys.CutsLetters(to) && !IsTiedToWord(keys, to)) || LastPieceHasDigit(keys, from, to));
    }

    // "P-26-1147 C-clip"
    private static bool IsTiedToWord(KeyText keys, int to)
    {
        if (to + ShortestWord > keys.Length || keys.Before[to] != KeyGap.Tied)
        {
            return false;
        }

        for (var index = to; index < to + ShortestWord; index++)
        {
            if (!keys.IsWord(index) || keys.IsDigit(index) || (index > to && keys.Before[index] != KeyGap.Glued))
            {
                return false;
            }
        }

        return true;
    }

    private static bool LastPieceHasDigit(KeyText keys, int from, int to)
    {
        var first = to - 1;
        while (first > from && keys.Before[first] <= KeyGap.Tied)
        {
            first--;
        }

        return keys.HasDigit(first, to);
    }
}
