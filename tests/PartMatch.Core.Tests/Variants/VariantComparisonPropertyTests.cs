using CsCheck;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Tests.Catalogue;
using PartMatch.Core.Variants;
using Xunit;

namespace PartMatch.Core.Tests.Variants;

public sealed class VariantComparisonPropertyTests
{
    [Fact]
    public void Reversing_the_variants_swaps_the_columns_and_every_from_and_to_and_changes_nothing_else() => AnyFamily.Of().Sample(
        family =>
        {
            var there = family.Compare("lark", "swift");
            var back = family.Compare("swift", "lark");

            Assert.Equal(there.Counts, back.Counts);
            Assert.Equal(there.Positions.Select(InOneOrder), back.Positions.Select(InOneOrder));
            Assert.All(there.Positions.Zip(back.Positions), pair => Assert.Equal(pair.First.Fitted.Select(one => one.Variant), pair.Second.Fitted.Reverse().Select(one => one.Variant)));
        },
        iter: 100);

    [Fact]
    public void The_order_of_the_rows_changes_nothing() => Gen.Select(AnyFamily.Of(), Gen.Int).Sample(
        (family, seed) => AsJson.Of(family.Compare("lark", "swift")) == AsJson.Of(VariantComparison.Decide(
            family.Facts(new Shuffled(seed)), new CompareQuestion(["lark", "swift"], null, Show.All, new Dictionary<string, BuildDate>()))),
        iter: 50);

    /// <summary>The position with its columns and pairs in the order of their names.</summary>
    private static string InOneOrder(ComparedPosition position) => AsJson.Of(position with
    {
        Fitted = [.. position.Fitted.OrderBy(one => one.Variant, StringComparer.Ordinal)],
        Differences = [.. position.Differences.Select(one => one with { Values = [.. one.Values.OrderBy(value => value.Variant, StringComparer.Ordinal)] })],
        Across = [.. position.Across.OrderBy(pair => pair.From, StringComparer.Ordinal).ThenBy(pair => pair.To, StringComparer.Ordinal)],
    });
}
