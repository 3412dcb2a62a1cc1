using System.Numerics;

namespace PartMatch.Storage.Books.Checks;

/// <summary>
/// Finds rows by a key without keeping the keys: a hash, a place and a link for each, some sixteen bytes. Where a hash is the same, the key is
/// worked out of its row again.
/// </summary>
/// <param name="keyAt">The key of the row at a place; the same at every time.</param>
/// <param name="capacity">How many rows there may be, where it is known.</param>
internal sealed class KeyPlaces(Func<int, string> keyAt, int capacity = 0)
{
    private const int None = -1;

    private int[] _first = Empty(capacity);
    private Entry[] _entries = new Entry[Math.Max(4, capacity)];
    private int _count;

    private readonly record struct Entry(int Hash, int Place, int Next);

    /// <summary>Of each key once, in the order in which they were added.</summary>
    public IEnumerable<int> Places => _entries.Take(_count).Select(entry => entry.Place);

    /// <summary>The place that has the key already; the given one where there was none.</summary>
    public int Add(string key, int place)
    {
        var hash = key.GetHashCode(StringComparison.Ordinal);
        if (Find(key, hash) is { } first)
        {
            return first;
        }

        if (_count == _entries.Length)
        {
            Grow();
        }

        ref var bucket = ref _first[hash & (_first.Length - 1)];
        _entries[_count] = new Entry(hash, place, bucket);
        bucket = _count++;
        return place;
    }

    public int? Find(string key) => Find(key, key.GetHashCode(StringComparison.Ordinal));

    private int? Find(string key, int hash)
    {
        for (var index = _first[hash & (_first.Length - 1)]; index != None; index = _entries[index].Next)
        {
            if (_entries[index].Hash == hash && keyAt(_entries[index].Place) == key)
            {
                return _entries[index].Place;
            }
        }

        return null;
    }

    private void Grow()
    {
        Array.Resize(ref _entries, _entries.Length * 2);
        _first = Empty(_entries.Length);
        for (var index = 0; index < _count; index++)
        {
            ref var bucket = ref _first[_entries[index].Hash & (_first.Length - 1)];
            _entries[index] = _entries[index] with { Next = bucket };
            bucket = index;
        }
    }

    private static int[] Empty(int capacity)
    {
        var buckets = new int[BitOperations.RoundUpToPowerOf2((uint)Math.Max(4, capacity))];
        Array.Fill(buckets, None);
        return buckets;
    }
}
