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

    private static (int, Headline?, Sureness?) Worst(TestFamily family)
    {
        var row = Assert.Single(LookAlikeSearch.Decide(family.LookAlikes(), new LookAlikeQuestion("26-1147-C")).LookAlikes);
        return (row.Harm, row.Worst?.Headline, row.Worst?.Sureness);
    }
}
