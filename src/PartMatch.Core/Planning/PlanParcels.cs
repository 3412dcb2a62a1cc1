namespace PartMatch.Core.Planning;

/// <summary>What is paid once when anything is bought: own sending, the seller's parcels and when they are free, the risk of an offer.</summary>
internal sealed class PlanParcels
{
    private readonly List<int>[] _flags;
    private readonly List<int>[] _spare;
    private readonly PlanProblem _problem;
    private readonly PlanModel _model;
    private readonly IReadOnlyList<PlanFamily> _families;

    /// <param name="isPaid">Does what they cost count for anything?</param>
    public PlanParcels(PlanProblem problem, PlanModel model, bool isPaid)
    {
        (_problem, _model) = (problem, model);
        _spare = [.. problem.Offers.Select(_ => new List<int>())];
        _flags = [.. problem.Offers.Select(_ => new List<int>())];
        _families = isPaid ? PlanFamilies.Of(problem, model.Needs) : [];
        if (!isPaid)
        {
            return;
        }

        var later = PlanLater.Flags(problem, model);
        for (var seller = 0; seller < problem.Sellers.Count; seller++)
        {
            AddParcels(problem.Sellers[seller], OffersOf(seller), later);
        }

        for (var offer = 0; offer < problem.Offers.Count; offer++)
        {
            if (_spare[offer].Count > 0)
            {
                _model.Constraints.AtMost(Bought(offer), problem.Offers[offer].Packs);
            }

            if (problem.Offers[offer].OwnSending > 0 || problem.Offers[offer].Risk > 0)
            {
                AddBought(offer);
            }
        }
    }

    /// <summary>For each offer, the packs that are bought only to make a parcel free, by parcels.</summary>
    public IReadOnlyList<IReadOnlyList<int>> Spare => _spare;

    /// <summary>Flags of which one is set where any of these offers is bought; null where one of them can be bought without any.</summary>
    public IReadOnlyList<int>? Of(IReadOnlyList<int> offers) =>
        offers.Any(offer => _flags[offer].Count == 0) ? null : [.. offers.SelectMany(offer => _flags[offer]).Distinct()];

    private List<int> OffersOf(int seller) => [.. Enumerable.Range(0, _problem.Offers.Count)
        .Where(offer => _problem.Offers[offer] is { OwnSending: null } one && one.Seller == seller
            && _model.Needs.Packs[offer] + _model.Needs.SparePacks[offer] > 0)];

    /// <summary>All packs of an offer.</summary>
    public LinearSum Bought(int offer)
    {
        var packs = new LinearSum().Add(_model.Packs[offer], 1);
        _spare[offer].ForEach(spare => packs.Add(spare, 1));
        return packs;
    }

    private void AddBought(int offer)
    {
        // Of one pack at most, the packs are the flag.
        var most = _spare[offer].Count == 0 ? _model.Needs.Packs[offer] : _model.Needs.MostPacks(offer);
        var isFlag = most == 1 && _spare[offer].Count == 0;
        var bought = isFlag ? _model.Packs[offer] : _model.Constraints.Flag();
        if (!isFlag)
        {
            _model.Constraints.AtMost(Bought(offer).Add(bought, -most), 0);
        }

        _model.Cost.Add(bought, _problem.Offers[offer].OwnSending ?? 0);
        _model.Risk.Add(bought, _problem.Offers[offer].Risk);
        if (_flags[offer].Count == 0)
        {
            _flags[offer].Add(bought);
        }
    }

    /// <param name="later">For each offer a flag that it is ordered later; null where it never is.</param>
    private void AddParcels(PlanSeller seller, List<int> offers, int?[] later)
    {
        if (offers.Count == 0 || seller.FreeFrom <= 0 || (seller.ParcelCost == 0 && seller.PieceCost == 0))
        {
            return;
        }

        var (now, apart) = (new List<Packed>(), new List<Packed>());
        foreach (var offer in offers)
        {
            if (later[offer] is { } isLater)
            {
                var (atOnce, afterwards) = Divide(offer, isLater);
                now.Add(new Packed(offer, atOnce) { When = ConstraintModel.Not(isLater) });
                apart.Add(new Packed(offer, afterwards) { When = isLater });
            }
            else
            {
                now.Add(new Packed(offer, _model.Packs[offer]));
            }
        }

        AddParcel(seller, now);
        AddParcel(seller, apart);
    }

    /// <summary>The packs of an offer that travel at once, or all of them later.</summary>
    private (int AtOnce, int Later) Divide(int offer, int isLater)
    {
        var most = _model.Needs.Packs[offer];
        var (atOnce, later) = (_model.Constraints.Variable(0, most), _model.Constraints.Variable(0, most));
        _model.Constraints.Between(new LinearSum().Add(atOnce, 1).Add(later, 1).Add(_model.Packs[offer], -1), 0, 0);
        _model.Constraints.AtMost(new LinearSum().Add(later, 1).Add(isLater, -most), 0);
        _model.Constraints.AtMost(new LinearSum().Add(atOnce, 1).Add(isLater, most), most);
        return (atOnce, later);
    }

