using System.Globalization;
using PartMatch.Core.Buying;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
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
                    : $"runs otherwise than {line.Answer.Reference} by its own features, as you chose{Harm(line)}"]
                : Array.Empty<string>(),
            .. line.Answer.Findings.Where(IsWarning).Select(found => $"found in another setting, and not counted here: {found.Text}"),
            .. line.Candidate.IsDonors && state == PartState.NotInspected ? ["not inspected"] : Array.Empty<string>(),
            .. line.Candidate.IsMeasuredCopy ? [SayMeasured(line)] : Array.Empty<string>(),
            .. line.Candidate.IsGraded && !(GradeOrders.IsBought(line.Candidate) && purchases.HasBought(line.Candidate)) ? ["measure, then order"] : Array.Empty<string>(),
            .. line.Candidate is { IsDonors: true, IsGraded: false, Parts.Count: > 1 } ? ["which of these the donor has: look at it"] : Array.Empty<string>(),
            .. purchases.OffersFor(line.Candidate.Position).SelectMany(offer => Dangers(run.Terms, offer)).Distinct(),
        ];
    }

    /// <summary>By what the line was judged, and how that stands against the limits.</summary>
    private static string SayMeasured(JudgedLine line) =>
        $"judged by what was read on {FitWording.List(line.Candidate.Examples.Select(item => item.Address))} when it came in: " + line.Answer.Item?.Condition switch
        {
            Items.ItemCondition.WithinLimits => "within its recorded limits",
            Items.ItemCondition.BeyondLimits => "beyond its limit",
            _ => "not inspected in full",
        }
        + (line.Candidate.Pieces > line.Candidate.Measured.Sum(lot => lot.Pieces)
            ? string.Create(CultureInfo.InvariantCulture, $"; {line.Candidate.Measured.Sum(lot => lot.Pieces)} of {line.Candidate.Pieces} pieces") : "")
        + string.Concat((line.Answer.Item?.Limits ?? []).Where(limit => limit is { Condition: Items.ItemCondition.NotInspected, Reading: not null }).Select(limit => $"; {limit.Text}"));

    private static string Harm(JudgedLine line) => line.Answer.Consequence is { } harm ? $"; what may come of it: {Codes.Of(harm)}" : "";

    /// <summary>It spoke against the part on an engine, beside other neighbours: no answer, but to be read.</summary>
    private static bool IsWarning(FindingShown found) => found is { Rank: null, Standing: FindingStanding.OtherNeighbours }
        && found.Outcome is FindingOutcome.Differently or FindingOutcome.No;

    /// <summary>What makes a mistake dear, wherever money is spent: a look-alike, and no way back.</summary>
    private static IEnumerable<string> Dangers(BuildTerms terms, ScreenedOffer offer)
    {
        var bought = offer.Offer.Part!; // screened: it has a part
        if (terms.Facts.Traps.Contains(bought))
        {
            yield return "has a look-alike that does harm: tell them apart before paying";
        }

        string[] inside = [.. OfferScreen.HeldBy(terms.Facts, bought).Select(held => held.Part).Where(part => part != bought && terms.Facts.Traps.Contains(part)).Distinct()
            .Select(part => terms.Facts.Family.FindPart(part)?.Number ?? part)];
        if (inside.Length > 0)
        {
            yield return $"holds parts that have look-alikes that do harm: tell {FitWording.List(inside)} apart before paying";
        }

        if (offer.Offer.Returns.Returnable == Returnable.No)
        {
            yield return "the seller says that it does not go back: be sure before paying";
        }
    }

    /// <summary>Of one offer.</summary>
    public static IReadOnlyList<string> Of(BuildTerms terms, ScreenedOffer offer, int packs) =>
    [
        .. Dangers(terms, offer),
        .. OfferAge.Of(offer.Offer.SeenOn, terms.StartOn, OldAfterDays) is { Old: true, Text: var old } ? [old] : Array.Empty<string>(),
        .. offer.Offer.Condition == ItemCondition.NotStated ? ["condition not stated: ask"] : Array.Empty<string>(),
        .. offer.Offer.Stock is null && packs > 1 ? ["ask whether there are as many"] : Array.Empty<string>(),
        .. offer.Assumed,
    ];
}
