using System.Numerics;

namespace PartMatch.Core.Identification;

/// <summary>How a key was found.</summary>
public enum KeyMethod
{
    /// <summary>No key has a smaller expected effort.</summary>
    Exact,

    /// <summary>The test that gains most information per minute comes first; a cheaper key may exist.</summary>
    Greedy,
}

/// <summary>In which order should tests be made so that the candidate is known with least expected effort?</summary>
/// <remarks>
/// Exact: dynamic programming over sets of candidates. Source: M. R. Garey, Optimal binary identification procedures, SIAM J. Appl. Math. 23, 1972. Best keys are
/// NP-hard to find (Hyafil and Rivest, Inf. Proc. Lett. 5, 1976), hence the limit, above which the next test is the one with the largest gain of information per
/// minute; that can be arbitrarily far from the best (Garey and Graham, Acta Informatica 3, 1974).
/// A candidate that can give several answers to a test is counted in each with an equal share of its weight: ours, no source.
/// </remarks>
internal sealed class IdentificationKey
{
    /// <summary>The largest number of candidates for which the key is exact.</summary>
    public const int ExactUpTo = 12;

    /// <summary>The largest number of candidates.</summary>
    public const int MostCandidates = 64;

    // Below this two expected efforts are the same, and the earlier test wins: so that the key does not hang on the last bit of a sum.
    private const double Same = 1e-9;

    // A test that costs nothing still takes a moment: for the order of the greedy rule only.
    private const double SmallestCost = 0.01;

    private readonly double[] _weights;
    private readonly KeyTest[] _tests;
    private readonly KeyMethod _method;
    private readonly Dictionary<ulong, KeyNode> _known = [];

    private IdentificationKey(double[] weights, KeyTest[] tests, KeyMethod method) => (_weights, _tests, _method) = (weights, tests, method);

    /// <summary>The method for so many candidates.</summary>
    public static KeyMethod MethodFor(int candidates) => candidates <= ExactUpTo ? KeyMethod.Exact : KeyMethod.Greedy;

    /// <summary>The key of some candidates.</summary>
    /// <param name="weights">How likely each candidate is, in any measure; each above 0, at most 64 of them.</param>
    /// <param name="candidates">Those that are still possible.</param>
    /// <param name="tests">In order of preference: of two keys with the same expected effort, the one that begins with the earlier test is taken.</param>
    public static KeyNode Find(IReadOnlyList<double> weights, IReadOnlyList<KeyTest> tests, ulong candidates, KeyMethod method)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(weights.Count, MostCandidates);
        return new IdentificationKey([.. weights], [.. tests], method).From(candidates);
    }

    /// <summary>The set of the first so many candidates.</summary>
    public static ulong All(int candidates) => candidates == MostCandidates ? ulong.MaxValue : (1UL << candidates) - 1;

    private KeyNode From(ulong candidates)
    {
        if (!_known.TryGetValue(candidates, out var node))
        {
            _known[candidates] = node = Decide(candidates);
        }

        return node;
    }

    private KeyNode Decide(ulong candidates)
    {
        var end = new KeyNode(candidates, null, [], 0, 0);
        return BitOperations.PopCount(candidates) < 2 ? end
            : (_method == KeyMethod.Exact ? Best(candidates) : MostInformative(candidates)) ?? end;
    }

    private KeyNode? Best(ulong candidates)
    {
        KeyNode? best = null;
        for (var test = 0; test < _tests.Length; test++)
        {
            if (best is not null && _tests[test].Cost > best.ExpectedCost + Same)
            {
                continue;
            }

            if (Through(candidates, test) is { } node && (best is null || node.ExpectedCost < best.ExpectedCost - Same))
            {
                best = node;
            }
        }

        return best;
    }

    private KeyNode? MostInformative(ulong candidates)
    {
        var (best, most) = (-1, double.NegativeInfinity);
        for (var test = 0; test < _tests.Length; test++)
        {
            var answers = _tests[test].AnswersAmong(candidates);
            if (answers.Count < 2)
            {
                continue;
            }

            var after = answers.Zip(Shares(answers)).Sum(pair => pair.Second * Entropy(pair.First));
            var gain = (Entropy(candidates) - after) / Math.Max(_tests[test].Cost, SmallestCost);
            if (gain > most + Same)
            {
                (best, most) = (test, gain);
            }
        }

        return best < 0 ? null : Through(candidates, best);
    }

    private KeyNode? Through(ulong candidates, int test)
    {
        var answers = _tests[test].AnswersAmong(candidates);
        if (answers.Count < 2)
        {
            return null;
        }

        KeyBranch[] branches = [.. answers.Zip(Shares(answers), (answer, share) => new KeyBranch(share, From(answer)))];
        return new KeyNode(
            candidates, test, branches,
            _tests[test].Cost + branches.Sum(branch => branch.Share * branch.Next.ExpectedCost),
            _tests[test].Cost + branches.Max(branch => branch.Next.WorstCost));
    }

    private double[] Shares(IReadOnlyList<ulong> answers)
    {
        var total = answers.Aggregate(0UL, (left, right) => left | right);
        var sum = Members(total).Sum(candidate => _weights[candidate]);
        return [.. answers.Select(answer => Members(answer).Sum(candidate => _weights[candidate] / answers.Count(other => (other >> candidate & 1) == 1)) / sum)];
    }

    // Shannon's, in bits.
    private double Entropy(ulong candidates)
    {
        var sum = Members(candidates).Sum(candidate => _weights[candidate]);
        return Members(candidates).Select(candidate => _weights[candidate] / sum).Sum(share => -share * Math.Log2(share));
    }

    /// <summary>The candidates of a set, in order.</summary>
    public static IEnumerable<int> Members(ulong candidates)
    {
        for (var rest = candidates; rest != 0; rest &= rest - 1)
        {
            yield return BitOperations.TrailingZeroCount(rest);
        }
    }
}
