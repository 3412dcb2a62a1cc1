using System.Text.RegularExpressions;

namespace PartMatch.Core.Listings;

/// <summary>A stretch of key characters that has the shape of a part number.</summary>
internal readonly record struct ShapedSpan(int From, int To);

/// <summary>
/// Finds what is written like a part number and is none of the base: letters and digits in one piece or joined by dashes, dots and slashes,
/// 5 to 25 of them, with a digit and either a letter or six digits. Blanks are taken for part of it only between three or more groups
/// ("QX41 2075 A"), or two where words such as "part number" stand before. What is left out, see <see cref="OtherShapes"/>. Ours, no source.
/// </summary>
internal static partial class NumberShapes
{
    private const int Shortest = 5;
    private const int Longest = 25;
    private const int DigitsWithoutLetter = 6;
    private const int LongestAddress = 200;

    /// <param name="taken">Known numbers, in the order of the text.</param>
    public static List<ShapedSpan> Find(PassageText passage, IReadOnlyList<KnownSpan> taken)
    {
        var keys = passage.Keys;
        var found = new List<ShapedSpan>();
        var known = 0;
        for (var from = 0; from < keys.Length;)
        {
            var to = TokenEnd(keys, from);
            var end = to;
            while (known < taken.Count && taken[known].To <= from)
            {
                known++;
            }

            if (keys.HasDigit(from, to) && !(known < taken.Count && taken[known].From < to))
            {
                end = Math.Max(to, JoinedEnd(passage, from, to, known < taken.Count ? taken[known].From : keys.Length));
                AddShaped(passage, from, end, found);
            }

            from = Math.Max(end, from + 1);
        }

        return found;
    }

    // A sign such as a comma is a token of its own, and none.
    private static int TokenEnd(KeyText keys, int from)
    {
        var to = from + 1;
        while (keys.IsWord(from) && to < keys.Length && keys.IsWord(to) && keys.Before[to] <= KeyGap.Tied)
        {
            to++;
        }

        return to;
    }

    private static void AddShaped(PassageText passage, int from, int to, List<ShapedSpan> found)
    {
        var keys = passage.Keys;
        (from, to) = WithoutWords(keys, from, to);
        if (to - from is < Shortest or > 2 * Longest || OtherShapes.IsOne(passage, from, to))
        {
            return;
        }

        var slash = SlashBetweenNumbers(keys, from, to);
        if (slash > 0)
        {
            AddShaped(passage, from, slash, found);
            AddShaped(passage, slash, to, found);
        }
        else if (IsShaped(keys, from, to) && !IsInAddress(keys, from, to))
        {
            found.Add(new ShapedSpan(from, to));
        }
    }

    private static bool IsShaped(KeyText keys, int from, int to)
    {
        if (to - from is < Shortest or > Longest)
        {
            return false;
        }

        var digits = keys.CountDigits(from, to);
        return digits > 0 && (digits < to - from || digits >= DigitsWithoutLetter);
    }

    // "water-pump-QX41-2075-A.jpg": pieces of three or more letters that are not all capitals are words.
    private static (int From, int To) WithoutWords(KeyText keys, int from, int to)
    {
        for (var end = PieceEnd(keys, from, to); end < to && IsWordPiece(keys, from, end); end = PieceEnd(keys, from, to))
        {
            from = end;
        }

        for (var start = PieceStart(keys, from, to); start > from && IsWordPiece(keys, start, to); start = PieceStart(keys, from, to))
        {
            to = start;
        }

        return (from, to);
    }

    private static bool IsWordPiece(KeyText keys, int from, int to) =>
        to - from >= 3 && !keys.HasDigit(from, to) && keys.Written(from, to).Any(char.IsLower);

    private static int PieceEnd(KeyText keys, int from, int to)
    {
        var end = from + 1;
        while (end < to && keys.Before[end] == KeyGap.Glued)
        {
            end++;
        }

        return Math.Min(end, to);
    }

    private static int PieceStart(KeyText keys, int from, int to)
    {
        var start = Math.Max(from, to - 1);
        while (start > from && keys.Before[start] == KeyGap.Glued)
        {
            start--;
        }

        return start;
    }

    // "QX41-2075-A/QX41-2076-A" is two numbers, "QX41-2075/2" is one. Where the slash stands, or 0.
    private static int SlashBetweenNumbers(KeyText keys, int from, int to)
    {
        for (var cut = from + 1; cut < to; cut++)
        {
            if (keys.Before[cut] == KeyGap.Tied && keys.GapBefore(cut).Contains('/')
                && IsShaped(keys, from, cut) && keys.HasDigit(cut, to) && to - cut >= Shortest)
            {
                return cut;
            }
        }

        return 0;
    }

    private static int JoinedEnd(PassageText passage, int from, int to, int limit)
    {
        var keys = passage.Keys;
        var (end, groups) = (to, 1);
        for (; end < limit && groups < 6 && IsGroup(keys, from, to, false); groups++)
        {
            var next = TokenEnd(keys, end);
            if (keys.Before[end] != KeyGap.Blank || next > limit || !keys.IsWord(end) || !IsGroup(keys, end, next, true) || next - from > Longest)
            {
                break;
            }

            end = next;
        }

        var enough = groups >= 3 || (groups == 2 && passage.IsToldAt(keys.Start(from)));
        return enough && keys.CountDigits(from, end) >= 4 ? end : to;
    }

    // Capitals and digits only; the first mixed, or up to three letters; a single letter or two or more digits after it.
    private static bool IsGroup(KeyText keys, int from, int to, bool later)
    {
        var written = keys.Written(from, to);
        return later ? LaterGroup().IsMatch(written) : FirstGroup().IsMatch(written);
    }

    private static bool IsInAddress(KeyText keys, int from, int to)
    {
        var text = keys.Text;
        var (start, end) = (keys.Start(from), keys.End(to - 1));
        while (start > 0 && !char.IsWhiteSpace(text[start - 1]) && end - start < LongestAddress)
        {
            start--;
        }

        while (end < text.Length && !char.IsWhiteSpace(text[end]) && end - start < LongestAddress)
        {
            end++;
        }

        return Address().IsMatch(text.AsSpan(start, end - start));
    }

    [GeneratedRegex("^[A-Z]{0,3}[0-9]*[A-Z]?[0-9]{0,4}$", RegexOptions.CultureInvariant)]
    private static partial Regex FirstGroup();

    [GeneratedRegex("^([A-Z]{0,2}[0-9]{2,5}[A-Z]?|[A-Z])$", RegexOptions.CultureInvariant)]
    private static partial Regex LaterGroup();

    [GeneratedRegex(@"@|://|^www\.|\.(com|net|org|example|html?|php|aspx?)\b", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Address();
}
