using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.LookAlikes;
using Xunit;

namespace PartMatch.Core.Tests.LookAlikes;

// The scale is ours, no source: ease 3 / 2 / 1, harm 4 / 3 / 2 / 1 / 0 and one more for damage or injury; high from 8, medium from 4, low from 1.
public sealed class DangerTests
{
    [Theory]
    [InlineData(Headline.MountsButRunsDifferently, null, 4)]
    [InlineData(Headline.MountsButRunsDifferently, Consequence.Nuisance, 4)]
    [InlineData(Headline.MountsButRunsDifferently, Consequence.Loss, 4)]
    [InlineData(Headline.MountsButRunsDifferently, Consequence.Damage, 5)]
    [InlineData(Headline.MountsButRunsDifferently, Consequence.Injury, 5)]
    [InlineData(Headline.NotKnownYet, null, 3)]
    [InlineData(Headline.NotKnownYet, Consequence.Damage, 4)]
    [InlineData(Headline.DoesNotFit, Consequence.Loss, 2)]
    [InlineData(Headline.DoesNotFit, Consequence.Injury, 3)]
    [InlineData(Headline.FitsWithWork, null, 1)]
    [InlineData(Headline.FitsWithWork, Consequence.Damage, 2)]
    [InlineData(Headline.Fits, null, 0)]
    [InlineData(Headline.Fits, Consequence.Injury, 0)] // what is unmet was overruled by better evidence: it fits
    public void Harm_of_one_place(Headline headline, Consequence? consequence, int harm) => Assert.Equal(harm, Danger.Harm(headline, consequence));

    [Theory]
    [InlineData(1, 0, DangerLevel.None)]
    [InlineData(3, 0, DangerLevel.None)]
    [InlineData(1, 1, DangerLevel.Low)]
    [InlineData(1, 3, DangerLevel.Low)]
    [InlineData(3, 1, DangerLevel.Low)]
    [InlineData(2, 2, DangerLevel.Medium)]
    [InlineData(1, 4, DangerLevel.Medium)]
    [InlineData(3, 2, DangerLevel.Medium)]
    [InlineData(2, 4, DangerLevel.High)]
    [InlineData(3, 3, DangerLevel.High)]
    [InlineData(3, 5, DangerLevel.High)]
    public void Danger_is_the_product_of_the_factors(int ease, int harm, DangerLevel level) => Assert.Equal(level, Danger.Level(ease, harm));

    [Theory]
    [InlineData("H-26-1147-C", "H-26-1147-E", true, 3)]
    [InlineData("H-26-1147-C", "H-26-1147-E", false, 1)]
    [InlineData("H-26-1147-C", "H-26-II47-C", false, 2)] // look-alike characters only
    [InlineData("H-26-1147-C", "H-26-II47-C", true, 3)]
    [InlineData("H-26-1147-C", "H-26-II47-E", false, 1)]
    [InlineData("H-26-1147-C", "H-26-7147-C", false, 1)] // 1 for 7 is easily misread, but 7 is not of the class
    [InlineData("H-26-1147-C", "H261147C", false, 2)] // the same number of another maker
    public void Ease_of_a_near_number(string asked, string other, bool sameToTheEye, int ease)
    {
        var index = new LookAlikeIndex([new PartNumber("harl", other, NumberKey.Of(other), NumberSort.Service, "harl:" + other)]);
        Assert.Equal(ease, Danger.Ease(Assert.Single(index.Find(NumberKey.Of(asked))), sameToTheEye));
    }

    [Fact]
    public void Ease_of_what_only_the_eye_finds() => Assert.Equal(2, Danger.Ease(null, sameToTheEye: true));

    [Theory]
    [InlineData(true, 3)] // the same to the eye: 2
    [InlineData(false, 2)]
    public void What_was_delivered_in_place_of_the_other_is_mixed_up_one_more_easily(bool sameToTheEye, int ease) =>
        Assert.Equal(ease, Danger.Ease(null, sameToTheEye, cameInstead: true));
}
