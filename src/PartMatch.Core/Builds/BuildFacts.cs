using PartMatch.Core.Buying;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Orders;

namespace PartMatch.Core.Builds;

/// <summary>Everything a build is planned from. Immutable.</summary>
/// <param name="Contents">What every kit and assembly holds, by set.</param>
/// <param name="Items">Of the family's book.</param>
public sealed record BuildFacts(FamilyFacts Family, BuyingFacts Buying, ILookup<string, ContentsRow> Contents, IReadOnlyList<Item> Items)
{
    /// <summary>What was bought for the build already.</summary>
    public BuildBought Bought { get; init; } = BuildBought.None;

    /// <summary>Parts that somebody found to be a trap: another part can be taken for it, and the mix-up does harm.</summary>
    internal IReadOnlySet<string> Traps { get; } = Family.Pairs
        .Where(pair => pair is { Judgement: PairJudgement.Trap, Evidence: not { IsRetracted: true } })
        .SelectMany(pair => new[] { pair.PartA, pair.PartB }).ToHashSet(StringComparer.Ordinal);
}
