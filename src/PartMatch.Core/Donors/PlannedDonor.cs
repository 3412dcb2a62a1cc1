using PartMatch.Core.Builds;
using PartMatch.Core.Measures;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Donors;

/// <summary>A donor with its plan, not yet held against the others.</summary>
/// <param name="ToFinish">Minor units of the build's currency; null without a plan.</param>
/// <param name="Engine">Price and freight together, likewise; null where one of them is not known.</param>
internal sealed record PlannedDonor(RankedDonor Row, long? ToFinish, long? Engine, string Currency)
{
    public long? Whole => ToFinish + Engine;

    public static PlannedDonor Of(BuildToRank asked, DonorOffer offer, CancellationToken stop)
    {
        var build = DonorOffers.With(asked.Build, offer);
        var plan = BuildPlanner.Plan(asked.Facts, build, asked.Version, asked.Objective, asked.Today, asked.Effort, asked.Memory, asked.Planning, stop);
        var terms = BuildTerms.Of(asked.Facts, build, asked.Today);
        var (price, freight) = (terms.PaidForDonor(build.Donor.Price), terms.PaidForDonor(build.Donor.Freight));
        long? toFinish = plan.Cost is { } cost ? (long)Amount.Of(cost.Total).Minor : null;
        var donor = offer.Donor;
        var row = new RankedDonor(
            offer.Code, offer.Name, donor.Variant, asked.Facts.Family.FindVariant(donor.Variant)?.Name ?? donor.Variant, donor.Built, donor.Serial, donor.Level,
            DonorOffers.IsPresent(asked.Build, offer), plan.Status)
        {
            HeadlineText = plan.HeadlineText,
            Price = Typed(donor.Price, donor, build),
            Freight = Typed(donor.Freight, donor, build),
            ToFinish = plan.Cost?.Total,
            Whole = toFinish + price + freight is { } whole ? terms.MoneyOf(whole) : null,
            CostText = DonorWords.Cost(terms, toFinish, price, freight),
            Days = plan.Days,
            ReadyOn = plan.ReadyOn,
            Sureness = plan.Sureness,
            Unknowns = plan.Cost is null ? null : plan.Lines.Count(IsUnknown),
            Kept = plan.Cost is null ? null : plan.Lines.Count(IsKept),
            Flags = DonorWords.Flags(terms, plan, toFinish + price + freight),
            Look = DonorLooks.Of(asked, build, plan, stop),
            NoPlan = plan.Status == PlanStatus.Infeasible
                ? Conflict(asked, build, plan.Asked, stop)
                : [],
        };
        return new PlannedDonor(row, toFinish, price + freight, asked.Build.Currency);
    }

    public Money MoneyOf(long minor) => new Amount(minor, Currency).ToMoney();

    /// <summary>What keeps every plan away; what stands behind it is asked of the build itself, because that takes long.</summary>
    private static IReadOnlyList<ConflictMember> Conflict(BuildToRank asked, Build build, PlanAsked plan, CancellationToken stop) => new ConflictSearch(
        new PlanRun(asked.Facts, build, asked.Today, asked.Memory, refusedSellers: []), plan, asked.Effort, null, isNone: false, stop).Find(withFurther: false).Members;

    /// <summary>Does the line rest on a part that nobody inspected, or on what nobody knows?</summary>
    private static bool IsUnknown(BuildLine line) => line.Unproven || IsNotInspected(line);

    internal static bool IsNotInspected(BuildLine line) => IsKept(line) && line.DonorState == PartState.NotInspected;

    // What is declared is kept by nobody, and has no state.
    private static bool IsKept(BuildLine line) => line is { Action: LineAction.Keep or LineAction.KeepWithWork, DonorState: not null };

    private static Money? Typed(string? amount, Donor donor, Build build) => amount is null ? null : new Money(amount, donor.Currency ?? build.Currency);
}
