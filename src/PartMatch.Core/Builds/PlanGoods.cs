using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>What can be needed, who sells it and what a choice takes of it.</summary>
internal sealed class PlanGoods
{
    private const string Measured = "measured:";
    private const string OnlyNew = "new:";
    private readonly BuildTerms _terms;
    private readonly Dictionary<string, string> _countedAs;
    private readonly HashSet<string> _shared;
    private readonly HashSet<string> _boughtNew;
    private readonly Dictionary<string, int> _products = new(StringComparer.Ordinal);
    private readonly ILookup<string, (int Product, bool OnlyNew)> _productsOf;

    /// <param name="grounds">Sellers that are refused and whose offers stand in the screen all the same become grounds.</param>
    public PlanGoods(BuildTerms terms, IReadOnlyList<IReadOnlyList<Candidate>> candidates, OfferScreen screen, PlanGrounds grounds)
    {
        _terms = terms;
        Candidate[] bought = [.. candidates.SelectMany(choices => choices).Where(one => one is { From: CandidateFrom.Supply, IsMeasuredCopy: false })];
        _countedAs = CountedAs(bought, screen);
        _shared = bought.GroupBy(one => _countedAs[one.PartsKey]).Where(same => same.DistinctBy(one => one.Position).Count() > 1).Select(same => same.Key)
            .ToHashSet(StringComparer.Ordinal);
        _boughtNew = bought.Where(IsBoughtNew).Select(one => _countedAs[one.PartsKey]).ToHashSet(StringComparer.Ordinal);
        foreach (var candidate in bought)
        {
            _products.TryAdd(ProductOf(candidate), _products.Count);
        }

        var takers = bought.ToLookup(ProductOf, StringComparer.Ordinal);
        _productsOf = _products.ToLookup(
            product => _countedAs[takers[product.Key].First().PartsKey], product => (product.Value, IsOnlyNew(product.Key)), StringComparer.Ordinal);
        foreach (var lot in candidates.SelectMany(choices => choices).SelectMany(one => one.Measured))
        {
            _products.TryAdd(ProductOf(lot), _products.Count);
        }

        PartsOfProducts = [.. _products.Keys];
        Products = [.. _products.Keys.Select(name => new PlanProduct(name, takers.Contains(name) ? InHand(name, takers) : 0))];
        (ScreenedOffer Offer, List<PlanPieces> Holds)[] useful =
            [.. screen.Bought.Concat(screen.Offers).Select(offer => (offer, Holds(offer, takers))).Where(offer => offer.Item2.Count > 0)];
        Screened = [.. useful.Select(offer => offer.Offer)];
        var sellers = Screened.Select(offer => offer.Seller).DistinctBy(seller => (seller.Book, seller.Code)).ToList();
        Sellers = [.. sellers.Select(SellerOf)];
        var indexes = sellers.Index().ToDictionary(seller => (seller.Item.Book, seller.Item.Code), seller => seller.Index);

        var takenAt = takers.ToDictionary(
            same => _products[same.Key], same => same.All(taker => taker.IsGraded) ? same.Select(taker => taker.Position).Distinct().ToArray() : []);
        GradedFor = [.. useful.Select(offer => offer.Offer.Bought is null && offer.Holds.TrueForAll(held => takenAt.GetValueOrDefault(held.Product, []).Length > 0)
            ? (IReadOnlyList<string>)[.. offer.Holds.SelectMany(held => takenAt[held.Product]).Distinct()] : [])];

        // Of two that come to the same, what is bought already, then what was seen last.
        var ranks = Screened.OrderByDescending(offer => offer.Bought is not null).ThenByDescending(offer => offer.Offer.SeenOn).ThenBy(offer => offer.Address, StringComparer.Ordinal).Index()
            .ToDictionary(offer => offer.Item, offer => offer.Index);
        Offers = [.. useful.Select(offer =>
            OfferOf(offer.Offer, indexes[(offer.Offer.Seller.Book, offer.Offer.Seller.Code)], offer.Holds, RefusedBy(offer.Offer, grounds)) with { Rank = ranks[offer.Offer] })];
    }

