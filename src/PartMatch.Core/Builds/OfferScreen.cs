using System.Globalization;
using PartMatch.Core.Buying;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Listings;
using PartMatch.Core.Orders;

namespace PartMatch.Core.Builds;

/// <summary>An offer that can be reckoned with: every amount in minor units of the build's currency.</summary>
/// <param name="Pieces">In one pack.</param>
/// <param name="Goods">Price of one pack.</param>
/// <param name="Landed">The same with its import charge and a deposit that does not come back, each converted once.</param>
/// <param name="OwnSending">Paid once for this offer; null: it travels in the seller's parcel.</param>
/// <param name="Days">Until it is at the door, at most.</param>
/// <param name="LostDeposit">Of one pack, where there is no old part that it would come back for.</param>
/// <param name="Assumed">What the build says where the seller says nothing.</param>
internal sealed record ScreenedOffer(
    Offer Offer, Seller Seller, int Pieces, long Goods, long Landed, long? OwnSending, int Days, long LostDeposit, IReadOnlyList<string> Assumed)
{
    public long Import => Landed - Goods - LostDeposit;

    /// <summary>The pieces that were bought already, where it stands for such: they are paid or owed whatever the plan makes of them. Null for an offer.</summary>
    public BoughtPieces? Bought { get; init; }

    /// <summary>Was it, or is it, sold as new?</summary>
    public bool IsNew => Bought?.IsNew ?? Offer.Condition == ItemCondition.New;

    /// <summary>As <c>book/offer</c>.</summary>
    public string Address => $"{Offer.Book}/{Offer.Code}";
}

