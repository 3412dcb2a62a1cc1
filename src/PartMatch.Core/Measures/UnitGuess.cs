using System.Globalization;
using System.Text.RegularExpressions;

namespace PartMatch.Core.Measures;

/// <summary>What somebody may have meant by a unit that is not in the table: asked back, never taken.</summary>
internal static partial class UnitGuess
{
    private const decimal AmbientBar = 1.01325m;

    // "170-190 kW": what follows the first number is a dash, a second number and the unit.
    [GeneratedRegex(@"^([-\u2010-\u2015\u2212~]|to )\s*(?<high>[0-9][0-9.]*)\s*(?<unit>[^0-9\s].*)\z", RegexOptions.CultureInvariant)]
    private static partial Regex DashRange();

    [GeneratedRegex(@"^(?<unit>bar|mbar|kPa|MPa|Pa|psi)(?<mark> ?\(?(absolute|abs\.?|a|gauge|g)\)?)\z", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Reference();

    /// <summary>How to mend it, or null where nothing comes near.</summary>
    public static string? Of(string written, string symbol, Dimension dimension)
    {
        if (DashRange().Match(symbol) is { Success: true } range && Near(range.Groups["unit"].Value, dimension) is { } between)
        {
            return $"did you mean {written}..{range.Groups["high"].Value} {between.Symbol}?";
        }

        if (dimension == Dimension.Pressure && Reference().Match(symbol) is { Success: true } pressure && Near(pressure.Groups["unit"].Value, dimension) is { } unit)
        {
            return pressure.Groups["mark"].Value.Contains('g', StringComparison.OrdinalIgnoreCase)
                ? $"did you mean {written} {unit.Symbol}? Boost and fuel pressures are gauge pressures anyway"
                : Absolute(written, unit);
        }

        return (symbol, dimension) is ("MW", Dimension.Power) && QuantityParser.FindNumber(written) is { } megawatts
            ? string.Create(CultureInfo.InvariantCulture, $"did you mean {megawatts} kW, or {megawatts * 1000} kW?")
            : Near(symbol, dimension) is { } meant ? $"did you mean {written} {meant.Symbol}?" : null;
    }

    private static string Absolute(string written, Unit unit)
    {
        var over = QuantityParser.FindNumber(written) is { } number ? number - unit.FromBase(AmbientBar * 100_000) : 0;
        return string.Create(CultureInfo.InvariantCulture,
            $"a gauge pressure is absolute − ambient: {written} {unit.Symbol} absolute is {over:0.00} {unit.Symbol} at the sea. Where an absolute pressure is asked for, write {written} {unit.Symbol}");
    }

    // Case, order of factors, plural and what stands between factors aside; only where one unit is left.
    private static Unit? Near(string symbol, Dimension dimension) =>
        UnitTable.SpellingsOf(dimension).Where(one => Key(one.Spelling) == Key(symbol)).Select(one => one.Unit).Distinct().ToList() is [{ } only] ? only : null;

    private static string Key(string symbol) => string.Join('·', symbol.ToUpperInvariant().Split('·', '-', ' ', '.', '*')
        .Select(factor => factor.Length > 2 && factor[^1] == 'S' ? factor[..^1] : factor).Where(factor => factor.Length > 0).Order(StringComparer.Ordinal));
}
