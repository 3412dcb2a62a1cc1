using System.Globalization;

namespace PartMatch.Core.Measures;

/// <summary>A quantity as JSON shows it.</summary>
/// <param name="Value">In the base unit named by <paramref name="Unit"/>.</param>
/// <param name="Unit">Symbol of the base unit of the dimension.</param>
/// <param name="Text">As typed or recorded, with its own unit.</param>
public sealed record Quantity(decimal Value, string Unit, string Text)
{
    /// <summary>Lower end of what was typed as a range; absent for a single value.</summary>
    public decimal? Low { get; init; }

    /// <summary>Upper end of what was typed as a range; absent for a single value.</summary>
    public decimal? High { get; init; }

    /// <summary>A quantity that was written as a number with a unit.</summary>
    public static Quantity From(decimal value, Unit unit) =>
        new(unit.ToBase(value), UnitTable.BaseOf(unit.Dimension).Symbol, TextOf(value.ToString(CultureInfo.InvariantCulture), unit));

    /// <summary>A number and its unit as the trade writes them: <c>44.60 mm</c>, <c>6800/min</c>; the unit 1 is not written.</summary>
    public static string TextOf(string number, Unit unit) => unit.Symbol switch
    {
        "1" => number,
        ['1', '/', ..] => number + unit.Symbol[1..],
        _ => $"{number} {unit.Printed}",
    };
}

/// <summary>A result that is known only within limits: low, expected and high in the base unit named, and as text in a unit of the trade.</summary>
public sealed record QuantityRange(double Low, double Expected, double High, string Unit)
{
    private readonly Func<string>? _write;
    private string? _text;

    public QuantityRange(double low, double expected, double high, string unit, string text)
        : this(low, expected, high, unit) => _text = text;

    /// <param name="write">Writes the text when somebody reads it: of a whole catalogue few are read.</param>
    internal QuantityRange(double low, double expected, double high, string unit, Func<string> write)
        : this(low, expected, high, unit) => _write = write;

    /// <summary>With the unit of the trade; one number where low and high are the same.</summary>
    public string Text
    {
        get => _text ??= _write?.Invoke() ?? "";
        init => _text = value;
    }

    public bool Equals(QuantityRange? other) =>
        other is not null && (Low, Expected, High, Unit, Text) == (other.Low, other.Expected, other.High, other.Unit, other.Text);

    public override int GetHashCode() => HashCode.Combine(Low, Expected, High, Unit);
}

/// <summary>Money as JSON shows it: decimal text and ISO 4217 code.</summary>
public sealed record Money(string Amount, string Currency);
