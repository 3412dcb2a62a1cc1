using System.Globalization;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Listings;

/// <summary>Buy, ask first, or leave it: what one offer comes to.</summary>
/// <remarks>Ours, no source: the table of outcomes stands in the documentation of the route.</remarks>
internal static class OfferJudge
{
    private const int MostNamed = 4;

    /// <param name="sold">The numbers it sells, judged; empty where none is stated.</param>
    /// <param name="contradictions">Of the whole listing.</param>
    /// <param name="named">Known numbers that the listing merely mentions.</param>
    /// <param name="untested">The words that say that it was not tried; null where none do.</param>
    public static JudgedOffer Judge(
        ReadProduct product, ReadOffer offer, IReadOnlyList<JudgedNumber> sold, IReadOnlyList<Contradiction> contradictions,
        IReadOnlyList<JudgedNumber> named, ListingQuestion question, string? untested)
    {
        var whyNot = NotBuyable(offer);
        var (headline, because) = whyNot is not null && offer.Price is not null && IsGone(offer)
            ? (ListingHeadline.LeaveIt, whyNot)
            : Decide(offer, sold, contradictions, named, question, whyNot, untested);
        return new JudgedOffer(
            product.Name, [.. sold.Select(one => one.NumberKey)], offer, UnitPrice(offer), whyNot is null, whyNot, untested, headline, because);
    }

    private static (ListingHeadline Headline, string Because) Decide(
        ReadOffer offer, IReadOnlyList<JudgedNumber> sold, IReadOnlyList<Contradiction> contradictions, IReadOnlyList<JudgedNumber> named, ListingQuestion question,
        string? whyNot, string? untested)
    {
        if (question.Place is null)
        {
            return (ListingHeadline.AskFirst, "No engine and position were named, so nothing is compared: say what the part is for.");
        }

        if (sold.Count == 0)
        {
            return (ListingHeadline.AskFirst, NoNumber(named));
        }

        var best = sold.OrderBy(one => Standing(one)).ThenBy(one => one.Role).First();
        if (sold.All(one => Standing(one) == ListingHeadline.LeaveIt))
        {
            return (ListingHeadline.LeaveIt, best.Text);
        }

        if (contradictions.FirstOrDefault(one => one.Code != "gtin-check-digit") is { } contradiction)
        {
            return (ListingHeadline.AskFirst, contradiction.Text);
        }

        if (Standing(best) == ListingHeadline.Buy && sold.FirstOrDefault(one => one.Verdict == NumberVerdict.LookAlike) is { } twin)
        {
            return (ListingHeadline.AskFirst, $"{best.Written} and {twin.Written}, which can be taken for it, are both named as what is sold. Which of them stands on the part?");
        }

        if (offer.Condition == ItemCondition.Damaged)
        {
            return (ListingHeadline.LeaveIt, "It is stated to be damaged.");
        }

        var open = Open(offer, best, question, whyNot, untested);
        return Standing(best) == ListingHeadline.Buy && open is null ? (ListingHeadline.Buy, best.Text) : (ListingHeadline.AskFirst, open ?? best.Text);
    }

    private static string NoNumber(IReadOnlyList<JudgedNumber> named) => named.Count == 0
        ? "The listing names no number of what is sold: ask for every number on the part itself."
        : $"The listing mentions {string.Join(", ", named.Take(MostNamed).Select(one => one.Written))}{(named.Count > MostNamed ? $" and {named.Count - MostNamed} more" : "")}, "
            + "but does not say which number stands on what is sold: ask for every number on the part itself.";

