namespace PartMatch.Core.Planning;

/// <summary>What is paid once when anything is bought: own sending, the seller's parcel and when it is free, the risk of an offer.</summary>
internal sealed class PlanParcels
{
    private readonly int[][] _flags;
    private readonly PlanProblem _problem;
    private readonly PlanModel _model;

    public PlanParcels(PlanProblem problem, PlanModel model)
    {
        (_problem, _model) = (problem, model);
        _flags = new int[problem.Offers.Count][];
        for (var offer = 0; offer < problem.Offers.Count; offer++)
        {
            _flags[offer] = [];
            if (model.Needs.Packs[offer] > 0 && (problem.Offers[offer].OwnSending > 0 || problem.Offers[offer].Risk > 0))
            {
                AddBought(offer);
            }
        }

        for (var seller = 0; seller < problem.Sellers.Count; seller++)
        {
            var inParcel = Enumerable.Range(0, problem.Offers.Count)
                .Where(offer => problem.Offers[offer] is { OwnSending: null } one && one.Seller == seller && model.Needs.Packs[offer] > 0)
                .ToList();
            if (inParcel.Count > 0)
            {
                AddParcel(problem.Sellers[seller], inParcel);
            }
        }
    }

    /// <summary>Flags of which one is set where any of these offers is bought; null where one of them can be bought without any.</summary>
    public IReadOnlyList<int>? Of(IReadOnlyList<int> offers) =>
        offers.Any(offer => _flags[offer].Length == 0) ? null : [.. offers.SelectMany(offer => _flags[offer]).Distinct()];

    private void AddBought(int offer)
    {
        // Of one pack at most, the packs are the flag.
        var bought = _model.Needs.Packs[offer] == 1 ? _model.Packs[offer] : _model.Constraints.Flag();
        if (bought == _model.Packs[offer])
        {
            _flags[offer] = [bought];
        }
        else
        {
            Require(bought, _model.Needs.Packs[offer], offer);
        }

        _model.Cost.Add(bought, _problem.Offers[offer].OwnSending ?? 0);
        _model.Risk.Add(bought, _problem.Offers[offer].Risk);
    }

    private void AddParcel(PlanSeller seller, List<int> inParcel)
    {
        var packs = new LinearSum();
        var goods = new LinearSum();
        foreach (var offer in inParcel)
        {
            packs.Add(_model.Packs[offer], 1);
            goods.Add(_model.Packs[offer], _problem.Offers[offer].GoodsValue);
        }

        var mostPacks = inParcel.Sum(offer => _model.Needs.Packs[offer]);
        var mostGoods = inParcel.Sum(offer => _model.Needs.Packs[offer] * _problem.Offers[offer].GoodsValue);
        if (seller.FreeFrom <= 0 || (seller.ParcelCost == 0 && seller.PieceCost == 0))
        {
            return;
        }

        int? free = seller.FreeFrom <= mostGoods ? _model.Constraints.Flag() : null;
        if (free is { } flag)
        {
            _model.Constraints.AtLeast(goods.Add(flag, -seller.FreeFrom!.Value), 0);
        }

        if (seller.ParcelCost > 0)
        {
            var paid = _model.Constraints.Flag();
            _model.Cost.Add(paid, seller.ParcelCost);
            inParcel.ForEach(offer => Require(paid, _model.Needs.NeededPacks[offer], offer, free));
        }

        if (seller.PieceCost > 0 && free is { } nothing)
        {
            var most = seller.PieceCost * mostPacks;
            var charge = _model.Constraints.Variable(0, most);
            _model.Cost.Add(charge, 1);
            _model.Constraints.AtMost(new LinearSum().Add(packs, seller.PieceCost).Add(charge, -1).Add(nothing, -most), 0);
        }
        else
        {
            _model.Cost.Add(packs, seller.PieceCost);
        }
    }

    /// <summary>Packs that no need asks for are bought only to make sending free.</summary>
    private void Require(int flag, long packs, int offer, int? free = null)
    {
        var sum = new LinearSum().Add(_model.Packs[offer], 1).Add(flag, -packs);
        if (free is { } either)
        {
            sum.Add(either, -_model.Needs.Packs[offer]);
        }

        _model.Constraints.AtMost(sum, 0);
        if (_flags[offer].Length == 0)
        {
            _flags[offer] = free is { } other ? [flag, other] : [flag];
        }
    }
}
