using PartMatch.Core.Measures;

namespace PartMatch.Core.Sums;

/// <summary>Something taken as true.</summary>
public sealed record Assumption(string Name, QuantityRange Range, string Source);
