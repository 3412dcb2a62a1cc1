using PartMatch.Core.Identification;
using Xunit;

namespace PartMatch.Core.Tests.Identification;

public sealed class IdentificationKeyTests
{
    private const double Tolerance = 1e-9;

    // D. A. Huffman, A method for the construction of minimum-redundancy codes, Proc. IRE 40, 1952, Table I (the table from memory).
    private static readonly double[] _huffman = [0.20, 0.18, 0.10, 0.10, 0.10, 0.06, 0.06, 0.04, 0.04, 0.04, 0.04, 0.03, 0.01];

    // Five candidates, four tests. By hand: T1 1, then T2 for two of two and for three of three 1, then T4 for C and E, 0.15 + 0.08 of all, 2: 1 + 1 + 0.23 × 2 = 2.46.
    [Theory]
    [InlineData(4, 2.46, 0)]
    [InlineData(2.4601, 2.46, 0)] // just above the break-even
    [InlineData(2.4599, 2.4599, 2)] // just below
    [InlineData(2, 2.00, 2)]
    public void Small_key_with_costs(double costOfAll, double expected, int first)
    {
        var key = Find([0.40, 0.25, 0.15, 0.12, 0.08], Pattern(1, "00111"), Pattern(1, "01010"), Pattern(costOfAll, "ABCDE"), Pattern(2, "11110"));
        Assert.Equal(expected, key.ExpectedCost, Tolerance);
        Assert.Equal(first, key.Test);
    }

    [Fact]
    public void Small_key_asks_the_dear_test_only_where_the_cheap_ones_leave_two()
    {
        var key = Find([0.40, 0.25, 0.15, 0.12, 0.08], Pattern(1, "00111"), Pattern(1, "01010"), Pattern(4, "ABCDE"), Pattern(2, "11110"));
        Assert.Equal([1, 1], key.Branches.Select(branch => branch.Next.Test));
        Assert.Equal(4, key.WorstCost, Tolerance); // 1 + 1 + 2
        Assert.Equal([0.65, 0.35], key.Branches.Select(branch => Math.Round(branch.Share, 9)));
        Assert.Equal([0b00001UL, 0b00010UL, 0b00100UL, 0b01000UL, 0b10000UL], Ends(key).Order());
    }

    // Sums of six weights: all trees were gone through to find 138/11; the rule of most information per cost, followed by hand, comes to 162/11.
    [Fact]
    public void Most_information_per_cost_first_is_not_always_the_cheapest()
    {
        double[] weights = [1, 2, 1, 5, 1, 1];
        KeyTest[] tests = [Pattern(5, "100010"), Pattern(5, "001101"), Pattern(2, "100000"), Pattern(8, "100110"), Pattern(3, "001111"), Pattern(5, "101000")];
        Assert.Equal(138 / 11.0, Find(weights, tests).ExpectedCost, Tolerance);
        Assert.Equal(162 / 11.0, IdentificationKey.Find(weights, tests, IdentificationKey.All(6), KeyMethod.Greedy).ExpectedCost, Tolerance);
    }

    // With every yes/no question allowed, the best key is Huffman's code. The questions "is it one of the first n?" suffice for it, weights being in order: a best code
    // can be written with its words in alphabetical order. More questions cannot beat it, nor may they mislead the solver.
    [Fact]
    public void Table_of_Huffman()
    {
        var all = IdentificationKey.All(_huffman.Length);
        KeyTest[] firstOnes = [.. Enumerable.Range(1, _huffman.Length - 1).Select(count => Split(1, IdentificationKey.All(count), all))];
        KeyTest[] others = [.. Enumerable.Range(0, 12).Select(seed => Split(1, (0x1B3UL * (ulong)(seed + 3)) & all, all))];
        Assert.Equal(3.42, IdentificationKey.Find(_huffman, [.. others, .. firstOnes], all, KeyMethod.Exact).ExpectedCost, Tolerance);
        Assert.Equal(3.42, Huffman(_huffman), Tolerance); // the code's own length, merged by Huffman's rule
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(4)]
    public void Every_yes_or_no_question_allowed_gives_the_length_of_Huffmans_code(int from)
    {
        double[] weights = _huffman[from..(from + 9)];
        var all = IdentificationKey.All(weights.Length);
        KeyTest[] every = [.. Enumerable.Range(1, (1 << (weights.Length - 1)) - 1).Select(set => Split(1, (ulong)set, all))];
        Assert.Equal(Huffman(weights), Find(weights, every).ExpectedCost, Tolerance);
    }

    // K equally likely candidates and yes/no questions: never fewer than log₂ K rounded up at worst, and binary digits reach it.
    [Theory]
    [InlineData(2, 1)]
    [InlineData(3, 2)]
    [InlineData(4, 2)]
    [InlineData(5, 3)]
    [InlineData(8, 3)]
    [InlineData(9, 4)]
    [InlineData(12, 4)]
    public void Equally_likely_candidates_need_the_binary_logarithm_at_worst(int candidates, double worst)
    {
        var all = IdentificationKey.All(candidates);
        KeyTest[] digits = [.. Enumerable.Range(0, 4).Select(digit => Split(1, Members(candidates, candidate => (candidate >> digit & 1) == 1), all))];
        Assert.Equal(worst, Find([.. Enumerable.Repeat(1.0, candidates)], digits).WorstCost, Tolerance);
    }

