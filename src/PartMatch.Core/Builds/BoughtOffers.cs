using PartMatch.Core.Buying;
using PartMatch.Core.Catalogue;
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

    /// <summary>Is a choice of grades bought already, all of it? Then somebody measured before.</summary>
    public static bool Cover(BuildTerms terms, Candidate graded) => terms.Facts.Bought.Pieces
        .Where(bought => graded.Parts.Any(part => part.Id == bought.Part) && !MeasuredCopies.AreBeyondLimits(terms.Facts, bought))
        .Sum(bought => bought.Pieces) >= Math.Max(1, graded.Pieces ?? 1);

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
            "orders", $"{bought.Order}.{bought.Line}.{Codes.Of(bought.State)}", book, code, part.Id, part.Name, part.Kind, null, new Money("0", terms.Build.Currency), 1,
            bought.Pieces, bought.IsNew ? ItemCondition.New : ItemCondition.NotStated, AssemblyLevel.NotStated, null, today, null, null, null, null,
            new OfferReturns(Returnable.NotStated, null, null, FreightBack.NotStated, null), null);
        return new ScreenedOffer(offer, seller, 1, 0, 0, 0, DaysOf(terms, bought, today), 0, []) { Bought = bought };
    }
}