/// <summary>Which offers can be reckoned with, and why the others cannot. What is not known is never counted as nothing.</summary>
/// <param name="Offers">In ordinal order of book, then code.</param>
/// <param name="NotWeighed">In words, grouped by reason.</param>
/// <param name="Obtainable">Parts that one of the offers holds, or that are in hand.</param>
/// <param name="LeftOut">The others, each with its reason.</param>
internal sealed record OfferScreen(
    IReadOnlyList<ScreenedOffer> Offers, IReadOnlyList<string> NotWeighed, IReadOnlySet<string> Obtainable, IReadOnlyList<(Offer Offer, string Why)> LeftOut)
{
    public const string ImportNotKnown = "import charge not known";
    public const string DaysNotSaid = "not said how long it takes";
    public const string SendingNotKnown = "sending not known";

    public static string NoRate(string currency) => $"priced in {currency}, for which the build has no rate";

    /// <summary>What was bought already, in the order of the orders.</summary>
    public IReadOnlyList<ScreenedOffer> Bought { get; init; } = [];

    /// <param name="refused">Sellers not to buy from.</param>
    /// <param name="today">The day of the question.</param>
    public static OfferScreen Of(BuildTerms terms, IReadOnlyCollection<string> refused, DateOnly today)
    {
        var taken = new List<ScreenedOffer>();
        var left = new List<(Offer Offer, string Why)>();
        // A plan of an earlier day does not know what was seen later.
        var known = terms.Facts.Buying.Offers.Where(offer => offer.Part is { } part && terms.Facts.Family.FindPart(part) is not null && offer.SeenOn <= today).ToList();
        var latest = known.GroupBy(SameThing).ToDictionary(seen => seen.Key, seen => seen.Max(offer => offer.SeenOn));
        foreach (var offer in known)
        {
            var seller = terms.Facts.Buying.SellerOf(offer);
            var (screened, why) = offer.SeenOn < latest[SameThing(offer)]
                ? (null, "the same seller was seen with it again later")
                : Screen(terms, offer, seller, refused);
            if (screened is not null)
            {
                taken.Add(screened);
            }
            else
            {
                left.Add((offer, why ?? ""));
            }
        }

        var bought = BoughtOffers.Of(terms, today);
        HashSet<string> obtainable =
        [
            .. terms.Build.InHand.Select(held => held.Part),
            .. bought.Concat(taken).SelectMany(offer => HeldBy(terms.Facts, offer.Offer.Part!)).Select(held => held.Part), // screened: it has a part
        ];
        return new OfferScreen(taken, Grouped(left), obtainable, left) { Bought = bought };
    }

    /// <summary>What one pack of a part holds for sure: itself, or of a kit or assembly its contents as well.</summary>
    public static IEnumerable<(string Part, int Pieces)> HeldBy(BuildFacts facts, string part) =>
    [
        (part, 1),
        .. facts.Contents[part].Where(row => row is { Certainty: Certainty.Certain, Quantity: > 0 }).Select(row => (row.Part, row.Quantity ?? 0)),
    ];

    /// <summary>Rows of one seller for the same thing are the history of its price: the latest one counts. Of a page of its own, the page is the thing.</summary>
    private static (string Seller, string? Part, int? Pack, ItemCondition Condition, AssemblyLevel Level, string? Listing) SameThing(Offer offer) =>
        (offer.Seller, offer.Part, offer.Pack, offer.Condition, offer.Level, offer.Listing);

    private static (ScreenedOffer? Screened, string? Why) Screen(BuildTerms terms, Offer offer, Seller seller, IReadOnlyCollection<string> refused)
    {
        var build = terms.Build;
        var assumed = new List<string>();
        var age = terms.StartOn.DayNumber - offer.SeenOn.DayNumber;
        var days = offer.DaysMax ?? offer.DaysMin ?? seller.DaysMax ?? seller.DaysMin ?? build.DaysWhereNotSaid;
        var percent = seller.ImportChargePercent ?? build.ImportPercentWhereNotSaid;
        if (refused.Contains(offer.Seller))
        {
            return (null, $"of {seller.Name}, from whom you do not buy");
        }

        if (offer.Condition == ItemCondition.Damaged)
        {
            return (null, "said to be damaged or for parts");
        }

        if (build.OffersAtMostDaysOld is { } oldest && age > oldest)
        {
            return (null, string.Create(CultureInfo.InvariantCulture, $"seen more than {oldest} days ago"));
        }

        if (offer.Pack is not { } pieces || pieces < 1)
        {
            return (null, "not said how many pieces the price is for");
        }

        if (terms.Convert(offer.Price) is not { } goods)
        {
            return (null, NoRate(offer.Price.Currency));
        }

        if (percent is not { } charge)
        {
            return (null, ImportNotKnown);
        }

        if (offer.Shipping is { } typed && terms.Convert(typed) is null)
        {
            return (null, $"sending {NoRate(typed.Currency)}");
        }

        if (days is not { } atDoor)
        {
            return (null, DaysNotSaid);
        }

        if (seller.ImportChargePercent is null)
        {
            assumed.Add(string.Create(CultureInfo.InvariantCulture, $"import charge taken as {charge} %, as the build says"));
        }

        if (offer.DaysMax is null && offer.DaysMin is null && seller.DaysMax is null && seller.DaysMin is null)
        {
            assumed.Add(string.Create(CultureInfo.InvariantCulture, $"{atDoor} days taken, as the build says"));
        }

        if ((offer.DaysMax, offer.DaysMin) is (null, not null) || (offer is { DaysMax: null, DaysMin: null } && seller is { DaysMax: null, DaysMin: not null }))
        {
            assumed.Add(string.Create(CultureInfo.InvariantCulture, $"{atDoor} days taken; said is only that it takes no less"));
        }

        var lost = OldParts.LostDeposit(terms, offer);
        if (lost > 0)
        {
            assumed.Add(OldParts.Say(terms, offer, lost));
        }

        var left = LeftOf(terms, offer, pieces);
        if (left <= 0)
        {
            return (null, "all of it that was seen is ordered already");
        }

        if (left < offer.Stock)
        {
            assumed.Add(string.Create(CultureInfo.InvariantCulture, $"{left} of {offer.Stock} left: the others are ordered already"));
        }

        var (canBeSent, own) = SendingOf(terms, offer, seller, assumed);
        return !canBeSent
            ? (null, SendingNotKnown)
            : (new ScreenedOffer(offer with { Stock = left }, seller, pieces, goods, Landed(terms, offer, charge) + lost, own, (int)Math.Min(atDoor, 3660), lost, assumed), null);
    }

    /// <summary>Packs that the seller still has of those that were seen: the build has ordered some since. Null where nobody said how many there were.</summary>
    private static int? LeftOf(BuildTerms terms, Offer offer, int pieces) => offer.Stock is not { } stock ? null
        : stock - terms.Facts.Bought.Ordered.Where(ordered => ordered.Offer == $"{offer.Book}/{offer.Code}" && ordered.On >= offer.SeenOn)
            .Sum(ordered => (ordered.Pieces + pieces - 1) / pieces);

    private static long Landed(BuildTerms terms, Offer offer, decimal percent) =>
        terms.Convert(offer.Price, 1 + (percent / 100)) ?? 0; // the currency was converted just now

    /// <summary>Can its sending be reckoned, and is it its own? Null: it travels in the seller's parcel.</summary>
    private static (bool Can, long? Own) SendingOf(BuildTerms terms, Offer offer, Seller seller, List<string> assumed)
    {
        if (offer.Shipping is { } own)
        {
            return (true, terms.Convert(own));
        }

        var usual = seller is { ShippingFixed: not null, ShippingPerItem: not null }
            && (seller.Currency is null || seller.Currency == offer.Price.Currency)
            && terms.Convert(seller.ShippingFixed) is not null;
        if (usual || terms.Build.SendingWhereNotSaid is not { } typed)
        {
            return (usual, null);
        }

        var sending = terms.Minor(typed, "sendingWhereNotSaid");
        assumed.Add($"{terms.Say(sending)} sending taken, as the build says");
        return (true, sending);
    }

    private static IReadOnlyList<string> Grouped(List<(Offer Offer, string Why)> left) =>
    [
        .. left.GroupBy(one => one.Why, StringComparer.Ordinal).OrderBy(group => group.Key, StringComparer.Ordinal)
            .Select(group => Say(group.Key, [.. group.Select(one => $"{one.Offer.Book}/{one.Offer.Code}")])),
    ];

    private static string Say(string why, List<string> codes) => string.Create(
        CultureInfo.InvariantCulture, $"{codes.Count} {(codes.Count == 1 ? "offer" : "offers")} left out: {why} ({Fit.FitWording.Some(codes)}).");
}
