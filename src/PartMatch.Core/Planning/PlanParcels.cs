namespace PartMatch.Core.Planning;

/// <summary>What is paid once when anything is bought: own sending, the seller's parcel and when it is free, the risk of an offer.</summary>
internal sealed class PlanParcels
{
    private readonly int[][] _flags;
    private readonly PlanProblem _problem;
    private readonly PlanModel _model;
    private readonly IReadOnlyList<PlanFamily> _families;

    public PlanParcels(PlanProblem problem, PlanModel model)
    {
        (_problem, _model) = (problem, model);
        _families = PlanFamilies.Of(problem, model.Needs);
        Spare = new int?[problem.Offers.Count];
        _flags = [.. problem.Offers.Select(_ => Array.Empty<int>())];
        for (var seller = 0; seller < problem.Sellers.Count; seller++)
        {
            var inParcel = Enumerable.Range(0, problem.Offers.Count)
                .Where(offer => problem.Offers[offer] is { OwnSending: null } one && one.Seller == seller
                    && model.Needs.Packs[offer] + model.Needs.SparePacks[offer] > 0)
                .ToList();
            AddParcel(problem.Sellers[seller], inParcel);
        }

        for (var offer = 0; offer < problem.Offers.Count; offer++)
        {
            if (problem.Offers[offer].OwnSending > 0 || problem.Offers[offer].Risk > 0)
            {
                AddBought(offer);
            }
        }
    }

    /// <summary>For each offer, the packs that are bought only to make its parcel free.</summary>
    public int?[] Spare { get; }

    /// <summary>Flags of which one is set where any of these offers is bought; null where one of them can be bought without any.</summary>
    public IReadOnlyList<int>? Of(IReadOnlyList<int> offers) =>
        offers.Any(offer => _flags[offer].Length == 0) ? null : [.. offers.SelectMany(offer => _flags[offer]).Distinct()];

    private LinearSum Bought(int offer)
    {
        var packs = new LinearSum().Add(_model.Packs[offer], 1);
        return Spare[offer] is { } spare ? packs.Add(spare, 1) : packs;
    }

    private void AddBought(int offer)
    {
        // Of one pack at most, the packs are the flag.
        var most = Spare[offer] is null ? _model.Needs.Packs[offer] : _model.Needs.MostPacks(offer);
        var isFlag = most == 1 && Spare[offer] is null;
        var bought = isFlag ? _model.Packs[offer] : _model.Constraints.Flag();
        if (!isFlag)
        {
            _model.Constraints.AtMost(Bought(offer).Add(bought, -most), 0);
        }

        _model.Cost.Add(bought, _problem.Offers[offer].OwnSending ?? 0);
        _model.Risk.Add(bought, _problem.Offers[offer].Risk);
        _flags[offer] = _flags[offer].Length == 0 ? [bought] : _flags[offer];
    }

    private void AddParcel(PlanSeller seller, List<int> inParcel)
    {
        if (inParcel.Count == 0 || seller.FreeFrom <= 0 || (seller.ParcelCost == 0 && seller.PieceCost == 0))
        {
            return;
        }

        var free = AddFree(seller, inParcel);
        var pieces = new LinearSum();
        inParcel.ForEach(offer => pieces.Add(Bought(offer), _problem.Offers[offer].SentAs));
        if (seller.ParcelCost > 0)
        {
            var paid = _model.Constraints.Flag();
            _model.Cost.Add(paid, seller.ParcelCost);
            int[] sent = free is { } either ? [paid, either] : [paid];
            inParcel.ForEach(offer => _flags[offer] = sent);
            AddSent(sent, inParcel);
        }

        if (seller.PieceCost > 0 && free is { } nothing)
        {
            var most = seller.PieceCost * inParcel.Sum(offer => _model.Needs.MostPacks(offer) * (long)_problem.Offers[offer].SentAs);
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
    private int? AddFree(PlanSeller seller, List<int> inParcel)
    {
        var reach = inParcel.Sum(offer => _problem.Offers[offer].GoodsValue
            * _model.Needs.MostPacks(offer));
        if (seller.FreeFrom is not { } freeFrom || reach < freeFrom)
        {
            return null;
        }

        var free = _model.Constraints.Flag();
        var goods = new LinearSum();
        foreach (var offer in inParcel)
        {
            if (_model.Needs.SparePacks[offer] > 0)
            {
                var spare = _model.Constraints.Variable(0, _model.Needs.SparePacks[offer]);
                Spare[offer] = spare;
                _model.Cost.Add(spare, _problem.Offers[offer].Price);
                _model.Doings.Add(spare, 1);
                _model.Constraints.AtMost(new LinearSum().Add(spare, 1).Add(free, -_model.Needs.SparePacks[offer]), 0);
                _model.Constraints.AtMost(Bought(offer), _problem.Offers[offer].Packs);
            }

            goods.Add(Bought(offer), _problem.Offers[offer].GoodsValue);
        }

        _model.Constraints.AtLeast(goods.Add(free, -freeFrom), 0);
        return free;
    }

    /// <summary>
    /// What is used of an offer makes its parcel sent. Offers for one family of products are sent for one choice only: together at most its whole
    /// need.
    /// </summary>
    private void AddSent(int[] sent, List<int> inParcel)
    {
        foreach (var offer in inParcel.Where(offer => _model.Needs.Packs[offer] > 0))
        {
            Require(new LinearSum().Add(_model.Packs[offer], 1), _model.Needs.Packs[offer], sent);
        }

        var offersOf = inParcel
            .Where(offer => _model.Needs.Packs[offer] > 0 && PlanFamilies.IsOnePiece(_problem.Offers[offer]))
            .ToLookup(offer => _problem.Offers[offer].Holds[0].Product);
        foreach (var family in _families.Where(family => family.Products.Sum(product => offersOf[product].Count()) > 1))
        {
            var shares = new LinearSum();
            foreach (var product in family.Products)
            {
                foreach (var offer in offersOf[product])
                {
                    shares.Add(_model.Packs[offer], family.Whole / _model.Needs.Missing[product]);
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
}
