using System.Text.RegularExpressions;
using FluentValidation;
using PartMatch.Core.Builds;
using PartMatch.Core.Buying;
using PartMatch.Core.Measures;
using PartMatch.Web.Http;
using PartMatch.Web.Offers;

namespace PartMatch.Web.Builds;

/// <summary>What the fields of a build must be, whatever the base holds: amounts of its currency, days, quantities with their unit.</summary>
internal sealed partial class BuildDocumentRules : AbstractValidator<Build>
{
    private const int LongestCode = 60;
    private const int LongestTitle = 120;
    private const int LongestNote = 2000;
    private const int MostEntries = 500;
    private const int MostDonors = 12;
    private const int MostDays = 3650;
    private const int MostPercent = 1000;
    private const int MostRate = 1_000_000;
    private const int FirstYear = 2000;
    private const int LastYear = 2199;

    // All money of a plan together has to stay far inside what the solver reckons with (PlanProblemCheck.Most).
    private const long MostMinor = 1_000_000_000_000;

    public BuildDocumentRules()
    {
        RuleFor(build => build.Code).Must(IsCode).Otherwise(CodeExpected, "for example hill-climb");
        RuleFor(build => build.Title).Must(IsTitle).Otherwise(TitleExpected);
        RuleFor(build => build.Note).Must(IsNote).Otherwise(NoteExpected);
        RuleFor(build => build.Currency).MustBeCurrency();
        RuleFor(build => build.Budget).Must(IsAmount).Otherwise(AmountExpected, AmountMend);
        RuleFor(build => build.SendingWhereNotSaid).Must(IsAmount).Otherwise(AmountExpected, AmountMend);
        RuleFor(build => build.StartOn).Must(IsDay).Otherwise(DayExpected, "leave it out for the day of the question");
        RuleFor(build => build.NeededBy).Must(IsDay).Otherwise(DayExpected, "leave it out where it is not pressing");
        RuleFor(build => build.NeededBy)
            .Must((build, day) => OfferRules.DayOf(day) is not { } needed || OfferRules.DayOf(build.StartOn) is not { } start || start <= needed)
            .Otherwise("a day not before startOn", "order earlier, or need it later");
        RuleFor(build => build.OffersAtMostDaysOld).Must(IsDays).Otherwise(DaysExpected);
        RuleFor(build => build.DaysWhereNotSaid).Must(IsDays).Otherwise(DaysExpected);
        RuleFor(build => build.ImportPercentWhereNotSaid).Must(percent => percent is null or (>= 0 and <= MostPercent))
            .Otherwise($"a percentage from 0 to {MostPercent}");
        RuleFor(build => build.Donor).SetValidator(build => DonorRules.Of(build));
        RuleFor(build => build.Donors).Must(donors => donors.Count <= MostDonors).Otherwise($"a list of at most {MostDonors} donors", "rank the likeliest first");
        RuleForEach(build => build.Donors).SetValidator(build => DonorRules.OfOffer(build));
        RuleFor(build => build.Goal).SetValidator(BuildGoalRules.Make()!); // the library skips what is null
        RuleFor(build => build.Wishes).Must(IsBounded).Otherwise(EntriesExpected);
        RuleForEach(build => build.Wishes).SetValidator(WishRules());
        RuleForEach(build => build.Wishes)
            .Must((build, wish) => !build.Wishes.TakeWhile(other => !ReferenceEquals(other, wish)).Any(other => Contradicts(other, wish)))
            .WithState((_, wish) => new Mending(
                "one wish for a position that says whether the donor's stays, or which parts may be there", "leave one of the two out",
                $"a second wish for {wish.Position} that says otherwise"));
        RuleFor(build => build.InHand).Must(IsBounded).Otherwise(EntriesExpected);
        RuleForEach(build => build.InHand).SetValidator(HeldRules());
        RuleFor(build => build.Works).Must(IsBounded).Otherwise(EntriesExpected);
        RuleForEach(build => build.Works).ChildRules(work => work.RuleFor(one => one.Note).Must(IsNote).Otherwise(NoteExpected));
        RuleFor(build => build.RefusedSellers).Must(IsBounded).Otherwise(EntriesExpected);
        RuleFor(build => build.Rates).Must(IsBounded).Otherwise(EntriesExpected);
        RuleForEach(build => build.Rates).SetValidator(build => RateRules(build));
    }

