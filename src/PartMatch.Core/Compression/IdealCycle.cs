using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Compression;

/// <summary>The air-standard Otto cycle: what compression is good for, at the very best.</summary>
public static class IdealCycle
{
    /// <summary>Ratio of specific heats: 1.40 for cold air, nearer to 1.30 for hot mixture.</summary>
    public static Figure Gamma { get; } = new(1.30, 1.35, 1.40,
        "ratio of specific heats, 1.30 hot mixture … 1.40 cold air: any thermodynamics text (from memory)");

    /// <summary>1 − r^(1 − γ).</summary>
    /// <param name="ratio">Of the expansion, which is the geometric one whenever the intake valve closes.</param>
    public static double Efficiency(double ratio, double gamma) => 1 - Math.Pow(ratio, 1 - gamma);

    /// <summary>Over the whole range of <see cref="Gamma"/>.</summary>
    public static Spread Efficiency(Spread ratio) =>
        SumRange.Of([new("ratio", ratio), new("ratio of specific heats", Gamma.Spread)], of => Efficiency(of[0], of[1]));
}
