using System.Globalization;
using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Fit;

/// <summary>A stretch of build dates and serial numbers over which every recorded span either holds throughout or not at all.</summary>
/// <param name="Built">Some day in it.</param>
/// <param name="Serial">Some serial number in it.</param>
/// <param name="Text">In words, for example "from serial 41207".</param>
public sealed record EngineSpan(DateOnly Built, long Serial, string Text)
{
    public bool IsIn(Span span) =>
        (span.BuiltFrom is null || Built >= span.BuiltFrom.First)
        && (span.BuiltTo is null || Built <= span.BuiltTo.Last)
        && (span.SerialFrom is null || Serial >= span.SerialFrom)
        && (span.SerialTo is null || Serial <= span.SerialTo);
}

/// <summary>
/// Cuts what is not known of an engine (its build date, its serial number) at every bound of the spans that matter, so that each stretch
/// can be judged by itself.
/// </summary>
/// <param name="Days">First day of each stretch, earliest first; at least one.</param>
/// <param name="Serials">First serial number of each stretch, lowest first; at least one.</param>
internal sealed record EngineSpans(IReadOnlyList<DateOnly> Days, IReadOnlyList<long> Serials)
{
    /// <param name="variant">When the variant was built.</param>
    /// <param name="spans">The spans that matter to the question.</param>
    public static EngineSpans Cut(Span variant, BuildDate? built, long? serial, IReadOnlyList<Span> spans)
    {
        var firstDay = built?.First ?? variant.BuiltFrom?.First ?? DateOnly.MinValue;
        var lastDay = built?.Last ?? variant.BuiltTo?.Last ?? DateOnly.MaxValue;
        var firstSerial = serial ?? variant.SerialFrom ?? 0;
        var lastSerial = serial ?? variant.SerialTo ?? long.MaxValue;
        return new EngineSpans(
            [
                firstDay,
                .. spans.SelectMany(span => new[] { span.BuiltFrom?.First, NextDay(span.BuiltTo?.Last) })
                    .OfType<DateOnly>().Where(day => day > firstDay && day <= lastDay).Distinct().Order(),
            ],
            [
                firstSerial,
                .. spans.SelectMany(span => new[] { span.SerialFrom, span.SerialTo < long.MaxValue ? span.SerialTo + 1 : null })
                    .OfType<long>().Where(number => number > firstSerial && number <= lastSerial).Distinct().Order(),
            ]);
    }

    /// <summary>The stretches the engine can be in, earliest first; at least one.</summary>
    public IReadOnlyList<EngineSpan> Stretches =>
        [.. Enumerable.Range(0, Days.Count).SelectMany(_ => Enumerable.Range(0, Serials.Count), (day, number) => At(day, number))];

    /// <summary>The same without the bounds at which nothing changes, whatever the other of date and number is.</summary>
    public EngineSpans Without(Func<EngineSpan, EngineSpan, bool> saysTheSame) => new(
        [.. Days.Where((_, day) => day == 0 || !Enumerable.Range(0, Serials.Count).All(number => saysTheSame(At(day - 1, number), At(day, number))))],
        [.. Serials.Where((_, number) => number == 0 || !Enumerable.Range(0, Days.Count).All(day => saysTheSame(At(day, number - 1), At(day, number))))]);

    private EngineSpan At(int day, int number) => new(
        Days[day], Serials[number], Words(Range("serial", days: false, Serials, number, Text), Range("built", days: true, Days, day, Text)));

    private static DateOnly? NextDay(DateOnly? day) => day < DateOnly.MaxValue ? day.Value.AddDays(1) : null;

    private static string Text(long serial) => serial.ToString(CultureInfo.InvariantCulture);

    private static string Text(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Words(string serial, string built) =>
        string.Join(", ", new[] { serial, built }.Where(text => text.Length > 0)) is { Length: > 0 } words ? words : "every engine of this variant";

    private static string Range<T>(string what, bool days, IReadOnlyList<T> starts, int index, Func<T, string> text)
    {
        if (starts.Count == 1)
        {
            return "";
        }

        var before = index + 1 < starts.Count ? $"{what} before {text(starts[index + 1])}" : "";
        var from = index > 0 ? $"{what} from {text(starts[index])}" : "";
        return (from, before) switch
        {
            ("", _) => before,
            (_, "") => from,
            _ => days ? $"{from} and before {text(starts[index + 1])}" : $"{from} to before {text(starts[index + 1])}",
        };
    }
}
