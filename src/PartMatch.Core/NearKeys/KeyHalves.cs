using System.Numerics;

namespace PartMatch.Core.NearKeys;

/// <summary>Folded keys of one length by either half, so that those near another key need not be looked for among all.</summary>
/// <remarks>
/// Two edits cannot both spoil both halves: where one key becomes another by at most two edits, the first half is at most one edit from a beginning of
/// the other key, or the second half from an end of it. A swap across the middle is one edit in each half; the edit left over spoils only one of them more.
/// So every beginning and end that is a character shorter, as long, or a character longer than its half is looked up with each edit it can have.
/// </remarks>
internal sealed class KeyHalves
{
    /// <summary>The most edits that the halves answer for.</summary>
    public const int MostEdits = 2;

    // Below so many keys for each of the edits that are tried, comparing with every key is faster. Measured; ours.
    private const int KeysPerEdit = 4;

    private readonly char[] _letters;
    private readonly HalfTable _first;
    private readonly HalfTable _second;

    private KeyHalves(ReadOnlySpan<char> keys, int length, int count, char[] letters)
    {
        _letters = letters;
        _first = new HalfTable(keys, length, count, 0, length / 2);
        _second = new HalfTable(keys, length, count, length / 2, length - (length / 2));
    }

    /// <param name="keys">One behind the other, <paramref name="length"/> characters each.</param>
    /// <param name="length">Of one key.</param>
    /// <param name="count">Of keys.</param>
    /// <returns>Null where comparing with every key is faster.</returns>
    public static KeyHalves? IfWorth(ReadOnlySpan<char> keys, int length, int count)
    {
        // Letters beyond a table's worth would cost more to try than the keys; then nobody needs to know all of them.
        HashSet<char> letters = [];
        var most = count / (KeysPerEdit * 2 * (length + 2));
        foreach (var letter in keys)
        {
            if (letters.Add(letter) && letters.Count > most)
            {
                return null;
            }
        }

        return letters.Count == 0 ? null : new KeyHalves(keys, length, count, [.. letters.Order()]);
    }

    public long Bytes => _first.Bytes + _second.Bytes;

    /// <summary>Visits every key within a limit of this one, and others with it; a key may come twice.</summary>
    /// <param name="limit">At most <see cref="MostEdits"/>.</param>
    public void Visit(ReadOnlySpan<char> asked, int limit, Action<int> visit)
    {
        var longer = asked.Length - _first.HalfLength - _second.HalfLength;
        for (var part = -1; part <= 1; part++)
        {
            // What the lengths of both pieces differ by is already spent.
            var spare = limit - Math.Abs(part) - Math.Abs(longer - part);
            var (beginning, end) = (_first.HalfLength + part, _second.HalfLength + part);
            if (spare >= 0 && beginning >= 0 && beginning <= asked.Length)
            {
                _first.Visit(asked[..beginning], spare, _letters, visit);
            }

            if (spare >= 0 && end >= 0 && end <= asked.Length)
            {
                _second.Visit(asked[^end..], spare, _letters, visit);
            }
        }
    }

    /// <summary>Keys by a hash of one half of them.</summary>
    private sealed class HalfTable
    {
        private readonly int[] _starts;
        private readonly int[] _keys;
        private readonly int _shift;

        public HalfTable(ReadOnlySpan<char> keys, int length, int count, int from, int halfLength)
        {
            HalfLength = halfLength;
            var bits = BitOperations.Log2((uint)count) + 1;
            _shift = 64 - bits;
            _starts = new int[(1 << bits) + 1];
            _keys = new int[count];
            for (var index = 0; index < count; index++)
            {
                _starts[PlaceOf(keys.Slice((index * length) + from, halfLength)) + 1]++;
            }

            for (var place = 1; place < _starts.Length; place++)
            {
                _starts[place] += _starts[place - 1];
            }

            var next = _starts.AsSpan(0, 1 << bits).ToArray();
            for (var index = 0; index < count; index++)
            {
                _keys[next[PlaceOf(keys.Slice((index * length) + from, halfLength))]++] = index;
            }
        }

        public int HalfLength { get; }

        public long Bytes => (_starts.LongLength + _keys.LongLength) * sizeof(int);

        /// <summary>Visits the keys whose half is at most one edit from this piece, which differs from it in length by one at most.</summary>
        /// <param name="spare">Edits left over for a piece as long as the half; with none it has to be the half.</param>
        public void Visit(ReadOnlySpan<char> piece, int spare, ReadOnlySpan<char> letters, Action<int> visit)
        {
            var places = new HashSet<int>();
            Span<char> half = HalfLength <= 64 ? stackalloc char[64] : new char[HalfLength];
            half = half[..HalfLength];
            if (piece.Length == HalfLength && spare == 0)
            {
                Add(piece, places);
            }
            else if (piece.Length == HalfLength)
            {
                Substitute(piece, half, letters, places);
            }
            else if (piece.Length < HalfLength)
            {
                for (var at = 0; at < HalfLength; at++)
                {
                    piece[..at].CopyTo(half);
                    piece[at..].CopyTo(half[(at + 1)..]);
                    Try(half, at, letters, places);
                }
            }
            else
            {
                for (var at = 0; at < piece.Length; at++)
                {
                    piece[..at].CopyTo(half);
                    piece[(at + 1)..].CopyTo(half[at..]);
                    Add(half, places);
                }
            }

            foreach (var place in places)
            {
                foreach (var key in _keys.AsSpan(_starts[place].._starts[place + 1]))
                {
                    visit(key);
                }
            }
        }

        private void Substitute(ReadOnlySpan<char> piece, Span<char> half, ReadOnlySpan<char> letters, HashSet<int> places)
        {
            piece.CopyTo(half);
            Add(half, places);
            for (var at = 0; at < half.Length; at++)
            {
                Try(half, at, letters, places);
                half[at] = piece[at];
                if (at > 0)
                {
                    (half[at - 1], half[at]) = (half[at], half[at - 1]);
                    Add(half, places);
                    (half[at - 1], half[at]) = (half[at], half[at - 1]);
                }
            }
        }

        private void Try(Span<char> half, int at, ReadOnlySpan<char> letters, HashSet<int> places)
        {
            foreach (var letter in letters)
            {
                half[at] = letter;
                Add(half, places);
            }
        }

        private void Add(ReadOnlySpan<char> half, HashSet<int> places)
        {
            var place = PlaceOf(half);
            if (_starts[place] < _starts[place + 1])
            {
                places.Add(place);
            }
        }

        // Multiplication by odd constants; what falls together is compared in full anyway.
        private int PlaceOf(ReadOnlySpan<char> half)
        {
            var hash = 1UL;
            foreach (var letter in half)
            {
                hash = unchecked((hash + letter) * 0x9E3779B97F4A7C15);
                hash ^= hash >> 29;
            }

            return (int)(unchecked(hash * 0xBF58476D1CE4E5B9) >> _shift);
        }
    }
}
