using System.Text;

namespace PartMatch.Storage.Parts;

/// <summary>What a part is found by.</summary>
/// <param name="Part">Its id.</param>
/// <param name="NameWords">Its name in lower case, a blank before each word.</param>
/// <param name="Numbers">The keys of its own number and of every further one.</param>
internal sealed record IndexedPart(string Part, string NameWords, IReadOnlyList<string> Numbers);

/// <summary>A part that was found: group 1 where a number begins with the key, 2 where one contains it, 3 where the name has all the words.</summary>
internal sealed record PartHit(int Group, string Part);

/// <summary>
/// Every part's numbers and words as three long texts, which are searched from end to end. At a million parts a number takes some milliseconds, and a word that
/// stands in every name half a second. Immutable.
/// </summary>
/// <remarks>What has changed since it was built stands in a small one of its own, so that a write shows at once.</remarks>
public sealed class PartIndex
{
    private const byte End = (byte)'\n'; // in no key and in no word

    private readonly TextList _ids;
    private readonly TextList _names;
    private readonly TextList _numbers;
    private readonly int[] _owners;
    private readonly IReadOnlySet<int> _gone = new HashSet<int>();
    private readonly IReadOnlyList<IndexedPart> _changedParts = [];
    private readonly PartIndex? _changed;

    /// <param name="parts">In the order of their ids as SQLite sorts text.</param>
    internal PartIndex(IEnumerable<IndexedPart> parts)
    {
        (_ids, _names, _numbers) = (new TextList(), new TextList(), new TextList());
        var owners = new List<int>();
        foreach (var (place, part) in parts.Index())
        {
            _ids.Add(part.Part);
            _names.Add(part.NameWords);
            foreach (var number in part.Numbers)
            {
                _numbers.Add(number);
                owners.Add(place);
            }
        }

        _owners = [.. owners];
    }

    private PartIndex(PartIndex built, IReadOnlySet<int> gone, IReadOnlyList<IndexedPart> changed)
    {
        (_ids, _names, _numbers, _owners) = (built._ids, built._names, built._numbers, built._owners);
        (_gone, _changedParts, _changed) = (gone, changed, new PartIndex(changed));
    }

    /// <summary>Parts that have changed since it was built.</summary>
    public int Changed => _gone.Count + _changedParts.Count;

    /// <summary>The same with some parts as they stand now.</summary>
    /// <param name="ids">By which they were known, and by which they are known now.</param>
    internal PartIndex With(IReadOnlyCollection<string> ids, IEnumerable<IndexedPart> parts)
    {
        var gone = _gone.Concat(ids.Select(id => _ids.FirstFrom(id)).Where(place => place < _ids.Count && ids.Contains(_ids.At(place)))).ToHashSet();
        return new PartIndex(this, gone, [.. _changedParts.Where(part => !ids.Contains(part.Part)).Concat(parts).OrderBy(part => part.Part, ByBytes)]);
    }

    /// <summary>How many parts are found, and the first of them behind a place, in order of group and id.</summary>
    /// <param name="key">A number key; empty where no number is asked for.</param>
    /// <param name="words">Each with the blank before it; where there are none and no key, every part is found.</param>
    internal (int Total, IReadOnlyList<PartHit> Hits) Find(string key, IReadOnlyList<string> words, PartHit? after, int most)
    {
        var groups = Groups(key, words);
        var (total, hits) = (groups.Length - groups.AsSpan().Count((byte)0), First(groups, after, most));
        if (_changed?.Find(key, words, after, most) is not var (more, others))
        {
            return (total, hits);
        }

        return (total + more, [.. hits.Concat(others).OrderBy(hit => hit.Group).ThenBy(hit => hit.Part, ByBytes).Take(most)]);
    }

    private static Comparer<string> ByBytes { get; } =
        Comparer<string>.Create((one, other) => Encoding.UTF8.GetBytes(one).AsSpan().SequenceCompareTo(Encoding.UTF8.GetBytes(other)));

