using PartMatch.Core.Measures;
using PartMatch.Core.Orders;

namespace PartMatch.Core.Builds;

/// <summary>What a plan buys: by seller, by position, and what is left over.</summary>
internal sealed class PlanPurchases
{
    private readonly PlanRun _run;
    private readonly SolvedPlan _solved;
    private readonly List<Taken> _taken = [];

    private PlanPurchases(PlanRun run, SolvedPlan solved) => (_run, _solved) = (run, solved);

    /// <summary>Pieces of one offer for one position.</summary>
    private sealed record Taken(string Position, int Offer, string Part, int Pieces);

    public IReadOnlyList<SellerBasket> Baskets { get; private init; } = [];

    public IReadOnlyList<LeftOver> LeftOver { get; private init; } = [];

    /// <summary>What was bought already, and what it is for.</summary>
    public IReadOnlyList<BoughtInPlan> FromOrders { get; private init; } = [];

    public long Goods { get; private init; }

    public long Import { get; private init; }

    /// <summary>What is paid besides and comes back for old parts.</summary>
    public long Deposits { get; private init; }

    public long LostDeposits { get; private init; }

    public static PlanPurchases Of(PlanRun run, SolvedPlan solved)
    {
        var reading = new PlanPurchases(run, solved);
        reading.Take();
        var bought = reading.Bought().Where(one => one.Offer.Bought is null).ToList();
        return new PlanPurchases(run, solved)
        {
            Baskets = [.. bought.GroupBy(one => one.Offer.Seller).Select(group => reading.BasketOf(group.Key, [.. group])).OrderBy(basket => basket.Seller, StringComparer.Ordinal)],
            LeftOver = [.. reading.LeftOfOrders(), .. reading.Left(bought)],
            FromOrders = [.. reading.OfOrders()],
            Goods = bought.Sum(one => (one.Offer.Goods + one.Offer.LostDeposit) * one.Packs),
            Import = bought.Sum(one => one.Offer.Import * one.Packs),
            Deposits = bought.Sum(one => ((one.Offer.Offer.CoreDeposit is { } deposit ? run.Terms.Convert(deposit) ?? 0 : 0) - one.Offer.LostDeposit) * one.Packs),
            LostDeposits = bought.Sum(one => one.Offer.LostDeposit * one.Packs),
        }.With(reading._taken);
    }

    public IReadOnlyList<LinePurchase> For(string position) =>
    [
        .. ToBuy(position).GroupBy(taken => taken.Offer).Select(group =>
        {
            var offer = _solved.Written.Offers[group.Key];
            return new LinePurchase(
                offer.Address, offer.Offer.Seller, offer.Offer.NumberAsWritten, _solved.Solution.Packs[group.Key], group.Sum(taken => taken.Pieces), offer.Offer.Price,
                ArrivesOn(group.Key));
        }),
    ];

    /// <summary>Offers that the line takes from, for what there is to say of them.</summary>
    public IEnumerable<ScreenedOffer> OffersFor(string position) =>
        ToBuy(position).Select(taken => taken.Offer).Distinct().Select(offer => _solved.Written.Offers[offer]);

    /// <summary>Is all of it bought already?</summary>
    public bool HasBought(Candidate candidate) => BoughtFor(candidate.Position).Sum(one => one.Pieces) >= Math.Max(1, candidate.Pieces ?? 1);

    /// <summary>Pieces that are still to be bought for it.</summary>
    public int PiecesFor(string position) => ToBuy(position).Sum(taken => taken.Pieces);

    /// <summary>Pieces of what was bought already that are for it, by the offer that stands for them.</summary>
    public IEnumerable<(BoughtPieces Bought, int Pieces)> BoughtFor(string position) => _taken.Where(taken => taken.Position == position)
        .Select(taken => (_solved.Written.Offers[taken.Offer].Bought, taken.Pieces)).Where(taken => taken.Bought is not null)
        .Select(taken => (taken.Bought!, taken.Pieces)); // filtered just above

    /// <summary>
    /// What its offers cost; of a kit or a pack for several positions its share, by what the parts cost where they are sold alone. Null where nothing is bought
    /// for it.
    /// </summary>
    public Money? CostOf(string position)
    {
        var own = ToBuy(position).ToList();
        return own.Count == 0 ? null : _run.Terms.MoneyOf((long)Math.Round(
            own.Sum(taken => (decimal)_solved.Written.Offers[taken.Offer].Landed * _solved.Solution.Packs[taken.Offer] * ShareOf(taken)), MidpointRounding.ToEven));
    }

