namespace PartMatch.Core.Listings;

/// <summary>Where a listing says two things of one.</summary>
internal static class Contradictions
{
    /// <summary>A contradiction, and the product it speaks of; null where it is of the page.</summary>
    public sealed record OfProduct(int? Product, Contradiction What);

    /// <param name="groups">Every number of the listing with all the places it stands in.</param>
    public static IReadOnlyList<OfProduct> Find(ReadListing listing, IReadOnlyList<NumberGroup> groups)
    {
        var page = new PageWords(listing);
        var sold = NumberGroup.ByProduct(listing, groups, found => listing.Passages[found.Passage].Place != PassagePlace.Picture);
        return
        [
            .. listing.Products.SelectMany((product, index) => TwoNumbers(listing, sold[index], index)
                .Concat(product.Offers.SelectMany(offer => Conditions(listing, page, product, offer).Concat(Levels(page, product, offer))))
                .Concat(Gtins(product))
                .Select(found => new OfProduct(index, found))),
            .. PictureNumbers(listing, groups).Concat(Sold(listing)).Concat(OtherMake(listing, groups)).Concat(Declared(listing))
                .Select(found => new OfProduct(null, found)),
        ];
    }

    /// <summary>What the words of the page say of a condition; read once, however many things the page offers.</summary>
    private sealed class PageWords
    {
        private readonly Lazy<string> _all;
        private readonly Lazy<string?> _used;
        private readonly Lazy<string?> _damaged;

        public PageWords(ReadListing listing)
        {
            // Not the rows of its tables: each of those is of its own thing.
            _all = new(() => string.Join(
                '\n', listing.Passages.Where(passage => passage is { Product: null, Place: not (PassagePlace.TableCell or PassagePlace.Quoted) })
                    .Select(passage => passage.Text)));
            (_used, _damaged) = (new(() => ConditionWords.SaysUsed(_all.Value)), new(() => ConditionWords.SaysDamaged(_all.Value)));
        }

        public string? Used => _used.Value;

        public string? Damaged => _damaged.Value;

        /// <summary>What names less of an engine than that; asked of the few offers only that state how much of one they are.</summary>
        public string? Less(AssemblyLevel level) => LevelWords.SaysLess(_all.Value, level);
    }

    // Of one product: numbers that are no numbers of the same part. Numbers that no book knows count only where both are stated outright.
    private static IEnumerable<Contradiction> TwoNumbers(ReadListing listing, IEnumerable<NumberGroup> groups, int product)
    {
        NumberGroup[] sold = [.. groups.Where(group => CountsAgainst(listing, group, product))];
        foreach (var (one, other) in sold.SelectMany((one, index) => sold[(index + 1)..], (one, other) => (one, other)).Where(pair => !pair.one.IsSamePartAs(pair.other)))
        {
            var (first, second) = (one.PlaceOf(listing, product), other.PlaceOf(listing, product));
            if (first != second)
            {
                yield return new Contradiction(
                    "two-numbers", $"{first}: {one.Written}", $"{second}: {other.Written}",
                    $"The {first} says {one.Written}, the {second} says {other.Written}. Which of them stands on the part?");
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

    private static IEnumerable<Contradiction> Conditions(ReadListing listing, PageWords page, ReadProduct product, ReadOffer offer)
    {
        // The rows of a table are each of its own thing, and so is each line of a list.
        var isOneOfSeveral = product.From == StatementForm.Text && listing.Products.Count > 1;
        var (used, damaged) = isOneOfSeveral ? (null, null) : (page.Used, page.Damaged);
        var name = product.Name ?? "";
        var against = offer.Condition switch
        {
            ItemCondition.New => ConditionWords.SaysUsed(name) ?? used ?? ConditionWords.SaysDamaged(name) ?? damaged,
            ItemCondition.Used or ItemCondition.Refurbished => ConditionWords.SaysDamaged(name) ?? damaged,
            _ => null,
        };
        if (against is not null)
        {
            var stated = offer.Condition.ToString().ToLowerInvariant();
            yield return new Contradiction(
                "condition-words", $"condition: {stated}", $"words: {against}", $"The condition is stated as {stated}, the words say “{against}”. Which is it?");
        }
    }

    private static IEnumerable<Contradiction> Levels(PageWords page, ReadProduct product, ReadOffer offer)
    {
        if (offer.Level != AssemblyLevel.NotStated && (LevelWords.SaysLess(product.Name ?? "", offer.Level) ?? page.Less(offer.Level)) is { } less)
        {
            var stated = AssemblyLevels.Name(offer.Level);
            yield return new Contradiction("level-words", $"sold as: {stated}", $"words: {less}", $"It is offered as a {stated}, the words say “{less}”. What exactly is sold?");
        }
    }

    private static IEnumerable<Contradiction> Sold(ReadListing listing)
    {
        if (listing.Products.SelectMany(product => product.Offers).Any(offer => offer.Availability is Availability.InStock or Availability.LimitedAvailability)
            && StockWords.SaysGone($"{listing.Title}\n{listing.VisibleText}") is { } sold)
        {
            yield return new Contradiction("sold-words", "availability: in stock", $"words: {sold}", $"It is stated to be in stock, the words say “{sold}”. Is it still there?");
        }
    }

    // Of one thing only: a shop of many says of each whose make it is.
    private static IEnumerable<Contradiction> OtherMake(ReadListing listing, IReadOnlyList<NumberGroup> groups)
    {
        if (listing.Products.Count == 1 && groups.FirstOrDefault(group => group.Identifies && group.Found.Any(found => found.Role == NumberRole.Sold)) is { } sold
            && MakeWords.SaysCopy($"{listing.Title}\n{listing.VisibleText}") is { } copy)
        {
            yield return new Contradiction("other-make", $"number: {sold.Written}", $"words: {copy}", $"It goes under {sold.Written}, the words say “{copy}”. Whose make is it, and what stands on it?");
        }
    }

    // A page of several things declares the price of one of them.
    private static IEnumerable<Contradiction> Declared(ReadListing listing)
    {
        if (listing.DeclaredPrice is ReadPrice.Stated { Money: var declared }
            && listing.Products.SelectMany(product => product.Offers).Select(offer => offer.Price).OfType<ReadPrice.Stated>().Select(price => price.Money).ToList()
                is [var asked, ..] all && !all.Contains(declared))
        {
            yield return new Contradiction(
                "declared-price", $"price: {asked.Amount} {asked.Currency}", $"head of the page: {declared.Amount} {declared.Currency}",
                $"The offer says {asked.Amount} {asked.Currency}, the page declares {declared.Amount} {declared.Currency} to other sites. Which of them is asked?");
        }
    }

    private static IEnumerable<Contradiction> Gtins(ReadProduct product) =>
        product.Numbers.Where(number => number.Gtin == GtinCheck.WrongCheckDigit)
            .Select(number => new Contradiction(
                "gtin-check-digit", $"GTIN: {number.Value}", "its check digit",
                $"The GTIN {number.Value} has a wrong check digit, so at least one digit of it is wrong. Go by the part number."));
}
