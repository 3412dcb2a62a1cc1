using System.Globalization;

namespace PartMatch.Core.Measures;

/// <summary>A quantity as JSON shows it.</summary>
/// <param name="Value">In the base unit named by <paramref name="Unit"/>.</param>
/// <param name="Unit">Symbol of the base unit of the dimension.</param>
/// <param name="Text">As typed or recorded, with its own unit.</param>
public sealed record Quantity(decimal Value, string Unit, string Text)
{
    public static Quantity From(decimal value, Unit unit) =>
        new(unit.ToBase(value), UnitTable.BaseOf(unit.Dimension).Symbol, string.Create(CultureInfo.InvariantCulture, $"{value} {unit.Symbol}"));
}

/// <summary>A result that is known only within limits: low, expected and high in the base unit named, and as text in a unit of the trade.</summary>
public sealed record QuantityRange(double Low, double Expected, double High, string Unit, string Text);

/// <summary>Money as JSON shows it: decimal text and ISO 4217 code.</summary>
public sealed record Money(string Amount, string Currency);