    /// <summary>A part that nobody sells alone counts as much as the others do on average.</summary>
    private decimal ShareOf(Taken taken)
    {
        var all = _taken.Where(other => other.Offer == taken.Offer).Select(other => (other, Alone: AloneOf(other))).ToList();
        var average = all.Average(one => one.Alone) ?? 1;
        var sum = all.Sum(one => one.Alone ?? average);
        return sum == 0 ? 1m / all.Count : (AloneOf(taken) ?? average) / sum;
    }

    private decimal? AloneOf(Taken taken) =>
        taken.Pieces * PartsOf(taken.Part).Select(part => GradePrices.CheapestPiece(_run.Screen, part, onlyNew: false)).Max();

    private IEnumerable<Taken> ToBuy(string position) =>
        _taken.Where(taken => taken.Position == position && _solved.Written.Offers[taken.Offer].Bought is null);

    private PlanPurchases With(List<Taken> taken)
    {
        _taken.AddRange(taken);
        return this;
    }

    private IEnumerable<(int Index, ScreenedOffer Offer, int Packs)> Bought() =>
        _solved.Solution.Packs.Index().Where(packs => packs.Item > 0).Select(packs => (packs.Index, _solved.Written.Offers[packs.Index], packs.Item));

    /// <summary>Hands out what is in hand first, then the offers in their order, to the positions in theirs.</summary>
    private void Take()
    {
        var problem = _solved.Written.Problem;
        for (var product = 0; product < problem.Products.Count; product++)
        {
            var inHand = problem.Products[product].InHand;
            var offers = Bought().Select(one => (one.Index, Left: one.Packs
                * problem.Offers[one.Index].Holds.Where(held => held.Product == product).Sum(held => held.Pieces))).Where(one => one.Left > 0).ToList();
            foreach (var (place, choice) in _solved.Solution.Choices.Index())
            {
                var needed = choice is { } chosen ? problem.Places[place].Choices[chosen].Uses.Where(use => use.Product == product).Sum(use => use.Pieces) : 0;
                var held = Math.Min(inHand, needed);
                (inHand, needed) = (inHand - held, needed - held);
                for (var next = 0; next < offers.Count && needed > 0; next++)
                {
                    var pieces = Math.Min(offers[next].Left, needed);
                    offers[next] = (offers[next].Index, offers[next].Left - pieces);
                    needed -= pieces;
                    if (pieces > 0)
                    {
                        _taken.Add(new Taken(problem.Places[place].Name, offers[next].Index, _solved.Written.Products[product], pieces));
                    }
                }
            }
        }
    }

    private SellerBasket BasketOf(Buying.Seller seller, List<(int Index, ScreenedOffer Offer, int Packs)> bought)
    {
        var terms = _run.Terms;
        var items = bought.Select(one => ItemOf(one.Index, one.Offer, one.Packs)).ToList();
        var (goods, import) = (bought.Sum(one => (one.Offer.Goods + one.Offer.LostDeposit) * one.Packs), bought.Sum(one => one.Offer.Import * one.Packs));
        var (sending, text) = PlanSending.Of(terms, _solved, seller, [.. bought.Select(one => (one.Index, one.Packs))]);
        var later = LaterOf(seller, bought, sending);
        var words = later is null ? text : $"{text}; {later.Value.Words}";
        return new SellerBasket(
            $"{seller.Book}/{seller.Code}", seller.Name, items, terms.MoneyOf(goods), terms.MoneyOf(import), terms.MoneyOf(sending), words,
            terms.MoneyOf(goods + import + sending), items.Max(item => item.ArrivesOn))
        {
            SentApart = later is null ? null : terms.MoneyOf(later.Value.More),
        };
    }

    /// <summary>
    /// What is measured for first is ordered when it has been: the plan counts one later parcel of each seller. What it costs more where that is ordered on
    /// several days, or travels with what is bought for something else; null where it is not.
    /// </summary>
    private (long More, string Words)? LaterOf(Buying.Seller seller, List<(int Index, ScreenedOffer Offer, int Packs)> bought, long counted)
    {
        var byDay = bought.GroupBy(one => GradedFor(one.Index).Select(graded => OrderedAfter(graded.Position)).DefaultIfEmpty(0).Max()).OrderBy(day => day.Key).ToList();
        var more = byDay.Sum(day => PlanSending.Of(_run.Terms, _solved, seller, [.. day.Select(one => (one.Index, one.Packs))]).Cost) - counted;
        var days = string.Join(" and ", byDay.Where(day => day.Key > 0).Select(day => $"{_run.Terms.StartOn.AddDays(day.Key):yyyy-MM-dd}"));
        return more <= 0 ? null : (more, $"what is measured for first can be ordered on {days}; sent apart it costs {_run.Terms.Say(more)} more, unless the seller holds the parcel");
    }

