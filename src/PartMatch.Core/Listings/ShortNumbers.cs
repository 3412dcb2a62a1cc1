using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Listings;

/// <summary>
/// Known numbers that are written everywhere without being meant: grades, marks, years, pieces. They count only where they stand alone and
/// it is said that a number stands there. Limits are ours, no source.
/// </summary>
internal static class ShortNumbers
{
    private const int LongEnough = 5;
    private const int DigitsThatCanBeMeant = 6;
    private const int DigitsThatMeanThemselves = 9;

    /// <summary>Fewer than five characters, only digits, or no digit at all?</summary>
    public static bool IsShort(ReadOnlySpan<char> key) =>
        key.Length < LongEnough || !key.ContainsAnyInRange('0', '9') || !key.ContainsAnyExceptInRange('0', '9');

    /// <summary>
    /// Alone, unbroken unless nothing else is stated, and told. Digits are allowed more the more of them there are: from six on it is enough to stand in a title or to be
    /// parted as in the base ("77-2041"); nine or more need nobody to tell, and white space may break them.
    /// </summary>
    public static bool MayStand(PassageText passage, int from, PartNumber number)
    {
        var keys = passage.Keys;
        var to = from + number.Key.Length;
        if (!keys.StandsAlone(from, to))
        {
            return false;
        }

        var digits = number.Key.AsSpan().ContainsAnyExceptInRange('0', '9') ? 0 : number.Key.Length;
        var isAllThatIsStated = passage.Passage.Stated is not null && from == 0 && to == keys.Length;
        if (keys.HasBlank(from, to) && !isAllThatIsStated && !(digits >= DigitsThatMeanThemselves && EndsAtDigits(keys, from, to)))
        {
            return false;
        }

        return digits >= DigitsThatMeanThemselves
            || (digits >= DigitsThatCanBeMeant && (passage.IsTitle || Grouping.IsThatOf(keys, from, number)))
            || passage.IsToldAt(keys.Start(from));
    }

    // Digits on the other side of a blank would as well belong to it: a telephone number.
    private static bool EndsAtDigits(KeyText keys, int from, int to) => (from == 0 || !keys.IsDigit(from - 1)) && (to == keys.Length || !keys.IsDigit(to));
}
