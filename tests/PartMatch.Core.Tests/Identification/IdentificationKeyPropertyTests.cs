using CsCheck;
using PartMatch.Core.Identification;
using Xunit;

namespace PartMatch.Core.Tests.Identification;

/// <summary>Random small sets, gone through tree by tree.</summary>
public sealed class IdentificationKeyPropertyTests
{
    private const double Tolerance = 1e-9;

    private sealed record Problem(double[] Weights, KeyTest[] Tests)
    {
        public int[] Candidates { get; } = [.. Enumerable.Range(0, Weights.Length)];

        public KeyNode Key(KeyMethod method) => IdentificationKey.Find(Weights, Tests, IdentificationKey.All(Weights.Length), method);

        public override string ToString() =>
            $"weights {string.Join(' ', Weights)}; tests {string.Join(", ", Tests.Select(InDigits))}";

        private static string InDigits(KeyTest test) => $"{test.Cost}: {string.Join('/', test.Answers.Select(answer => answer.ToString("b5", null)))}";
    }

    // Costs and weights in halves and whole numbers, so that ties happen.
    private static Gen<Problem> Problems(Gen<int[]> answersOfOne) =>
        from count in Gen.Int[1, 5]
        from weights in Gen.Int[1, 6].Array[count]
        from tests in Gen.Select(Gen.Int[1, 12], answersOfOne.Array[count]).Array[0, 4]
        select new Problem([.. weights.Select(weight => weight / 2.0)], [.. tests.Select(test => TestOf(test.Item1 / 2.0, test.Item2))]);

    /// <summary>Every candidate gives one answer to each test.</summary>
    private static readonly Gen<Problem> _clear = Problems(Gen.Int[0, 2].Select(answer => new[] { answer }));

    /// <summary>Some can give several.</summary>
    private static readonly Gen<Problem> _overlapping = Problems(Gen.Int[0, 2].Array[1, 2]);

    [Fact]
    public void Exact_key_is_the_cheapest_of_all_trees() => _overlapping.Sample(
        problem => Math.Abs(
            problem.Key(KeyMethod.Exact).ExpectedCost
            - KeyTrees.All(problem.Tests, problem.Candidates).Min(tree => KeyTrees.Effort(tree, problem.Tests, problem.Weights, problem.Candidates))) < Tolerance,
        iter: 2_000);

    [Fact]
    public void Expected_cost_is_what_the_candidates_pay_on_their_ways() => _clear.Sample(
        problem => Math.Abs(
            problem.Key(KeyMethod.Exact).ExpectedCost
            - KeyTrees.All(problem.Tests, problem.Candidates).Min(tree => KeyTrees.EffortByWalking(tree, problem.Tests, problem.Weights))) < Tolerance,
        iter: 2_000);

    [Fact]
    public void Key_by_the_greedy_rule_is_a_tree_like_others_and_never_cheaper_than_the_exact_one() => _overlapping.Sample(problem =>
    {
        var greedy = problem.Key(KeyMethod.Greedy);
        return greedy.ExpectedCost > problem.Key(KeyMethod.Exact).ExpectedCost - Tolerance
            && Math.Abs(greedy.ExpectedCost - KeyTrees.Effort(TreeOf(greedy), problem.Tests, problem.Weights, problem.Candidates)) < Tolerance;
    });

    // Yes/no questions of one minute each cannot identify in less than the entropy of the weights, in bits.
    [Fact]
    public void Entropy_is_a_lower_bound_for_yes_and_no_questions() =>
        Gen.Select(Gen.Int[1, 6].Array[2, 8], Gen.Int[1, 254].Array[8, 20]).Sample((whole, sets) =>
        {
            double[] weights = [.. whole.Select(weight => (double)weight)];
            var all = IdentificationKey.All(weights.Length);
            KeyTest[] tests = [.. sets.Select(set => new KeyTest(1, [(ulong)set & all, all & ~(ulong)set]))];
            var key = IdentificationKey.Find(weights, tests, all, KeyMethod.Exact);
            var entropy = weights.Select(weight => weight / weights.Sum()).Sum(share => share * Math.Log2(1 / share));
            return !IdentifiesAll(key) || (key.ExpectedCost >= entropy - Tolerance && key.WorstCost >= Math.Ceiling(Math.Log2(weights.Length)) - Tolerance);
        });

    [Fact]
    public void Effort_does_not_depend_on_the_order_of_tests_or_candidates() => Gen.Select(_overlapping, Gen.Int).Sample((problem, seed) =>
    {
        var order = new Random(seed);
        int[] place = [.. problem.Candidates];
        order.Shuffle(place);
        var weights = new double[place.Length];
        Array.ForEach(problem.Candidates, candidate => weights[place[candidate]] = problem.Weights[candidate]);
        KeyTest[] tests = [.. problem.Tests.Select(test => test with { Answers = [.. test.Answers.Select(answer => Moved(answer, place))] })];
        order.Shuffle(tests);
        var (one, other) = (problem.Key(KeyMethod.Exact), new Problem(weights, tests).Key(KeyMethod.Exact));
        return Math.Abs(one.ExpectedCost - other.ExpectedCost) < Tolerance;
    });

    [Fact]
    public void Shares_add_up_and_every_candidate_comes_to_an_end() => _overlapping.Sample(problem =>
    {
        var key = problem.Key(KeyMethod.Exact);
        return Nodes(key).All(node => node.Test is null || Math.Abs(node.Branches.Sum(branch => branch.Share) - 1) < Tolerance)
            && Nodes(key).Where(node => node.Test is null).Aggregate(0UL, (set, end) => set | end.Candidates) == IdentificationKey.All(problem.Weights.Length);
    });

    private static KeyTest TestOf(double cost, int[][] answersOf) => new(
        cost,
        [
            .. answersOf.SelectMany(answers => answers).Distinct().Order()
                .Select(answer => answersOf.Select((own, candidate) => own.Contains(answer) ? 1UL << candidate : 0).Aggregate((set, bit) => set | bit)),
        ]);

    private static ulong Moved(ulong set, int[] place) => IdentificationKey.Members(set).Aggregate(0UL, (moved, candidate) => moved | (1UL << place[candidate]));

    private static IEnumerable<KeyNode> Nodes(KeyNode node) => node.Branches.SelectMany(branch => Nodes(branch.Next)).Prepend(node);

    private static bool IdentifiesAll(KeyNode key) => Nodes(key).All(node => node.Test is not null || IdentificationKey.Members(node.Candidates).Count() == 1);

    // Both list the answers that are left in the order of the test.
    private static KeyTree TreeOf(KeyNode node) => new(node.Test, [.. node.Branches.Select(branch => TreeOf(branch.Next))]);
}
