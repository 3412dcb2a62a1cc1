using PartMatch.Core.Identification;

namespace PartMatch.Core.Tests.Identification;

/// <summary>A whole way to identify: which test first, and after each of its answers which next. Null test: the end.</summary>
internal sealed record KeyTree(int? Test, IReadOnlyList<KeyTree> Next);

/// <summary>Every way there is to identify some candidates, and what it costs, straight from the definition: what the solver is held against.</summary>
internal static class KeyTrees
{
    /// <summary>What a test tells of the candidates left: each answer as the list of those that can give it; nothing where it tells nothing.</summary>
    /// <remarks>An answer that all of whose candidates can also give another one is no answer of its own: nobody can count on it.</remarks>
    public static IReadOnlyList<int[]> Answers(KeyTest test, IReadOnlyCollection<int> left)
    {
        int[][] here = [.. test.Answers.Select(answer => left.Where(candidate => (answer >> candidate & 1) == 1).ToArray()).Where(answer => answer.Length > 0)];
        int[][] different = [.. here.DistinctBy(answer => string.Join(' ', answer))];
        int[][] own = [.. different.Where(answer => !different.Any(other => other.Length > answer.Length && answer.All(other.Contains)))];
        return own.Length < 2 ? [] : own;
    }

    /// <summary>All trees that go on for as long as some test tells something.</summary>
    public static IEnumerable<KeyTree> All(IReadOnlyList<KeyTest> tests, IReadOnlyCollection<int> left)
    {
        var any = false;
        for (var test = 0; left.Count > 1 && test < tests.Count; test++)
        {
            var answers = Answers(tests[test], left);
            if (answers.Count == 0)
            {
                continue;
            }

            any = true;
            foreach (var next in Combinations([.. answers.Select(answer => All(tests, answer).ToList())]))
            {
                yield return new KeyTree(test, next);
            }
        }

        if (!any)
        {
            yield return new KeyTree(null, []);
        }
    }

    /// <summary>
    /// Cost of the first test, and of what follows each answer by how likely that answer is: the weights of those who give it, one who can give
    /// several counted in equal parts.
    /// </summary>
    public static double Effort(KeyTree tree, IReadOnlyList<KeyTest> tests, IReadOnlyList<double> weights, IReadOnlyCollection<int> left)
    {
        if (tree.Test is not { } test)
        {
            return 0;
        }

        var answers = Answers(tests[test], left);
        var all = left.Sum(candidate => weights[candidate]);
        var later = answers.Select((answer, index) =>
            answer.Sum(candidate => weights[candidate] / answers.Count(other => other.Contains(candidate))) / all * Effort(tree.Next[index], tests, weights, answer));
        return tests[test].Cost + later.Sum();
    }

    /// <summary>For tests that each candidate answers in one way only: every candidate walks down the tree and pays for what it meets.</summary>
    public static double EffortByWalking(KeyTree tree, IReadOnlyList<KeyTest> tests, IReadOnlyList<double> weights) =>
        weights.Select((weight, candidate) => weight * Walk(tree, tests, candidate, [.. Enumerable.Range(0, weights.Count)])).Sum() / weights.Sum();

    private static double Walk(KeyTree tree, IReadOnlyList<KeyTest> tests, int candidate, int[] left)
    {
        if (tree.Test is not { } test)
        {
            return 0;
        }

        var answers = Answers(tests[test], left);
        var given = answers.Select((answer, index) => (answer, index)).Single(one => one.answer.Contains(candidate));
        return tests[test].Cost + Walk(tree.Next[given.index], tests, candidate, given.answer);
    }

    private static IEnumerable<KeyTree[]> Combinations(List<KeyTree>[] choices) => choices.Aggregate(
        (IEnumerable<KeyTree[]>)[[]],
        (before, here) => before.SelectMany(_ => here, (chosen, one) => (KeyTree[])[.. chosen, one]));
}
