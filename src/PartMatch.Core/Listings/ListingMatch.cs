using PartMatch.Core.Catalogue;
using PartMatch.Core.Identification;
using PartMatch.Core.LookAlikes;

namespace PartMatch.Core.Listings;

/// <summary>Is what this listing sells the part that is needed?</summary>
public static class ListingMatch
{
    /// <summary>A key of more candidates than these asks for more photographs than a seller sends.</summary>
    private const int MostCandidates = 5;

    /// <summary>A cell of a book holds a little more.</summary>
    private const int MostText = 60_000;

    /// <summary>Decides one listing.</summary>
    /// <param name="numbersFound">Every number found in its passages.</param>
    /// <returns>With <see cref="ListingAnswer.Asked"/> filled in as far as the question goes; the door adds what it knows of the document.</returns>
    public static ListingAnswer Decide(ListingFacts facts, ListingQuestion question, ReadListing listing, FoundNumbers numbersFound)
    {
        var numbers = OnlyNumber.AsSold(facts, question, listing, numbersFound.Numbers);
        var groups = NumberGroup.Of(numbers);
        FoundNumber[] claims = [.. numbers.Where(one => one is { Known.Count: > 0, Role: NumberRole.Fits or NumberRole.Replaces })];
        var judge = new NumberJudge(facts, question, claims);
        var judged = groups.ToDictionary(group => group.Key, group => judge.Judge(group.Found, group.Places(listing)), StringComparer.Ordinal);
        var soldAs = NumberGroup.ByProduct(listing, groups, _ => true);
        var found = Contradictions.Find(listing, groups);
        Contradiction[] contradictions = [.. found.Select(one => one.What)];
        var isWanted = WantedWords.Speak(listing);
        var untested = UntestedWords.ByProduct(listing);
        JudgedNumber[] named = [.. groups.Where(group => group.Identifies).Select(group => judged[group.Key]).Where(one => one.Role == NumberRole.Mentioned)];
        JudgedOffer[] offers = isWanted ? [] :
        [
            .. listing.Products.SelectMany((product, index) => product.Offers.Select(offer =>
                OfferJudge.Judge(
                    product, offer, SoldBy([.. soldAs[index].Select(group => judged[group.Key])]), Against(found, index), named, question, untested[index]))),
        ];
        JudgedNumber[] sold = [.. judged.Values.Where(one => one.Role == NumberRole.Sold)];
        var whole = offers.Length == 0 ? WithoutOffer(sold, contradictions, named, question) : null;
        var (headline, because) = isWanted ? (ListingHeadline.LeaveIt, ["Somebody looks for it here; nobody sells it."]) : Headline(offers, whole);
        return new ListingAnswer(
            Asked(question),
            headline,
            HeadlineText(headline),
            [.. because.Concat(contradictions.Select(one => one.Text)).Distinct(StringComparer.Ordinal)],
            listing.Title,
            offers,
            [.. groups.Select(group => judged[group.Key]).OrderBy(one => one.Role == NumberRole.Sold ? 0 : 1)],
            contradictions,
            Missing(question, listing),
            headline == ListingHeadline.LeaveIt ? null : SellerAsk.Write(question, sold, offers, contradictions, TellApart(facts, question, sold)),
            [.. listing.Warnings, .. LeftOut(numbersFound)],
            CautionsFor(question))
        {
            Text = Beginning(listing.VisibleText),
            Address = listing.Address,
        };
    }

    // Never half of a pair of surrogates.
    private static string Beginning(string text) =>
        text.Length <= MostText ? text : text[..(char.IsHighSurrogate(text[MostText - 1]) ? MostText - 1 : MostText)];

    private static IReadOnlyList<Contradiction> Against(IReadOnlyList<Contradictions.OfProduct> found, int product) =>
        [.. found.Where(one => one.Product is null || one.Product == product).Select(one => one.What)];

