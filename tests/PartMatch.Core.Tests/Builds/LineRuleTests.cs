using PartMatch.Core.Builds;
using Xunit;

namespace PartMatch.Core.Tests.Builds;

public sealed class LineRuleTests
{
    // The one is lifted where a mate is still to be found, the other never is: kept as one, a plan breaks what it was sought by.
    [Fact]
    public void Rule_that_asks_for_a_mate_is_not_the_rule_that_never_holds()
    {
        var never = LineRule.Never([new At("flywheel", "alder:F-1")]);
        var asking = never with { Asks = "flywheel-bolt" };
        var learned = new LearnedRules([asking, never]);

        Assert.Equal(2, learned.Rules.Count);
        Assert.False(learned.Add(never));
        Assert.True(learned.Add(never with { Asks = "clutch" }));
    }
}
