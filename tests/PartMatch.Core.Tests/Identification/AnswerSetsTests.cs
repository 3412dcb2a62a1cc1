using PartMatch.Core.Catalogue;
using PartMatch.Core.Identification;
using Xunit;

namespace PartMatch.Core.Tests.Identification;

public sealed class AnswerSetsTests
{
    // Tolerance 0.1 mm on a, none on b. Each of the two readings may be off by the uncertainty, so twice that counts: 0.1 + 2 × 0.05 = 0.2 mm.
    [Theory]
    [InlineData(10.2, "ab")] // on the limit: the readings can be one and the same
    [InlineData(10.199, "ab")]
    [InlineData(10.201, "a b")]
    [InlineData(9.8, "ab")]
    [InlineData(9.799, "b a")]
    public void Two_lengths_are_two_answers_where_tolerance_and_twice_the_uncertainty_leave_a_gap(double other, string answers) =>
        Assert.Equal(answers, Sets(AnyObservable.Lengths(Method.Caliper, 0.05m, (10.0m, 0.1m), ((decimal)other, 0))));

    [Fact]
    public void Length_between_two_others_is_in_both_answers()
    {
        var observable = AnyObservable.Lengths(Method.Caliper, 0.05m, (10.0m, 0), (10.08m, 0), (10.16m, 0));
        Assert.Equal("ab bc", Sets(observable)); // 0.08 apart is within 0.1, 0.16 is not
        Assert.Equal(["10 … 10.08 mm", "10.08 … 10.16 mm"], observable.Answers.Select(answer => answer.Text));
        Assert.Equal([true, false, false], new[] { (0, 2), (0, 1), (1, 2) }.Select(pair => observable.AsTest().Separates(pair.Item1, pair.Item2)));
    }

    [Fact]
    public void Candidate_without_a_value_is_in_every_answer()
    {
        Assert.Equal("ac bc", Sets(AnyObservable.Lengths(Method.Caliper, 0.05m, (10, 0), (20, 0), null)));
        Assert.Equal("ac bc", Sets(AnyObservable.Choices(["red"], ["sky-blue"], null)));
        Assert.Equal("ac bc", Sets(AnyObservable.Counts(null, 4, 5, null)));
        Assert.Equal("", Sets(AnyObservable.Choices(null, null))); // nothing can be read that anything is known of
    }

    [Theory]
    [InlineData(Method.Photo)]
    [InlineData(Method.Caliper)]
    public void Check_that_nobody_wrote_an_uncertainty_for_separates_no_lengths(Method method)
    {
        var observable = AnyObservable.Lengths(method, null, (10, 0), (200, 0));
        Assert.False(observable.AsTest().Separates(0, 1));
        Assert.Equal([("ab", "10 … 200 mm", $"size@{Codes.Of(method)}:10 mm")], Shown(observable));
    }

    [Fact]
    public void That_nothing_is_there_is_seen_by_any_check_however_it_reads()
    {
        var observable = AnyObservable.Of(
            FeatureType.Quantity, Catalogue.TestFamily.Millimetre, [], Method.Photo, null, [[AnyObservable.Length(10)], [AnyObservable.Length(20)], [Observable.NothingThere]]);
        Assert.Equal([("ab", "10 … 20 mm", "size@photo:10 mm"), ("c", "nothing there", "size@photo:nothing-there")], Shown(observable));
    }

    // A label is read, not measured: only what the tolerances share is one answer.
    [Theory]
    [InlineData(10.1, "ab")]
    [InlineData(10.101, "a b")]
    public void Label_is_read_exactly(double other, string answers) => Assert.Equal(answers, Sets(AnyObservable.Lengths(Method.Label, null, (10, 0.1m), ((decimal)other, 0))));

    [Fact]
    public void Label_is_read_exactly_whatever_uncertainty_is_written_beside_it() =>
        Assert.Equal("a b", Sets(AnyObservable.Lengths(Method.Label, 5, (10, 0), (10.1m, 0))));

    // What each value is known to (0.02 mm here) counts as well as the maker's tolerance: 0.1 + 0.02 + 0.02 + 2 × 0.05 = 0.24.
    [Theory]
    [InlineData(10.24, "ab")]
    [InlineData(10.241, "a b")]
    public void How_well_a_value_is_known_counts_as_well(double other, string answers) => Assert.Equal(
        answers,
        Sets(AnyObservable.Of(
            FeatureType.Quantity, Catalogue.TestFamily.Millimetre, [], Method.Caliper, 0.00005m,
            [
                [AnyObservable.Stated(Catalogue.TestFamily.Mm(10, 0.1m, 0.02m))],
                [AnyObservable.Stated(Catalogue.TestFamily.Mm((decimal)other, 0, 0.02m))],
            ])));

    [Theory]
    [InlineData(null, 5, "a b")] // counted exactly
    [InlineData(null, 4, "ab")]
    [InlineData(1.0, 6, "ab")] // either count may be off by one
    [InlineData(1.0, 7, "a b")]
    public void Counts_are_exact_unless_an_uncertainty_is_written(double? uncertainty, int other, string answers) =>
        Assert.Equal(answers, Sets(AnyObservable.Counts((decimal?)uncertainty, 4, other)));

    [Fact]
    public void Each_choice_is_an_answer_in_words()
    {
        var observable = AnyObservable.Choices(["sky-blue"], ["red"], ["sky-blue"]);
        Assert.Equal([("b", "red", "size@photo:red"), ("ac", "sky blue", "size@photo:sky-blue")], Shown(observable));
    }

    [Fact]
    public void Candidate_that_can_be_either_is_in_both_answers() => Assert.Equal("ac bc", Sets(AnyObservable.Choices(["grey"], ["red"], ["grey", "red"])));

    [Fact]
    public void Sets_are_the_same_only_as_a_whole_and_in_any_order()
    {
        var observable = AnyObservable.Sets(["grey"], ["grey", "red"], ["red", "grey"]);
        Assert.Equal([("a", "grey", "size@photo:grey"), ("bc", "grey + red", "size@photo:grey|red")], Shown(observable));
    }

    [Fact]
    public void Lengths_are_answers_in_rising_order_as_read()
    {
        var observable = AnyObservable.Lengths(Method.Caliper, 0.05m, (12, 0), (10, 0), (12.05m, 0));
        Assert.Equal([("b", "10 mm", "size@caliper:10 mm"), ("ac", "12 … 12.05 mm", "size@caliper:12 mm")], Shown(observable));
    }

    [Fact]
    public void Minutes_of_a_check_on_an_engine_include_the_way_to_it()
    {
        var here = AnyObservable.Choices(["red"]);
        var inside = here with { Position = new Position("cam", "Cam", "works", "shaft", null) { AccessMinutes = 40 } };
        Assert.Equal((2, 42), (here.Minutes, inside.Minutes));
        Assert.Equal("cam.size@photo:red", Assert.Single(inside.Answers).Seen);
    }

    private static string Sets(Observable observable) => string.Join(' ', observable.Answers.Select(answer => AnyObservable.Letters(answer.Candidates)));

    private static IEnumerable<(string, string, string)> Shown(Observable observable) =>
        observable.Answers.Select(answer => (AnyObservable.Letters(answer.Candidates), answer.Text, answer.Seen));
}
