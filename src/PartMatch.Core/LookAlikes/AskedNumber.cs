using PartMatch.Core.Catalogue;

namespace PartMatch.Core.LookAlikes;

/// <summary>A number asked about, resolved: the parts it can mean and the numbers near it.</summary>
/// <param name="Known">Ids of the parts it can mean, in ordinal order.</param>
/// <param name="Narrows">It stands on those parts only as a casting mark or a grade, which narrows, never identifies.</param>
/// <param name="Written">Every number of the base with this key, by maker, as written, then part.</param>
/// <param name="Near">Every number within the limit that could be taken for it, ordered by cost, key, part; without the asked number itself.</param>
internal sealed record AskedNumber(IReadOnlyList<string> Known, bool Narrows, IReadOnlyList<PartNumber> Written, IReadOnlyList<NearNumber> Near)
{
    public static AskedNumber Resolve(LookAlikeIndex index, string number, string? maker)
    {
        var key = NumberKey.Of(number);
        return Resolve(index.Find(key), key, maker);
    }

    /// <param name="found">Every number near the key; <see cref="Near"/> keeps its order.</param>
    public static AskedNumber Resolve(IReadOnlyList<NearNumber> found, string key, string? maker)
    {
        PartNumber[] equal = [.. found.Where(near => IsWritten(near, key) && (maker is null || near.Number.Maker == maker)).Select(near => near.Number)];
        var known = Meant(equal);
        PartNumber[] written =
        [
            .. equal.OrderBy(number => number.Maker, StringComparer.Ordinal).ThenBy(number => number.Written, StringComparer.Ordinal)
                .ThenBy(number => number.Part, StringComparer.Ordinal),
        ];
        var narrows = equal.Length > 0 && !Array.Exists(equal, number => number.Identifies);
        return new AskedNumber(known, narrows, written, [.. found.Where(near => !IsItself(near, key, known))]);
    }

    // Of hundreds that are near only a few have the same folded key: the others are not fetched.
    private static bool IsWritten(NearNumber near, string key) => near.FoldedEdits == 0 && near.Number.Key == key;

    // A part's own number means that part; a further number counts where there is none, and a casting mark, which only narrows, where nothing else is found.
    private static IReadOnlyList<string> Meant(PartNumber[] equal)
    {
        var best = equal.Select(Standing).DefaultIfEmpty().Min();
        return [.. equal.Where(number => Standing(number) == best).Select(number => number.Part).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
    }

    private static int Standing(PartNumber number) =>
        number.Part == $"{number.Maker}:{number.Written}" ? 0 : number.Sort != NumberSort.CastingMark ? 1 : 2;

    // With two parts behind one number nobody knows which of them is meant: each can be taken for the other, so both stay.
    private static bool IsItself(NearNumber near, string key, IReadOnlyList<string> known) =>
        IsWritten(near, key) && known.Count == 1 && near.Number.Part == known[0];
}
