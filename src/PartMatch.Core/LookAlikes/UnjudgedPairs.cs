using PartMatch.Core.Catalogue;

namespace PartMatch.Core.LookAlikes;

/// <summary>Which numbers of one book are near another number, without anybody having said how the two parts stand to each other?</summary>
/// <param name="Limit">Rows told, at least 1.</param>
public sealed record UnjudgedQuestion(string Book, int Limit);

/// <summary>How far a search for near pairs has come.</summary>
/// <param name="Looked">Numbers looked at, of <paramref name="Numbers"/>.</param>
/// <param name="Pairs">Found so far.</param>
public sealed record UnjudgedProgress(int Looked, int Numbers, long Pairs);

/// <summary>Near pairs of a book that nobody has judged.</summary>
/// <param name="Complete">No pair within the limit is missing from the count, nor from the rows where they are fewer than asked for.</param>
/// <param name="Total">Near pairs of the book that nobody has judged.</param>
/// <param name="Pairs">The likeliest mix-ups of them: by cost, then by the two keys and parts.</param>
public sealed record UnjudgedAnswer(UnjudgedQuestion Asked, bool Complete, long Total, IReadOnlyList<UnjudgedPair> Pairs)
{
    /// <summary>The address that asks this question again; the door fills it in.</summary>
    public string Permalink { get; init; } = "";
}

/// <summary>Two numbers that are near each other; which of them is a and which b means nothing.</summary>
/// <param name="FoldedEdits">0 where only look-alike characters differ.</param>
/// <param name="Cost">The smaller, the likelier the mix-up.</param>
public sealed record UnjudgedPair(string NumberA, string PartA, string NumberB, string PartB, int Edits, int FoldedEdits, double Cost, MixUpClass? Class);

/// <summary>Decides an <see cref="UnjudgedQuestion"/>. Goes over every near pair of the base and keeps the likeliest only.</summary>
/// <remarks>How bad a mix-up is depends on where a part is fitted, so it is judged family by family (<see cref="PairRanking"/>); a maker's list has no such place.</remarks>
public static class UnjudgedPairs
{
    /// <param name="parts">The parts that the book describes; a pair needs one of them.</param>
    /// <param name="tell">Told how far it has come, by one worker after the other.</param>
    /// <exception cref="ArgumentException">The limit is below 1.</exception>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static UnjudgedAnswer Decide(
        LookAlikeFacts facts, IReadOnlySet<string> parts, UnjudgedQuestion question, Action<UnjudgedProgress> tell, CancellationToken cancellation) =>
        Decide(facts.Numbers, parts, PartRelations.JudgedIn(facts), question, tell, cancellation);

    internal static UnjudgedAnswer Decide(
        LookAlikeIndex index, IReadOnlySet<string> parts, JudgedParts judged, UnjudgedQuestion question, Action<UnjudgedProgress> tell, CancellationToken cancellation)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(question.Limit, 1);
        var likeliest = new Likeliest(question.Limit);
        index.EachPair(
            number => new Noted(number.Part, parts.Contains(number.Part), number.Identifies, judged.IsNamed(number.Part)),
            (one, other) => (one.IsOfBook || other.IsOfBook) && IsMixUp(one, other)
                && !(one.IsNamed && other.IsNamed && judged.AreJudged(one.Part, other.Part)),
            likeliest.Take,
            looked => tell(new UnjudgedProgress(looked, index.Count, likeliest.Total)),
            cancellation);
        return new UnjudgedAnswer(question, Complete: true, likeliest.Total, [.. likeliest.InOrder().Select(Row)]);
    }

    // A casting mark that two parts carry narrows, and is asked about; two numbers of one part are no mix-up.
    private static bool IsMixUp(in Noted one, in Noted other) => one.Identifies && other.Identifies && (one.Hash != other.Hash || one.Part != other.Part);

    /// <summary>Of a number, what a pair is chosen by.</summary>
    private readonly record struct Noted(string Part, bool IsOfBook, bool Identifies, bool IsNamed)
    {
        /// <summary>Tells nearly all parts apart without fetching their names.</summary>
        public int Hash { get; } = Part.GetHashCode(StringComparison.Ordinal);
    }

    private static UnjudgedPair Row((PartNumber Asked, NearNumber Near) pair) => new(
        pair.Asked.Written, pair.Asked.Part, pair.Near.Number.Written, pair.Near.Number.Part, pair.Near.Edits, pair.Near.FoldedEdits, pair.Near.Cost, pair.Near.MixUp.Class);

    /// <summary>The likeliest of all pairs given to it, and how many there were. Several workers give at once.</summary>
    private sealed class Likeliest(int limit)
    {
        private static readonly Comparer<(PartNumber Asked, NearNumber Near)> _inOrder = Comparer<(PartNumber Asked, NearNumber Near)>.Create((one, other) =>
            one.Near.Cost != other.Near.Cost ? one.Near.Cost.CompareTo(other.Near.Cost)
            : string.CompareOrdinal(one.Asked.Key, other.Asked.Key) is not 0 and var byKey ? byKey
            : NearNumber.InOrder.Compare(one.Near, other.Near) is not 0 and var byOther ? byOther
            : string.CompareOrdinal(one.Asked.Part, other.Asked.Part));

        private readonly Lock _lock = new();
        private readonly PriorityQueue<(PartNumber, NearNumber), (PartNumber, NearNumber)> _kept =
            new(Comparer<(PartNumber, NearNumber)>.Create((one, other) => _inOrder.Compare(other, one)));

        private long _total;

        // What the worst of those kept costs: what costs more is none of them. Nearly all pairs of a dense list are two edits apart, and are not even costed.
        private double _most = double.PositiveInfinity;

        public long Total => Interlocked.Read(ref _total);

        public void Take(IReadOnlyList<NumberPair> pairs)
        {
            Interlocked.Add(ref _total, pairs.Count);
            var most = Volatile.Read(ref _most);
            (PartNumber Asked, NearNumber Near)[] told =
                [.. pairs.Where(pair => pair.FoldedEdits < 2 || most >= CostsFrom.LeastOfTwoEdits).Select(Read).Where(pair => pair.Near.Cost <= most)];
            lock (_lock)
            {
                foreach (var pair in told)
                {
                    if (_kept.Count < limit)
                    {
                        _kept.Enqueue(pair, pair);
                    }
                    else
                    {
                        _kept.EnqueueDequeue(pair, pair);
                    }
                }

                // It only falls: who reads it late only gives more than is needed.
                Volatile.Write(ref _most, _kept.Count == limit ? _kept.Peek().Item2.Cost : double.PositiveInfinity);
            }
        }

        public IReadOnlyList<(PartNumber, NearNumber)> InOrder() => [.. _kept.UnorderedItems.Select(kept => kept.Element).Order(_inOrder)];

        // Read from the part that comes first, so that a pair reads the same whichever of the two was looked at.
        private static (PartNumber Asked, NearNumber Near) Read(NumberPair pair) => string.CompareOrdinal(pair.One.Part, pair.Other.Part) < 0
            ? (pair.One, new NearNumber(pair.Other, pair.One.Key, pair.FoldedEdits))
            : (pair.Other, new NearNumber(pair.One, pair.Other.Key, pair.FoldedEdits));
    }
}