    private BasketItem ItemOf(int index, ScreenedOffer offer, int packs) => new(
        offer.Address, offer.Offer.Part, offer.Offer.NumberAsWritten, offer.Offer.PartName ?? offer.Offer.Part ?? "", packs, offer.Pieces, offer.Offer.Price,
        _run.Terms.MoneyOf(offer.Goods), _run.Terms.MoneyOf(offer.Goods * packs), offer.Offer.SeenOn, ArrivesOn(index),
        [.. _taken.Where(taken => taken.Offer == index).Select(taken => taken.Position).Distinct()], offer.Offer.CoreDeposit,
        [.. GradedFor(index).Select(MeasureFirst), .. LineFlags.Of(_run.Terms, offer, packs)]);

    /// <summary>What is ordered only after something was measured comes later by so much.</summary>
    private DateOnly ArrivesOn(int offer) =>
        _run.Terms.StartOn.AddDays(_solved.Written.Offers[offer].Days + GradedFor(offer).Select(graded => OrderedAfter(graded.Position)).DefaultIfEmpty(0).Max());

    private int OrderedAfter(string position) => _solved.Written.Jobs.Index().Where(job => job.Item.Code == GradeOrders.CodeOf(position))
        .Select(job => _solved.Solution.Jobs[job.Index] ?? 0).DefaultIfEmpty(0).Max();

    private IEnumerable<Candidate> GradedFor(int offer)
    {
        var chosen = _solved.Written.Chosen(_solved.Solution);
        return _taken.Where(taken => taken.Offer == offer).Select(taken => chosen[taken.Position]).Where(GradeOrders.IsBought).Distinct();
    }

    private string MeasureFirst(Candidate graded) =>
        $"measure first, do not order yet: {_run.Terms.At(graded.Position).Position.Name} will be one of {Fit.FitWording.List(graded.Parts.Select(part => part.Number))}";

    private IEnumerable<LeftOver> Left(List<(int Index, ScreenedOffer Offer, int Packs)> bought)
    {
        foreach (var (index, offer, packs) in bought)
        {
            var contents = OfferScreen.HeldBy(_run.Terms.Facts, offer.Offer.Part!).ToList(); // screened: it has a part
            foreach (var (part, each) in contents.Count > 1 ? contents.Where(held => held.Part != offer.Offer.Part) : contents)
            {
                var used = _taken.Where(taken => taken.Offer == index && PartsOf(taken.Part).Contains(part)).Sum(taken => taken.Pieces);
                if (each * offer.Pieces * packs - used is > 0 and var rest)
                {
                    yield return new LeftOver(part, _run.Terms.Facts.Family.FindPart(part)?.Name ?? part, rest, offer.Address);
                }
            }
        }
    }

    private IEnumerable<BoughtInPlan> OfOrders() => _run.Screen.Bought.Select(one => one.Bought!).Select(bought => // the list holds nothing else
    {
        var taken = TakenOf(bought).ToList();
        return new BoughtInPlan(
            bought.Order, bought.Line, bought.Part, NameOf(bought.Part), bought.State, bought.Pieces, bought.ThereOn,
            [.. taken.Select(one => one.Position).Distinct()]);
    });

    private IEnumerable<LeftOver> LeftOfOrders()
    {
        foreach (var bought in _run.Screen.Bought.Select(one => one.Bought!)) // the list holds nothing else
        {
            var contents = OfferScreen.HeldBy(_run.Terms.Facts, bought.Part).ToList();
            foreach (var (part, each) in contents.Count > 1 ? contents.Where(held => held.Part != bought.Part) : contents)
            {
                var used = TakenOf(bought).Where(taken => contents.Count == 1 || PartsOf(taken.Part).Contains(part)).Sum(taken => taken.Pieces);
                if (each * bought.Pieces - used is > 0 and var rest)
                {
                    yield return new LeftOver(part, NameOf(part), rest, bought.Name) { ReturnBy = bought.ReturnBy };
                }
            }
        }
    }

    private IEnumerable<Taken> TakenOf(BoughtPieces bought) => _taken.Where(taken => _solved.Written.Offers[taken.Offer].Bought == bought);

    private string NameOf(string part) => _run.Terms.Facts.Family.FindPart(part)?.Name ?? part;

    private static IEnumerable<string> PartsOf(string product) => PlanGoods.PartOf(product).Split('|');
}