    /// <summary>What a number alone allows.</summary>
    private static ListingHeadline Standing(JudgedNumber number)
    {
        var plainlyRead = number is { Within: null, Read: not NumberReading.LookAlikeCharacters };
        var fits = number.Fit == Headline.Fits;
        return number.Verdict switch
        {
            NumberVerdict.RightOne when fits && plainlyRead => ListingHeadline.Buy,
            // Only within the limits that the maker sets: where date or serial number decide and are not named, nobody knows.
            NumberVerdict.NewerNumber when fits && plainlyRead && number.Sureness >= Sureness.Documented => ListingHeadline.Buy,
            NumberVerdict.AnotherKnownPart when fits && plainlyRead && number.Sureness >= Sureness.Documented => ListingHeadline.Buy,
            _ when number.Holds.Any(held => held is { Certainty: Certainty.Certain, Verdict: NumberVerdict.RightOne or NumberVerdict.NewerNumber }) && plainlyRead => ListingHeadline.Buy,
            _ when number.Holds.Any(held => held.Verdict is NumberVerdict.RightOne or NumberVerdict.NewerNumber) => ListingHeadline.AskFirst,
            NumberVerdict.LookAlike or NumberVerdict.AnotherKnownPart when plainlyRead && number.Fit is Headline.DoesNotFit or Headline.MountsButRunsDifferently => ListingHeadline.LeaveIt,
            _ => ListingHeadline.AskFirst,
        };
    }

    /// <summary>What keeps a right number from being bought at once; null where nothing does.</summary>
    private static string? Open(ReadOffer offer, JudgedNumber number, ListingQuestion question, string? whyNot, string? untested)
    {
        if (whyNot is not null)
        {
            return whyNot;
        }

        if (question.Level is { } needed && (offer.Level == AssemblyLevel.NotStated || AssemblyLevels.Missing(offer.Level, needed).Count > 0))
        {
            return offer.Level == AssemblyLevel.NotStated
                ? $"How much of it is sold is not stated; needed is a {AssemblyLevels.Name(needed)}."
                : $"Sold is a {AssemblyLevels.Name(offer.Level)}, needed a {AssemblyLevels.Name(needed)}.";
        }

        if (There(offer) is { } there && number.Needed is { } pieces && there < pieces)
        {
            return $"{there} {(there == 1 ? "is" : "are")} offered and {pieces} are needed: ask for the other {pieces - there}.";
        }

        if (untested is not null)
        {
            return $"{number.Written} is the right number, but the words say “{untested}”: ask whether it works, and what was seen of that.";
        }

        return offer.Condition == ItemCondition.NotStated ? $"{number.Written} is the right number, but its condition is not stated." : null;
    }

    // One piece at a price and no word of how many there are says nothing of the number.
    private static int? There(ReadOffer offer) => offer.Stock is { } stock ? stock * offer.Pieces : offer.Pieces > 1 ? offer.Pieces : null;

    private static bool IsGone(ReadOffer offer) => offer.Availability is Availability.SoldOut or Availability.OutOfStock or Availability.Discontinued;

    private static string? NotBuyable(ReadOffer offer) => offer switch
    {
        { Availability: Availability.SoldOut } => "It is sold out.",
        { Availability: Availability.OutOfStock } => "It is out of stock.",
        { Availability: Availability.Discontinued } => "It is discontinued.",
        { Availability: Availability.Reserved } => "It is reserved for somebody else.",
        { Availability: Availability.InStoreOnly } => "It is sold over the counter only.",
        { Price: null } => "No price with its currency is stated.",
        { Price: ReadPrice.Ambiguous ambiguous } => $"The price “{ambiguous.Written}” can be read in several ways: {ambiguous.Why}",
        { Price: ReadPrice.Unread unread } => $"The price “{unread.Written}” cannot be read: {unread.Why}",
        _ => null,
    };

    private static Money? UnitPrice(ReadOffer offer)
    {
        if (offer is not { Price: ReadPrice.Stated { Money: var money }, Pieces: > 1 } || Currencies.FindDigits(money.Currency) is not { } digits)
        {
            return null;
        }

        var each = Math.Round(decimal.Parse(money.Amount, CultureInfo.InvariantCulture) / offer.Pieces, digits, MidpointRounding.ToEven);
        return new Money(each.ToString("F" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture), money.Currency);
    }
}