    // A number that no book knows says nothing beside one that a book does.
    private static JudgedNumber[] SoldBy(JudgedNumber[] own) =>
        Array.FindAll(own, one => one.Verdict != NumberVerdict.Unknown) is { Length: > 0 } told ? told : own;

    private static JudgedOffer WithoutOffer(
        JudgedNumber[] sold, IReadOnlyList<Contradiction> contradictions, JudgedNumber[] named, ListingQuestion question) => OfferJudge.Judge(
        new ReadProduct(StatementForm.Text, null, null, [], ItemCondition.NotStated, [], null),
        new ReadOffer(null, 1, ItemCondition.NotStated, Availability.NotStated, null, null, null, null, null, OfferTerms.NotStated, AssemblyLevel.NotStated),
        sold, contradictions, named, question, null);

    private static (ListingHeadline Headline, IEnumerable<string> Because) Headline(JudgedOffer[] offers, JudgedOffer? whole)
    {
        if (whole is not null)
        {
            return (whole.Headline, [whole.Because]);
        }

        var buyable = Array.FindAll(offers, offer => offer.Buyable);
        var counted = buyable.Length > 0 ? buyable : offers;
        var best = counted.Min(offer => offer.Headline);
        return (best, counted.Where(offer => offer.Headline == best).Select(offer => offer.Because).Distinct(StringComparer.Ordinal));
    }

    private static string HeadlineText(ListingHeadline headline) => headline switch
    {
        ListingHeadline.Buy => "Buy",
        ListingHeadline.AskFirst => "Ask first",
        _ => "Leave it",
    };

    private static IReadOnlyList<string> Missing(ListingQuestion question, ReadListing listing) =>
        question.Level is { } needed && listing.Products.SelectMany(product => product.Offers).Select(offer => offer.Level).DefaultIfEmpty().Max() is var sold
            ? AssemblyLevels.Missing(sold, needed)
            : [];

    // Photo and label questions that part what is needed from what it is taken for, and from what is on offer.
    private static SellerMessage? TellApart(ListingFacts facts, ListingQuestion question, JudgedNumber[] sold)
    {
        if (question.Place is not { } place)
        {
            return null;
        }

        string[] needed = [.. place.Family.FitmentsAt(place.Variant, place.Position).Select(fitment => fitment.Part).OfType<string>()];
        string[] looks = [.. needed.Select(id => facts.LookAlikes.FindPart(id).Part).OfType<Part>().SelectMany(part => LookAlikeSearch.Dangerous(facts.LookAlikes, part, place.Family.Family.Code, MostCandidates))];
        string[] offered = [.. sold.Where(one => one.Verdict == NumberVerdict.LookAlike).Select(one => one.Part).OfType<string>()];
        string[] candidates = [.. needed.Concat(offered).Concat(looks).Distinct(StringComparer.Ordinal).Take(MostCandidates)];
        return candidates.Length > 1
            && PartIdentification.Decide(facts.LookAlikes, candidates, new TellApartTerms(CheckMode.BeforePaying, [], [])) is TellApartDecided decided
                ? decided.Answer.Message
                : null;
    }

    private static IEnumerable<ListingWarning> LeftOut(FoundNumbers numbersFound) => numbersFound.UnknownLeftOut == 0
        ? []
        : [new ListingWarning("numbers-left-out", $"{numbersFound.UnknownLeftOut} more that are only shaped like numbers were left out.")];

    private static IReadOnlyList<Caution> CautionsFor(ListingQuestion question) =>
        question.Place is { } place && place.Family.FindPosition(place.Position) is { } position && place.Family.FindKind(position.Kind) is { } kind ? Cautions.Of(kind.Cautions) : [];

    private static ListingAsked Asked(ListingQuestion question) => new(
        question.Place?.Family.Family.Code, question.Place?.Variant, question.Place?.Position, question.Place?.Built?.Text, question.Place?.Serial, question.Level, ListingFormat.Text, 0, "");
}
