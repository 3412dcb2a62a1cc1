namespace PartMatch.Core.Listings;

/// <summary>The longer code that a number stands inside: what is glued to it, and pieces that dashes, dots and underscores tie to it.</summary>
internal static class LongerCode
{
    // Ours, no source: more than a number's length of neighbours is no code.
    private const int Reach = 40;

    /// <param name="isTaken">Does another number stand at this key character?</param>
    /// <returns>As written; null where the number stands by itself.</returns>
    public static string? FindAround(KeyText keys, int from, int to, Func<int, bool> isTaken)
    {
        var left = from;
        while (left > Math.Max(0, from - Reach) && !isTaken(left - 1) && keys.IsWord(left - 1))
        {
            var piece = keys.Before[left] == KeyGap.Glued ? left - 1 : keys.Before[left] == KeyGap.Tied ? PieceBefore(keys, left) : left;
            if (piece == left)
            {
                break;
            }

            left = piece;
        }

        var right = to;
        while (right < Math.Min(keys.Length, to + Reach) && !isTaken(right) && keys.IsWord(right))
        {
            var piece = keys.Before[right] == KeyGap.Glued ? right + 1 : keys.Before[right] == KeyGap.Tied ? PieceBehind(keys, right) : right;
            if (piece == right)
            {
                break;
            }

            right = piece;
        }

        return left == from && right == to ? null : keys.Written(left, right);
    }

    private static int PieceBefore(KeyText keys, int end)
    {
        var start = end - 1;
        while (start > 0 && end - start < Reach && keys.IsGlued(start))
        {
            start--;
        }

        return IsOfTheCode(keys, start, end, end) ? start : end;
    }

    private static int PieceBehind(KeyText keys, int start)
    {
        var end = start + 1;
        while (end < keys.Length && end - start < Reach && keys.IsGlued(end))
        {
            end++;
        }

        return IsOfTheCode(keys, start, end, start) ? end : start;
    }

    // A word is none ("-pump", ".jpg"), nor is what begins a sentence (".It"), nor a second number behind a slash.
    private static bool IsOfTheCode(KeyText keys, int start, int end, int tie)
    {
        var written = keys.Written(start, end);
        var slash = keys.GapBefore(tie).ContainsAny('/', '\\');
        return keys.HasDigit(start, end)
            ? !slash || end - start <= 3
            : end - start <= 2 && !(char.IsUpper(written[0]) && written.Any(char.IsLower));
    }
}
