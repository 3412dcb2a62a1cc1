using CsCheck;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Fit;

/// <summary>Companion rules in any tangle: what is needed is exactly what can be reached rule by rule, and loops end.</summary>
public sealed class CompanionPropertyTests
{
    private const int Places = 6;

    [Fact]
    public void What_is_needed_is_exactly_what_the_rules_lead_to() =>
        Gen.Select(Gen.Int[0, Places - 1], Gen.Int[0, Places - 1]).Array[0, 14].Sample(
            rules =>
            {
                var needed = Family(rules).Ask("P0-L", at: "p0").AlsoNeeded.Positions();

                Assert.Equal(LedTo(rules).Order(StringComparer.Ordinal), needed.Order(StringComparer.Ordinal));
            },
            iter: 200);

    /// <summary>Places p0 … p5, each with a small part fitted; a large part at one place asks for a large part at another.</summary>
    private static TestFamily Family((int From, int To)[] rules)
    {
        var family = new TestFamily().Variant("lark");
        for (var place = 0; place < Places; place++)
        {
            family.Place($"p{place}", kind => kind.Choice("size"))
                .Part($"P{place}-S", $"p{place}", Has("size", Word("small"))).Part($"P{place}-L", $"p{place}", Has("size", Word("large"))).Fitted("lark", $"p{place}", $"P{place}-S");
        }

        foreach (var (index, (from, to)) in rules.Index())
        {
            family.Companion($"rule-{index}", $"p{from}.size", Word("large"), $"p{to}.size", Word("large"));
        }

        return family;
    }

    private static IEnumerable<string> LedTo((int From, int To)[] rules)
    {
        var reached = new HashSet<int> { 0 };
        for (var round = 0; round < Places; round++)
        {
            reached.UnionWith(rules.Where(rule => reached.Contains(rule.From)).Select(rule => rule.To).ToList());
        }

        return reached.Where(place => place != 0).Select(place => $"p{place}");
    }
}
