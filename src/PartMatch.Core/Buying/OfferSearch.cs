using System.Buffers.Text;
using System.Globalization;
using System.Text;
using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Buying;

/// <summary>Which offers are there, and what do they cost at the door?</summary>
public static class OfferSearch
{
    /// <param name="family">Of the question; null where it names none.</param>
    /// <exception cref="ArgumentException">The limit is below 1, or the cursor is not one that an answer gave out.</exception>
    public static OfferPage Decide(BuyingFacts facts, FamilyFacts? family, OfferQuestion question)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(question.Limit, 1);
        var kind = question.Position is { } position ? family?.FindPosition(position)?.Kind : null;
        var wanted = facts.Offers.Where(offer => IsWanted(family, kind, question, offer)).OrderBy(OfferPlace.Of).ToList();
        var after = question.Cursor is not { } cursor ? null
            : OfferPlace.Find(cursor) ?? throw new ArgumentException($"'{cursor}' is not a cursor of this list.", nameof(question));
        List<Offer> rest = after is null ? wanted : [.. wanted.SkipWhile(offer => OfferPlace.Of(offer).CompareTo(after) <= 0)];
        Offer[] page = [.. rest.Take(question.Limit)];
        return new OfferPage(
            wanted.Count,
            wanted.Count(offer => OfferAge.Of(offer.SeenOn, question.On, question.StaleAfter).Old),
            page.Length < rest.Count ? OfferPlace.Of(page[^1]).AsCursor() : null,
            [.. page.Select(offer => OfferShown.Of(facts, offer, question.On, question.StaleAfter, question.Pieces))]);
    }

    /// <summary>One offer as the list shows it.</summary>
    public static OfferShown Show(BuyingFacts facts, Offer offer, DateOnly on, int staleAfter, int pieces) =>
        OfferShown.Of(facts, offer, on, staleAfter, pieces);

    /// <summary>Is that text a cursor that an answer could have given out?</summary>
    public static bool IsCursor(string text) => OfferPlace.Find(text) is not null;

    private static bool IsWanted(FamilyFacts? family, string? kind, OfferQuestion question, Offer offer) =>
        (question.NumberKey is not { } key || offer.IsOf(question.Part, key))
        && (question.Seller is null || offer.Seller == question.Seller)
        && (question.Currency is null || offer.Price.Currency == question.Currency)
        && (question.Condition is null || offer.Condition == question.Condition)
        && (family is null || IsOfFamily(family, offer))
        && (kind is null || offer.Kind == kind);

    // An offer whose number no book has belongs to the family in whose book it was put.
    private static bool IsOfFamily(FamilyFacts family, Offer offer) =>
        offer.Part is { } part ? family.FindPart(part) is not null : offer.Book == family.Family.Code;
}

/// <summary>Where an offer stands in a list: by number, the latest first, then book and code. No two offers share a place.</summary>
internal sealed record OfferPlace(string NumberKey, DateOnly SeenOn, string Book, string Code) : IComparable<OfferPlace>
{
    // Neither a key nor a code holds a control character.
    private const char Separator = '\n';

    public static OfferPlace Of(Offer offer) => new(offer.NumberKey, offer.SeenOn, offer.Book, offer.Code);

    public int CompareTo(OfferPlace? other) =>
        other is null ? 1
        : string.CompareOrdinal(NumberKey, other.NumberKey) is not 0 and var byNumber ? byNumber
        : SeenOn != other.SeenOn ? other.SeenOn.CompareTo(SeenOn)
        : string.CompareOrdinal(Book, other.Book) is not 0 and var byBook ? byBook
        : string.CompareOrdinal(Code, other.Code);

    public string AsCursor() => Base64Url.EncodeToString(Encoding.UTF8.GetBytes(
        string.Create(CultureInfo.InvariantCulture, $"{NumberKey}{Separator}{SeenOn:yyyy-MM-dd}{Separator}{Book}{Separator}{Code}")));

    /// <summary>The place of a cursor, or null when the text is none.</summary>
    public static OfferPlace? Find(string cursor) =>
        Base64Url.IsValid(cursor)
        && Encoding.UTF8.GetString(Base64Url.DecodeFromChars(cursor)).Split(Separator, 4) is [var key, var seen, var book, var code]
        && DateOnly.TryParseExact(seen, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)
            ? new OfferPlace(key, day, book, code)
            : null;
}
