using System.Globalization;
using PartMatch.Core.Builds;
using PartMatch.Core.Buying;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Listings;

namespace PartMatch.Core.Tests.Builds;

/// <summary>Every way to buy what some lines need, by trying every number of packs of every offer. No part is needed at two positions.</summary>
/// <param name="dropped">Wishes that do not count, by the names of a conflict.</param>
internal sealed class EveryBasket(TestBuild told, IReadOnlySet<string>? dropped)
{
    /// <summary>The one work of the family takes so long: see <see cref="Catalogue.TestFamily.Work"/>.</summary>
    private const int DaysOfWork = 2;

    /// <summary>What an offer weighs whose number somebody found to be a trap.</summary>
    private const long Trap = 10;

    private readonly List<Offer> _offers =
    [
        .. told.Facts().Buying.Offers.Where(offer => !told.Build.RefusedSellers.Contains(offer.Seller) || dropped?.Contains($"seller:{offer.Seller}") == true),
    ];

    private readonly HashSet<string> _traps = [.. told.Facts().Family.Pairs.SelectMany(pair => new[] { pair.PartA, pair.PartB })];

    /// <summary>What is for sale, alone or in a kit, or in hand.</summary>
    public IEnumerable<string> Obtainable => _offers.SelectMany(offer => HeldBy(offer).Keys).Concat(told.Build.InHand.Select(held => held.Part)).Distinct();

    public IEnumerable<(long Cost, int Days, long Risk)> Of(Line[] lines, bool isWorked, IReadOnlyList<(int Days, HashSet<string> After)> cures)
    {
        var needed = lines.Where(line => line is { IsDonors: false, IsNothing: false } && InHand(line) == 0).ToList();
        foreach (var packs in Packs())
        {
            var bought = _offers.Zip(packs).Where(one => one.Second > 0).Select(one => (Offer: one.First, Packs: one.Second)).ToList();
            var arrivals = needed.Select(line => bought.Where(one => Serves(one.Offer, line)).Select(one => (int?)one.Offer.DaysMax).Min()).ToList();
            if (arrivals.Contains(null))
            {
                continue;
            }

            var days = int.Max(arrivals.Max() ?? 0, isWorked ? DaysOfWork : 0);
            days = cures.Select(cure => cure.Days + needed.Zip(arrivals).Where(one => cure.After.Contains(one.First.Position)).Select(one => one.Second ?? 0).DefaultIfEmpty(0).Max())
                .Append(days).Max();
            var cost = bought.Sum(one => Landed(one.Offer) * one.Packs) + bought.GroupBy(one => one.Offer.Seller).Sum(Sending) + lines.Sum(Besides);
            if (!(told.Build.Budget is { } budget && Counts("budget") && cost > Cents(budget)) && !(LastDay is { } last && Counts("needed-by") && days > last))
            {
                yield return (cost, days, bought.Sum(one => _traps.Contains(one.Offer.Part!) ? Trap : 0)); // every offer here has a part
            }
        }
    }

    private IEnumerable<int[]> Packs() => _offers.Aggregate(
        (IEnumerable<int[]>)[[]], (all, offer) => all.SelectMany(_ => Enumerable.Range(0, (offer.Stock ?? 1) + 1), (begun, next) => (int[])[.. begun, next]));

    private bool Counts(string wish) => dropped?.Contains(wish) != true;

    private Dictionary<string, int> HeldBy(Offer offer)
    {
        var held = told.Contents.Where(row => row.Set == offer.Part && row is { Certainty: Certainty.Certain, Quantity: > 0 })
            .ToDictionary(row => row.Part, row => row.Quantity ?? 0);
        held[offer.Part!] = 1; // every offer here has a part
        return held;
    }

    private bool IsOnlyNew(Line line) => told.Build.Wishes.Any(wish => wish.Position == line.Position && wish.OnlyNew);

    /// <summary>Which grade it will be is known only after measuring: so many as there are of each. What was there is not new.</summary>
    private int InHand(Line line) => IsOnlyNew(line) ? 0 : line.Parts.Min(part => told.Build.InHand.Where(held => held.Part == part.Id).Sum(held => held.Pieces));

    /// <summary>Of grades the one counts whose cheapest piece is the dearest.</summary>
    private bool Serves(Offer offer, Line line)
    {
        var counted = line.Parts.Select(part => (part.Id, Price: _offers
                .Where(one => one.Part == part.Id && IsNewEnough(one, line)).Select(one => (decimal?)Landed(one) / one.Pack).Min()))
            .Where(grade => grade.Price is not null || line.Parts.Count == 1).OrderByDescending(grade => grade.Price)
            .ThenBy(grade => grade.Id, StringComparer.Ordinal).Select(grade => grade.Id).FirstOrDefault();
        return counted is not null && IsNewEnough(offer, line) && HeldBy(offer).ContainsKey(counted);
    }

    private bool IsNewEnough(Offer offer, Line line) => !(IsOnlyNew(line) || IsRenewable(line)) || offer.Condition == ItemCondition.New;

    /// <summary>What is renewed when something is opened is bought new.</summary>
    private bool IsRenewable(Line line) => told.Facts().Family.Renewals.Any(row =>
        row.Renewed == line.Position && row.Evidence?.IsRetracted == false && (row.HoldsFor("lark") || row.HoldsFor("swift")));

    private int? LastDay =>
        told.Build.NeededBy is { } day ? DateOnly.Parse(day, CultureInfo.InvariantCulture).DayNumber - TestBuild.Today.DayNumber : null;

    /// <summary>With its import charge: whole cents, as the prices are whole tens of euros.</summary>
    private long Landed(Offer offer) =>
        Cents(offer.Price.Amount) * (100 + (long)(told.Sellers.Single(seller => seller.Code == offer.Seller).ImportChargePercent ?? 0)) / 100;

    private long Sending(IGrouping<string, (Offer Offer, int Packs)> parcel)
    {
        var seller = told.Sellers.Single(seller => seller.Code == parcel.Key);
        var goods = parcel.Sum(one => Cents(one.Offer.Price.Amount) * one.Packs);
        var pieces = parcel.Sum(one => one.Packs * (one.Offer.Pack ?? 1));
        return seller.FreeFrom is { } from && goods >= Cents(from.Amount) ? 0 : Cents(seller.ShippingFixed!.Amount) + (Cents(seller.ShippingPerItem!.Amount) * pieces);
    }

    /// <summary>What is set aside for what was not inspected, less what the donor's part brings where it goes.</summary>
    private long Besides(Line line)
    {
        var state = told.Build.Donor.States.LastOrDefault(state => state.Position == line.Position);
        return line.IsDonors
            ? state is { State: PartState.NotInspected, Allowance: { } set } ? Cents(set) : 0
            : state is { SellsFor: { } sold, State: not PartState.Missing } ? -Cents(sold) : 0;
    }

    private static long Cents(string amount) => (long)(decimal.Parse(amount, CultureInfo.InvariantCulture) * 100);
}
