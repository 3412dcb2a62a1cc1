using PartMatch.Core.Listings;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>What can be needed, who sells it and what a choice takes of it.</summary>
internal sealed class PlanGoods
{
    private const string OnlyNew = "new:";
    private readonly BuildTerms _terms;
    private readonly Dictionary<string, int> _products = new(StringComparer.Ordinal);

    /// <param name="grounds">Sellers that are refused and whose offers stand in the screen all the same become grounds.</param>
    public PlanGoods(BuildTerms terms, IReadOnlyList<IReadOnlyList<Candidate>> candidates, OfferScreen screen, PlanGrounds grounds)
    {
        _terms = terms;
        foreach (var candidate in candidates.SelectMany(choices => choices).Where(one => one is { From: CandidateFrom.Supply }))
        {
            _products.TryAdd(ProductOf(candidate), _products.Count);
        }

        PartsOfProducts = [.. _products.Keys];
        Products = [.. _products.Keys.Select(name => new PlanProduct(name, InHand(name)))];
        var dearest = DearestGrades(candidates, screen);
        Screened = [.. screen.Offers.Where(offer => Holds(offer, dearest).Count > 0)];
        (string Book, string Code)[] sellers = [.. Screened.Select(offer => (offer.Seller.Book, offer.Seller.Code)).Distinct()];
        Sellers = [.. sellers.Select(seller => SellerOf(Screened.First(offer => (offer.Seller.Book, offer.Seller.Code) == seller).Seller))];
        Offers = [.. Screened.Select(offer => OfferOf(offer, Array.IndexOf(sellers, (offer.Seller.Book, offer.Seller.Code)), Holds(offer, dearest), RefusedBy(offer, grounds)))];
    }

    public IReadOnlyList<PlanProduct> Products { get; }

    /// <summary>Its name: a part's id, several for grades, and whether it has to be new.</summary>
    public IReadOnlyList<string> PartsOfProducts { get; }

    public IReadOnlyList<ScreenedOffer> Screened { get; }

    public IReadOnlyList<PlanSeller> Sellers { get; }

    public IReadOnlyList<PlanOffer> Offers { get; }

    public IReadOnlyList<PlanPieces> UsesOf(Candidate candidate) => candidate.From == CandidateFrom.Supply && _products.TryGetValue(ProductOf(candidate), out var product)
        ? [new PlanPieces(product, Math.Max(1, candidate.Pieces ?? 1))]
        : [];

    private string ProductOf(Candidate candidate) => (_terms.At(candidate.Position).OnlyNew ? OnlyNew : "") + candidate.PartsKey;

    private int InHand(string product) => product.StartsWith(OnlyNew, StringComparison.Ordinal)
        ? 0
        : _terms.Build.InHand.Where(held => product.Split('|').Contains(held.Part)).Sum(held => held.Pieces);

    /// <summary>
    /// Of grades the one whose cheapest piece is the dearest: which will be needed is known only after measuring, so the plan counts the worst.
    /// </summary>
    private Dictionary<string, string> DearestGrades(IReadOnlyList<IReadOnlyList<Candidate>> candidates, OfferScreen screen)
    {
        var dearest = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var graded in candidates.SelectMany(choices => choices).Where(one => one is { From: CandidateFrom.Supply, Parts.Count: > 1 }))
        {
            var onlyNew = _terms.At(graded.Position).OnlyNew;
            dearest[ProductOf(graded)] = graded.Parts
                .Select(part => (part.Id, Price: GradePrices.CheapestPiece(screen, part.Id, onlyNew)))
                .Where(grade => grade.Price is not null)
                .OrderByDescending(grade => grade.Price).ThenBy(grade => grade.Id, StringComparer.Ordinal).Select(grade => grade.Id).FirstOrDefault("");
        }

        return dearest;
    }

    private List<PlanPieces> Holds(ScreenedOffer offer, Dictionary<string, string> dearest)
    {
        var held = OfferScreen.HeldBy(_terms.Facts, offer.Offer.Part!).ToList(); // screened: it has a part
        var isNew = offer.Offer.Condition == ItemCondition.New;
        return
        [
            .. _products.Where(product => isNew || !product.Key.StartsWith(OnlyNew, StringComparison.Ordinal))
                .Select(product => (product.Value, Part: dearest.GetValueOrDefault(product.Key)
                    ?? (product.Key.StartsWith(OnlyNew, StringComparison.Ordinal) ? product.Key[OnlyNew.Length..] : product.Key)))
                .Select(product => new PlanPieces(
                    product.Value, offer.Pieces * held.Where(one => one.Part == product.Part).Sum(one => one.Pieces)))
                .Where(pieces => pieces.Pieces > 0)
                .OrderBy(pieces => pieces.Product),
        ];
    }

    private PlanSeller SellerOf(Buying.Seller seller) => new(
        $"{seller.Book}/{seller.Code}", seller.ShippingFixed is { } parcel ? _terms.Convert(parcel) ?? 0 : 0,
        seller.ShippingPerItem is { } each ? _terms.Convert(each) ?? 0 : 0,
        seller.FreeFrom is { } from ? (long)Measures.Amount.Of(from).Minor : null);

    private int? RefusedBy(ScreenedOffer offer, PlanGrounds grounds) => _terms.Build.RefusedSellers.Contains(offer.Offer.Seller)
        ? grounds.Of($"seller:{offer.Offer.Seller}", $"Nothing is bought of {offer.Seller.Name}.", $"buy of {offer.Seller.Name}")
        : null;

    private PlanOffer OfferOf(ScreenedOffer offer, int seller, List<PlanPieces> holds, int? ground)
    {
        // The seller counts in his own currency what he sends free from.
        var counts = offer.Seller.FreeFrom?.Currency == offer.Offer.Price.Currency;
        return new PlanOffer(
            offer.Address, seller, offer.Landed, offer.Offer.Stock ?? 100, holds, offer.OwnSending,
            counts ? (long)Measures.Amount.Of(offer.Offer.Price).Minor : 0, offer.Days,
            _terms.Facts.Traps.Contains(offer.Offer.Part!) ? PlanRisks.Trap : 0) // screened: it has a part
        {
            Ground = ground,
            SentAs = offer.Pieces,
        };
    }
}
