using System.Runtime.Intrinsics;

namespace PartMatch.Core.NearKeys;

/// <summary>Folded keys, ready to be asked for those near another. Complete: no key within the limit is missed. Immutable.</summary>
/// <remarks>
/// Short keys lie in one <see cref="DeletionTable"/>. What it takes grows with the square of a key's length, so it gets the lengths that stay within
/// <see cref="MostVariantsPerKey"/> on the whole; keys longer than that are found by their halves (<see cref="LongKeys"/>).
/// </remarks>
internal sealed class NearKeyIndex
{
    /// <summary>The most edits that count as near.</summary>
    public const int MostEdits = 2;

    // Ours: with four bytes a variant, up to one more for the beginnings of buckets, and sixteen for the key, about 300 bytes a key.
    private const int MostVariantsPerKey = 62;

    private const int Chunk = 1 << 14;
    private const int ShortKey = 6;

    private readonly int _tabled;
    private readonly DeletionTable? _short;
    private readonly LongKeys _long;

    /// <param name="keys">Folded; those that fit a <see cref="ByteKey"/> first, of them shorter ones first. Equal ones may come more than once.</param>
    public NearKeyIndex(IReadOnlyList<string> keys)
    {
        Count = keys.Count;
        (_tabled, var variants) = Tabled(keys);
        var tabled = _tabled;
        if (tabled > 0)
        {
            var bytes = new Vector128<byte>[tabled];
            Parallel.For(0, (tabled + Chunk - 1) / Chunk, chunk =>
            {
                for (var place = chunk * Chunk; place < Math.Min(tabled, (chunk + 1) * Chunk); place++)
                {
                    bytes[place] = ByteKey.Of(keys[place]);
                }
            });
            _short = new DeletionTable(bytes, variants);
        }

        _long = new LongKeys(keys, tabled);
    }

    public int Count { get; }

    /// <summary>What it keeps in memory beside the texts it was made of.</summary>
    public long Bytes => (_short?.Bytes ?? 0) + _long.Bytes;

    /// <summary>Adds every key within the limit, in no order, each place once.</summary>
    /// <param name="limit">1 or 2.</param>
    public void Find(ReadOnlySpan<char> asked, int limit, List<NearKey> found)
    {
        _short?.Find(asked, limit, found);
        _long.Find(asked, limit, found);
    }

    /// <summary>How many edits count as near for a key of so many characters: 1 when it is shorter than 6, otherwise 2.</summary>
    public static int LimitFor(int length) => length < ShortKey ? 1 : MostEdits;

    /// <summary>Adds every key before this place that is near the one at it, by the limit of the longer of the two.</summary>
    public void FindBefore(int place, List<NearKey> found)
    {
        if (place < _tabled && _short is { } table)
        {
            table.FindBefore(place, LimitFor(table.LengthAt(place)), found); // shorter ones come first: this is the longer one
            return;
        }

        var key = _long.KeyAt(place);
        var first = found.Count;
        Find(key, MostEdits, found);
        for (var index = found.Count - 1; index >= first; index--)
        {
            var near = found[index];
            if (near.Place >= place || near.Edits > LimitFor(Math.Max(key.Length, LengthAt(near.Place))))
            {
                found.RemoveAt(index);
            }
        }
    }

    private int LengthAt(int place) => place < _tabled && _short is { } table ? table.LengthAt(place) : _long.KeyAt(place).Length;

    private static (int Keys, long Variants) Tabled(IReadOnlyList<string> keys)
    {
        var (first, variants) = (0, 0L);
        while (first < keys.Count && ByteKey.Fits(keys[first]))
        {
            var end = first;
            while (end < keys.Count && keys[end].Length == keys[first].Length && ByteKey.Fits(keys[end]))
            {
                end++;
            }

            var more = (long)DeletionVariants.Most(keys[first].Length) * (end - first);
            if (end > DeletionTable.MostKeys || variants + more > (long)MostVariantsPerKey * keys.Count)
            {
                break;
            }

            (first, variants) = (end, variants + more);
        }

        return (first, variants);
    }
}
