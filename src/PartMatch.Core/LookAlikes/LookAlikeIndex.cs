using PartMatch.Core.Catalogue;
using PartMatch.Core.NearKeys;

namespace PartMatch.Core.LookAlikes;

/// <summary>A number whose key is near the key asked about.</summary>
/// <param name="Edits">Optimal string alignment distance of the keys as they are.</param>
/// <param name="FoldedEdits">The same of the folded keys; this one is within the limit.</param>
public sealed record NearNumber(PartNumber Number, int Edits, int FoldedEdits, MixUp MixUp);

/// <summary>
/// All numbers of the base, ready to be asked for those near a key. Complete: no number within the limit is missed, whether or not the key
/// asked about is itself in the base. Immutable.
/// </summary>
public sealed class LookAlikeIndex
{
    private const int ShortKey = 6;

    private readonly PartNumber[] _numbers;
    private readonly NearKeyIndex _keys;

    /// <param name="numbers">Every number of every part, in any order. One number may stand on several parts.</param>
    public LookAlikeIndex(IEnumerable<PartNumber> numbers)
    {
        _numbers = NumberOrder.Of(numbers);
        _keys = new NearKeyIndex([.. _numbers.Select(number => FoldingClasses.Fold(number.Key))]);
    }

    /// <summary>Every number held; those of common characters first, then by length, key and part.</summary>
    public IReadOnlyList<PartNumber> All => _numbers;

    /// <summary>Numbers held, each number of each part counted once.</summary>
    public int Count => _numbers.Length;

    /// <summary>How many edits on folded keys count as near for this key: 1 when it is shorter than 6 characters, otherwise 2.</summary>
    public static int LimitFor(string key) => key.Length < ShortKey ? 1 : NearKeyIndex.MostEdits;

    /// <summary>Every number whose folded key is within the limit of the asked key's, equal keys included.</summary>
    /// <param name="key">A number key (<see cref="NumberKey"/>).</param>
    /// <returns>Ordered by cost, then key, then part; a number that stands on several parts comes once for each.</returns>
    public IReadOnlyList<NearNumber> Find(string key)
    {
        var found = new List<NearKey>();
        _keys.Find(FoldingClasses.Fold(key), LimitFor(key), found);
        return
        [
            .. found
                .Select(near => (Number: _numbers[near.Place], near.Edits))
                .Select(near => new NearNumber(
                    near.Number, NumberDistance.OptimalStringAlignment(key, near.Number.Key), near.Edits, MixUpCost.Between(key, near.Number.Key)))
                .OrderBy(near => near.MixUp.Cost).ThenBy(near => near.Number.Key, StringComparer.Ordinal).ThenBy(near => near.Number.Part, StringComparer.Ordinal),
        ];
    }
}
