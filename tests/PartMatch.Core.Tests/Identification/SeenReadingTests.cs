using CsCheck;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Identification;
using PartMatch.Core.Measures;
using PartMatch.Core.Tests.Catalogue;
using Xunit;

namespace PartMatch.Core.Tests.Identification;

public sealed class SeenReadingTests
{
    private static readonly IdentificationSubject _lengths = AnyObservable.Subject(
        AnyObservable.Lengths(Method.Caliper, 0.05m, (10, 0.1m), (12, 0)), AnyObservable.Lengths(Method.SteelRule, 1, (10, 0.1m), (12, 0)));

    // a reads 9.85 … 10.15 by the caliper and 8.9 … 11.1 by the rule, b 11.95 … 12.05 and 11 … 13.
    [Theory]
    [InlineData("size@caliper:10.15 mm", "a")]
    [InlineData("size@caliper:10.151 mm", "")]
    [InlineData("size@caliper:11.95 mm", "b")]
    [InlineData("size@steel-rule:11 mm", "ab")]
    [InlineData("size@steel-rule:1.1 cm", "ab")]
    [InlineData("size@steel-rule:10.999 mm", "a")]
    [InlineData("size:11 mm", "ab")] // the check is not named: the one that reads least exactly decides
    [InlineData("size:11.5 mm", "b")]
    [InlineData("size: 25.4 mm", "")]
    public void Reading_leaves_whom_it_can_be_of(string seen, string left) => Assert.Equal(left, Left(seen, _lengths));

    [Theory]
    [InlineData("size@photo:grey", "ac")]
    [InlineData("size:red", "bc")]
    [InlineData("size:sky-blue", "c")]
    public void Choice_leaves_whom_it_can_be_of_and_those_of_which_nothing_is_recorded(string seen, string left) =>
        Assert.Equal(left, Left(seen, AnyObservable.Subject(AnyObservable.Choices(["grey"], ["red"], null))));

    [Theory]
    [InlineData("size:grey|red", "b")]
    [InlineData("size:red|grey", "b")]
    [InlineData("size:grey", "a")]
    [InlineData("size:sky-blue", "")]
    public void Set_is_read_in_any_order(string seen, string left) => Assert.Equal(left, Left(seen, AnyObservable.Subject(AnyObservable.Sets(["grey"], ["grey", "red"]))));

    [Theory]
    [InlineData("size:10", "size:number with a unit, such as mm")] // no unit
    [InlineData("size:10 kg", "size:number with a unit, such as mm")]
    [InlineData("size", "size:number with a unit, such as mm")]
    [InlineData("width:10 mm", "feature:value of a check that these candidates have: size")]
    [InlineData("size@photo:10 mm", "feature:value of a check that these candidates have: size")] // no such check
    [InlineData("cam.size:10 mm", "feature:value of a check that these candidates have: size")]
    [InlineData("", "feature:value of a check that these candidates have: size")]
    public void What_cannot_be_understood_is_refused_with_what_is_expected(string seen, string expected)
    {
        var (understood, refused) = SeenReading.Read(seen, _lengths);
        Assert.Null(understood);
        Assert.Equal((seen, expected), (refused?.Found, refused?.Expected));
        Assert.NotEmpty(refused?.Mend ?? "");
    }

    [Theory]
    [InlineData("4.5")]
    [InlineData("four")]
    [InlineData("")]
    public void Count_must_be_a_whole_number(string value)
    {
        var (_, refused) = SeenReading.Read($"size:{value}", AnyObservable.Subject(AnyObservable.Counts(null, 4, 5)));
        Assert.Equal("size:whole number", refused?.Expected);
    }

    [Fact]
    public void Choice_that_the_feature_does_not_have_is_refused_with_those_it_has()
    {
        var (_, refused) = SeenReading.Read("size:green", AnyObservable.Subject(AnyObservable.Choices(["grey"], ["red"])));
        Assert.Equal("size: and one of grey, red, sky-blue", refused?.Expected);
        Assert.Equal("for example size@photo:grey", refused?.Mend);
    }

    // Two kinds have a feature of one name: a pump (a, b) and a shaft (c, d). A length rules out the pumps that are not so long, and the shafts.
    [Fact]
    public void Feature_that_two_kinds_have_is_read_of_each_kind()
    {
        Observable Of(string kind, params (decimal, decimal)?[] lengths) =>
            AnyObservable.Lengths(Method.Caliper, 0.05m, lengths) with { Kind = new Kind(kind, kind, true, true, [], [], [], []) };
        var subject = AnyObservable.Subject(Of("pump", (10, 0), (20, 0), null, null), Of("shaft", null, null, (10, 0), (30, 0)));
        Assert.Equal("ac", Left("size@caliper:10 mm", subject));
        Assert.Equal("d", Left("size@caliper:30 mm", subject));
        Assert.Equal("", Left("size@caliper:40 mm", subject));
    }

