using System.Globalization;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;

namespace PartMatch.Storage.Catalogue;

/// <summary>Stored cells to values: always from the text as typed, in decimal, by the factors of the unit table.</summary>
internal static class Readings
{
    /// <summary>A value of a feature of that type; the cells have passed the import's checks.</summary>
    public static Reading Of(FeatureType type, string value, string? minus, string? plus, string? unit, string? uncertainty) => type switch
    {
        FeatureType.Quantity => QuantityOf(value, minus, plus, UnitTable.Get(unit ?? UnitTable.BaseOf(Dimension.Ratio).Symbol), uncertainty),
        FeatureType.Count => new CountReading(long.Parse(value, CultureInfo.InvariantCulture), value),
        FeatureType.Choice => new ChoiceReading(value),
        FeatureType.Choices => new ChoicesReading(value.Split('|')),
        _ => throw new ArgumentOutOfRangeException(nameof(type), type, "a curve has points, not a value"),
    };

    /// <summary>An engine fact: what has a unit is a quantity, a whole number is a count, anything else a word.</summary>
    public static Reading OfEngine(string value, string? minus, string? plus, string? unit, string? uncertainty)
    {
        var type = unit is not null ? FeatureType.Quantity
            : value.All(char.IsAsciiDigit) ? FeatureType.Count
            : FeatureType.Choice;
        return Of(type, value, minus, plus, unit, uncertainty);
    }

    /// <summary>A demanded value: for a relation to a set it is a set, though the feature itself has one value.</summary>
    public static Reading OfDemand(FeatureType type, Relation relation, string value, string? minus, string? plus, string? unit, string? uncertainty) =>
        Of(relation is Relation.OneOf or Relation.Covers && type == FeatureType.Choice ? FeatureType.Choices : type, value, minus, plus, unit, uncertainty);

    /// <summary>A point on a scale, in the base unit.</summary>
    public static decimal InBase(string number, Unit unit) => unit.ToBase(Number(number));

    /// <summary>A difference or a tolerance, in the base unit; null when not recorded.</summary>
    public static decimal? DifferenceInBase(string? number, Unit unit) => number is null ? null : unit.DifferenceToBase(Number(number));

    /// <summary>A plain number; null when not recorded.</summary>
    public static decimal? FindNumber(string? number) => number is null ? null : Number(number);

    /// <summary>A whole number; null when not recorded.</summary>
    public static long? FindWhole(string? number) => number is null ? null : long.Parse(number, NumberStyles.None, CultureInfo.InvariantCulture);

    public static Span SpanOf(string? builtFrom, string? builtTo, string? serialFrom, string? serialTo, string? mark = null) =>
        new(BuiltAt(builtFrom), BuiltAt(builtTo), SerialAt(serialFrom), SerialAt(serialTo), mark);

    public static IReadOnlyList<string> ListOf(string? cell) => cell is null ? [] : cell.Split('|');

    private static QuantityReading QuantityOf(string value, string? minus, string? plus, Unit unit, string? uncertainty) => new(
        InBase(value, unit), DifferenceInBase(minus, unit), DifferenceInBase(plus, unit), DifferenceInBase(uncertainty, unit), unit,
        unit.Symbol == "1" ? value : $"{value} {unit.Printed}");

    private static decimal Number(string text) => decimal.Parse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);

    // Key columns hold '' where nothing is recorded, the others null.
    private static BuildDate? BuiltAt(string? cell) => string.IsNullOrEmpty(cell) ? null : BuildDate.Find(cell);

    private static long? SerialAt(string? cell) => string.IsNullOrEmpty(cell) ? null : long.Parse(cell, CultureInfo.InvariantCulture);
}
