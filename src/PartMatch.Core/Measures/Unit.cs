namespace PartMatch.Core.Measures;

/// <summary>One unit of the unit table: value in base unit = value × <paramref name="Factor"/> + <paramref name="Offset"/>.</summary>
/// <param name="Symbol">As books write it, for example <c>mm</c> or <c>g/(kW·h)</c>.</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="Factor">Base units in one of this unit; exact where the definition is exact.</param>
/// <param name="Offset">Only temperatures have one.</param>
public sealed record Unit(string Symbol, Dimension Dimension, decimal Factor, decimal Offset = 0)
{
    /// <summary>As a person reads it, with its powers raised: <c>cm³/min</c>. Records, addresses and JSON keep <see cref="Symbol"/>; both are read.</summary>
    public string Printed { get; } = PrintedOf(Symbol);

    public decimal ToBase(decimal value) => (value * Factor) + Offset;

    public decimal FromBase(decimal value) => (value - Offset) / Factor;

    /// <summary>Converts a difference or a tolerance: the zero of the scale plays no part.</summary>
    public decimal DifferenceToBase(decimal difference) => difference * Factor;

    // A 2 or 3 behind a letter is a power: no symbol of the table has another digit there.
    private static string PrintedOf(string symbol) => string.Concat(symbol.Select((letter, at) =>
        at == 0 || !char.IsAsciiLetter(symbol[at - 1]) ? letter : letter switch { '2' => '²', '3' => '³', _ => letter }));
}