    public IReadOnlyList<PlanProduct> Products { get; }

    /// <summary>Its name: a part's id, several for grades, and whether it has to be new.</summary>
    public IReadOnlyList<string> PartsOfProducts { get; }

    public IReadOnlyList<ScreenedOffer> Screened { get; }

    /// <summary>For each offer the positions for which it holds one of the grades; none where it serves for anything else too, or was bought already.</summary>
    public IReadOnlyList<IReadOnlyList<string>> GradedFor { get; }

    public IReadOnlyList<PlanSeller> Sellers { get; }

    public IReadOnlyList<PlanOffer> Offers { get; }

    public IReadOnlyList<PlanPieces> UsesOf(Candidate candidate)
    {
        var uses = new List<PlanPieces>();
        var missing = candidate.From == CandidateFrom.Supply ? Math.Max(1, candidate.Pieces ?? 1) : 0;
        foreach (var lot in candidate.Measured)
        {
            var pieces = Math.Min(missing, lot.Pieces);
            uses.Add(new PlanPieces(_products[ProductOf(lot)], pieces));
            missing -= pieces;
        }

        return missing > 0 ? [.. uses, new PlanPieces(_products[ProductOf(candidate)], missing)] : uses;
    }

    private bool IsBoughtNew(Candidate candidate) => _terms.At(candidate.Position).IsBoughtNew;

    /// <summary>
    /// What several positions take is one product, whoever takes it: else a piece could be counted for two of them. So what is bought only new for one is
    /// bought only new for all. Ours, no source.
    /// </summary>
    private string ProductOf(Candidate candidate)
    {
        var part = _countedAs[candidate.PartsKey];
        return (_boughtNew.Contains(part) ? OnlyNew : "") + (_shared.Contains(part) ? part : candidate.PartsKey);
    }

    private static bool IsOnlyNew(string product) => product.StartsWith(OnlyNew, StringComparison.Ordinal);

    /// <summary>The part of a product; of grades that one position alone takes all of them, parted by a stroke.</summary>
    public static string PartOf(string product)
    {
        var counted = IsOnlyNew(product) ? product[OnlyNew.Length..] : product;
        return counted.StartsWith(Measured, StringComparison.Ordinal) ? counted[Measured.Length..counted.LastIndexOf('#')] : counted;
    }

    /// <summary>What was measured serves as it was, and is told apart from all else of its number.</summary>
    private static string ProductOf(Orders.BoughtPieces lot) => $"{Measured}{lot.Part}#{MeasuredCopies.CodeOf(lot)}";

    /// <summary>
    /// Of grades as many as there are of each, because any of them may turn out to be the one; none where another position may take one of them as another
    /// product. What the user wishes only new is not taken from what is in hand; what is renewed may be, if it was never used.
    /// </summary>
    private int InHand(string product, ILookup<string, Candidate> takers)
    {
        var own = takers[product].SelectMany(one => one.Parts).Select(part => part.Id).ToHashSet(StringComparer.Ordinal);
        var positions = takers[product].Select(one => one.Position).ToHashSet(StringComparer.Ordinal);
        var isTaken = takers.Where(other => other.Key != product).SelectMany(other => other)
            .Any(other => !positions.Contains(other.Position) && other.Parts.Any(part => own.Contains(part.Id)));
        return takers[product].Any(one => _terms.At(one.Position).OnlyNew) || (own.Count > 1 && isTaken)
            ? 0
            : own.Min(part => _terms.Build.InHand.Where(held => held.Part == part).Sum(held => held.Pieces));
    }

    /// <summary>
    /// What is bought for it: of grades the one whose cheapest piece is the dearest, because which will be needed is known only after measuring, so the plan
    /// counts the worst.
    /// </summary>
    private Dictionary<string, string> CountedAs(IEnumerable<Candidate> bought, OfferScreen screen) => bought
        .GroupBy(one => one.PartsKey, StringComparer.Ordinal)
        .ToDictionary(
            same => same.Key, same => Dearest(same.First().Parts, same.Any(IsBoughtNew), screen) ?? same.Key, StringComparer.Ordinal);

