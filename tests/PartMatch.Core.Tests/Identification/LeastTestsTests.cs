using CsCheck;
using PartMatch.Core.Identification;
using Xunit;

namespace PartMatch.Core.Tests.Identification;

public sealed class LeastTestsTests
{
    // Three candidates: the label tells all three apart at once, the two photos together do so as well.
    [Theory]
    [InlineData(5, new[] { 0, 1 })]
    [InlineData(4, new[] { 2 })] // as cheap as the two: the smaller choice
    [InlineData(3, new[] { 2 })]
    public void Cheapest_choice_wins_and_of_equals_the_smaller(double label, int[] chosen) =>
        Assert.Equal(chosen, LeastTests.Separating([new KeyTest(2, [0b001, 0b110]), new KeyTest(2, [0b011, 0b100]), new KeyTest(label, [0b001, 0b010, 0b100])], Pairs(3)));

    [Fact]
    public void Of_equal_choices_the_earlier_is_taken()
    {
        Assert.Equal([0], LeastTests.Separating([new KeyTest(1, [0b01, 0b10]), new KeyTest(1, [0b01, 0b10])], Pairs(2)));

        // Each of the two binary digits can be asked for in two ways.
        KeyTest[] tests = [new(1, [0b0011, 0b1100]), new(1, [0b0011, 0b1100]), new(1, [0b0101, 0b1010]), new(1, [0b0101, 0b1010])];
        Assert.Equal([0, 2], LeastTests.Separating(tests, Pairs(4)));
    }

    [Fact]
    public void Sums_that_differ_in_their_last_bit_are_equal() => // in binary, 0.7 + 0.1 comes out below 0.8
        Assert.Equal([2], LeastTests.Separating([new KeyTest(0.7, [0b001, 0b110]), new KeyTest(0.1, [0b011, 0b100]), new KeyTest(0.8, [0b001, 0b010, 0b100])], Pairs(3)));

    [Fact]
    public void Pairs_that_nothing_separates_are_left_out_of_account()
    {
        Assert.Equal([0], LeastTests.Separating([new KeyTest(1, [0b011, 0b100])], Pairs(3))); // the first two are twins
        Assert.Empty(LeastTests.Separating([new KeyTest(1, [0b11])], Pairs(2)));
        Assert.Empty(LeastTests.Separating([], Pairs(2)));
        Assert.Empty(LeastTests.Separating([new KeyTest(1, [0b01, 0b10])], []));
    }

    private static readonly Gen<KeyTest[]> _tests = Gen.Select(Gen.Int[1, 9], Gen.Int[0, 2].Array[5]).Array[0, 7]
        .Select(tests => tests.Select(test => new KeyTest(test.Item1, AnswersOf(test.Item2))).ToArray());

    [Fact]
    public void No_other_choice_does_as_much_for_less() => Gen.Select(_tests, Gen.Int[0, 1023]).Sample((tests, wanted) =>
    {
        (int One, int Other)[] pairs = [.. Pairs(5).Where((_, index) => (wanted >> index & 1) == 1)];
        var chosen = LeastTests.Separating(tests, pairs);
        (int, int)[] separable = Separated(Enumerable.Range(0, tests.Length));
        Assert.Equal(separable, Separated(chosen));
        var least = Enumerable.Range(0, 1 << tests.Length).Select(choice => Enumerable.Range(0, tests.Length).Where(test => (choice >> test & 1) == 1))
            .Where(choice => Separated(choice).SequenceEqual(separable))
            .Min(choice => (choice.Sum(test => tests[test].Cost), choice.Count()));
        Assert.Equal(least, (chosen.Sum(test => tests[test].Cost), chosen.Count));
        Assert.Equal(chosen.Order(), chosen);

        // In the generator every candidate gives one answer, so a test separates two whose answers are not the same set.
        (int, int)[] Separated(IEnumerable<int> choice) =>
            [.. pairs.Where(pair => choice.Any(test => !tests[test].Answers.Any(answer => (answer >> pair.One & 1) == 1 && (answer >> pair.Other & 1) == 1)))];
    });

    // Seventeen tests, each of which alone separates one candidate from all the others: sixteen of them are needed, and the dearest is left out.
    [Fact]
    public void Beyond_the_limit_everything_is_still_separated()
    {
        KeyTest[] tests = [.. Enumerable.Range(0, 17).Select(candidate => new KeyTest(candidate == 4 ? 9 : 1, [1UL << candidate, 0x1FFFF & ~(1UL << candidate)]))];
        var chosen = LeastTests.Separating(tests, Pairs(17));
        Assert.All(Pairs(17), pair => Assert.Contains(chosen, test => tests[test].Separates(pair.One, pair.Other)));
        Assert.Equal(Enumerable.Range(0, 17).Where(test => test != 4), chosen);
    }

    private static ulong[] AnswersOf(int[] answerOf) =>
        [.. answerOf.Distinct().Select(answer => answerOf.Select((own, candidate) => own == answer ? 1UL << candidate : 0).Aggregate((set, bit) => set | bit))];

    private static (int One, int Other)[] Pairs(int candidates) =>
        [.. Enumerable.Range(0, candidates).SelectMany(one => Enumerable.Range(one + 1, candidates - one - 1), (one, other) => (one, other))];
}
