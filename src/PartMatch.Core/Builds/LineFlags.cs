using PartMatch.Core.Buying;
using PartMatch.Core.Listings;

namespace PartMatch.Core.Builds;

/// <summary>What to mind of one line or one offer before money is spent.</summary>
internal static class LineFlags
{
    /// <summary>Offers seen longer ago than this are flagged; ours, no source.</summary>
    public const int OldAfterDays = 60;

    /// <summary>Of one line.</summary>
    public static IReadOnlyList<string> Of(PlanRun run, JudgedLine line, PlanPurchases purchases)
    {
        var state = run.Terms.At(line.Candidate.Position).StateOfDonor;
        return
        [
            .. line.Outcome == LineOutcome.NotKnown ? ["taken on trust: nobody knows whether it fits"] : Array.Empty<string>(),
            .. line is { IsAsChosen: true, Candidate.Position: var position }
                ? [InjectorGoals.Sets(run.Terms, position)
                    ? "its flow is as your goal asks, not as the reference has it: the control unit has to be set for it"
                    : "runs otherwise than the reference by its own features, as you chose"]
                : Array.Empty<string>(),
            .. line.Candidate.IsDonors && state == PartState.NotInspected ? ["not inspected"] : Array.Empty<string>(),
            .. line.Candidate.IsGraded ? ["measure, then order"] : Array.Empty<string>(),
            .. line.Candidate is { IsDonors: true, IsGraded: false, Parts.Count: > 1 } ? ["which of these the donor has: look at it"] : Array.Empty<string>(),
            .. purchases.OffersFor(line.Candidate.Position).Any(offer => run.Terms.Facts.Traps.Contains(offer.Offer.Part!)) // screened: it has a part
                ? ["has a look-alike that does harm: tell them apart before paying"]
                : Array.Empty<string>(),
        ];
    }

    /// <summary>Of one offer.</summary>
    public static IReadOnlyList<string> Of(BuildTerms terms, ScreenedOffer offer, int packs) =>
    [
        .. OfferAge.Of(offer.Offer.SeenOn, terms.StartOn, OldAfterDays) is { Old: true, Text: var old } ? [old] : Array.Empty<string>(),
        .. offer.Offer.Condition == ItemCondition.NotStated ? ["condition not stated: ask"] : Array.Empty<string>(),
        .. offer.Offer.Stock is null && packs > 1 ? ["ask whether there are as many"] : Array.Empty<string>(),
        .. offer.Assumed,
    ];
}
