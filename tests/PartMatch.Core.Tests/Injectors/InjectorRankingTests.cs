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

    private static Dictionary<string, InjectorFit> All(InjectorFit fit) => Sized.ToDictionary(injector => injector.Part, _ => fit);
}