    [Fact]
    public void Feature_that_two_kinds_have_in_different_ways_is_read_of_the_kind_that_can_have_it()
    {
        var pump = AnyObservable.Lengths(Method.Photo, 1, (10, 0), (20, 0), null, null) with { Kind = new Kind("pump", "Pump", true, true, [], [], [], []) };
        var shaft = AnyObservable.Choices(null, null, ["grey"], ["red"]) with { Kind = new Kind("shaft", "Shaft", true, true, [], [], [], []) };
        foreach (var subject in new[] { AnyObservable.Subject(pump, shaft), AnyObservable.Subject(shaft, pump) })
        {
            Assert.Equal("c", Left("size:grey", subject));
            Assert.Equal("a", Left("size:10 mm", subject));
        }
    }

    private static readonly Gen<decimal?> _uncertainty = Gen.Int[0, 4].Select(pick => new decimal?[] { null, 0, 0.02m, 0.5m, 3 }[pick]);

    // In mm or inches, on a grid coarse enough for equal and touching values; some not recorded, some with two values.
    private static readonly Gen<StatedValue[]> _lengthsOfOne = Gen.Select(Gen.Int[-3, 40], Gen.Int[0, 4], Gen.Bool)
        .Select(one => one.Item1 < 0 ? Observable.NothingThere : Length(one.Item1, one.Item2, one.Item3)).Array[0, 2];

    private static readonly Gen<Observable> _observable = Gen.OneOf(
        Gen.Select(_lengthsOfOne.Array[1, 6], _uncertainty, Gen.OneOf(Method.Caliper, Method.Photo, Method.Label))
            .Select((values, uncertainty, method) => AnyObservable.Of(FeatureType.Quantity, TestFamily.Millimetre, [], method, uncertainty / 1000, values)),
        Gen.Select(Gen.Int[0, 5].Array[0, 2].Array[1, 6], Gen.Int[-1, 1].Select(whole => whole < 0 ? default(decimal?) : whole))
            .Select((values, uncertainty) => AnyObservable.Of(
                FeatureType.Count, null, [], Method.Count, uncertainty, [.. values.Select(one => one.Select(AnyObservable.Count).ToArray())])),
        Gen.OneOf("grey", "red", "sky-blue").Array[0, 3].Array[1, 6].Select(values => AnyObservable.Choices([.. values.Select(one => one.Distinct().ToArray())])),
        Gen.OneOf("grey", "red", "sky-blue").Array[1, 3].Array[1, 6].Select(values => AnyObservable.Sets([.. values.Select(one => one.Distinct().ToArray())])));

    [Fact]
    public void What_an_answer_says_was_seen_leaves_its_candidates_and_no_others() => _observable.Sample(
        observable =>
        {
            var subject = AnyObservable.Subject(observable);
            return observable.Answers.All(answer => Left(answer.Seen, subject) == AnyObservable.Letters(answer.Candidates));
        },
        iter: 3_000,
        print: observable => $"{observable.Check}: "
            + $"{string.Join(" / ", observable.Values.Select(values => string.Join(", ", values.Select(value => FitWording.Text(value)))))}; "
            + string.Join(", ", observable.Answers.Select(answer => $"{answer.Seen} = {AnyObservable.Letters(answer.Candidates)}")));

    // Whatever is read, the candidates it leaves lie in one answer together: no check separates what one reading can be of.
    [Fact]
    public void Whatever_is_read_leaves_no_more_than_one_of_the_answers() => Gen.Select(_observable, Gen.Int[0, 80]).Sample((observable, read) =>
    {
        var value = observable.Feature.Type switch
        {
            FeatureType.Quantity => FormattableString.Invariant($"{read / 2.0} mm"),
            FeatureType.Count => $"{read / 8}",
            _ => observable.Feature.Choices[read % 3],
        };
        var left = SeenReading.Read($"size:{value}", AnyObservable.Subject(observable)).Seen?.Leaves ?? throw new InvalidOperationException($"{value} was refused.");
        var silent = observable.Values.Select((values, candidate) => values.Count == 0 ? 1UL << candidate : 0).Aggregate(0UL, (set, bit) => set | bit);
        return left == silent || observable.Answers.Count == 0 || observable.Answers.Any(answer => (left & ~answer.Candidates) == 0);
    });

    private static StatedValue Length(int value, int spread, bool inInches)
    {
        var unit = inInches ? UnitTable.Get("in") : TestFamily.Millimetre;
        var (length, half) = inInches ? (unit.ToBase(value * 0.03m), 0.000254m * spread) : (TestFamily.Metres(value * 0.75m), TestFamily.Metres(spread * 0.25m));
        return AnyObservable.Stated(new QuantityReading(length, half, half, null, unit, FormattableString.Invariant($"{unit.FromBase(length)} {unit.Symbol}")));
    }

    private static string Left(string seen, IdentificationSubject subject)
    {
        var (understood, refused) = SeenReading.Read(seen, subject);
        return understood is null ? $"refused, expected {refused?.Expected}" : AnyObservable.Letters(understood.Leaves);
    }
}
