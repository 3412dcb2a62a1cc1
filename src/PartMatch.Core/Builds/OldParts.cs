using PartMatch.Core.Buying;
using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Builds;

/// <summary>
/// What a deposit comes back for: the donor's own old part, where it has the same number or one that stands for it. Whether a seller takes another, his words
/// say and no number. Common practice, no source.
/// </summary>
internal static class OldParts
{
    /// <summary>
    /// Of the deposit of one pack, what is a price: all of it where the donor has nothing to hand in; where the old part is also to be sold, the lesser of both,
    /// because it can be handed in or sold.
    /// </summary>
    public static long LostDeposit(BuildTerms terms, Offer offer)
    {
        if (offer.CoreDeposit is not { } typed || terms.Convert(typed) is not { } deposit)
        {
            return 0;
        }

        PositionTerms[] old = [.. Old(terms, offer)];
        return old.Length == 0 ? deposit : long.Min(deposit, old.Min(at => SaleOf(terms, at)));
    }

    public static string Say(BuildTerms terms, Offer offer, long lost) => Old(terms, offer).Any()
        ? $"{terms.Say(lost)} counted: the old part can be handed in for its deposit or sold, not both"
        : $"{terms.Say(lost)} of deposit counted: the donor has no old part of this number to send back{Takes(offer)}";

    private static string Takes(Offer offer) => offer.Returns.CorePart is { } part ? $"; the seller takes: {part}" : "";

    private static long SaleOf(BuildTerms terms, PositionTerms at) => at.State?.SellsFor is { } typed ? terms.Minor(typed, "sellsFor") : 0;

    private static IEnumerable<PositionTerms> Old(BuildTerms terms, Offer offer)
    {
        var family = terms.Facts.Family;
        var kind = family.FindPart(offer.Part ?? "")?.Kind;
        return family.Positions.Where(position => position.Kind == kind).Select(position => terms.At(position.Code))
            .Where(at => at.StateOfDonor != PartState.Missing && terms.FittedToDonor(at.Position.Code).Any(fitment => IsSame(family, fitment.Part, offer.Part)));
    }

    private static bool IsSame(FamilyFacts family, string? old, string? offered) => old is not null && (old == offered
        || family.Supersessions.Any(link => (link.OldPart == old && link.NewPart == offered) || (link.NewPart == old && link.OldPart == offered)));
}
