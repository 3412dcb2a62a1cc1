namespace PartMatch.Core.Listings;

/// <summary>All that terms and lines say of one sale.</summary>
internal sealed record SaidInText(
    StatementForm From, string? Name, string? Brand, IReadOnlyList<StatedNumber> Numbers, ItemCondition Condition, ReadPrice? Price, int? Pieces,
        Availability Availability, ReadShipping? Shipping,
    DayRange? Days, string? Seller, int? Stock, OfferTerms Terms, AssemblyLevel Level)
{
    // What says something of the sale stands near the beginning; a page can be megabytes. Ours, no source.
    private const int MostCharacters = 50_000;

    private const int LinesOfTheBeginning = 8;

    /// <param name="leading">Title, headings, or the first line: what is sold.</param>
    public static SaidInText Read(IReadOnlyList<Term> terms, IReadOnlyList<string> lines, IReadOnlyList<string> leading, string? currency)
    {
        var said = Beginning(lines);
        var whole = string.Join('\n', said);
        var amounts = said.SelectMany(line => AmountRoles.Read(line, currency)).ToList();
        var money = currency ?? Currency(amounts);
        // "Delivery: 2-4 days" is no freight.
        var sending = terms.Where(term => term.Label == Label.Shipping).ToLookup(term => DayWords.IsAll(term.Value), term => term.Value);
        var shipping = sending[false].FirstOrDefault() is { } freight ? ShippingWords.Stated(freight, money) : null;
        var deposit = Term(terms, Label.Deposit) is { } pledge ? PriceText.Read(pledge, money) : One(amounts, AmountRole.Deposit, money);
        var written = Term(terms, Label.Condition);
        var stock = StatedTerms.Whole(Term(terms, Label.Stock) ?? Term(terms, Label.Quantity));
        var top = string.Join(", ", leading);
        var availability = Term(terms, Label.Availability) is { } there ? StockWords.Find(there)
            : StockWords.SaysSold($"{top}\n{string.Join('\n', said.Take(LinesOfTheBeginning))}") ? Availability.SoldOut
            : StockWords.Find(whole);
        return new(
            terms.Count > 0 ? StatementForm.DefinitionList : StatementForm.Text,
            Term(terms, Label.Description) ?? (leading.Count > 0 ? leading[0] : null),
            Term(terms, Label.Brand),
            [.. terms.Select(Number).OfType<StatedNumber>().Distinct()],
            First(written is null ? ItemCondition.NotStated : ConditionWords.Stated(written), ConditionWords.Find(top)),
            Term(terms, Label.Price) is { } price ? PriceText.Read(price, money) : Asked(said, leading, amounts, money),
            StatedTerms.Whole(Term(terms, Label.Pieces)) ?? (said.Take(LinesOfTheBeginning).Any(line => PieceWords.SaysEach(line) && AmountRoles.Read(line, money).Count > 0) ? null : PieceWords.Find(top)),
            stock is { } left && availability == Availability.NotStated ? left > 0 ? Availability.InStock : Availability.OutOfStock : availability,
            shipping ?? (ShippingWords.CollectOnly(whole) ? null
                : One(amounts, AmountRole.Shipping, money) is { } rate ? new(rate, null)
                : said.Exists(ShippingWords.IsFree) ? new(StatedPrices.Freight("0", money), null)
                : null),
            (Term(terms, Label.Days) ?? sending[true].FirstOrDefault()) is { } days ? DayWords.Stated(days) : said.Select(DayWords.Find).OfType<DayRange>().FirstOrDefault(),
            Term(terms, Label.Seller),
            stock ?? StockWords.Pieces(whole),
            TermWords.Fill(TermWords.Find(Term(terms, Label.Returns) is { } returns ? $"returns: {returns}" : ""),
                TermWords.Find(whole)) with
            { CoreDeposit = deposit },
            LevelWords.Find(top) is var level && level != AssemblyLevel.NotStated ? level : LevelWords.Find(whole));
    }

    /// <summary>The page as a whole as one product; without an offer where nothing of a sale is said.</summary>
    public ReadProduct Whole(IReadOnlyList<string> lines)
    {
        // The first line that speaks of it, and no line with another price: that is of another thing.
        var condition = First(Condition, Beginning(lines).Where(line => Price is null || AmountRoles.Read(line, null) is var amounts
                && (amounts.All(amount => amount.Role != AmountRole.Price) || amounts.Any(amount => Price.Written.Contains(amount.Price.Written, StringComparison.Ordinal))))
            .Select(ConditionWords.Find).FirstOrDefault(found => found != ItemCondition.NotStated));
        var offered = Price is not null || Shipping is not null || Stock is not null || Availability != Availability.NotStated
            || Level != AssemblyLevel.NotStated || Terms != OfferTerms.NotStated;
        return new(From, Name, Brand, Numbers, condition, offered
            ? [new(Price, Pieces ?? 1, condition, Availability, Shipping, Days, Seller, null, Stock, Terms, Level)]
            : [], null);
    }

    /// <summary>The one offer of a page, with what only the text says of it. What is stated is never changed.</summary>
    public ReadOffer Fill(ReadOffer offer) => offer with
    {
        Price = offer.Price ?? Price,
        Pieces = offer.Pieces > 1 ? offer.Pieces : Pieces ?? 1,
        Condition = First(offer.Condition, Condition),
        Availability = offer.Availability == Availability.NotStated ? Availability : offer.Availability,
        Shipping = offer.Shipping ?? Shipping,
        Days = offer.Days ?? Days,
        Seller = offer.Seller ?? Seller,
        Stock = offer.Stock ?? Stock,
        Terms = TermWords.Fill(offer.Terms, Terms),
        Level = offer.Level == AssemblyLevel.NotStated ? Level : offer.Level,
    };

    private static List<string> Beginning(IReadOnlyList<string> lines)
    {
        var left = MostCharacters;
        return [.. lines.TakeWhile(line => (left -= line.Length + 1) >= 0)];
    }

    private static StatedNumber? Number(Term term) =>
        LabelWords.Property(term.Label) is { } property and not (NumberProperty.Fits or NumberProperty.Replaces) ? StatedNumbers.Number(property, term.Value)
            : null;

    private static string? Term(IReadOnlyList<Term> terms, Label label) => terms.FirstOrDefault(term => term.Label == label)?.Value;

    private static ItemCondition First(ItemCondition one, ItemCondition other) => one == ItemCondition.NotStated ? other : one;

    // Of several prices that of the thing itself stands by itself in a line below the heading ("1.299,00 € VB"), before those of other things. Ours, no source.
    private static ReadPrice? Asked(
        List<string> lines, IReadOnlyList<string> leading, IReadOnlyList<(AmountRole Role, ReadPrice Price)> amounts, string? currency)
    {
        var all = One(amounts, AmountRole.Price, currency);
        if (all is null or ReadPrice.Stated || amounts.Count(amount => amount.Role == AmountRole.Price) < 2)
        {
            return all;
        }

        var heading = leading.Count < 2 ? -1 : lines.FindIndex(line => leading.Contains(line, StringComparer.Ordinal));
        if (heading < 0)
        {
            return all; // of words without a heading any line can speak of the thing
        }

        var alone = lines.Skip(heading + 1)
            .Select(line => (Line: line, Found: PriceText.Find(line, currency)))
            .FirstOrDefault(line => line.Found is [{ Marked: true } one] && line.Line.Length - one.Length <= MostBeside && AmountRoles.Read(line.Line, currency) is [{ Role: AmountRole.Price }]);
        return alone.Found is [var price] ? Settle(price.Price, currency) : all;
    }

    private const int MostBeside = 12;

    private static ReadPrice? One(IReadOnlyList<(AmountRole Role, ReadPrice Price)> amounts, AmountRole role, string? currency)
    {
        var prices = amounts.Where(amount => amount.Role == role).Select(amount => Settle(amount.Price, currency)).ToList();
        return prices.Count == 0 ? null : PriceText.Several(string.Join(" / ", prices.Select(price => price.Written).Distinct().Take(10)), prices);
    }

    // An amount without a currency beside one that has it ("84 EUR, postage 6.90").
    private static ReadPrice Settle(ReadPrice price, string? currency) =>
        price is ReadPrice.Ambiguous { Readings: [{ Currency: "" }] } && currency is not null ? PriceText.Read(price.Written, currency) : price;

    private static string? Currency(IReadOnlyList<(AmountRole Role, ReadPrice Price)> amounts) =>
        amounts.Select(amount => amount.Price).OfType<ReadPrice.Stated>().Select(stated => stated.Money.Currency).Distinct().Take(2).ToList() is [var only]
            ? only : null;
}
