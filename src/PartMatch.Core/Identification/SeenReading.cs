using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Identification;

/// <summary>Something that was seen, understood.</summary>
/// <param name="Observable">The check that shows it; the first of several.</param>
/// <param name="Leaves">Candidates of which it can be so.</param>
/// <param name="Text">What was seen, in words.</param>
internal sealed record SeenObservation(Observable Observable, ulong Leaves, string Text);

/// <summary>Reads what was seen: <c>[position.]feature[@method]:value</c>.</summary>
internal static class SeenReading
{
    private const int Offered = 8;

    private static string NothingThere => Observable.NothingThere.Choices[0];

    /// <summary>The observation, or null with the reason why it cannot be understood.</summary>
    public static (SeenObservation? Seen, SeenRefused? Refused) Read(string text, IdentificationSubject subject)
    {
        var colon = text.IndexOf(':', StringComparison.Ordinal);
        var (what, value) = colon < 0 ? (text, "") : (text[..colon], text[(colon + 1)..].Trim());
        var (address, method) = what.IndexOf('@', StringComparison.Ordinal) is > 0 and var at ? (what[..at], what[(at + 1)..]) : (what, null);
        Observable[] shows = [.. subject.Observables.Where(one => one.Address == address && (method is null || Codes.Of(one.Check.Method) == method))];
        return shows.Length == 0
            ? (null, new SeenRefused(text, $"feature:value of a check that these candidates have: {Some(subject)}", "take what was seen from an answer of the key"))
            : Understand(text, value, shows);
    }

    private static (SeenObservation? Seen, SeenRefused? Refused) Understand(string text, string value, Observable[] shows)
    {
        var feature = shows[0].Feature;
        var reading = ReadingOf(feature, value);
        if (reading is null)
        {
            return (null, new SeenRefused(text, Expected(feature, shows[0]), $"for example {shows[0].Answers.Select(answer => answer.Seen).FirstOrDefault() ?? $"{shows[0].Address}:…"}"));
        }

        // Where the check is not named, the one that reads least exactly decides: nothing is ruled out that one of them would leave.
        var leaves = shows.Aggregate(0UL, (left, one) => left | Leaves(one, reading));
        return (new SeenObservation(shows[0], leaves, $"{shows[0].Name} {reading.Text}"), null);
    }

    private static Reading? ReadingOf(Feature feature, string value) => feature.Type switch
    {
        _ when value == NothingThere => new ChoiceReading(NothingThere),
        FeatureType.Quantity when feature.Unit is { } unit && QuantityParser.Parse(value, unit.Dimension) is QuantityRead read =>
            new QuantityReading(read.Quantity.Value, null, null, null, read.Unit, read.Quantity.Text),
        FeatureType.Count when QuantityParser.FindNumber(value) is { } number && number == decimal.Truncate(number) => new CountReading((long)number, value),
        FeatureType.Choice when feature.Choices.Contains(value, StringComparer.Ordinal) => new ChoiceReading(value),
        FeatureType.Choices when value.Split('|') is var each && each.All(one => feature.Choices.Contains(one, StringComparer.Ordinal)) =>
            new ChoicesReading([.. each.Order(StringComparer.Ordinal)]),
        _ => null,
    };

    private static string Expected(Feature feature, Observable observable) => feature.Type switch
    {
        FeatureType.Quantity => $"{observable.Address}:number with a unit, such as {feature.Unit?.Symbol}",
        FeatureType.Count => $"{observable.Address}:whole number",
        _ => $"{observable.Address}: and one of {string.Join(", ", feature.Choices)}",
    };

    private static ulong Leaves(Observable observable, Reading reading)
    {
        var leaves = 0UL;
        for (var candidate = 0; candidate < observable.Values.Count; candidate++)
        {
            var values = observable.Values[candidate];
            leaves |= values.Count == 0 || values.Any(value => CanRead(observable, value, reading)) ? 1UL << candidate : 0;
        }

        return leaves;
    }

    private static bool CanRead(Observable observable, StatedValue value, Reading reading) => (value, reading) switch
    {
        (StatedQuantity or StatedCount, ChoiceReading or ChoicesReading) => false,
        (StatedChoices choices, ChoiceReading read) => choices.Choices is [var only] && only == read.Choice,
        (StatedChoices choices, ChoicesReading read) => choices.Choices.Order(StringComparer.Ordinal).SequenceEqual(read.Choices),
        (StatedQuantity, QuantityReading read) => Holds(observable.ReadingOf(value), read.Value),
        (StatedCount, CountReading read) => Holds(observable.ReadingOf(value), read.Value),
        _ => false, // nothing is there that could give a reading
    };

    // A check that nobody wrote an uncertainty for rules nothing out.
    private static bool Holds(Interval? readings, decimal reading) => readings is not { } interval || new Interval(reading, reading).LiesIn(interval);

    private static string Some(IdentificationSubject subject)
    {
        string[] addresses = [.. subject.Observables.Where(one => one.Answers.Count > 1).Select(one => one.Address).Distinct(StringComparer.Ordinal)];
        return addresses.Length == 0 ? "none is recorded" : $"{string.Join(", ", addresses.Take(Offered))}{(addresses.Length > Offered ? ", …" : "")}";
    }
}
