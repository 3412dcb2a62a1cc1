using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Listings;

/// <summary>A number of which only the end is written, after another: the C of "P-26-1147-B/-C".</summary>
internal sealed record SuffixSpan(int From, int To, string Key, IReadOnlyList<PartNumber> Numbers);

/// <summary>
/// Reads "P-26-1147-B/-C", "P-26-1147 B, C" and "P-26-1147-B or C": ends of up to three characters, of the same sort and case as the end they
/// stand in for. Only where the base knows the number that comes of it; otherwise, and for ranges ("B to D"), nothing is made of it.
/// </summary>
internal static class SuffixList
{
    private const int Longest = 3;
    private const int ShortestStem = 4;

    private static readonly HashSet<string> _and = new(StringComparer.OrdinalIgnoreCase) { "and", "or", "und", "oder", "bzw", "et", "ou", "och", "eller", "y", "o", "u" };

    /// <param name="key">Of the number that stands from one key character up to the other.</param>
    /// <returns>In the order of the text; empty where no list follows.</returns>
    public static List<SuffixSpan> Behind(NumberIndex index, KeyText keys, int from, int to, string key)
    {
        var end = EndOf(keys, from, to);
        var found = new List<SuffixSpan>();
        if (to - end > Longest || end - from < ShortestStem || key.Length != to - from)
        {
            return found;
        }

        for (var at = to; FindNext(keys, end, to, at) is { } next; at = next.To)
        {
            var whole = string.Concat(key.AsSpan(0, end - from), keys.Key[next.From..next.To]);
            if (index.WithKey(whole) is not { Length: > 0 } numbers || ShortNumbers.IsShort(whole))
            {
                break;
            }

            found.Add(new SuffixSpan(next.From, next.To, whole, numbers));
        }

        return found;
    }

    // Where the last run of letters, or of digits, begins.
    private static int EndOf(KeyText keys, int from, int to)
    {
        var start = to - 1;
        while (start > from && keys.IsGlued(start) && keys.IsDigit(start) == keys.IsDigit(start - 1))
        {
            start--;
        }

        return start;
    }

    private static (int From, int To)? FindNext(KeyText keys, int end, int to, int at)
    {
        if (at >= keys.Length || Divider(keys, at) is not { } divided || divided.From >= keys.Length || !keys.IsWord(divided.From))
        {
            return null;
        }

        var (first, next) = (divided.From, divided.From + 1);
        while (next < keys.Length && next - first <= Longest && keys.IsGlued(next))
        {
            next++;
        }

        return next - first <= Longest && IsSameSort(keys, end, to, first, next) && IsLast(keys, next, divided.Tight) ? (first, next) : null;
    }

    /// <param name="From">Behind it.</param>
    /// <param name="Tight">A slash, or a dash before what follows: then it is no word of the sentence.</param>
    private readonly record struct Divided(int From, bool Tight);

    private static Divided? Divider(KeyText keys, int at)
    {
        var gap = keys.GapBefore(at);
        if (keys.IsWord(at) && gap.Contains('/'))
        {
            return new Divided(at, true);
        }

        var behind = at;
        if (keys.Key[at] is ',' or '&' or '+')
        {
            behind = at + 1;
        }
        else if (keys.Before[at] == KeyGap.Blank)
        {
            while (behind < keys.Length && behind - at < 5 && (behind == at || keys.IsGlued(behind)))
            {
                behind++;
            }

            behind = _and.Contains(keys.Written(at, behind)) && behind < keys.Length && keys.Before[behind] == KeyGap.Blank ? behind : at;
        }

        return behind == at || behind >= keys.Length || keys.Before[behind] == KeyGap.LineBreak
            ? null
            : new Divided(behind, keys.Text[keys.Start(behind) - 1] is '-' or '\u2010' or '\u2011' or '\u2013');
    }

    private static bool IsSameSort(KeyText keys, int end, int to, int first, int next)
    {
        for (var index = first; index < next; index++)
        {
            var (letter, model) = (keys.Text[keys.Start(index)], keys.Text[keys.Start(end)]);
            if (keys.IsDigit(index) != keys.IsDigit(to - 1) || char.IsUpper(letter) != char.IsUpper(model))
            {
                return false;
            }
        }

        return true;
    }

    // "P-26-1147-B, A NEW ONE": a word goes on behind it.
    private static bool IsLast(KeyText keys, int next, bool tight) =>
        next >= keys.Length || (tight && keys.Before[next] != KeyGap.Glued) || !keys.IsWord(next) || keys.Before[next] == KeyGap.LineBreak
        || (keys.Before[next] == KeyGap.Tied && keys.Text[keys.Start(next) - 1] == '/') || (keys.Before[next] == KeyGap.Blank && Divider(keys, next) is not null);
}