    /// <summary>Null where nobody sells any.</summary>
    private static string? Dearest(IReadOnlyList<Catalogue.Part> parts, bool onlyNew, OfferScreen screen) => parts
        .Select(part => (part.Id, Price: GradePrices.CheapestPiece(screen, part.Id, onlyNew))).Where(grade => grade.Price is not null)
        .OrderByDescending(grade => grade.Price).ThenBy(grade => grade.Id, StringComparer.Ordinal).Select(grade => grade.Id).FirstOrDefault();

    private List<PlanPieces> Holds(ScreenedOffer offer, ILookup<string, Candidate> takers) =>
    [
        .. OfferScreen.HeldBy(_terms.Facts, offer.Offer.Part!) // screened: it has a part
            .SelectMany(held => ProductsOf(offer, held.Part).Concat(BoughtGrades(offer, held.Part, takers)).Distinct(), (held, product) => (product, held.Pieces))
            .Where(one => !one.product.OnlyNew || offer.IsNew)
            .GroupBy(one => one.product.Product).OrderBy(product => product.Key)
            .Select(product => new PlanPieces(product.Key, offer.Pieces * product.Sum(one => one.Pieces))),
    ];

    /// <summary>Pieces that were measured serve only as they were measured, and none where they are beyond a limit.</summary>
    private IEnumerable<(int Product, bool OnlyNew)> ProductsOf(ScreenedOffer offer, string part) => offer.Bought is { } bought && bought.Part == part
        ? MeasuredCopies.AreBeyondLimits(_terms.Facts, bought) ? []
            : !MeasuredCopies.IsOne(_terms, bought) ? _productsOf[part]
            : _products.TryGetValue(ProductOf(bought), out var measured) ? [(measured, false)] : []
        : _productsOf[part];

    /// <summary>A grade that was bought was measured for: it serves whichever of the grades is counted for those nobody knows yet.</summary>
    private IEnumerable<(int Product, bool OnlyNew)> BoughtGrades(ScreenedOffer offer, string part, ILookup<string, Candidate> takers) =>
        offer.Bought is not { } bought || (bought.Part == part && MeasuredCopies.AreBeyondLimits(_terms.Facts, bought)) ? []
        : _products.Where(product => takers[product.Key].Any(taker => taker.IsGraded && taker.Parts.Any(one => one.Id == part)))
            .Select(product => (product.Value, IsOnlyNew(product.Key)));

    private PlanSeller SellerOf(Buying.Seller seller) => new(
        $"{seller.Book}/{seller.Code}", seller.ShippingFixed is { } parcel ? _terms.Convert(parcel) ?? 0 : 0,
        seller.ShippingPerItem is { } each ? _terms.Convert(each) ?? 0 : 0,
        seller.FreeFrom is { } from ? (long)Measures.Amount.Of(from).Minor : null);

    private int? RefusedBy(ScreenedOffer offer, PlanGrounds grounds) => offer.Bought is null && _terms.Build.RefusedSellers.Contains(offer.Offer.Seller)
        ? grounds.Of($"seller:{offer.Offer.Seller}", $"Nothing is bought of {offer.Seller.Name}.", $"buy of {offer.Seller.Name}")
        : null;

    private PlanOffer OfferOf(ScreenedOffer offer, int seller, List<PlanPieces> holds, int? ground)
    {
        // The seller counts in his own currency what he sends free from.
        var counts = offer.Seller.FreeFrom?.Currency == offer.Offer.Price.Currency;
        return new PlanOffer(
            offer.Address, seller, offer.Landed, offer.Offer.Stock ?? 100, holds, offer.OwnSending,
            counts ? (long)Measures.Amount.Of(offer.Offer.Price).Minor : 0, offer.Days,
            IsRisky(offer) ? PlanRisks.Trap : 0)
        {
            Ground = ground,
            SentAs = offer.Pieces,
        };
    }

    /// <summary>What was checked is told apart already.</summary>
    private bool IsRisky(ScreenedOffer offer) =>
        _terms.Facts.Traps.Contains(offer.Offer.Part!) && offer.Bought?.State != Orders.LineState.Checked; // screened: it has a part
}
