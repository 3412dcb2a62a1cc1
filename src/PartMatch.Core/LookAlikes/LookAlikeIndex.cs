using PartMatch.Core.Catalogue;
using PartMatch.Core.NearKeys;

namespace PartMatch.Core.LookAlikes;

/// <summary>Two numbers whose folded keys are near each other.</summary>
internal readonly record struct NumberPair(PartNumber One, PartNumber Other, int FoldedEdits);

/// <summary>
/// All numbers of the base, ready to be asked for those near a key. Complete: no number within the limit is missed, whether or not the key
/// asked about is itself in the base. Immutable.
/// </summary>
/// <remarks>What has changed since it was built (<see cref="With"/>) is compared one by one, so that a write shows at once and the next build can wait.</remarks>
public sealed class LookAlikeIndex
{
    private readonly PartNumber[] _numbers;
    private readonly NearKeyIndex _keys;
    private readonly HashSet<string> _changedParts;
    private readonly PartNumber[] _changed;

    /// <param name="numbers">Every number of every part, in any order. One number may stand on several parts.</param>
    public LookAlikeIndex(IEnumerable<PartNumber> numbers)
    {
        _numbers = NumberOrder.Of(numbers);
        _keys = new NearKeyIndex([.. _numbers.Select(number => FoldingClasses.Fold(number.Key))]);
        (_changedParts, _changed) = ([], []);
    }

    private LookAlikeIndex(LookAlikeIndex built, HashSet<string> changedParts, PartNumber[] changed) =>
        (_numbers, _keys, _changedParts, _changed) = (built._numbers, built._keys, changedParts, changed);

    /// <summary>Every number held; those of common characters first, then by length, key and part; what has changed since the build last.</summary>
    public IReadOnlyList<PartNumber> All => _changedParts.Count == 0 ? _numbers : [.. _numbers.Where(IsUnchanged), .. _changed];

    /// <summary>Numbers held, each number of each part counted once.</summary>
    public int Count => _changedParts.Count == 0 ? _numbers.Length : _numbers.Count(IsUnchanged) + _changed.Length;

    /// <summary>Parts that have changed since it was built, and their numbers, each of which every search is slower by.</summary>
    public int Changed => _changedParts.Count + _changed.Length;

    /// <summary>What the table of near keys keeps in memory, beside the numbers themselves.</summary>
    internal long Bytes => _keys.Bytes;

    /// <summary>How many edits on folded keys count as near for this key: 1 when it is shorter than 6 characters, otherwise 2.</summary>
    public static int LimitFor(string key) => NearKeyIndex.LimitFor(key.Length);

    /// <summary>Is that number within the limit of the asked key? What an index finds, for a single number.</summary>
    public static bool IsNear(string key, PartNumber number) => FoldedEdits(FoldingClasses.Fold(key), LimitFor(key), number) <= LimitFor(key);

    /// <summary>The same index with some parts as they stand now: whatever it knew of their numbers counts no longer.</summary>
    /// <param name="parts">The ids by which the parts were known, and those by which they are known now.</param>
    /// <param name="numbers">Every number that stands on one of those parts now.</param>
    public LookAlikeIndex With(IReadOnlyCollection<string> parts, IEnumerable<PartNumber> numbers)
    {
        HashSet<string> changedParts = [.. _changedParts, .. parts];
        return new LookAlikeIndex(this, changedParts, NumberOrder.Of(_changed.Where(number => !parts.Contains(number.Part)).Concat(numbers)));
    }

    /// <summary>Every number whose folded key is within the limit of the asked key's, equal keys included.</summary>
    /// <param name="key">A number key (<see cref="NumberKey"/>).</param>
    /// <returns>Ordered by cost, then key, then part; a number that stands on several parts comes once for each.</returns>
    public IReadOnlyList<NearNumber> Find(string key)
    {
        var found = FindInAnyOrder(key).Within(LimitFor(key));
        found.ForEach(near => near.Settle());
        found.Sort(NearNumber.InOrder);
        return found;
    }

    /// <summary>The same in any order, for whoever shows only the first of them.</summary>
    internal NumbersFound FindInAnyOrder(string key)
    {
        var (folded, limit) = (FoldingClasses.Fold(key), LimitFor(key));
        var near = new List<NearKey>();
        _keys.Find(folded, limit, near);
        if (_changedParts.Count > 0)
        {
            near.RemoveAll(one => !IsUnchanged(_numbers[one.Place]));
        }

        return new NumbersFound(
            key, near, place => _numbers[place],
            [.. _changed.Select(number => (Number: number, Edits: FoldedEdits(folded, limit, number))).Where(found => found.Edits <= limit)]);
    }

    /// <summary>Every two numbers that are near each other, once each, by the limit of the longer key.</summary>
    /// <param name="note">What a pair is chosen by; asked once of each number.</param>
    /// <param name="isWanted">By what was noted of its two numbers; asked from several workers at once.</param>
    /// <param name="take">Given some pairs at a time, from several workers at once; the list is its own.</param>
    /// <param name="progress">Told how many numbers have been looked at, by one worker after the other.</param>
    /// <exception cref="OperationCanceledException">Cancelled; some pairs have been told.</exception>
    /// <remarks>
    /// A hundred million pairs have a million numbers: what is noted of them lies together, and fetching the numbers themselves would take most of the time.
    /// </remarks>
    internal void EachPair<TNote>(
        Func<PartNumber, TNote> note, Func<TNote, TNote, bool> isWanted, Action<IReadOnlyList<NumberPair>> take, Action<int> progress,
        CancellationToken cancellation)
    {
        (bool Stands, TNote Of)[] noted = [.. _numbers.Select(number => (IsUnchanged(number), note(number)))];
        NearKeyPairs.Each(
            _keys,
            pairs =>
            {
                var wanted = new List<NumberPair>(pairs.Count);
                foreach (var pair in pairs)
                {
                    ref readonly var one = ref noted[pair.Place];
                    ref readonly var other = ref noted[pair.Before];
                    if (one.Stands && other.Stands && isWanted(one.Of, other.Of))
                    {
                        wanted.Add(new NumberPair(_numbers[pair.Place], _numbers[pair.Before], pair.Edits));
                    }
                }

                take(wanted);
            },
            looked => progress(Math.Min(looked, Count)),
            cancellation);
        var near = new List<NearKey>();
        foreach (var (index, changed) in _changed.Index())
        {
            cancellation.ThrowIfCancellationRequested();
            var folded = FoldingClasses.Fold(changed.Key);
            near.Clear();
            _keys.Find(folded, NearKeyIndex.MostEdits, near);
            take(
            [
                .. near.Where(one => noted[one.Place].Stands).Select(one => new NumberPair(changed, _numbers[one.Place], one.Edits))
                    .Concat(_changed.Take(index).Select(other => new NumberPair(changed, other, FoldedEdits(folded, NearKeyIndex.MostEdits, other))))
                    .Where(pair => pair.FoldedEdits <= NearKeyIndex.LimitFor(Math.Max(pair.One.Key.Length, pair.Other.Key.Length)))
                    .Where(pair => isWanted(note(pair.One), note(pair.Other))),
            ]);
        }

        progress(Count);
    }

    private bool IsUnchanged(PartNumber number) => _changedParts.Count == 0 || !_changedParts.Contains(number.Part);

    private static int FoldedEdits(string folded, int limit, PartNumber number) =>
        Math.Abs(number.Key.Length - folded.Length) > limit
            ? limit + 1
            : NumberDistance.OptimalStringAlignmentWithin(folded, FoldingClasses.Fold(number.Key), limit);
}
