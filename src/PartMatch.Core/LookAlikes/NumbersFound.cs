using PartMatch.Core.Catalogue;
using PartMatch.Core.NearKeys;

namespace PartMatch.Core.LookAlikes;

/// <summary>What one search has found, in no order. Hundreds can be near and a page shows twenty: a number is fetched when it is asked for.</summary>
/// <remarks>Not to be kept: what the numbers cost is worked out when it is read.</remarks>
/// <param name="near">Every key within the limit whose number has not changed since the index was built.</param>
/// <param name="numberAt">The number at a place of the index.</param>
/// <param name="changed">Numbers within the limit that have.</param>
internal sealed class NumbersFound(
    string key, IReadOnlyList<NearKey> near, Func<int, PartNumber> numberAt, IReadOnlyList<(PartNumber Number, int Edits)> changed)
{
    private readonly CostsFrom _costs = new(key);

    public int Count => near.Count + changed.Count;

    /// <summary>Those within so many folded edits; each call makes them anew.</summary>
    public List<NearNumber> Within(int edits)
    {
        var found = new List<NearNumber>();
        foreach (var one in near)
        {
            if (one.Edits <= edits)
            {
                found.Add(new NearNumber(numberAt(one.Place), key, one.Edits, _costs));
            }
        }

        foreach (var (number, apart) in changed)
        {
            if (apart <= edits)
            {
                found.Add(new NearNumber(number, key, apart, _costs));
            }
        }

        return found;
    }
}
