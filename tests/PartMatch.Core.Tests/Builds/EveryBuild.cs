using System.Globalization;
using PartMatch.Core.Builds;
using PartMatch.Core.Buying;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Tests.Catalogue;

namespace PartMatch.Core.Tests.Builds;

/// <summary>One way to build: what is at each position, what is bought, and what it comes to in cents, days and parts kept.</summary>
internal sealed record OneBuild(IReadOnlyDictionary<string, (string Part, bool IsDonors)> Parts, long Cost, int Days, int Kept);

/// <summary>
/// Every way to build, by trying everything: each position with the donor's own, each part for sale or nothing, every basket, the work done or not, and
/// <i>will it fit</i> asked of every line with all the others beside it. It shares nothing with the planner.
/// </summary>
/// <param name="dropped">Wishes that do not count, by the names of a conflict.</param>
internal sealed class EveryBuild(TestBuild told, IReadOnlySet<string>? dropped = null)
{
    /// <summary>The one work of the family takes so long: see <see cref="TestFamily.Work"/>.</summary>
    private const int DaysOfWork = 2;

    private readonly BuildFacts _facts = told.Facts();
    private readonly Dictionary<string, FitAnswer> _answers = [];

    public List<OneBuild> All()
    {
        IEnumerable<Line[]> all = [[]];
        foreach (var position in _facts.Family.Positions)
        {
            all = [.. all.SelectMany(_ => LinesAt(position), (lines, line) => (Line[])[.. lines, line])];
        }

        return [.. all.Select(lines => (Lines: lines, Works: Holds(lines))).Where(one => one.Works is not null).SelectMany(one => Bought(one.Lines, one.Works!.Value))];
    }

    private sealed record Line(string Position, Part Part, bool IsDonors);

    private bool Counts(string wish) => dropped?.Contains(wish) != true;

    private IEnumerable<Line> LinesAt(Position position)
    {
        var state = told.Build.Donor.States.LastOrDefault(state => state.Position == position.Code)?.State ?? PartState.NotInspected;
        var wishes = told.Build.Wishes.Where(wish => wish.Position == position.Code).ToList();
        var isRenewed = wishes.Any(wish => wish.Keep == KeepWish.Renew) && Counts($"renew:{position.Code}");
        bool IsTaken(Part part) => !wishes.Any(wish => wish.Refuse.Contains(part.Id)) || !Counts($"refuse:{position.Code}:{part.Id}");
        Line[] lines =
        [
            .. state is PartState.Damaged or PartState.Missing || isRenewed ? [] : _facts.Family.FitmentsAt("lark", position.Code).Select(fitment => fitment.Part).OfType<string>()
                .Select(part => new Line(position.Code, _facts.Family.GetPart(part), IsDonors: true)),
            .. Offers.Select(offer => offer.Part!).Distinct().Select(_facts.Family.GetPart).Where(part => part.Kind == position.Kind)
                .Select(part => new Line(position.Code, part, IsDonors: false)),
            new Line(position.Code, Part.Nothing(position.Kind), IsDonors: false),
        ];
        return lines.Where(line => IsTaken(line.Part));
    }

    private IEnumerable<Offer> Offers => _facts.Buying.Offers.Where(offer => !told.Build.RefusedSellers.Contains(offer.Seller) || !Counts($"seller:{offer.Seller}"));

    /// <summary>Whether work is needed; null where a line does not hold.</summary>
    private bool? Holds(Line[] lines)
    {
        var isWorked = false;
        foreach (var line in lines)
        {
            var answer = Ask(line, lines);
            var holds = answer.AlsoNeeded.Count == 0 && (answer.Headline is Headline.Fits or Headline.FitsWithWork
                || (answer.Headline == Headline.NotKnownYet && told.Build.AdmitNotKnown && answer.Runs.CouldBe.Contains(Runs.Same) && !IsMissed(line)));
            if (!holds)
            {
                return null;
            }

            isWorked |= answer.Works.Count > 0;
        }

        return isWorked;
    }

    /// <summary>What the engine as wished has is not left off on trust.</summary>
    private bool IsMissed(Line line) => line.Part.IsNothing && _facts.Family.FitmentsAt("swift", line.Position).Any(fitment => fitment.Part is not null);

    private FitAnswer Ask(Line line, Line[] lines)
    {
        var key = $"{line.Position}:{string.Join(' ', lines.Select(one => one.Part.Id))}";
        return _answers.TryGetValue(key, out var known) ? known : _answers[key] = FitCheck.Decide(_facts.Family, new FitQuestion(
            "swift", line.Position, line.Part,
            With: lines.Where(other => other.Position != line.Position).ToDictionary(other => other.Position, other => other.Part.IsNothing ? null : other.Part)));
    }

    private IEnumerable<OneBuild> Bought(Line[] lines, bool isWorked)
    {
        var offers = Offers.ToList();
        for (var basket = 0; basket < 1 << offers.Count; basket++)
        {
            var bought = offers.Where((_, index) => (basket & (1 << index)) != 0).ToList();
            var needed = lines.Where(line => line is { IsDonors: false, Part.IsNothing: false }).Select(line => line.Part.Id).ToList();
            if (!needed.TrueForAll(part => bought.Exists(offer => offer.Part == part)))
            {
                continue;
            }

            var arrival = needed.Select(part => bought.Where(offer => offer.Part == part).Min(offer => (int)(offer.DaysMax ?? 0))).DefaultIfEmpty(0).Max();
            var days = int.Max(arrival, isWorked ? DaysOfWork : 0);
            var cost = bought.Sum(Landed) + bought.GroupBy(offer => offer.Seller).Sum(Sending) + lines.Sum(Besides);
            if ((told.Build.Budget is { } budget && Counts("budget") && cost > Cents(budget)) || (LastDay is { } last && Counts("needed-by") && days > last))
            {
                continue;
            }

            yield return new OneBuild(lines.ToDictionary(line => line.Position, line => (line.Part.Id, line.IsDonors)), cost, days, lines.Count(line => line.IsDonors));
        }
    }

    private int? LastDay => told.Build.NeededBy is { } day ? DateOnly.Parse(day, CultureInfo.InvariantCulture).DayNumber - TestBuild.Today.DayNumber : null;

    /// <summary>With its import charge: whole cents, as the prices are whole tens of euros.</summary>
    private long Landed(Offer offer) => Cents(offer.Price.Amount) * (100 + (long)(_facts.Buying.SellerOf(offer).ImportChargePercent ?? 0)) / 100;

    private long Sending(IGrouping<string, Offer> parcel)
    {
        var seller = told.Sellers.Single(seller => seller.Code == parcel.Key);
        var goods = parcel.Sum(offer => Cents(offer.Price.Amount));
        return seller.FreeFrom is { } from && goods >= Cents(from.Amount) ? 0 : Cents(seller.ShippingFixed!.Amount) + (Cents(seller.ShippingPerItem!.Amount) * parcel.Count());
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
