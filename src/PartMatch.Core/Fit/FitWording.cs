using System.Globalization;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Fit;

/// <summary>Values and verdicts in the words of the bench.</summary>
internal static class FitWording
{
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
        _ => "the same:",
    };

    public static ComparedValue Shown(KnownValue value, string? from = null, string? part = null) => value switch
    {
        StatedQuantity quantity => new ComparedValue(
            Text(quantity), quantity.Possible.Low, quantity.Possible.High, UnitTable.BaseOf(quantity.Unit.Dimension).Symbol, from, part),
        StatedValue stated => new ComparedValue(Text(stated), From: from, Part: part),
        DisputedValue disputed => new ComparedValue($"disputed: {disputed.Text}", From: from, Part: part),
        _ => new ComparedValue("not recorded", From: from, Part: part),
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

    public static string Number(decimal inBase, Unit? unit) => unit is null ? Bare(inBase, unit) : $"{Bare(inBase, unit)} {unit.Symbol}";

    /// <summary>A choice code as words: "rear-of-exhaust-cam" reads "rear of exhaust cam".</summary>
    public static string InWords(string code) => code.Replace('-', ' ');

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
        return $"{quantity.Text}{spread}{uncertain}";
    }

    private static string Bare(decimal inBase, Unit? unit, bool difference = false)
    {
        var number = unit is null ? inBase : difference ? inBase / unit.Factor : unit.FromBase(inBase);
        return Math.Round(number, 6).ToString("0.######", CultureInfo.InvariantCulture);
    }
}
