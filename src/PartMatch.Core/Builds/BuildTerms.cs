using System.Globalization;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Openings;

namespace PartMatch.Core.Builds;

/// <summary>A build with everything typed read, and its wishes gathered by position.</summary>
internal sealed class BuildTerms
{
    /// <summary>Positions of this group are no parts: what mounts, feeds and controls the engine, declared and not bought.</summary>
    public const string Services = "services";

    private readonly Dictionary<string, PositionTerms> _positions;
    private readonly Dictionary<string, decimal> _rates;

    private BuildTerms(BuildFacts facts, Build build, DateOnly startOn)
    {
        // What comes with the donor is in hand once the donor is.
        (Facts, Build, StartOn) = (facts, build with { InHand = [.. build.InHand, .. build.Donor.ComesWith] }, startOn);
        Target = build.Target ?? build.Donor.Variant;
        Digits = Currencies.FindDigits(build.Currency) ?? throw Unreadable("currency", build.Currency);
        _rates = build.Rates.ToDictionary(
            rate => rate.Currency, rate => QuantityParser.FindNumber(rate.Is) ?? throw Unreadable("rate", rate.Is), StringComparer.Ordinal);
        _rates[build.Currency] = 1;
        Budget = build.Budget is { } most ? Minor(most, "budget") : null;
        LastDay = build.NeededBy is { } day ? DayOf(day, "neededBy").DayNumber - startOn.DayNumber : null;
        Built = build.Donor.Built is { } built ? BuildDate.Find(built) ?? throw Unreadable("donor.built", built) : null;
        Renewable = [.. Disturbance.Renewals(facts.Family, OpenedPlan.Engines(this)).Select(row => row.Renewed)];
        _positions = facts.Family.Positions.ToDictionary(position => position.Code, PositionTerms.Of(this), StringComparer.Ordinal);
    }

    public BuildFacts Facts { get; }

    public Build Build { get; }

    public DateOnly StartOn { get; }

    /// <summary>The variant it is to become.</summary>
    public string Target { get; }

    public BuildDate? Built { get; }

    /// <summary>Minor units.</summary>
    public long? Budget { get; }

    /// <summary>Days from the start.</summary>
    public int? LastDay { get; }

    /// <summary>Positions that are renewed when something is opened.</summary>
    public HashSet<string> Renewable { get; }

    private int Digits { get; }

    /// <param name="today">The day of the question: nothing that is not ordered yet can be ordered before it.</param>
    /// <exception cref="ArgumentException">Something typed cannot be read; the door checks that first and says it better.</exception>
    public static BuildTerms Of(BuildFacts facts, Build build, DateOnly today) =>
        new(facts, build, build.StartOn is { } typed && DayOf(typed, "startOn") is var day && day > today ? day : today);

    public PositionTerms At(string position) => _positions[position];

    /// <summary>What its maker put there, as far as its build date and its serial number tell.</summary>
    public IEnumerable<Fitment> FittedToDonor(string position) => Facts.Family.FitmentsAt(Build.Donor.Variant, position)
        .Where(fitment => (Built is null || Fit.FitCheck.Overlaps(fitment.Span, Built)) && Covers(fitment.Span, Build.Donor.Serial));

    private static bool Covers(Span span, long? serial) => serial is null || ((span.SerialFrom ?? serial) <= serial && (span.SerialTo ?? serial) >= serial);

    /// <summary>In minor units of the build's currency, rounded half to even once; null where no rate is given.</summary>
    /// <param name="factor">With an import charge of 4.5 %: 1.045.</param>
    public long? Convert(Money money, decimal factor = 1)
    {
        if (!_rates.TryGetValue(money.Currency, out var rate) || Amount.Find(money.Amount, money.Currency) is not { } amount)
        {
            return null;
        }

        var from = Currencies.FindDigits(money.Currency) ?? 0;
        return (long)Math.Round((decimal)amount.Minor * factor * rate * Power(Digits) / Power(from), MidpointRounding.ToEven);
    }

    /// <summary>Price of the donor with its freight where that is known; null where the price is not, or there is no rate.</summary>
    public Money? DonorsPrice => PaidForDonor(Build.Donor.Price) is { } price ? MoneyOf(price + (PaidForDonor(Build.Donor.Freight) ?? 0)) : null;

    /// <summary>An amount typed in the donor's currency, in minor units of the build's; null where it is not known, or there is no rate.</summary>
    public long? PaidForDonor(string? typed) => typed is null ? null : Convert(new Money(typed, Build.Donor.Currency ?? Build.Currency));

    /// <summary>An amount typed in the build's currency.</summary>
    public long Minor(string typed, string field) => (long)(Amount.Find(typed, Build.Currency) ?? throw Unreadable(field, typed)).Minor;

    public Money MoneyOf(long minor) => new Amount(minor, Build.Currency).ToMoney();

    /// <summary>"1131.00 EUR".</summary>
    public string Say(long minor) => new Amount(minor, Build.Currency).ToString();

    private static decimal Power(int digits) => digits switch
    {
        0 => 1,
        2 => 100,
        3 => 1000,
        _ => 10_000,
    };

    private static DateOnly DayOf(string typed, string field) =>
        DateOnly.TryParseExact(typed, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : throw Unreadable(field, typed);

    private static ArgumentException Unreadable(string field, string typed) => new($"'{typed}' cannot be read as {field}.", field);
}

/// <summary>Everything the build says of one position.</summary>
/// <param name="Like">Variants whose way of running is as wished, most wished first; never empty.</param>
/// <param name="Parts">Only these, where any is named.</param>
internal sealed record PositionTerms(
    Position Position, IReadOnlyList<string> Like, IReadOnlyList<string> Parts, IReadOnlySet<string> Refuse, KeepWish Keep, bool OnlyNew, bool AdmitNotKnown,
    DonorState? State)
{
    public static Func<Position, PositionTerms> Of(BuildTerms terms) => position =>
    {
        Wish[] wishes = [.. terms.Build.Wishes.Where(wish => wish.Position == position.Code || wish.Group == position.Group)];
        var keep = wishes.LastOrDefault(wish => wish.Keep != KeepWish.Either)?.Keep ?? KeepWish.Either;
        string[] like = [.. wishes.SelectMany(wish => wish.Like).DefaultIfEmpty(terms.Target)];

        // To keep the donor's part does not make the engine run there as wished: only "like" says how it may run.
        return new PositionTerms(
            position, [.. like.Distinct(StringComparer.Ordinal)], wishes.LastOrDefault(wish => wish.Parts.Count > 0)?.Parts ?? [],
            wishes.SelectMany(wish => wish.Refuse).ToHashSet(StringComparer.Ordinal), keep, wishes.Any(wish => wish.OnlyNew),
            terms.Build.AdmitNotKnown || wishes.Any(wish => wish.AdmitNotKnown),
            terms.Build.Donor.States.LastOrDefault(state => state.Position == position.Code))
        {
            IsRenewable = terms.Renewable.Contains(position.Code),
        };
    };

    public PartState StateOfDonor => State?.State ?? PartState.NotInspected;

    /// <summary>Is it renewed when something is opened? A seal or a bolt that somebody else has used is not renewed by.</summary>
    public bool IsRenewable { get; init; }

    /// <summary>Is only what is new bought there?</summary>
    public bool IsBoughtNew => OnlyNew || IsRenewable;
}