    internal const string DayExpected = "a day from 2000-01-01 to 2199-12-31, as YYYY-MM-DD";
    internal static readonly string CodeExpected = $"a code of a-z, 0-9 and single hyphens, at most {LongestCode} characters";
    internal static readonly string TitleExpected = $"a title of at most {LongestTitle} characters in one line";
    internal const string NoteExpected = "a text of at most 2000 characters";
    private const string AmountExpected = "an amount of the build's currency, zero or more: digits and one decimal point";
    internal const string AmountMend = "with no more decimals than the currency has: 84.00 in EUR, 84 in JPY";
    private const string DaysExpected = "days, a whole number from 0 to 3650";
    internal const string EntriesExpected = "a list of at most 500 entries";

    internal static bool IsCode(string code) => code.Length <= LongestCode && CodeShape().IsMatch(code);

    [GeneratedRegex("^[a-z0-9]+(-[a-z0-9]+)*$", RegexOptions.CultureInvariant)]
    private static partial Regex CodeShape();

    internal static InlineValidator<HeldPart> HeldRules()
    {
        var rules = new InlineValidator<HeldPart>();
        rules.RuleFor(one => one.Pieces).InclusiveBetween(1, OfferBounds.MostPieces).Otherwise($"a whole number from 1 to {OfferBounds.MostPieces}");
        rules.RuleFor(one => one.Note).Must(IsNote).Otherwise(NoteExpected);
        return rules;
    }

    private static InlineValidator<Wish> WishRules()
    {
        var rules = new InlineValidator<Wish>();
        rules.RuleFor(wish => wish.Position).Must((wish, position) => position is null != wish.Group is null)
            .WithState(wish => new Mending(
                "a position or a group, one of the two", "a group stands for every position of it",
                wish.Position is null ? "neither position nor group" : "position and group"));
        rules.RuleFor(wish => wish.Parts).Must(IsBounded).Otherwise(EntriesExpected);
        rules.RuleFor(wish => wish.Refuse).Must(IsBounded).Otherwise(EntriesExpected);
        rules.RuleForEach(wish => wish.Refuse).Must((wish, part) => !wish.Parts.Contains(part, StringComparer.Ordinal))
            .Otherwise("no part that parts allows", "leave it out of one of the two");
        rules.RuleFor(wish => wish.Note).Must(IsNote).Otherwise(NoteExpected);
        return rules;
    }

    private static InlineValidator<Rate> RateRules(Build build)
    {
        var rules = new InlineValidator<Rate>();
        rules.RuleFor(rate => rate.Currency).MustBeCurrency();
        rules.RuleFor(rate => rate.Currency).Must(currency => currency != build.Currency)
            .Otherwise("another currency than the build's", "leave it out: it is 1");
        rules.RuleFor(rate => rate.Currency).Must(currency => build.Rates.Count(other => other.Currency == currency) == 1)
            .Otherwise("each currency once");
        rules.RuleFor(rate => rate.Is).Must(number => QuantityParser.FindNumber(number) is > 0 and <= MostRate)
            .Otherwise($"a number above 0 and at most {MostRate}: what one unit of it costs in the build's currency",
                "for example 1.1700, with a decimal point");
        rules.RuleFor(rate => rate.From).Must(IsNote).Otherwise(NoteExpected);
        return rules;
    }

    internal static bool IsTitle(string title) => title.Trim().Length is > 0 and <= LongestTitle && !title.Any(char.IsControl);

    internal static bool IsAmount(Build build, string? amount) => IsAmountOf(build.Currency, amount);

    // Where the currency itself is at fault, that is told and nothing is said of its amounts.
    internal static bool IsAmountOf(string currency, string? amount) =>
        amount is null || Currencies.FindDigits(currency) is null
        || (Amount.Find(amount, currency) is { Minor: var minor } && minor >= 0 && minor <= MostMinor);

    /// <summary>Whether a plan can be reckoned from that day on: far from both ends of the calendar.</summary>
    internal static bool IsPlannable(DateOnly day) => day.Year is >= FirstYear and <= LastYear;

    internal static bool IsDay(string? day) => day is null || (OfferRules.DayOf(day) is { } read && IsPlannable(read));

    // Of one position an earlier wish said otherwise.
    private static bool Contradicts(Wish other, Wish wish) => wish.Position is not null && other.Position == wish.Position
        && ((other.Keep != KeepWish.Either && wish.Keep != KeepWish.Either && other.Keep != wish.Keep)
            || (other.Parts.Count > 0 && wish.Parts.Count > 0 && !other.Parts.Order(StringComparer.Ordinal).SequenceEqual(wish.Parts.Order(StringComparer.Ordinal))));

    private static bool IsDays(int? days) => days is null or (>= 0 and <= MostDays);

    internal static bool IsBounded<T>(IReadOnlyList<T> list) => list.Count <= MostEntries;

    // Which marks may stand in it, the reading of the document has looked at.
    internal static bool IsNote(string? note) => note is null or { Length: <= LongestNote };
}
