using System.Globalization;
using PartMatch.Core.Builds;
using PartMatch.Core.Buying;
using PartMatch.Core.Listings;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Orders;

/// <summary>Makes of what was told what was agreed: money as a plan reckons it, so that ordering what a plan says changes nothing of its whole.</summary>
public sealed class OrderMaking
{
    private const int MostLines = 100;
    private const int MostPieces = 10_000;
    private readonly BuildTerms _terms;
    private readonly List<OrderFault> _faults = [];

    private OrderMaking(BuildTerms terms) => _terms = terms;

    /// <summary>The terms, or everything that stands against them.</summary>
    /// <param name="today">The day of ordering where none is told.</param>
    public static (OrderTerms? Terms, IReadOnlyList<OrderFault> Faults) Of(BuildFacts facts, Build build, OrderAsked asked, DateOnly today)
    {
        var making = new OrderMaking(BuildTerms.Of(facts, build, today));
        var terms = making.Make(asked, today);
        return making._faults.Count == 0 ? (terms, []) : (null, making._faults);
    }

    private OrderTerms? Make(OrderAsked asked, DateOnly today)
    {
        if (asked.Lines.Count is < 1 or > MostLines)
        {
            Fault("lines", Said(asked.Lines.Count), Said($"1 to {MostLines} lines"), "an order is of something");
        }

        Check("orderedOn", asked.OrderedOn, IsDay, "a day as 2026-11-23", "leave it out for today");
        Check("expectedOn", asked.ExpectedOn, IsDay, "a day as 2026-11-30", "leave it out for what the seller says");
        Check("sending", asked.Sending, IsAmount, $"an amount of {_terms.Build.Currency}", "as 12.50");
        Check("reference", asked.Reference, text => text.Length <= 120 && !text.Any(char.IsControl), "at most 120 characters in one line", "shorten it");
        Check("note", asked.Note, text => text.Length <= 2000, "at most 2000 characters", "shorten it");
        var lines = asked.Lines.Select((line, index) => Line(line, $"lines[{index}]")).ToList();
        if (_faults.Count > 0 || SellerOf(asked, lines) is not { Holds: true, Seller: var seller })
        {
            return null;
        }

        var orderedOn = OrderText.FindDay(asked.OrderedOn) ?? today;
        var days = lines.Select(line => DaysOf(line.Offer, seller)).ToList();
        var sending = asked.Sending ?? Sending(lines, seller);
        return sending is null ? null : new OrderTerms(
            seller is null ? null : $"{seller.Book}/{seller.Code}", Day(orderedOn),
            asked.ExpectedOn ?? (days.All(day => day is not null) ? Day(orderedOn.AddDays(days.Max() ?? 0)) : null), _terms.Build.Currency, sending,
            [.. lines.Select(line => Agreed(line, seller))])
        {
            Reference = asked.Reference,
            Note = asked.Note,
        };
    }

    /// <summary>One line with what it stands on; null only beside a fault.</summary>
    private LineMade Line(OrderLineAsked asked, string at)
    {
        var offer = asked.Offer is { } address ? FindOffer(address) : null;
        var part = asked.Part ?? offer?.Part;
        if (asked.Offer is not null && offer is null)
        {
            Fault($"{at}.offer", asked.Offer, "an offer of the base, as book/offer", "leave it out, and give part, pieces and price");
        }

        if (part is null || _terms.Facts.Family.FindPart(part) is null)
        {
            Fault($"{at}.part", part ?? "nothing", $"a part that the books of {_terms.Build.Family} describe", "record the part first, or give its id as maker:number");
        }

        var unknown = asked.For.FirstOrDefault(position => _terms.Facts.Family.FindPosition(position) is null);
        if (unknown is not null)
        {
            Fault($"{at}.for", unknown, $"a position of {_terms.Build.Family}", "leave it out");
        }

        var packs = asked.Packs ?? 1;
        var pieces = asked.Pieces ?? (offer?.Pack is { } pack && packs is >= 1 and <= MostPieces ? pack * packs : 0);
        if (pieces is < 1 or > MostPieces || packs is < 1 or > MostPieces)
        {
            Fault($"{at}.pieces", Said(pieces), Said($"1 to {MostPieces} pieces"), "say how many come");
        }

        Check($"{at}.price", asked.Price, IsAmount, $"an amount of {_terms.Build.Currency}", "of all pieces");
        Check($"{at}.import", asked.Import, IsAmount, $"an amount of {_terms.Build.Currency}", "leave it out for what the seller's country asks");
        Check($"{at}.deposit", asked.Deposit, IsAmount, $"an amount of {_terms.Build.Currency}", "of all pieces");
        var line = new LineMade(asked, offer, part ?? "", packs, pieces, at);
        if (asked.Price is null && (offer is null || _terms.Convert(offer.Price) is null))
        {
            Fault($"{at}.price", "nothing", $"what all pieces cost, in {_terms.Build.Currency}", "the offer has no price that can be converted");
        }

        return line;
    }