    [Fact]
    public void Order_of_the_tests_breaks_ties_and_nothing_else()
    {
        KeyTest one = Pattern(2, "0011"), other = Pattern(2, "0101"), dear = Pattern(2.5, "0123");
        double[] even = [1, 1, 1, 1];
        Assert.Equal(0, Find(even, one, other).Test);
        Assert.Equal(0, Find(even, other, one).Test);
        Assert.Equal(2, Find(even, one, other, dear).Test);
        Assert.Equal(0, Find(even, dear, other, one).Test);
    }

    [Fact]
    public void Nothing_to_tell_apart_costs_nothing_and_twins_stay_together()
    {
        Assert.Equal((null, 0), (Find([1], Pattern(1, "0")).Test, Find([1], Pattern(1, "0")).ExpectedCost));
        Assert.Null(Find([1, 1], Pattern(1, "00")).Test);
        Assert.Null(IdentificationKey.Find([1, 1], [Pattern(1, "01")], 0, KeyMethod.Exact).Test);
        var key = Find([1, 1, 2], Pattern(3, "001"));
        Assert.Equal([0b011UL, 0b100UL], Ends(key).Order());
        Assert.Equal((3, 3), (key.ExpectedCost, key.WorstCost));
    }

    // A and C differ, B has no recorded value and can give either answer: half of it each time.
    [Fact]
    public void Candidate_that_can_give_two_answers_counts_half_in_each()
    {
        var key = IdentificationKey.Find([1, 2, 1], [new KeyTest(1, [0b011, 0b110])], 0b111, KeyMethod.Exact);
        Assert.Equal([(0.5, 0b011UL), (0.5, 0b110UL)], key.Branches.Select(branch => (branch.Share, branch.Next.Candidates)));
    }

    [Fact]
    public void Answer_that_another_one_takes_in_whole_is_not_counted_on()
    {
        Assert.Null(IdentificationKey.Find([1, 1], [new KeyTest(1, [0b01, 0b11])], 0b11, KeyMethod.Exact).Test);
        Assert.False(new KeyTest(1, [0b01, 0b11]).Separates(0, 1));
        Assert.True(new KeyTest(1, [0b011, 0b110]).Separates(0, 2));
        Assert.False(new KeyTest(1, [0b011, 0b110]).Separates(0, 1));
    }

    [Theory]
    [InlineData(2, KeyMethod.Exact)]
    [InlineData(12, KeyMethod.Exact)]
    [InlineData(13, KeyMethod.Greedy)]
    [InlineData(64, KeyMethod.Greedy)]
    public void Up_to_twelve_candidates_are_exact(int candidates, KeyMethod method) => Assert.Equal(method, IdentificationKey.MethodFor(candidates));

    [Fact]
    public void Sixty_four_candidates_are_identified_by_their_six_binary_digits()
    {
        KeyTest[] digits = [.. Enumerable.Range(0, 6).Select(digit => Split(1, Members(64, candidate => (candidate >> digit & 1) == 1), ulong.MaxValue))];
        var key = IdentificationKey.Find([.. Enumerable.Repeat(1.0, 64)], digits, IdentificationKey.All(64), KeyMethod.Greedy);
        Assert.Equal((6, 6), (key.ExpectedCost, key.WorstCost));
        Assert.Equal(Enumerable.Range(0, 64).Select(candidate => 1UL << candidate), Ends(key).Order());
        Assert.Throws<ArgumentOutOfRangeException>(() => IdentificationKey.Find(new double[65], digits, ulong.MaxValue, KeyMethod.Greedy));
    }

    [Fact]
    public void Test_that_costs_nothing_is_made_first_also_by_the_greedy_rule()
    {
        KeyTest[] tests = [Pattern(1, "0123"), Pattern(0, "0011")];
        Assert.Equal(1, IdentificationKey.Find([1, 1, 1, 1], tests, 0b1111, KeyMethod.Greedy).Test);
    }

    private static KeyNode Find(double[] weights, params KeyTest[] tests) => IdentificationKey.Find(weights, tests, IdentificationKey.All(weights.Length), KeyMethod.Exact);

    // One character for each candidate: equal ones give the same answer.
    private static KeyTest Pattern(double cost, string answers) => new(
        cost, [.. answers.Distinct().Select(answer => Members(answers.Length, candidate => answers[candidate] == answer))]);

    private static KeyTest Split(double cost, ulong yes, ulong all) => new(cost, [yes & all, all & ~yes]);

    private static ulong Members(int candidates, Func<int, bool> isIn) =>
        Enumerable.Range(0, candidates).Where(isIn).Aggregate(0UL, (set, candidate) => set | (1UL << candidate));

    private static IEnumerable<ulong> Ends(KeyNode node) => node.Test is null ? [node.Candidates] : node.Branches.SelectMany(branch => Ends(branch.Next));

    // Huffman's rule: the two least likely become one, time and again; every merging adds its weight to the length.
    private static double Huffman(IEnumerable<double> weights)
    {
        List<double> left = [.. weights];
        var (total, length) = (left.Sum(), 0.0);
        while (left.Count > 1)
        {
            left.Sort();
            var merged = left[0] + left[1];
            left.RemoveRange(0, 2);
            left.Add(merged);
            length += merged;
        }

        return length / total;
    }
}
