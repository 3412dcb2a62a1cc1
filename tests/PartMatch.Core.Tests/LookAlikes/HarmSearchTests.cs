using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.LookAlikes;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.LookAlikes;

/// <summary>The place where a mix-up does most harm is judged with everything that was found there.</summary>
public sealed class HarmSearchTests
{
    // A part of another kind does not fit, harm 2; but somebody had it on and the engine ran differently, harm 4.
    [Fact]
    public void What_was_found_of_a_part_of_another_kind_counts_in_its_danger()
    {
        var family = WithWheelsAndShafts(_ => { }, _ => { }).Wheel("26-1147-C").Shaft("26-1147-E").Fitted("lark", "wheel", "26-1147-C");

        var plain = Worst(family);
        var found = Worst(family.Found("f-1", "26-1147-E", FindingOutcome.Yes, By(EvidenceGrade.RanUnderLoad))
            .Found("f-2", "26-1147-E", FindingOutcome.Differently, By(EvidenceGrade.RanUnderLoad)));

        Assert.Equal((2, Headline.DoesNotFit, Sureness.Indicated), plain); // by its kind, rank 4
        Assert.Equal((4, Headline.MountsButRunsDifferently, Sureness.Documented), found); // rank 1 on both axes; the kind speaks against mounting
    }

    // It fits with work, harm 1, for who knows that it must be set; who takes it for the right one lets the engine run differently: 4, and one more for damage.
    [Fact]
    public void A_part_that_runs_right_only_once_it_is_set_is_as_harmful_as_one_that_runs_differently()
    {
        var family = WithWheels(wheel => wheel.Length("mark")
                .Rule("mark", Effect.Alters, allowance: 0.1m, consequence: Consequence.Damage).Rule("mark", Effect.Work, allowance: 0.1m, work: "set", consequence: Consequence.Nuisance))
            .WorkOn("set", null, null, "wheel.mark")
            .Wheel("26-1147-C", Has("mark", Mm(10))).Wheel("26-1147-E", Has("mark", Mm(12))).Fitted("lark", "wheel", "26-1147-C");

        Assert.Equal((5, Headline.FitsWithWork), (Worst(family).Item1, Worst(family).Item2));
    }

    private static (int, Headline?, Sureness?) Worst(TestFamily family)
    {
        var row = Assert.Single(LookAlikeSearch.Decide(family.LookAlikes(), new LookAlikeQuestion("26-1147-C")).LookAlikes);
        return (row.Harm, row.Worst?.Headline, row.Worst?.Sureness);
    }
}
