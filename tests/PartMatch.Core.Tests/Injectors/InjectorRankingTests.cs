using PartMatch.Core.Fit;
using PartMatch.Core.Injectors;
using Xunit;
using static PartMatch.Core.Tests.Injectors.InjectorExamples;

namespace PartMatch.Core.Tests.Injectors;

public sealed class InjectorRankingTests
{
    private static readonly InjectorFit Fits = new(Headline.Fits, Sureness.Documented, "/api/fit?part=…");

    // 180 kW asks 582.8 (505 … 708) cm3/min as a rating: 440 and 550 are not enough, 620 perhaps, 860 and 999 surely.
    private static readonly IReadOnlyList<SizedInjector> Sized = Size(
        HillClimb,
        Injector("I-9991", "999 cm3/min"), Injector("I-4401", "440 cm3/min"), Injector("I-8602", "860 cm3/min"), Injector("I-6201", "620 cm3/min"), Injector("I-8601", "860 cm3/min"),
        Injector("I-5501", "550 cm3/min"), Injector("I-0000", null)).Injectors;

    [Fact]
    public void Enough_comes_first_then_not_known_then_not_enough()
    {
        var ranked = InjectorRanking.Rank(Sized, All(Fits));
        Assert.Equal(
            ["harl:I-8601", "harl:I-8602", "harl:I-9991", "harl:I-0000", "harl:I-6201", "harl:I-4401", "harl:I-5501"], ranked.Select(injector => injector.Part));
        Assert.Equal([1, 2, 3, 4, 5, 6, 7], ranked.Select(injector => injector.Rank ?? 0));
        Assert.Equal(
            [Enough.Yes, Enough.Yes, Enough.Yes, Enough.NotKnown, Enough.NotKnown, Enough.No, Enough.No], ranked.Select(injector => injector.Enough));
    }

    // The best fit outranks the smallest; flow decides only among those that fit alike.
    [Fact]
    public void Fit_decides_among_those_that_are_enough()
    {
        var fits = All(Fits);
        fits["harl:I-8601"] = Fits with { Headline = Headline.DoesNotFit };
        fits["harl:I-8602"] = Fits with { Headline = Headline.FitsWithWork };
        fits.Remove("harl:I-9991");
        var ranked = InjectorRanking.Rank(Sized, fits);
        Assert.Equal(["harl:I-8602", "harl:I-9991", "harl:I-8601"], ranked.Take(3).Select(injector => injector.Part));
        Assert.EndsWith("Fits with work (documented).", ranked[0].Because, StringComparison.Ordinal);
        Assert.EndsWith("Whether it fits was not asked.", ranked[1].Because, StringComparison.Ordinal);
        Assert.Null(ranked[1].Fit);
    }

    [Fact]
    public void Every_headline_has_its_place()
    {
        Headline[] order = [Headline.Fits, Headline.FitsWithWork, Headline.MountsButRunsDifferently, Headline.NotKnownYet, Headline.DoesNotFit];
        var same = order.Select((_, index) => Sized[0] with { Part = $"harl:I-{9 - index}" }).ToList();
        var fits = same.Zip(order).ToDictionary(pair => pair.First.Part, pair => Fits with { Headline = pair.Second });
        Assert.Equal(order, InjectorRanking.Rank([.. same.AsEnumerable().Reverse()], fits).Select(injector => injector.Fit?.Headline ?? default));
    }

    [Fact]
    public void The_smallest_that_is_enough_says_so()
    {
        var ranked = InjectorRanking.Rank(Sized, All(Fits));
        Assert.EndsWith("The smallest that is enough of those that fit as well as it does.", ranked[0].Because, StringComparison.Ordinal);
        Assert.StartsWith("Enough even in the worst case: open ", ranked[0].Because, StringComparison.Ordinal);
        Assert.All(ranked.Skip(1), injector => Assert.DoesNotContain("smallest", injector.Because, StringComparison.Ordinal));
    }

    [Fact]
    public void The_order_given_does_not_matter()
    {
        var ranked = InjectorRanking.Rank(Sized, All(Fits));
        Assert.Equal(ranked.Select(injector => injector.Part), InjectorRanking.Rank([.. Sized.Reverse()], All(Fits)).Select(injector => injector.Part));
    }

    // Of two injectors whose flow alone the place finds wrong, one has the dead time of what the maker fitted, one another, one none recorded.
    [Theory]
    [InlineData(0.92, DeadTimeAgainstFitted.Same, "only the flow differs, the dead time at the goal is the same, and the control unit has to be set for the flow.")]
    [InlineData(1.05, DeadTimeAgainstFitted.Another,
        "the flow differs, and its dead time is 1.05 ms at the goal instead of 0.92 ms; the control unit has to be set for both.")]
    [InlineData(0, DeadTimeAgainstFitted.NotKnown,
        "of what is recorded only the flow differs; whether its dead time does is not known, and the control unit has to be set for both.")]
    public void Another_flow_comes_with_a_word_on_the_dead_time(double milliseconds, DeadTimeAgainstFitted expected, string words)
    {
        var sized = Size(
            HillClimb, Injector("I-4401", "440 cm3/min", deadTimes: Always(0.92m)),
            Injector("I-8601", "860 cm3/min", deadTimes: milliseconds == 0 ? null : Always((decimal)milliseconds)));
        var fits = FittedInjectors.Compare(sized, new Dictionary<string, InjectorFit>
        {
            ["harl:I-4401"] = Fits with { IsFitted = true },
            ["harl:I-8601"] = Fits with { Headline = Headline.MountsButRunsDifferently, OnlyFlowDiffers = true },
        });
        Assert.Null(fits["harl:I-4401"].DeadTime);
        Assert.Equal(expected, fits["harl:I-8601"].DeadTime);
        Assert.Contains(words, InjectorRanking.Rank(sized.Injectors, fits)[0].Because, StringComparison.Ordinal);
    }

    [Fact]
    public void Dead_time_given_for_all_is_not_compared()
    {
        var sized = Size(
            HillClimb with { DeadTime = ReadRange("1 ms", PartMatch.Core.Measures.Dimension.Time) }, Injector("I-4401", "440 cm3/min", deadTimes: Always(0.92m)), Injector("I-8601", "860 cm3/min"));
        var fits = FittedInjectors.Compare(sized, new Dictionary<string, InjectorFit> { ["harl:I-4401"] = Fits with { IsFitted = true }, ["harl:I-8601"] = Fits });
        Assert.Equal(DeadTimeAgainstFitted.NotKnown, fits["harl:I-8601"].DeadTime);
    }

    [Theory]
    [InlineData(Enough.Yes, "ev-0001).")]
    [InlineData(Enough.NotKnown, "speaks for the expected figures and not for the worst of them; the verdict and the place in the list stay those of the sums.")]
    [InlineData(Enough.No, "measure it and give it; the verdict stays that of the sums.")]
    public void Rating_of_the_maker_is_a_reason_and_no_verdict(Enough enough, string end)
    {
        var said = FittedInjectors.Say(Sized[0] with { Enough = enough, Because = "Sums." }, "120 kW at 5500/min (makers document, ev-0001)");
        Assert.Equal(enough, said.Enough);
        Assert.StartsWith("Sums. The maker fitted it and rates the engine with it at 120 kW at 5500/min (makers document, ev-0001)", said.Because, StringComparison.Ordinal);
        Assert.EndsWith(end, said.Because, StringComparison.Ordinal);
    }

    private static Dictionary<string, InjectorFit> All(InjectorFit fit) => Sized.ToDictionary(injector => injector.Part, _ => fit);
}
