using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Identification;

/// <summary>Which answers can a check give, and whom does each leave?</summary>
/// <remarks>
/// Two values that overlap once tolerance and the check's uncertainty are counted are not separated by it: an answer is a largest set of candidates no two of
/// which are separated. A candidate whose value is not recorded is in every answer.
/// </remarks>
internal static class AnswerSets
{
    /// <summary>The answers, in the order of the values; choices in ordinal order.</summary>
    /// <param name="among">The candidates that are left: the others count for nothing.</param>
    public static IReadOnlyList<ObservableAnswer> Of(Observable observable, ulong among)
    {
        var silent = 0UL;
        var recorded = new List<Recorded>();
        foreach (var candidate in IdentificationKey.Members(among))
        {
            var bit = 1UL << candidate;
            silent |= observable.Values[candidate].Count == 0 ? bit : 0;
            recorded.AddRange(observable.Values[candidate].Select(value => new Recorded(bit, value)));
        }

        // A position that carries nothing shows no reading, and that is seen: it stands beside the readings as a choice.
        var answers = ByReading(observable, recorded.FindAll(one => one.Value is not StatedChoices))
            .Concat(ByChoice(observable, recorded.FindAll(one => one.Value is StatedChoices)));
        return [.. answers.Select(answer => answer with { Candidates = answer.Candidates | silent })];
    }

    private sealed record Recorded(ulong Candidate, StatedValue Value);

    private static IEnumerable<ObservableAnswer> ByChoice(Observable observable, List<Recorded> recorded) =>
        recorded
            .GroupBy(one => Written(one.Value), StringComparer.Ordinal)
            .OrderBy(same => same.Key, StringComparer.Ordinal)
            .Select(same => new ObservableAnswer(
                MaskOf(same), FitWording.Text(same.First().Value), Token(observable, same.Key)));

    private static string Written(StatedValue value) =>
        value is StatedChoices choices ? string.Join('|', choices.Choices.Order(StringComparer.Ordinal)) : value.Text;

    // The largest sets of intervals with a common point are found at the lower ends, in order.
    private static IEnumerable<ObservableAnswer> ByReading(Observable observable, List<Recorded> recorded)
    {
        if (recorded.Count == 0)
        {
            return [];
        }

        var readings = recorded.ConvertAll(one => (one.Candidate, one.Value, Reading: observable.ReadingOf(one.Value)));
        if (readings.Exists(one => one.Reading is null))
        {
            // Nobody wrote down how well the check reads, so it separates no reading from another: all of them are one answer.
            var all = recorded.ConvertAll(one => one.Value);
            var lowest = InOrder(all).First();
            return [new ObservableAnswer(MaskOf(recorded), TextOf(all), Token(observable, FitWording.Number(Nominal(lowest), UnitOf(lowest))))];
        }

        var ends = readings.Select(one => Low(one.Reading)).Distinct().Order();
        var sets = ends
            .Select(end => readings.FindAll(one => Low(one.Reading) <= end && High(one.Reading) >= end))
            .Select(members => (Members: members, Mask: members.Aggregate(0UL, (left, one) => left | one.Candidate)))
            .ToList();
        return sets.Where((set, index) => !sets.Where((other, at) => at != index && IsCoveredBy(set.Mask, other.Mask, at < index)).Any())
            .Select(set => new ObservableAnswer(set.Mask, TextOf(set.Members.ConvertAll(one => one.Value)), Token(observable, Common(set.Members))));
    }

    private static ulong MaskOf(IEnumerable<Recorded> recorded) => recorded.Aggregate(0UL, (left, one) => left | one.Candidate);

    private static bool IsCoveredBy(ulong set, ulong other, bool equalCounts) => (set & ~other) == 0 && (set != other || equalCounts);

    private static string TextOf(List<StatedValue> values)
    {
        StatedValue[] rising = [.. InOrder(values)];
        return FitWording.Text(new Interval(Nominal(rising[0]), Nominal(rising[^1])), UnitOf(rising[0]));
    }

    // A reading that leaves all of them: one of their own values where that does, in its own unit, so that nothing is lost by rounding;
    // else one that they share.
    private static string Common(List<(ulong Candidate, StatedValue Value, Interval? Reading)> members)
    {
        var (low, high) = (members.Max(one => Low(one.Reading)), members.Min(one => High(one.Reading)));
        StatedValue[] rising = [.. InOrder(members.ConvertAll(one => one.Value))];
        var units = rising.Select(UnitOf).OfType<Unit>();
        return Array.Find(rising, value => Nominal(value) >= low && Nominal(value) <= high) is { } own ? FitWording.Number(Nominal(own), UnitOf(own))
            : rising[0] is StatedCount ? FitWording.Number(decimal.Ceiling(low), null)
            : FitWording.Number((low + high) / 2, units.FirstOrDefault(unit => StaysBetween(low, high, unit)) ?? UnitOf(rising[0]));
    }

    // Where the values only touch, the middle as it is written must not fall beside them.
    private static bool StaysBetween(decimal low, decimal high, Unit unit) =>
        unit.ToBase(Math.Round(unit.FromBase((low + high) / 2), FitWording.Decimals)) is var written && written >= low && written <= high;

    private static IEnumerable<StatedValue> InOrder(List<StatedValue> values) =>
        values.OrderBy(Nominal).ThenBy(value => UnitOf(value)?.Symbol, StringComparer.Ordinal);

    private static string Token(Observable observable, string value) => $"{observable.Address}@{Codes.Of(observable.Check.Method)}:{value}";

    private static decimal Nominal(StatedValue value) => value switch
    {
        StatedQuantity quantity => quantity.Nominal,
        StatedCount count => count.Value,
        _ => throw new InvalidOperationException($"{value.Text} is not a number."),
    };

    private static Unit? UnitOf(StatedValue value) => (value as StatedQuantity)?.Unit;

    // Both ends are set: a recorded quantity is never open.
    private static decimal Low(Interval? reading) => reading!.Value.Low!.Value;

    private static decimal High(Interval? reading) => reading!.Value.High!.Value;
}
