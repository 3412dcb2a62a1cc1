using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Fit;

/// <summary>
/// Which of several recorded values counts. Of the sources not retracted the best grade speaks (maker's document, then several measured
/// examples, one measured example, reported, inferred); where equals overlap, their hull; where they do not, the value is disputed.
/// </summary>
public static class ValueSelection
{
    private enum Standing
    {
        Inferred,
        Reported,
        OneMeasured,
        SeveralMeasured,
        MakersDocument,
    }

    // Parts are immutable, and every answer asks the same few features of them again and again.
    private static readonly ConditionalWeakTable<Part, ConcurrentDictionary<string, KnownValue>> _weighed = [];

    /// <summary>The value of a feature of a part. A real part is always present, and nothing is not.</summary>
    public static KnownValue Of(Part part, string feature) =>
        feature == Feature.Present.Code
            ? PresentAs(part.IsNothing ? "no" : "yes")
            : _weighed.GetOrCreateValue(part).GetOrAdd(feature, static (code, of) => Weigh(of, code), part);

    /// <summary>The built-in choice <c>present</c> of a position with or without a part.</summary>
    public static KnownValue PresentAs(string choice) => new StatedChoices([choice], choice, EvidenceGrade.MakersDocument, []);

    private static KnownValue Weigh(Part part, string feature) =>
        Pick([.. part.Values.Where(value => value.Feature == feature && value.Evidence?.IsRetracted != true)]);

    private static KnownValue Pick(List<RecordedValue> rows)
    {
        if (rows.Count == 0)
        {
            return NotRecorded.Instance;
        }

        // A copy adds nothing to its original, and a copying slip does not dispute it. In order of evidence, whatever order the rows came in.
        rows =
        [
            .. rows.Where(row => !IsCopyOfOneOf(row, rows))
                .OrderBy(row => row.Evidence?.Code, StringComparer.Ordinal).ThenBy(row => row.Reading.Text, StringComparer.Ordinal),
        ];
        var examples = rows.Where(row => row.Evidence?.Grade == EvidenceGrade.Measured).Select(row => row.Evidence?.Root).Distinct().Count();
        var best = rows.Max(row => StandingOf(row, examples));
        var counts = Combine([.. rows.Where(row => StandingOf(row, examples) == best)]);
        return counts is StatedValue stated ? stated with { Against = [.. rows.Where(row => StandingOf(row, examples) < best && Excludes(stated, row))] } : counts;
    }

    private static bool Excludes(StatedValue stated, RecordedValue weaker) => (stated, Combine([weaker])) switch
    {
        (StatedQuantity one, StatedQuantity other) => !one.Possible.Meets(other.Possible),
        (StatedCount one, StatedCount other) => one.Value != other.Value,
        (StatedChoices one, StatedChoices other) => !one.Choices.Order(StringComparer.Ordinal).SequenceEqual(other.Choices.Order(StringComparer.Ordinal)),
        _ => false,
    };

    private static bool IsCopyOfOneOf(RecordedValue row, List<RecordedValue> rows) =>
        row.Evidence is { IsCopy: true } copy && rows.Exists(other => other.Evidence is { IsCopy: false } original && original.Root == copy.Root);

    /// <summary>The grade a value has by its source: a trial fit or a run under load says no more of a dimension than a report does.</summary>
    public static EvidenceGrade GradeOf(Evidence? evidence) => evidence?.Grade switch
    {
        null => EvidenceGrade.Inferred,
        EvidenceGrade.TrialFitted or EvidenceGrade.RanUnderLoad => EvidenceGrade.Reported,
        { } grade => grade,
    };

    /// <summary>One reading by one source as a value that counts.</summary>
    public static KnownValue Of(Reading reading, Evidence? evidence) =>
        evidence?.IsRetracted == true ? NotRecorded.Instance : Combine([new RecordedValue("", reading, evidence)]);

    // A trial fit or a run under load says nothing about a dimension by itself: such a value stands as reported.
    private static Standing StandingOf(RecordedValue row, int examples) => row.Evidence?.Grade switch
    {
        EvidenceGrade.MakersDocument => Standing.MakersDocument,
        EvidenceGrade.Measured => examples > 1 ? Standing.SeveralMeasured : Standing.OneMeasured,
        EvidenceGrade.Reported or EvidenceGrade.TrialFitted or EvidenceGrade.RanUnderLoad => Standing.Reported,
        _ => Standing.Inferred,
    };

    private static KnownValue Combine(List<RecordedValue> rows)
    {
        var text = string.Join(" or ", rows.Select(row => row.Reading.Text).Distinct());
        Evidence[] evidence = [.. rows.Select(row => row.Evidence).OfType<Evidence>().Distinct().OrderBy(source => source.Code, StringComparer.Ordinal)];
        var grade = GradeOf(rows[0].Evidence);
        return rows[0].Reading switch
        {
            QuantityReading => Overlapping([.. rows.Select(row => (QuantityReading)row.Reading)], text, grade, evidence),
            CountReading first => rows.All(row => row.Reading is CountReading count && count.Value == first.Value)
                ? new StatedCount(first.Value, text, grade, evidence)
                : new DisputedValue(text, evidence),
            ChoiceReading first => rows.All(row => row.Reading == first)
                ? new StatedChoices([first.Choice], text, grade, evidence)
                : new DisputedValue(text, evidence),
            ChoicesReading first => rows.All(row => row.Reading.Text == first.Text)
                ? new StatedChoices(first.Choices, text, grade, evidence)
                : new DisputedValue(text, evidence),
            _ => throw new InvalidOperationException($"A reading of type {rows[0].Reading.GetType().Name} has no comparison."),
        };
    }

    private static KnownValue Overlapping(List<QuantityReading> readings, string text, EvidenceGrade grade, Evidence[] evidence)
    {
        var each = readings.ConvertAll(reading => Spread(reading, text, grade, evidence));
        var overlap = each.TrueForAll(one => each.TrueForAll(other => one.Possible.Meets(other.Possible)));
        return overlap
            ? each[0] with
            {
                Stated = each.Select(one => one.Stated).Aggregate((left, right) => left.Hull(right)),
                Possible = each.Select(one => one.Possible).Aggregate((left, right) => left.Hull(right)),
                Uncertainty = each.Max(one => one.Uncertainty),
                Bare = each.Exists(one => one.Bare),
                IsHull = each.DistinctBy(one => one.Stated).Skip(1).Any(),
            }
            : new DisputedValue(text, evidence);
    }

    /// <summary>One reading as a value that counts.</summary>
    public static StatedQuantity Spread(QuantityReading reading, string text, EvidenceGrade grade, IReadOnlyList<Evidence> evidence)
    {
        var uncertainty = reading.Uncertainty ?? 0;
        var stated = new Interval(reading.Value - (reading.Minus ?? 0), reading.Value + (reading.Plus ?? 0));
        var bare = reading.Minus is null || reading.Plus is null;
        return new StatedQuantity(
            reading.Value, stated, stated.Widened(uncertainty), uncertainty, bare, reading.Unit, text, bare ? EvidenceGrade.Inferred : grade, evidence);
    }
}
