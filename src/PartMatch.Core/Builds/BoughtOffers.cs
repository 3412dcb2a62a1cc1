using PartMatch.Core.Buying;
using PartMatch.Core.Listings;
using PartMatch.Core.Measures;
using PartMatch.Core.Orders;

namespace PartMatch.Core.Builds;

/// <summary>What was bought already, as offers that cost nothing more: the money stands apart, whatever the plan makes of the pieces.</summary>
internal static class BoughtOffers
{
    /// <param name="today">What should have come by now is counted as coming today.</param>
    public static IReadOnlyList<ScreenedOffer> Of(BuildTerms terms, DateOnly today) =>
        [.. terms.Facts.Bought.Pieces.Where(bought => terms.Facts.Family.FindPart(bought.Part) is not null).Select(bought => OfferOf(terms, bought, today))];

    /// <summary>Is a choice of grades bought already, all of it, and all that other positions take of the same grades? Then somebody measured before.</summary>
    /// <param name="candidates">What could be at each position.</param>
    public static bool Cover(BuildTerms terms, Candidate graded, IReadOnlyList<IReadOnlyList<Candidate>> candidates)
    {
        bool IsOneOf(string part) => graded.Parts.Any(grade => grade.Id == part);
        var needed = candidates.Sum(choices => choices.Where(one => GradeOrders.IsBought(one) && one.Parts.Any(part => IsOneOf(part.Id)))
            .Select(one => Math.Max(1, one.Pieces ?? 1)).DefaultIfEmpty(0).Max());
        return terms.Facts.Bought.Pieces.Where(bought => IsOneOf(bought.Part) && !MeasuredCopies.AreBeyondLimits(terms.Facts, bought))
            .Sum(bought => bought.Pieces) >= needed;
    }

    /// <summary>Days from the start until it is there; what a seller said nothing of takes as long as the build says, or is counted as there today.</summary>
    private static int DaysOf(BuildTerms terms, BoughtPieces bought, DateOnly today)
    {
        var day = bought.State != LineState.Ordered ? today
            : bought.ThereOn is { } expected ? (expected > today ? expected : today)
            : today.AddDays(terms.Build.DaysWhereNotSaid ?? 0);
        return bought.State != LineState.Ordered ? 0 : Math.Clamp(day.DayNumber - terms.StartOn.DayNumber, 0, 3660);
    }

    private static ScreenedOffer OfferOf(BuildTerms terms, BoughtPieces bought, DateOnly today)
    {
        var (book, code) = bought.Seller?.Split('/', 2) is [var ofBook, var ofCode] ? (ofBook, ofCode) : ("", "");
        var seller = terms.Facts.Buying.Sellers.FirstOrDefault(one => one.Book == book && one.Code == code)
            ?? new Seller(book, code, code, null, null, null, null, null, null, null, null, null, null, null, null);
        var part = terms.Facts.Family.GetPart(bought.Part);
        var offer = new Offer(
            "orders", MeasuredCopies.CodeOf(bought), book, code, part.Id, part.Name, part.Kind, null, new Money("0", terms.Build.Currency), 1,
            bought.Pieces, bought.IsNew ? ItemCondition.New : ItemCondition.NotStated, AssemblyLevel.NotStated, null, today, null, null, null, null,
            new OfferReturns(Returnable.NotStated, null, null, FreightBack.NotStated, null), null);
        return new ScreenedOffer(offer, seller, 1, 0, 0, 0, DaysOf(terms, bought, today), 0, []) { Bought = bought };
    }
}
