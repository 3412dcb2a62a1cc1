using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Fit;

public sealed class HeadlineTests
{
    [Theory]
    [InlineData(Mounts.Yes, Runs.Same, Headline.Fits)]
    [InlineData(Mounts.Yes, Runs.Differently, Headline.MountsButRunsDifferently)]
    [InlineData(Mounts.Yes, Runs.NotKnown, Headline.NotKnownYet)]
    [InlineData(Mounts.WithWork, Runs.Same, Headline.FitsWithWork)]
    [InlineData(Mounts.WithWork, Runs.Differently, Headline.MountsButRunsDifferently)]
    [InlineData(Mounts.WithWork, Runs.NotKnown, Headline.NotKnownYet)]
    [InlineData(Mounts.NotKnown, Runs.Same, Headline.NotKnownYet)]
    [InlineData(Mounts.NotKnown, Runs.Differently, Headline.NotKnownYet)]
    [InlineData(Mounts.NotKnown, Runs.NotKnown, Headline.NotKnownYet)]
    [InlineData(Mounts.No, Runs.Same, Headline.DoesNotFit)]
    [InlineData(Mounts.No, Runs.Differently, Headline.DoesNotFit)]
    [InlineData(Mounts.No, Runs.NotKnown, Headline.DoesNotFit)]
    public void Every_cell_of_the_table(Mounts mounts, Runs runs, Headline expected) => Assert.Equal(expected, AxisDecision.HeadlineOf(mounts, runs));

    // The same table through whole answers: a part that fails, meets or leaves open a relation of each effect.
    [Theory]
    [InlineData("a", "a", "a", Headline.Fits, "Fits")]
    [InlineData("a", "a", "b", Headline.MountsButRunsDifferently, "Mounts but runs differently")]
    [InlineData("a", "a", null, Headline.NotKnownYet, "Not known yet")]
    [InlineData("a", "b", "a", Headline.FitsWithWork, "Fits with work")]
    [InlineData("a", "b", "b", Headline.MountsButRunsDifferently, "Mounts but runs differently, and needs work")]
    [InlineData("a", "b", null, Headline.NotKnownYet, "Not known yet")]
    [InlineData(null, "a", "a", Headline.NotKnownYet, "Not known yet")]
    [InlineData(null, "a", "b", Headline.NotKnownYet, "Not known yet; if it mounts, it runs differently")]
    [InlineData(null, "a", null, Headline.NotKnownYet, "Not known yet")]
    [InlineData("b", "a", "a", Headline.DoesNotFit, "Does not fit")]
    [InlineData("b", "b", "b", Headline.DoesNotFit, "Does not fit")]
    [InlineData("b", "a", null, Headline.DoesNotFit, "Does not fit")]
    public void The_headline_is_told_in_words(string? stops, string? work, string? alters, Headline headline, string text)
    {
        var answer = Wheels(stops, work, alters).Ask("W-2");

        Assert.Equal((headline, text), (answer.Headline, answer.HeadlineText));
        Assert.Equal(work == "b" ? ["ream-out"] : [], answer.Works.Select(one => one.Work));
    }

    [Fact]
    public void A_headline_has_the_lower_sureness_of_its_axes()
    {
        // Mounts differently by the document: rank 4, indicated. Mounts yes computed: rank 6, unproven.
        var answer = Wheels("a", "a", "b").Ask("W-2");

        Assert.Equal((Sureness.Unproven, Sureness.Indicated, Sureness.Unproven), (answer.Mounts.Sureness, answer.Runs.Sureness, answer.Sureness));
    }

    [Fact]
    public void Does_not_fit_has_the_sureness_of_mounts()
    {
        var answer = Wheels("b", "a", null).Ask("W-2");

        Assert.Equal((Sureness.Indicated, Sureness.Unproven, Sureness.Indicated), (answer.Mounts.Sureness, answer.Runs.Sureness, answer.Sureness));
    }

    [Theory]
    [InlineData(Headline.Fits, Sureness.Proven, Sureness.Documented, Sureness.Documented)]
    [InlineData(Headline.Fits, Sureness.Documented, Sureness.Proven, Sureness.Documented)]
    [InlineData(Headline.DoesNotFit, Sureness.Proven, Sureness.Unproven, Sureness.Proven)]
    [InlineData(Headline.DoesNotFit, Sureness.Unproven, Sureness.Proven, Sureness.Unproven)]
    public void Sureness_of_a_headline(Headline headline, Sureness mounts, Sureness runs, Sureness expected) =>
        Assert.Equal(expected, AxisDecision.SurenessOf(headline, mounts, runs));

    [Fact]
    public void The_reference_is_the_variant_as_built() => Assert.Equal("lark as built", Wheels("a", "a", "a").Ask("W-2").Reference);

    private static TestFamily Wheels(string? stops, string? work, string? alters)
    {
        RecordedValue[] asked = [.. new[] { ("stops", stops), ("work", work), ("alters", alters) }.Where(pair => pair.Item2 is not null).Select(pair => Has(pair.Item1, Word(pair.Item2 ?? "")))];
        return WithWheels(wheel => wheel
                .Choice("stops").Rule("stops", Effect.Stops).Choice("work").Rule("work", Effect.Work, work: "ream-out").Choice("alters").Rule("alters", Effect.Alters))
            .Work("ream-out")
            .Wheel("W-1", Has("stops", Word("a")), Has("work", Word("a")), Has("alters", Word("a"))).Wheel("W-2", asked).Fitted("lark", "wheel", "W-1");
    }
}
