using System.Text.RegularExpressions;

namespace PartMatch.Core.Listings;

/// <summary>Where a listing says two things of one.</summary>
internal static partial class Contradictions
{
    /// <param name="groups">Every number of the listing with all the places it stands in.</param>
    public static IReadOnlyList<Contradiction> Find(ReadListing listing, IReadOnlyList<NumberGroup> groups) =>
    [
        .. TwoNumbers(listing, groups),
        .. PictureNumbers(listing, groups),
        .. listing.Products.SelectMany(product => product.Offers.Select(offer => (product, offer))).SelectMany(pair => Conditions(listing, pair.product, pair.offer)),
        .. listing.Products.SelectMany(product => product.Offers).Where(offer => offer.Availability is Availability.InStock or Availability.LimitedAvailability)
            .Take(1).SelectMany(offer => Sold(listing)),
        .. Gtins(listing),
    ];

    // Of one product: numbers that are no numbers of the same part. Numbers that no book knows count only where both are stated outright.
    private static IEnumerable<Contradiction> TwoNumbers(ReadListing listing, IReadOnlyList<NumberGroup> groups)
    {
        for (var product = 0; product < listing.Products.Count; product++)
        {
            NumberGroup[] sold = [.. groups.Where(group => group.Found.Any(found => Sells(listing, found, product)))];
            foreach (var (one, other) in sold.SelectMany((one, index) => sold[(index + 1)..], (one, other) => (one, other)))
            {
                if (one.IsSamePartAs(other) || !CountsAgainst(listing, one, product) || !CountsAgainst(listing, other, product))
                {
                    continue;
                }

                var (first, second) = (one.PlaceOf(listing, product), other.PlaceOf(listing, product));
                if (first != second)
                {
                    yield return new Contradiction(
                        "two-numbers", $"{first}: {one.Written}", $"{second}: {other.Written}",
                        $"The {first} says {one.Written}, the {second} says {other.Written}. Which of them stands on the part?");
                }
            }
        }
    }

    private static bool Sells(ReadListing listing, FoundNumber found, int product) =>
        found.Role == NumberRole.Sold && listing.Passages[found.Passage] is var passage && passage.Place != PassagePlace.Picture
        && (passage.Product == product || (passage.Product is null && listing.Products.Count == 1));

    private static bool CountsAgainst(ReadListing listing, NumberGroup group, int product) =>
        group.IsKnown || group.Found.Any(found => Sells(listing, found, product) && listing.Passages[found.Passage].Stated is NumberProperty.Mpn or NumberProperty.Number);

    private static IEnumerable<Contradiction> PictureNumbers(ReadListing listing, IReadOnlyList<NumberGroup> groups)
    {
        NumberGroup[] sold =
        [
            .. groups.Where(group => group.IsKnown && group.Found.Any(found => found.Role == NumberRole.Sold && listing.Passages[found.Passage].Place != PassagePlace.Picture)),
        ];
        foreach (var pictured in groups.Where(group => group.IsKnown && group.Found.Any(found => listing.Passages[found.Passage].Place == PassagePlace.Picture)))
        {
            if (sold.Length > 0 && !sold.Any(pictured.IsSamePartAs) && pictured.Identifies)
            {
                yield return new Contradiction(
                    "picture-number", $"picture: {pictured.Written}", $"text: {sold[0].Written}",
                    $"A picture is named or captioned {pictured.Written}, the text sells {sold[0].Written}. Which of them is in the picture, and which would be sent?");
            }
        }
    }

    private static IEnumerable<Contradiction> Conditions(ReadListing listing, ReadProduct product, ReadOffer offer)
    {
        var words = $"{listing.Title}\n{product.Name}\n{listing.VisibleText}";
        var against = offer.Condition switch
        {
            ItemCondition.New => UsedWords().Match(words) is { Success: true } used ? used : BrokenWords().Match(words),
            ItemCondition.Used or ItemCondition.Refurbished => BrokenWords().Match(words),
            _ => Match.Empty,
        };
        if (against.Success)
        {
            var stated = offer.Condition.ToString().ToLowerInvariant();
            yield return new Contradiction(
                "condition-words", $"condition: {stated}", $"words: {against.Value}", $"The condition is stated as {stated}, the words say “{against.Value}”. Which is it?");
        }
    }

    private static IEnumerable<Contradiction> Sold(ReadListing listing)
    {
        if (SoldWords().Match($"{listing.Title}\n{listing.VisibleText}") is { Success: true } sold)
        {
            yield return new Contradiction("sold-words", "availability: in stock", $"words: {sold.Value}", $"It is stated to be in stock, the words say “{sold.Value}”. Is it still there?");
        }
    }

    private static IEnumerable<Contradiction> Gtins(ReadListing listing) =>
        listing.Products.SelectMany(product => product.Numbers).Where(number => number.Gtin == GtinCheck.WrongCheckDigit)
            .Select(number => new Contradiction(
                "gtin-check-digit", $"GTIN: {number.Value}", "its check digit",
                $"The GTIN {number.Value} has a wrong check digit, so at least one digit of it is wrong. Go by the part number."));

    // Words of the trade in five languages; common practice, no source. Only plain statements: "never used" and "not used" are none.
    [GeneratedRegex(
        @"(?<!\b(?:never|not|un|nie|nicht|jamais|pas|aldrig|nunca|sin)[ -])\b(?:(?<!\b(?:be|been|being|is|are|was|were|get|gets|got|can|may)[ ])used(?!\s+(?:by|on|in|for|to|with|as|from|once|only|when|where|it|them)\b)|second[- ]hand|pre-?owned|removed from (?:a|an|the|my)|gebraucht|ausgebaut|occasion|d'occasion|begagnad|begagnat|usado|usada|de segunda mano)\b",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex UsedWords();

    [GeneratedRegex(
        @"\b(?:for parts(?: only)?|spares or repairs?|not working|faulty|cracked|seized|defekt|als ersatzteilspender|f(?:ü|ue)r bastler|pour pi(?:è|e)ces|hors service|reservdelsobjekt|trasig|para piezas|averiad[oa])\b",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    internal static partial Regex BrokenWords();

    [GeneratedRegex(
        @"(?<!\bnot )\b(?:already sold|sold out|now sold|no longer available|verkauft|ausverkauft|nicht mehr verf(?:ü|ue)gbar|vendue?|épuisée?|s(?:å|a)ld|sluts(?:å|a)ld|vendido|vendida|agotad[oa])\b",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex SoldWords();
}
