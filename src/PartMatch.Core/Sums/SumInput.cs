using PartMatch.Core.Measures;

namespace PartMatch.Core.Sums;

/// <summary>A number that goes into a sum.</summary>
/// <param name="Name">In plain words with its article left out: "specific consumption".</param>
/// <param name="Spread">Low, expected and high; the same three times where it is exact.</param>
public sealed record SumInput(string Name, Spread Spread);

/// <summary>What one input alone does to a result.</summary>
/// <param name="Input">As in <see cref="SumInput.Name"/>.</param>
/// <param name="AtLow">The result with this input at its low end and every other at its expected figure; base unit of the result.</param>
/// <param name="AtHigh">The same at its high end.</param>
/// <param name="Text">The sentence that a page shows.</param>
public sealed record Influence(string Input, double AtLow, double AtHigh, string Text)
{
    public double Change => Math.Abs(AtHigh - AtLow);
}