    /// <summary>The group of each part, 0 where it is not found.</summary>
    private byte[] Groups(string key, IReadOnlyList<string> words)
    {
        var groups = new byte[_ids.Count];
        if (key.Length > 0)
        {
            _numbers.EachWith(key, (number, isAtStart) =>
            {
                ref var group = ref groups[_owners[number]];
                group = isAtStart ? (byte)1 : group == 0 ? (byte)2 : group;
            });
        }

        if (words.Count > 0)
        {
            string[] byLength = [.. words.OrderByDescending(word => word.Length)];
            var others = byLength.Skip(1).Select(Encoding.UTF8.GetBytes).ToList();
            _names.EachWith(byLength[0], (place, _) =>
            {
                if (groups[place] == 0 && others.TrueForAll(word => _names.Bytes(place).IndexOf(word) >= 0))
                {
                    groups[place] = 3;
                }
            });
        }
        else if (key.Length == 0)
        {
            Array.Fill(groups, (byte)3);
        }

        foreach (var place in _gone)
        {
            groups[place] = 0;
        }

        return groups;
    }

    private List<PartHit> First(byte[] groups, PartHit? after, int most)
    {
        var hits = new List<PartHit>();
        for (var group = Math.Max(1, after?.Group ?? 1); group <= 3; group++)
        {
            var place = after?.Group == group ? _ids.FirstFrom(after.Part) : 0;
            if (after?.Group == group && place < _ids.Count && _ids.At(place) == after.Part)
            {
                place++;
            }

            for (int found; hits.Count < most && (found = groups.AsSpan(place).IndexOf((byte)group)) >= 0; place += found + 1)
            {
                hits.Add(new PartHit(group, _ids.At(place + found)));
            }
        }

        return hits;
    }

    /// <summary>Texts one behind the other, in UTF-8: SQLite's instr and its order of text look at the same bytes.</summary>
    private sealed class TextList
    {
        private readonly List<int> _ends = [];
        private byte[] _bytes = new byte[1024];
        private int _used;

        public int Count => _ends.Count;

        public void Add(string text)
        {
            var length = Encoding.UTF8.GetByteCount(text);
            if (_bytes.Length - _used < length + 1)
            {
                Array.Resize(ref _bytes, (int)Math.Min(Array.MaxLength, Math.Max(_bytes.Length * 2L, _used + length + 1L)));
            }

            _used += Encoding.UTF8.GetBytes(text, _bytes.AsSpan(_used));
            _bytes[_used++] = End;
            _ends.Add(_used);
        }

        public ReadOnlySpan<byte> Bytes(int place) => _bytes.AsSpan(Start(place)..(_ends[place] - 1));

        public string At(int place) => Encoding.UTF8.GetString(Bytes(place));

        /// <summary>Of texts in order: the place of the first that is not before this one.</summary>
        public int FirstFrom(string text)
        {
            var bytes = Encoding.UTF8.GetBytes(text);
            var (from, to) = (0, Count);
            while (from < to)
            {
                var middle = (from + to) / 2;
                (from, to) = Bytes(middle).SequenceCompareTo(bytes) < 0 ? (middle + 1, to) : (from, middle);
            }

            return from;
        }

        /// <summary>Tells of each text that contains this one, and whether it begins with it.</summary>
        public void EachWith(string text, Action<int, bool> tell)
        {
            var wanted = Encoding.UTF8.GetBytes(text);
            var (at, place) = (0, 0);
            for (int found; (found = _bytes.AsSpan(at.._used).IndexOf(wanted)) >= 0; at = _ends[place])
            {
                at += found;
                place = PlaceOf(at, place);
                tell(place, at == Start(place));
            }
        }

        /// <summary>
        /// Which text that byte belongs to. Near the last one where many contain what is wanted, else far behind it: looked for in growing steps.
        /// </summary>
        /// <param name="from">Known not to be behind it.</param>
        private int PlaceOf(int at, int from)
        {
            var step = 1;
            for (; from + step < Count && _ends[from + step - 1] <= at; step *= 2)
            {
                from += step;
            }

            var to = Math.Min(from + step, Count) - 1;
            while (from < to)
            {
                var middle = (from + to) / 2;
                (from, to) = _ends[middle] <= at ? (middle + 1, to) : (from, middle);
            }

            return from;
        }

        private int Start(int place) => place == 0 ? 0 : _ends[place - 1];
    }
}
