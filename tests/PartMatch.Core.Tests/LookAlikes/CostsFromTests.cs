using CsCheck;
using PartMatch.Core.LookAlikes;
using PartMatch.Core.Tests.NearKeys;
using Xunit;

namespace PartMatch.Core.Tests.LookAlikes;

public sealed class CostsFromTests
{
    // Runs, look-alike characters, digits that sound alike: whatever has an error class of its own.
    [Fact]
    public void Cost_is_that_of_the_whole_way() =>
        (from letters in Gen.OneOf("01", "0123456789", "0O1I7Z2", "26019A")
         from meant in Gen.String[Gen.Char[letters], 0, 14]
         from changes in EditedKey.Changes(letters, most: 5)
         select (meant, read: EditedKey.Of(meant, changes)))
        .Sample(
            pair =>
            {
                var whole = MixUpCost.Between(pair.meant, pair.read).Cost;
                return new CostsFrom(pair.meant).To(pair.read) == whole && CostsFrom.Between(pair.meant, pair.read) == whole;
            },
            iter: 50_000);

    // 0.01 wrong codes x 0.008 swapped across a third x 1 for the last place: -ln = 9.43. Two substitutions: twice -ln(0.01 x 0.791 x 0.5) = 2 x 5.53.
    [Fact]
    public void Keys_two_folded_edits_apart_cost_no_less_than_the_bound() =>
        (from letters in Gen.OneOf("01", "0123456789", "0O1I7Z2", "26019A")
         from meant in Gen.String[Gen.Char[letters], 3, 12]
         from changes in EditedKey.Changes(letters, most: 2)
         select (meant, read: EditedKey.Of(meant, changes)))
        .Where(pair => NumberDistance.OptimalStringAlignment(FoldingClasses.Fold(pair.meant), FoldingClasses.Fold(pair.read)) == 2)
        .Sample(pair => new CostsFrom(pair.meant).To(pair.read) >= CostsFrom.LeastOfTwoEdits, iter: 20_000);

    [Fact]
    public void Costs_to_several_keys_do_not_meet()
    {
        var costs = new CostsFrom("P261147C");
        string[] read = ["P261147E", "P26114C", "P2611477C", "P261174C", "P261147C", "P2G1I47C", ""];
        Assert.Equal(read.Select(key => MixUpCost.Between("P261147C", key).Cost), read.Select(costs.To));
    }
}
