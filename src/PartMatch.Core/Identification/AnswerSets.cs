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
    public static IReadOnlyList<ObservableAnswer> Of(Observable observable)
    {
        var silent = 0UL;
        var recorded = new List<Recorded>();
        for (var candidate = 0; candidate < observable.Values.Count; candidate++)
        {
            var bit = 1UL << candidate;
            silent |= observable.Values[candidate].Count == 0 ? bit : 0;
            recorded.AddRange(observable.Values[candidate].Select(value => new Recorded(bit, value)));
        }

        // A position that carries nothing shows no reading, and that is seen: it stands beside the readings as a choice.
        var answers = ByReading(observable, recorded.FindAll(one => one.Value is not StatedChoices)).Concat(ByChoice(observable, recorded.FindAll(one => one.Value is StatedChoices)));
        return [.. answers.Select(answer => answer with { Candidates = answer.Candidates | silent })];
    }

    private sealed record Recorded(ulong Candidate, StatedValue Value);

    private static IEnumerable<ObservableAnswer> ByChoice(Observable observable, List<Recorded> recorded) =>
        recorded
            .GroupBy(one => string.Join('|', ((StatedChoices)one.Value).Choices.Order(StringComparer.Ordinal)), StringComparer.Ordinal)
            .OrderBy(same => same.Key, StringComparer.Ordinal)
            .Select(same => new ObservableAnswer(
                same.Aggregate(0UL, (left, one) => left | one.Candidate), FitWording.Text(same.First().Value), Token(observable, same.Key)));

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
            // Nobody wrote down how well the check reads, so it separates nothing; or a value of another type stands beside a quantity.
            return [];
        }

        var ends = readings.Select(one => Low(one.Reading)).Distinct().Order();
        var sets = ends
            .Select(end => readings.FindAll(one => Low(one.Reading) <= end && High(one.Reading) >= end))
            .Select(members => (Members: members, Mask: members.Aggregate(0UL, (left, one) => left | one.Candidate)))
            .ToList();
        return sets.Where((set, index) => !sets.Where((other, at) => at != index && IsCoveredBy(set.Mask, other.Mask, at < index)).Any())
            .Select(set => new ObservableAnswer(set.Mask, TextOf(set.Members.ConvertAll(one => one.Value)), Token(observable, Common(set.Members))));
    }

    private static bool IsCoveredBy(ulong set, ulong other, bool equalCounts) => (set & ~other) == 0 && (set != other || equalCounts);

    private static string TextOf(List<StatedValue> values)
    {
        decimal[] each = [.. values.Select(Nominal).Distinct().Order()];
        var unit = UnitOf(values[0]);
        return each.Length == 1 ? FitWording.Number(each[0], unit) : FitWording.Text(new Interval(each[0], each[^1]), unit);
    }

    // A reading that leaves all of them: one of their own values where that does, else the middle of what they share.
    private static string Common(List<(ulong Candidate, StatedValue Value, Interval? Reading)> members)
    {
        var (low, high) = (members.Max(one => Low(one.Reading)), members.Min(one => High(one.Reading)));
        var reading = members.Select(one => Nominal(one.Value)).Where(value => value >= low && value <= high).Order().Cast<decimal?>().FirstOrDefault() ?? (low + high) / 2;
        return FitWording.Number(reading, UnitOf(members[0].Value));
    }

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