    private OrderLine Agreed(LineMade line, Seller? seller)
    {
        var (asked, offer) = (line.Asked, line.Offer);
        var lost = offer is null ? 0 : OldParts.LostDeposit(_terms, offer);
        var goods = offer is null ? 0 : (_terms.Convert(offer.Price) ?? 0) + lost;
        var deposit = offer?.CoreDeposit is { } core ? (_terms.Convert(core) ?? 0) - lost : 0;
        return new OrderLine(
            line.Part, _terms.Facts.Family.GetPart(line.Part).Name, line.Pieces, asked.Price ?? _terms.MoneyOf(goods * line.Packs).Amount, asked.Import ?? _terms.MoneyOf(Import(line, seller)).Amount,
            asked.IsNew ?? offer?.Condition == ItemCondition.New)
        {
            Offer = asked.Offer,
            NumberAsWritten = offer?.NumberAsWritten,
            Deposit = asked.Deposit ?? (deposit > 0 ? _terms.MoneyOf(deposit * line.Packs).Amount : null),
            For = asked.For,
            Returns = offer is null || seller is null ? null : offer.Returns.OrUsualOf(seller),
        };
    }

    /// <summary>As for a plan: of the price with its charge, converted once.</summary>
    private long Import(LineMade line, Seller? seller)
    {
        var percent = seller?.ImportChargePercent ?? _terms.Build.ImportPercentWhereNotSaid ?? 0;
        return line.Offer is not { } offer || line.Asked.Price is not null ? 0
            : ((_terms.Convert(offer.Price, 1 + (percent / 100)) ?? 0) - (_terms.Convert(offer.Price) ?? 0)) * line.Packs;
    }

    private (bool Holds, Seller? Seller) SellerOf(OrderAsked asked, List<LineMade> lines)
    {
        string[] named = [.. lines.Select(line => line.Offer).OfType<Offer>().Select(offer => $"{offer.SellerBook}/{offer.Seller}").Append(asked.Seller ?? "").Where(one => one.Length > 0).Distinct()];
        var seller = named is [var only] ? _terms.Facts.Buying.Sellers.FirstOrDefault(one => $"{one.Book}/{one.Code}" == only) : null;
        if (named.Length > 1 || (named.Length == 1 && seller is null))
        {
            Fault("seller", string.Join(" and ", named), "one seller of the base, as book/seller, the same as of all offers", "make an order for each seller");
            return (false, null);
        }

        return (true, seller);
    }

    /// <summary>As a plan reckons a parcel; null, beside a fault, where that is not known.</summary>
    private string? Sending(List<LineMade> lines, Seller? seller)
    {
        var own = lines.Where(line => line.Offer?.Shipping is not null).Select(line => _terms.Convert(line.Offer!.Shipping!)).ToList(); // filtered just before
        var parcel = lines.Where(line => line.Offer?.Shipping is null).ToList();
        var isUsual = seller is { ShippingFixed: not null, ShippingPerItem: not null } && _terms.Convert(seller.ShippingFixed) is not null;
        if (own.Contains(null) || (parcel.Count > 0 && !isUsual && _terms.Build.SendingWhereNotSaid is null))
        {
            Fault("sending", "nothing", $"what the parcel costs, in {_terms.Build.Currency}", "the seller's sending is not known: say what was asked for it");
            return null;
        }

        var usual = parcel.Count == 0 || IsFree(parcel, seller) ? 0
            : !isUsual ? _terms.Minor(_terms.Build.SendingWhereNotSaid ?? "0", "sendingWhereNotSaid")
            : (_terms.Convert(seller!.ShippingFixed!) ?? 0) + ((_terms.Convert(seller.ShippingPerItem!) ?? 0) * parcel.Sum(line => line.Pieces)); // usual: both are there
        return _terms.MoneyOf(own.Sum() + usual ?? 0).Amount;
    }

    private static bool IsFree(List<LineMade> parcel, Seller? seller) => seller?.FreeFrom is { } from && Amount.Of(from).Minor <= parcel
        .Where(line => line.Offer?.Price.Currency == from.Currency).Aggregate((Int128)0, (sum, line) => sum + (Amount.Of(line.Offer!.Price).Minor * line.Packs)); // filtered

    private int? DaysOf(Offer? offer, Seller? seller) =>
        (int?)Math.Min(offer?.DaysMax ?? offer?.DaysMin ?? seller?.DaysMax ?? seller?.DaysMin ?? _terms.Build.DaysWhereNotSaid ?? -1, 3660) is >= 0 and var days ? days : null;

    private Offer? FindOffer(string address) => _terms.Facts.Buying.Offers.FirstOrDefault(offer => $"{offer.Book}/{offer.Code}" == address);

    private bool IsAmount(string typed) => OrderText.FindMinor(typed, _terms.Build.Currency) is >= 0;

    private static bool IsDay(string typed) => OrderText.FindDay(typed) is not null;

    private void Check(string field, string? typed, Func<string, bool> holds, string expected, string mend)
    {
        if (typed is not null && !holds(typed))
        {
            Fault(field, typed, expected, mend);
        }
    }

    private void Fault(string field, string found, string expected, string mend) => _faults.Add(new OrderFault(field, found, expected, mend));

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Said(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private static string Said(int number) => number.ToString(CultureInfo.InvariantCulture);

    private sealed record LineMade(OrderLineAsked Asked, Offer? Offer, string Part, int Packs, int Pieces, string At);
}
