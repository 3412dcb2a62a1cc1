using PartMatch.Core.Measures;

namespace PartMatch.Core.Sums;

/// <summary>
/// Lengths, volumes and angles of the crank as the trade writes them: what goes in is in the base unit, what comes out has its unit on every number.
/// </summary>
internal static class GeometryText
{
    private const char Minus = '\u2212';

    public static readonly Unit Millimetres = UnitTable.Get("mm");
    public static readonly Unit CubicCentimetres = UnitTable.Get("cm3");
    public static readonly Unit SquareCentimetres = UnitTable.Get("cm2");
    private static readonly Unit _degrees = UnitTable.Get("deg");
    private static readonly Unit _ratio = UnitTable.BaseOf(Dimension.Ratio);

    public static string InMm(double metres, string format = "0.00") => Signed(SumText.In(Millimetres, metres, format));

    public static string InCm3(double cubicMetres, string format = "0.00") => Signed(SumText.In(CubicCentimetres, cubicMetres, format));

    /// <summary><c>44°</c>, <c>−52°</c>, <c>17.143°</c>.</summary>
    public static string InDegrees(double degrees, string format = "0.###") => Signed(SumText.Number(Tidy(degrees), format)) + "°";

    public static string InRatio(double ratio) => SumText.Number(ratio, "0.00");

    public static QuantityRange RangeInMm(Spread metres, string format = "0.00") => Range(metres, Millimetres, format);

    public static QuantityRange RangeInCm3(Spread cubicMetres) => Range(cubicMetres, CubicCentimetres, "0.00");

    public static QuantityRange RangeOfRatio(Spread ratio, string format = "0.00") => Range(ratio, _ratio, format);

    public static QuantityRange RangeInPercent(Spread share) => Range(share, SumText.Percent, "0.0");

    /// <summary>An angle with its sign, whatever it is measured from.</summary>
    public static QuantityRange RangeInDegrees(Spread degrees, string after = "")
    {
        var numbers = degrees.IsExact
            ? InDegrees(degrees.Expected, "0.#")
            : $"{Number(degrees.Low)} … {Number(degrees.Expected)} … {InDegrees(degrees.High, "0.#")}";
        return new QuantityRange(Tidy(degrees.Low), Tidy(degrees.Expected), Tidy(degrees.High), _degrees.Symbol, numbers + after);
    }

    /// <summary>
    /// An angle from a dead centre in words, on the side where it lies: the numbers keep the sign, the words turn it into "before" and "after".
    /// </summary>
    /// <param name="side">Where positive numbers lie.</param>
    /// <param name="other">Where negative ones lie.</param>
    public static QuantityRange RangeFromDeadCentre(Spread degrees, string side, string other, string centre) => degrees switch
    {
        { High: < 0 } => RangeInDegrees(new Spread(-degrees.High, -degrees.Expected, -degrees.Low), $" {other} {centre}") with
        {
            Low = Tidy(degrees.Low),
            Expected = Tidy(degrees.Expected),
            High = Tidy(degrees.High),
        },
        { Low: >= 0 } => RangeInDegrees(degrees, $" {side} {centre}"),
        _ => RangeInDegrees(degrees, $" {side} {centre} (minus = {other})"),
    };

    /// <summary>A typographic minus, so that it is not lost beside an ellipsis.</summary>
    private static string Signed(string text) => IsZero(text) ? text.TrimStart('-') : text.Replace('-', Minus);

    // A sum that ends in nothing but rounding has no sign.
    private static bool IsZero(string text) => !text.Split(' ')[0].Any(letter => letter is >= '1' and <= '9') && !text.Contains('…', StringComparison.Ordinal);

    private static string Number(double degrees) => Signed(SumText.Number(Tidy(degrees), "0.#"));

    // Sums of tenths leave dust in the sixteenth digit, which JSON would show.
    private static double Tidy(double degrees) => Math.Round(degrees, 6) + 0.0;

    private static QuantityRange Range(Spread spread, Unit unit, string format)
    {
        var range = spread.In(unit, format);
        return range with { Text = Signed(range.Text) };
    }
}
