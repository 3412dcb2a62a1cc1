using System.Globalization;
using PartMatch.Core.Buying;
using PartMatch.Core.Listings;

namespace PartMatch.Core.Builds;

/// <summary>What to mind before money is spent.</summary>
internal static class PlanFlags
{
    /// <summary>Offers seen longer ago than this are flagged; ours, no source.</summary>
    private const int OldAfterDays = 60;

    /// <summary>Of the whole plan.</summary>
    public static IReadOnlyList<string> Of(PlanRun run, SolvedPlan solved, IReadOnlyList<BuildLine> lines)
    {
        var unseen = lines.Where(line => line is { Action: LineAction.Keep or LineAction.KeepWithWork, DonorState: PartState.NotInspected }).ToList();
        var bare = unseen.Count(line => run.Terms.At(line.Position).State?.Allowance is null);
        return
        [
            .. solved.GivenUp.Select(wish => $"Not to be had: {wish.Text}"),
            .. unseen.Count > 0
                ? [string.Create(CultureInfo.InvariantCulture, $"{unseen.Count} kept parts are not inspected; for {bare} of them nothing is set aside.")]
                : Array.Empty<string>(),
            .. solved.Written.Jobs.Where((_, job) => solved.Solution.Jobs[job] is not null).SelectMany(work => Of(run.Terms, work)),
            .. lines.Where(line => line.Pieces is null && line.Buy.Count > 0).Select(line => $"{line.Name}: how many pieces is not recorded; one was counted."),
        ];
    }

    /// <summary>Of one work: what of it nobody recorded is not in the plan.</summary>
    private static IEnumerable<string> Of(BuildTerms terms, Catalogue.Work work) =>
    [
        .. work.Price is not { } price ? [$"{work.Name}: its price is not recorded and not in the sum."]
            : terms.Convert(price) is null ? [$"{work.Name}: priced in {price.Currency}, for which the build has no rate; not in the sum."]
            : Array.Empty<string>(),
        .. work.Days is null ? [$"{work.Name}: how many days it takes is not recorded; none is counted."] : Array.Empty<string>(),
    ];

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
