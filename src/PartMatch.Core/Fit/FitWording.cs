using System.Globalization;
using System.Text.RegularExpressions;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Fit;

/// <summary>Values and verdicts in the words of the bench.</summary>
internal static partial class FitWording
{
    /// <summary>Decimals of a number as it is written.</summary>
    public const int Decimals = 6;

    private const int ShownAtMost = 6;

    public static string Of(Headline headline) => headline switch
    {
        Headline.Fits => "Fits",
        Headline.FitsWithWork => "Fits with work",
        Headline.MountsButRunsDifferently => "Mounts but runs differently",
        Headline.DoesNotFit => "Does not fit",
        _ => "Not known yet",
    };

    public static string Of(Relation relation) => relation switch
    {
        Relation.AtLeast => "at least",
        Relation.AtMost => "at most",
        Relation.OneOf => "one of",
        Relation.Covers => "all of",
        _ => "the same as",
    };

    /// <summary>What is demanded, in the words of a shopping list: "at least 9 mm", "k2 or k2 long".</summary>
    public static string Wanted(Relation relation, KnownValue value) => (relation, value) switch
    {
        (Relation.OneOf, StatedChoices set) => string.Join(" or ", set.Choices.Select(InWords)),
        (Relation.Same or Relation.OneOf, _) => Text(value),
        _ => $"{Of(relation)} {Text(value)}",
    };

    /// <summary>What the recorded features come to.</summary>
    public static string Computed<T>(T value)
        where T : struct, Enum => value switch
        {
            Mounts.Yes => "By what is recorded, the part goes on.",
            Mounts.WithWork => "By what is recorded, the part goes on only after work.",
            Mounts.No => "By what is recorded, the part does not go on.",
            Runs.Same => "By what is recorded, the engine runs the same with it.",
            _ => "By what is recorded, the engine runs differently with it.",
        };

    /// <summary>Said of every comparison that rests on a value without the maker's spread; empty where none does.</summary>
    private static string BareNote(params IEnumerable<KnownValue> values) =>
        values.Any(value => value is StatedQuantity { Bare: true }) ? " Compared as bare values, so only inferred: the maker's spread is not recorded." : "";

    /// <summary>What is to be known of the values compared: that they are bare, and what weaker sources say against them.</summary>
    public static string Notes(params IReadOnlyList<KnownValue> values)
    {
        var against = values.OfType<StatedValue>().Distinct().SelectMany(value => value.Against.Select(weaker => Otherwise(value, weaker)));
        return BareNote(values) + string.Concat(against.Distinct());
    }

    private static string Otherwise(StatedValue value, RecordedValue weaker)
    {
        var source = weaker.Evidence is { } evidence ? $"{InWords(Codes.Of(evidence.Grade))}, {evidence.Code}" : "no source";
        return $" A weaker source says otherwise: {weaker.Reading.Text} ({source}) in place of {value.Text}.";
    }

    public static ComparedValue Shown(KnownValue value, string? from = null, string? part = null) => value switch
    {
        StatedQuantity quantity => new ComparedValue(
            Text(quantity), quantity.Possible.Low, quantity.Possible.High, UnitTable.BaseOf(quantity.Unit.Dimension).Symbol, from, part),
        StatedValue stated => new ComparedValue(Text(stated), From: from, Part: part),
        DisputedValue disputed => new ComparedValue($"disputed: {disputed.Text}", From: from, Part: part) { IsOpen = true },
        _ => new ComparedValue("not recorded", From: from, Part: part) { IsOpen = true },
    };

    /// <summary>A demand: what is asked for, without how well that is known.</summary>
    public static ComparedValue Asked(KnownValue value, string from, string? part) => value is StatedQuantity quantity
        ? Shown(value, from, part) with { Low = quantity.Stated.Low, High = quantity.Stated.High }
        : Shown(value, from, part);

    public static string Text(KnownValue value) => value switch
    {
        StatedQuantity quantity => Text(quantity),
        StatedChoices choices => string.Join(" + ", choices.Choices.Select(InWords)),
        StatedValue stated => stated.Text,
        DisputedValue disputed => $"disputed ({disputed.Text})",
        _ => "not recorded",
    };

    /// <summary>An interval in a unit of the trade: "7 … 41 um", "at least 1.0 mm".</summary>
    public static string Text(Interval interval, Unit? unit) => (interval.Low, interval.High) switch
    {
        (null, null) => "anything",
        ({ } low, null) => $"at least {Number(low, unit)}",
        (null, { } high) => $"at most {Number(high, unit)}",
        ({ } low, { } high) when low == high => Number(low, unit),
        ({ } low, { } high) => $"{Bare(low, unit)} … {Number(high, unit)}",
    };

    public static ComparedValue Shown(Interval interval, Unit? unit) =>
        new(Text(interval, unit), interval.Low, interval.High, unit is null ? null : UnitTable.BaseOf(unit.Dimension).Symbol);

    public static string Number(decimal inBase, Unit? unit) => unit is null ? Bare(inBase, unit) : $"{Bare(inBase, unit)} {unit.Printed}";

    /// <summary>A choice code as words: "rear-of-exhaust-cam" reads "rear of exhaust cam".</summary>
    /// <remarks>A hyphen between digits stays, so that "p36-1" is not two numbers; a metric thread (ISO 261) reads as on a drawing: "M20×1.5" for "m20x1-5".</remarks>
    public static string InWords(string code) => MetricThread().Match(code) is { Success: true } thread
        ? $"M{thread.Groups[1].Value}×{thread.Groups[2].Value}{(thread.Groups[3].Success ? $".{thread.Groups[3].Value}" : "")}"
        : HyphenBesideALetter().Replace(code, " ");

    public static string AsSentence(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>The first few, and how many more there are.</summary>
    public static string Some(IReadOnlyList<string> items) =>
        items.Count <= ShownAtMost ? List(items) : $"{List(items.Take(ShownAtMost))} and {items.Count - ShownAtMost} more";

    public static string List(IEnumerable<string> items) => string.Join(", ", items);

    private static string Text(StatedQuantity quantity)
    {
        var unit = quantity.Unit;
        var minus = quantity.Nominal - quantity.Stated.Low!.Value; // both ends are set: a recorded quantity is never open
        var plus = quantity.Stated.High!.Value - quantity.Nominal;
        var spread = (minus, plus) switch
        {
            (0, 0) => "",
            _ when minus == plus => $" ± {Bare(plus, unit, difference: true)}",
            _ => $" −{Bare(minus, unit, difference: true)}/+{Bare(plus, unit, difference: true)}",
        };
        var uncertain = quantity.Uncertainty == 0 ? "" : $" (known to ± {Bare(quantity.Uncertainty, unit, difference: true)})";
        return quantity.IsHull
            ? $"{quantity.Text}, taken together {Bare(quantity.Stated.Low.Value, unit)} … {Number(quantity.Stated.High.Value, unit)}{uncertain}"
            : $"{quantity.Text}{spread}{uncertain}";
    }

    [GeneratedRegex("^m([0-9]+)x([0-9]+)(?:-([0-9]+))?$", RegexOptions.CultureInvariant)]
    private static partial Regex MetricThread();

    [GeneratedRegex("(?<![0-9])-|-(?![0-9])", RegexOptions.CultureInvariant)]
    private static partial Regex HyphenBesideALetter();

    private static string Bare(decimal inBase, Unit? unit, bool difference = false)
    {
        var number = unit is null ? inBase : difference ? inBase / unit.Factor : unit.FromBase(inBase);
        return Math.Round(number, Decimals).ToString("0.######", CultureInfo.InvariantCulture);
    }
}
