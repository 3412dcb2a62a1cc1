namespace PartMatch.Core.Tightening;

/// <summary>What a steel bolt of a class stands, Pa.</summary>
/// <param name="UltimatePa">Least tensile strength.</param>
/// <param name="ProofPa">Stress under proof load: taken without staying longer.</param>
public sealed record ClassStrength(double UltimatePa, double ProofPa, string Source);

/// <summary>A property class of ISO 898-1, as it is stamped on the head.</summary>
public sealed record PropertyClass(string Code)
{
    private const double Megapascal = 1e6;

    private static readonly ClassStrength _of88 = new(800 * Megapascal, 580 * Megapascal, "ISO 898-1, table 3, up to M16");
    private static readonly ClassStrength _of88Above16 =
        new(830 * Megapascal, 600 * Megapascal, "ISO 898-1, table 3, above M16 (from memory, high confidence)");

    private static readonly ClassStrength _of109 = new(1040 * Megapascal, 830 * Megapascal, "ISO 898-1, table 3");
    private static readonly ClassStrength _of129 = new(1220 * Megapascal, 970 * Megapascal, "ISO 898-1, table 3");

    /// <summary>Those that the sums know, weakest first.</summary>
    public static IReadOnlyList<PropertyClass> All { get; } = [new("8.8"), new("10.9"), new("12.9")];

    /// <summary>Reads 10.9, and the word of a book, 10-9; null for a class that the sums do not know.</summary>
    public static PropertyClass? Find(string text) => All.FirstOrDefault(one => one.Code == text.Replace('-', '.'));

    public ClassStrength For(MetricThread thread) => Code switch
    {
        "8.8" => thread.DiameterMm > 16 ? _of88Above16 : _of88,
        "10.9" => _of109,
        _ => _of129,
    };
}