    private void AddParcel(PlanSeller seller, List<Packed> parcel)
    {
        if (parcel.Count == 0)
        {
            return;
        }

        var free = AddFree(seller, parcel);
        var pieces = new LinearSum();
        parcel.ForEach(packed => pieces.Add(packed.Bought(), _problem.Offers[packed.Offer].SentAs));
        if (seller.ParcelCost > 0)
        {
            var paid = _model.Constraints.Flag();
            _model.Cost.Add(paid, seller.ParcelCost);
            int[] sent = free is { } either ? [paid, either] : [paid];
            parcel.ForEach(packed => _flags[packed.Offer].AddRange(sent));
            AddSent(sent, parcel);
        }

        if (seller.PieceCost > 0 && free is { } nothing)
        {
            var most = seller.PieceCost * parcel.Sum(packed => _model.Needs.MostPacks(packed.Offer) * (long)_problem.Offers[packed.Offer].SentAs);
            var charge = _model.Constraints.Variable(0, most);
            _model.Cost.Add(charge, 1);
            _model.Constraints.AtMost(new LinearSum().Add(pieces, seller.PieceCost).Add(charge, -1).Add(nothing, -most), 0);
        }
        else
        {
            _model.Cost.Add(pieces, seller.PieceCost);
        }
    }

    /// <summary>Whether the goods reach the value from which sending costs nothing; null where they cannot.</summary>
    private int? AddFree(PlanSeller seller, List<Packed> parcel)
    {
        var reach = parcel.Sum(packed => _problem.Offers[packed.Offer].GoodsValue * _model.Needs.MostPacks(packed.Offer));
        if (seller.FreeFrom is not { } freeFrom || reach < freeFrom)
        {
            return null;
        }

        var free = _model.Constraints.Flag();
        var goods = new LinearSum();
        foreach (var packed in parcel)
        {
            if (_model.Needs.SparePacks[packed.Offer] is > 0 and var most)
            {
                var spare = _model.Constraints.Variable(0, most);
                packed.Spare = spare;
                _spare[packed.Offer].Add(spare);
                _model.Cost.Add(spare, _problem.Offers[packed.Offer].Price);
                _model.Doings.Add(spare, 1);
                _model.Constraints.AtMost(new LinearSum().Add(spare, 1).Add(free, -most), 0);
                if (packed.When is { } when)
                {
                    _model.Constraints.AtMost(new LinearSum().Add(spare, 1), 0, ConstraintModel.Not(when));
                }
            }

            goods.Add(packed.Bought(), _problem.Offers[packed.Offer].GoodsValue);
        }

        _model.Constraints.AtLeast(goods.Add(free, -freeFrom), 0);
        return free;
    }

    /// <summary>
    /// What is used of an offer makes its parcel sent. Offers for one family of products are sent for one choice only: together at most its whole
    /// need.
    /// </summary>
    private void AddSent(int[] sent, List<Packed> parcel)
    {
        var used = parcel.Where(packed => _model.Needs.Packs[packed.Offer] > 0).ToList();
        foreach (var packed in used)
        {
            Require(new LinearSum().Add(packed.Used, 1), _model.Needs.Packs[packed.Offer], sent);
        }

        var offersOf = used.Where(packed => PlanFamilies.IsOnePiece(_problem.Offers[packed.Offer])).ToLookup(packed => _problem.Offers[packed.Offer].Holds[0].Product);
        foreach (var family in _families.Where(family => family.Products.Sum(product => offersOf[product].Count()) > 1))
        {
            var shares = new LinearSum();
            foreach (var product in family.Products)
            {
                foreach (var packed in offersOf[product])
                {
                    shares.Add(packed.Used, family.Whole / _model.Needs.Missing[product]);
                }
            }

            Require(shares, family.Whole, sent);
        }
    }

    private void Require(LinearSum packs, long most, int[] sent)
    {
        foreach (var flag in sent)
        {
            packs.Add(flag, -most);
        }

        _model.Constraints.AtMost(packs, 0);
    }

    /// <summary>An offer in a parcel.</summary>
    /// <param name="Used">Its packs that are there to be used and travel in this parcel.</param>
    private sealed record Packed(int Offer, int Used)
    {
        /// <summary>The flag that it travels in this parcel, if it is bought; null where it is always this one.</summary>
        public int? When { get; init; }

        /// <summary>Its packs that are bought only to make this parcel free; null where none can be.</summary>
        public int? Spare { get; set; }

        public LinearSum Bought()
        {
            var packs = new LinearSum().Add(Used, 1);
            return Spare is { } spare ? packs.Add(spare, 1) : packs;
        }
    }
}
