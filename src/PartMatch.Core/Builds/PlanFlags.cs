using System.Globalization;
using PartMatch.Core.Buying;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Openings;

namespace PartMatch.Core.Builds;

/// <summary>What to mind of a plan before money is spent.</summary>
internal sealed class PlanFlags(PlanRun run, SolvedPlan solved, OpenedPlan opened, IReadOnlyList<BuildLine> lines, PlanPurchases purchases)
{
    private static readonly HashSet<string> _makeVolumeAndTiming = ["piston", "head", "head-gasket", "intake-camshaft", "exhaust-camshaft"];

    private BuildTerms Terms => run.Terms;

    public IReadOnlyList<string> All(DateOnly today, PlanTrust? trust, KeptWishes? kept) =>
    [
        .. solved.GivenUp.Select(wish => $"Not in this plan, as no plan holds it: {wish.Text}"),
        .. kept is null ? Array.Empty<string>() : [kept.Say(Terms, solved)],
        .. PlanTrust.Sum(Terms, solved, trust) is { } together ? [together] : Array.Empty<string>(),
        .. Unproven(),
        .. MeasuredCopies.NotCounted(run, solved),
        .. NotInspected(),
        .. Old(),
        .. Terms.Build.StartOn is { } meant && string.CompareOrdinal(meant, $"{today:yyyy-MM-dd}") < 0 && purchases.Baskets.Count > 0
            ? [string.Create(CultureInfo.InvariantCulture, $"You meant to order on {meant}: what is not ordered yet is counted from today, {today:yyyy-MM-dd}.")]
            : Array.Empty<string>(),
        .. SentApart(),
        .. GoalFuel.Of(run, solved),
        .. NotReckoned(),
        .. NotRecorded(),
        .. solved.Written.Jobs.Where((_, job) => solved.Solution.Jobs[job] is not null).SelectMany(Of),
        .. lines.Where(line => line.Pieces is null && line.Buy.Count > 0).Select(line => $"{line.Name}: how many pieces is not recorded; one was counted."),
    ];

    /// <summary>What is opened of which the books do not say what is renewed.</summary>
    private IEnumerable<string> NotRecorded()
    {
        var family = Terms.Facts.Family;
        if (opened.Disturbed.Count == 0)
        {
            return [];
        }

        if (family.Openings.Count + family.Renewals.Count == 0)
        {
            return ["Not in the sum: seals, gaskets and single-use bolts that are opened on the way, oil and coolant."];
        }

        return UntoldRenewals.Of(Terms, opened);
    }

    /// <summary>What the sums of other sheets tell and no plan does.</summary>
    private IEnumerable<string> NotReckoned()
    {
        var changed = lines.Where(line => line.Action is not (LineAction.Keep or LineAction.LeaveOff)
            && Terms.At(line.Position).Position.Role is { } role && _makeVolumeAndTiming.Contains(role)).ToList();
        return changed.Count == 0 ? [] :
        [
            $"Compression, squish and valve timing are not reckoned here, and {FitWording.List([.. changed.Select(line => line.Name.ToLowerInvariant())])} "
                + "change: reckon them under Compression and Valve timing before ordering, and measure piston to valve by hand.",
        ];
    }

    /// <summary>What is counted as one later parcel and is ordered on several days.</summary>
    private IEnumerable<string> SentApart()
    {
        var more = purchases.Baskets.Select(basket => basket.SentApart).OfType<Measures.Money>().Sum(one => (long)Measures.Amount.Of(one).Minor);
        return more <= 0 ? [] :
        [
            $"Not in the sum: {Terms.Say(more)} of sending, where what is measured for first is ordered on several days and sent each time. Ask the sellers to hold the parcel, or count it in.",
        ];
    }

    private IEnumerable<string> Unproven()
    {
        var open = lines.Count(line => line.Sureness == Sureness.Unproven);
        return open == 0 ? [] :
            [string.Create(CultureInfo.InvariantCulture, $"{open} of {lines.Count} lines are unproven: nothing recorded speaks against them, and no more than that.")];
    }

    private IEnumerable<string> NotInspected()
    {
        var unseen = lines.Where(line => line is { Action: LineAction.Keep or LineAction.KeepWithWork, DonorState: PartState.NotInspected }).ToList();
        var bare = unseen.Count(line => Terms.At(line.Position).State?.Allowance is null);
        return unseen.Count == 0 ? [] :
            [string.Create(CultureInfo.InvariantCulture, $"{unseen.Count} kept {(unseen.Count == 1 ? "part is" : "parts are")} not inspected; for {bare} of them nothing is set aside.")];
    }

    private IEnumerable<string> Old()
    {
        var items = purchases.Baskets.SelectMany(basket => basket.Items).ToList();
        var old = items.Where(item => OfferAge.Of(item.SeenOn, Terms.StartOn, LineFlags.OldAfterDays).Old).ToList();
        return old.Count == 0 ? [] :
        [
            string.Create(CultureInfo.InvariantCulture,
                $"{old.Count} of {items.Count} offers were seen more than {LineFlags.OldAfterDays} days before: ask whether they still stand."),
        ];
    }

    /// <summary>Of one work: what of it nobody recorded is not in the plan.</summary>
    private IEnumerable<string> Of(Work work) =>
    [
        .. work.Price is not { } price ? [$"{work.Name}: its price is not recorded and not in the sum."]
            : Terms.Convert(price) is null ? [$"{work.Name}: priced in {price.Currency}, for which the build has no rate; not in the sum."]
            : Array.Empty<string>(),
        .. work.Days is null ? [$"{work.Name}: how many days it takes is not recorded; none is counted."] : Array.Empty<string>(),
    ];
}
