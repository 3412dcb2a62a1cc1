using System.Globalization;
using System.Text.RegularExpressions;

namespace PartMatch.Core.Tightening;

/// <summary>An ISO metric thread: M10×1.25.</summary>
/// <param name="DiameterMm">Nominal.</param>
/// <param name="IsPitchTold">False where only M10 was written, which means the coarse pitch.</param>
public sealed partial record MetricThread(decimal DiameterMm, decimal PitchMm, bool IsPitchTold)
{
    /// <summary>Where the coarse pitch of a diameter comes from.</summary>
    public const string CoarseSource = "ISO 261, coarse series (from memory, high confidence; the pitches of M6, M8, M10 and M12 seen in ISO 898-1)";

    private static readonly Dictionary<decimal, decimal> _coarse = new (decimal DiameterMm, decimal PitchMm)[]
    {
        (3, 0.5m), (4, 0.7m), (5, 0.8m), (6, 1), (7, 1), (8, 1.25m), (9, 1.25m), (10, 1.5m), (11, 1.5m), (12, 1.75m), (14, 2), (16, 2),
        (18, 2.5m), (20, 2.5m), (22, 2.5m), (24, 3), (27, 3), (30, 3.5m),
    }.ToDictionary(row => row.DiameterMm, row => row.PitchMm);

    public string Text => string.Create(CultureInfo.InvariantCulture, $"M{DiameterMm:0.##}×{PitchMm:0.###}");

    public bool IsCoarse => _coarse.GetValueOrDefault(DiameterMm) == PitchMm;

    /// <summary>The section that carries the pull, m²: ISO 898-1, As = π/4 (d − 0.9382 P)².</summary>
    public double StressAreaM2 => Math.PI / 4 * Math.Pow((double)(DiameterMm - (0.9382m * PitchMm)) / 1000, 2);

    public double DiameterM => (double)DiameterMm / 1000;

    /// <summary>Reads M10×1.25, M10x1.25, M10, and the word of a book, m10x1-25; null for anything else.</summary>
    public static MetricThread? Find(string text)
    {
        var shape = Shape().Match(text.Replace(" ", "", StringComparison.Ordinal));
        if (!shape.Success || Number(shape.Groups["diameter"].Value) is not (>= 1 and <= 64 and var diameter))
        {
            return null;
        }

        if (!shape.Groups["pitch"].Success)
        {
            return _coarse.TryGetValue(diameter, out var coarse) ? new MetricThread(diameter, coarse, IsPitchTold: false) : null;
        }

        // No thread of the standard has a pitch above a quarter of its diameter: M1×0.25 is the steepest (ISO 261, from memory).
        var pitch = Number(shape.Groups["pitch"].Value);
        return pitch > 0 && pitch <= diameter / 4 ? new MetricThread(diameter, pitch, IsPitchTold: true) : null;
    }

    // A word of a book has no point, so a hyphen stands for it.
    [GeneratedRegex(
        @"^m(?<diameter>[0-9]{1,2}([.-][0-9]{1,2})?)([x×*](?<pitch>[0-9]([.-][0-9]{1,3})?))?\z",
        RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Shape();

    private static decimal Number(string digits) => decimal.Parse(digits.Replace('-', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
}
