using System.Globalization;

namespace PartMatch.Core.Measures;

/// <summary>
/// A number that is known only within limits, for sums over things that are never negative: flows, pressures, densities, times.
/// </summary>
/// <remarks>
/// Low and high are the worst cases: the ends of interval arithmetic. Where each input stands once in a formula they are the least and the
/// greatest value over all combinations of the inputs' ends (Moore, Interval Analysis, 1966). They are not a confidence interval.
/// </remarks>
public readonly record struct Spread(double Low, double Expected, double High)
{
    public static Spread Exactly(double value) => new(value, value, value);

    public static Spread Of(QuantityRange range) => new(range.Low, range.Expected, range.High);

    /// <summary>A quantity typed as one value or as a range.</summary>
    public static Spread Of(Quantity quantity) => new((double)(quantity.Low ?? quantity.Value), (double)quantity.Value, (double)(quantity.High ?? quantity.Value));

    public bool IsExact => Low == High;

    public static Spread operator +(Spread left, Spread right) => new(left.Low + right.Low, left.Expected + right.Expected, left.High + right.High);

    public static Spread operator -(Spread left, Spread right) => new(left.Low - right.High, left.Expected - right.Expected, left.High - right.Low);

    public static Spread operator *(Spread left, Spread right) => new(left.Low * right.Low, left.Expected * right.Expected, left.High * right.High);

    public static Spread operator /(Spread left, Spread right) => new(left.Low / right.High, left.Expected / right.Expected, left.High / right.Low);

    public static Spread operator *(Spread left, double right) => left * Exactly(right);

    public static Spread operator /(Spread left, double right) => left / Exactly(right);

    public static Spread Add(Spread left, Spread right) => left + right;

    public static Spread Subtract(Spread left, Spread right) => left - right;

    public static Spread Multiply(Spread left, Spread right) => left * right;

    public static Spread Divide(Spread left, Spread right) => left / right;

    public Spread SquareRoot() => new(Math.Sqrt(Low), Math.Sqrt(Expected), Math.Sqrt(High));

    /// <summary>Nothing below zero: an injector that the dead time keeps shut all the time feeds no power, not a negative one.</summary>
    public Spread NotNegative() => new(Math.Max(0, Low), Math.Max(0, Expected), Math.Max(0, High));

    /// <summary>As JSON shows it: base unit, and text in a unit of the trade; one number where low and high print the same.</summary>
    /// <param name="unit">Unit of the text; not a temperature, whose zero would shift.</param>
    /// <param name="format">Of the numbers in the text, for example <c>0.0</c>.</param>
    /// <param name="after">What the text ends with, for example the fluid of a rating.</param>
    public QuantityRange In(Unit unit, string format, string after = "")
    {
        var range = this;
        return new QuantityRange(Low, Expected, High, UnitTable.BaseOf(unit.Dimension).Symbol, () => range.Write(unit, format) + after);
    }

    private string Write(Unit unit, string format)
    {
        string Show(double value) => (value / (double)unit.Factor).ToString(format, CultureInfo.InvariantCulture);
        var (low, expected, high) = (Show(Low), Show(Expected), Show(High));
        return Quantity.TextOf(low == high ? expected : $"{low} … {expected} … {high}", unit); // ends that print alike say nothing
    }
}
