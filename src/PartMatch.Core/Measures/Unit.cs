namespace PartMatch.Core.Measures;

/// <summary>One unit of the unit table: value in base unit = value × <paramref name="Factor"/> + <paramref name="Offset"/>.</summary>
/// <param name="Symbol">As books write it, for example <c>mm</c> or <c>g/(kW·h)</c>.</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="Factor">Base units in one of this unit; exact where the definition is exact.</param>
/// <param name="Offset">Only temperatures have one.</param>
public sealed record Unit(string Symbol, Dimension Dimension, decimal Factor, decimal Offset = 0)
{
    public decimal ToBase(decimal value) => (value * Factor) + Offset;

    public decimal FromBase(decimal value) => (value - Offset) / Factor;

    /// <summary>Converts a difference or a tolerance: the zero of the scale plays no part.</summary>
    public decimal DifferenceToBase(decimal difference) => difference * Factor;
}
