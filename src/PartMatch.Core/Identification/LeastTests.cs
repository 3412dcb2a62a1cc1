namespace PartMatch.Core.Identification;

/// <summary>The cheapest choice of tests that, made all at once, answers everything that the tests can answer together.</summary>
/// <remarks>For a message to a seller: nobody writes three letters, each waiting for the answer to the one before.</remarks>
internal static class LeastTests
{
    /// <summary>With more tests than this, the one that does most per minute is taken first; a cheaper choice may exist.</summary>
    private const int ExactUpTo = 16;

    private const double SmallestCost = 0.01;

    /// <summary>Indices of the chosen tests, rising. Of two choices with the same cost the smaller, then the earlier one.</summary>
    /// <param name="tests">In order of preference.</param>
    /// <param name="pairs">The pairs of candidates to be separated; those that no test separates are left out of account.</param>
    public static IReadOnlyList<int> Separating(IReadOnlyList<KeyTest> tests, IReadOnlyList<(int One, int Other)> pairs)
    {
        bool[][] separates = [.. tests.Select(test => pairs.Select(pair => test.Separates(pair.One, pair.Other)).ToArray())];
        int[] useful = [.. Enumerable.Range(0, tests.Count).Where(test => separates[test].Contains(true))];
        bool[] wanted = [.. Enumerable.Range(0, pairs.Count).Select(pair => useful.Any(test => separates[test][pair]))];
        return useful.Length <= ExactUpTo ? Cheapest(tests, useful, separates, wanted) : OneByOne(tests, useful, separates, wanted);
    }

    private static int[] Cheapest(IReadOnlyList<KeyTest> tests, int[] useful, bool[][] separates, bool[] wanted)
    {
        int[] best = useful;
        var least = useful.Sum(test => tests[test].Cost);
        for (var choice = 0; choice < 1 << useful.Length; choice++)
        {
            int[] chosen = [.. useful.Where((_, index) => (choice >> index & 1) == 1)];
            var cost = chosen.Sum(test => tests[test].Cost);
            if ((cost < least || (cost == least && chosen.Length < best.Length)) && AreAllSeparated(chosen, separates, wanted))
            {
                (best, least) = (chosen, cost);
            }
        }

        return best;
    }

    private static int[] OneByOne(IReadOnlyList<KeyTest> tests, int[] useful, bool[][] separates, bool[] wanted)
    {
        bool[] open = [.. wanted];
        var chosen = new List<int>();
        while (open.Contains(true))
        {
            var next = useful.Except(chosen).MaxBy(test => separates[test].Zip(open).Count(pair => pair is { First: true, Second: true }) / Math.Max(tests[test].Cost, SmallestCost));
            chosen.Add(next);
            open = [.. open.Zip(separates[next], (still, now) => still && !now)];
        }

        return [.. chosen.Order()];
    }

    private static bool AreAllSeparated(int[] chosen, bool[][] separates, bool[] wanted) =>
        Enumerable.Range(0, wanted.Length).All(pair => !wanted[pair] || Array.Exists(chosen, test => separates[test][pair]));
}

/// <summary>In which order to make tests all of which must pass, the first failure ending them.</summary>
/// <remarks>
/// By cost ÷ chance of failing, smallest first, which is best when failures are independent. Source: the rule for series systems of Mitten (1960) and Butterworth
/// (1972), reviewed by T. Ünlüyurt, Discrete Applied Mathematics 142, 2004, pp. 189–205.
/// </remarks>
internal static class ProofOrder
{
    /// <summary>Indices in the order in which to make the tests; equals as given.</summary>
    /// <param name="tests">Cost, and chance of failing from 0 to 1. What cannot fail comes last.</param>
    public static IReadOnlyList<int> Of(IReadOnlyList<(double Cost, double FailureChance)> tests) =>
        [.. Enumerable.Range(0, tests.Count).OrderBy(test => tests[test].FailureChance > 0 ? tests[test].Cost / tests[test].FailureChance : double.PositiveInfinity)];

    /// <summary>Expected cost of making them in some order.</summary>
    public static double ExpectedCost(IReadOnlyList<(double Cost, double FailureChance)> tests, IReadOnlyList<int> order)
    {
        var (cost, reached) = (0.0, 1.0);
        foreach (var test in order)
        {
            cost += reached * tests[test].Cost;
            reached *= 1 - tests[test].FailureChance;
        }

        return cost;
    }
}
